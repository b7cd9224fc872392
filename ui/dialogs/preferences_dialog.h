// Why: units, paper, colours, scale, language and the name signed under decisions, chosen in one place.
// Stored and exported data stay as they are; only what is shown and printed follows. The language holds from
// the next start, all else at once. Thread: the window's.
#pragma once

#include "ui/dialogs/answer_dialog.h"
#include "ui/model/preferences.h"

class QComboBox;
class QLineEdit;
class QSpinBox;

namespace fettle {

class PreferencesDialog : public AnswerDialog {
    Q_OBJECT
  public:
    PreferencesDialog(const Theme& theme, const Preferences& now, QWidget* parent);

  signals:
    void chosen(const fettle::Preferences& preferences);

  private:
    void addUnits();
    void addLooks();
    void check();
    Preferences preferences() const;

    Preferences before_;
    QComboBox *velocity_, *frequency_, *temperature_, *paper_, *theme_, *language_;
    QSpinBox* scale_;
    QLineEdit* name_;
};

}  // namespace fettle
