// Why: below the form: what is still wrong with the description as a whole, from when it holds, why it
// changed, and the button that saves. Thread: the window's.
#pragma once

#include <QWidget>

#include "ui/model/machine_document.h"
#include "ui/theme/theme.h"

class QCheckBox;
class QDateEdit;
class QLabel;
class QLineEdit;
class QPushButton;

namespace fettle {

class RegisterSaveBar : public QWidget {
    Q_OBJECT
  public:
    RegisterSaveBar(MachineDocument& document, const Theme& theme, QWidget* parent = nullptr);

    // `known`: the machine is in the register, so that a change may hold from a day on.
    void show(bool known, bool writable);
    std::string from() const;  // empty: a correction of what holds now, or a first description
    std::string note() const;
    void clear();

  signals:
    void saveWanted();
    void revertWanted();
    void troubleChosen(const QString& place);

  private:
    void refresh();

    MachineDocument& document_;
    const Theme& theme_;
    QLabel* word_;
    QCheckBox* fromDay_;
    QDateEdit* day_;
    QLineEdit* note_;
    QPushButton *save_, *revert_;
    bool known_ = false, writable_ = true;
};

}  // namespace fettle
