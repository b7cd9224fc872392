// Why: the small questions of the round and the register, all built alike and all answerable by a test: a
// form of named fields, a line that says why the answer cannot be taken yet, and two buttons. Opened with
// open(), never exec(); the answer comes as a signal. Deletes itself when closed. Thread: the window's.
#pragma once

#include <QDialog>

#include "ui/theme/theme.h"

class QDialogButtonBox;
class QFormLayout;
class QLabel;
class QPushButton;

namespace fettle {

class AnswerDialog : public QDialog {
    Q_OBJECT
  public:
    AnswerDialog(const Theme& theme, const QString& name, const QString& title, const QString& yes,
                 QWidget* parent);

  protected:
    QFormLayout* form() { return form_; }
    void explain(const QString& text);  // above the form
    void lacks(const QString& what);    // empty: the answer can be taken
    // Adds a field under an object name; its label is its accessible name.
    void addField(const QString& label, QWidget* field, const char* name);
    void resizeEvent(QResizeEvent* event) override;

  private:
    QLabel *explanation_, *lack_;
    QFormLayout* form_;
    QPushButton* yes_;
};

}  // namespace fettle
