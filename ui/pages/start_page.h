// Why: what somebody sees who has given no fleet file: what to do first, in order, and the files opened
// lately. Thread: the window's.
#pragma once

#include <QStringList>
#include <QWidget>

#include "ui/theme/theme.h"

class QLabel;
class QVBoxLayout;

namespace fettle {

class StartPage : public QWidget {
    Q_OBJECT
  public:
    StartPage(const Theme& theme, QWidget* parent = nullptr);

    void setRecent(const QStringList& paths);
    void say(const QString& trouble);  // a fleet that could not be opened; empty: nothing

  signals:
    void openWanted();
    void newWanted();
    void fileWanted(const QString& path);

  private:
    void dress();

    const Theme& theme_;
    QLabel *title_, *trouble_, *steps_, *recentHead_;
    QVBoxLayout* recent_;
};

}  // namespace fettle
