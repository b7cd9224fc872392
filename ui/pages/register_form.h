// Why: single fields of a description: label, editor, unit, and beside it what is wrong, while one types.
// Shows and edits a MachineDocument; holds no value of its own. Thread: the window's.
#pragma once

#include <QWidget>
#include <vector>

#include "ui/pages/register_fields.h"
#include "ui/theme/theme.h"

class QGridLayout;
class QLabel;

namespace fettle {

class RegisterForm : public QWidget {
    Q_OBJECT
  public:
    RegisterForm(MachineDocument& document, const Theme& theme, const std::vector<FieldGroup>& groups,
                 QWidget* parent = nullptr);

    void setReadOnly(bool readOnly);
    void setFixed(const std::string& pointer, bool fixed);  // shown, not to be edited
    bool hasTrouble() const;
    bool focusOn(const std::string& place);  // false: not a field of this form

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    struct Field {
        FieldSpec spec;
        QWidget* editor;
        QLabel *label, *unit, *trouble;
        bool fixed = false;
    };
    void addGroup(const FieldGroup& group, int& row);
    QWidget* editorOf(const FieldSpec& spec);
    void refresh(bool whole);
    void dress();

    MachineDocument& document_;
    const Theme& theme_;
    QGridLayout* grid_;
    std::vector<Field> fields_;
    std::vector<QLabel*> heads_;
    bool readOnly_ = false;
};

}  // namespace fettle
