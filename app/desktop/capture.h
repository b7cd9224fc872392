// Why: a page as a picture without a person: for documents, for tests, and to judge the look under every
// theme and scale. Waits until everything asked for was answered and painted, then saves and ends; refuses
// with a sentence, and never waits for ever. Thread: the window's.
#pragma once

#include <QElapsedTimer>
#include <QObject>
#include <QString>
#include <QTimer>

namespace fettle {

class MainWindow;

class Capture : public QObject {
    Q_OBJECT
  public:
    Capture(MainWindow& window, QString file, QObject* parent = nullptr);
    void start();

    static constexpr int kMostSeconds = 180;

  private:
    void look();
    void save();
    void end(const QString& trouble);  // empty: done

    MainWindow& window_;
    QString file_;
    QTimer timer_;
    QElapsedTimer clock_;
    int quiet_ = 0;
};

}  // namespace fettle
