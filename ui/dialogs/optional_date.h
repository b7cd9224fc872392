// Why: a date that may be left open: a box that says whether there is one, and the date. Days as
// "2026-05-04", "" for none. Thread: the window's.
#pragma once

#include <QWidget>
#include <string>

class QCheckBox;
class QDateEdit;

namespace fettle {

class OptionalDate : public QWidget {
    Q_OBJECT
  public:
    explicit OptionalDate(const std::string& day, QWidget* parent = nullptr);

    std::string day() const;
    void setDay(const std::string& day);

  signals:
    void changed();

  private:
    QCheckBox* there_;
    QDateEdit* date_;
};

}  // namespace fettle
