// Why: a trial is planned by typing what is going to be changed; what that has to do, what is promised and
// what it takes to be safe stands beside it at once, so that nobody starts before knowing. Everything shown
// is computed by core/workshop from what is typed; nothing here computes. Thread: the window's.
#pragma once

#include <QCheckBox>
#include <QTimeZone>
#include <QWidget>
#include <vector>

#include "core/fleet/trial_desk.h"
#include "ui/model/units.h"
#include "ui/theme/theme.h"

class QComboBox;
class QDateTimeEdit;
class QDoubleSpinBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QPushButton;
class QSpinBox;
class QVBoxLayout;

namespace fettle {

class TrialForm : public QWidget {
    Q_OBJECT
  public:
    TrialForm(const Theme& theme, const Units& units, bool writable, QWidget* parent);

    void setPlan(std::shared_ptr<const TrialPlan> plan);
    void setStanding(const std::string& urgency, const std::string& zone);  // in the round, as it is now
    void setTrial(const Trial& trial);  // of a plan that was kept; empty machine: a new one
    Trial trial() const;                // with expectation and promise as they are shown

  signals:
    void keepWanted(const fettle::Trial& trial);
    void startWanted(const fettle::Trial& trial);
    void beforeChanged(fettle::Instant from);  // another span before: the ground is to be read anew

  private:
    QWidget* buildFields();
    void buildWhat();
    void buildMass();
    void buildPromise();
    QWidget* buildOutcome();
    void addField(const QString& label, QWidget* field, const char* name, const QString& help);
    void addWideField(const QString& label, QWidget* field, const char* name, const QString& help);
    QDoubleSpinBox* amount(double most, int digits, const QString& unit);
    void fillChoices();
    void fillCautions();
    void showFields();
    void showExpected();
    void showOutcome(const Trial& now);
    TrialChange change() const;
    TrialKind kind() const;
    TrialFollows follows() const;

    const Theme& theme_;
    Units units_;
    bool writable_, filling_ = true;  // nothing is shown while fields are made or filled
    QTimeZone zone_ = QTimeZone::utc();
    std::shared_ptr<const TrialPlan> plan_;
    Trial kept_;
    QFormLayout* fields_ = nullptr;
    QLineEdit *name_, *words_, *stopAt_, *responsible_, *permit_;
    QComboBox *kind_, *at_, *element_, *follows_, *channel_, *grade_;
    QDoubleSpinBox *mass_, *radius_, *rotor_, *angle_;
    QSpinBox *least_, *within_;
    QDateTimeEdit* before_;
    QLabel *figures_, *how_, *warnings_, *promise_, *lacks_, *standing_;
    QVBoxLayout* cautionLines_ = nullptr;
    std::vector<QCheckBox*> cautions_;
    QPushButton *keep_, *start_;
};

}  // namespace fettle
