// Why: the planner's report closes the loop: what was found when a finding was opened, typed in from the
// return half of its sheet. The finding is chosen, never typed, so that the report counts for it. Thread: the
// window's.
#pragma once

#include <vector>

#include "core/fleet/planner_return.h"
#include "ui/dialogs/answer_dialog.h"
#include "ui/work/fleet_work.h"

class QComboBox;
class QDateEdit;
class QDoubleSpinBox;
class QLineEdit;
class QPlainTextEdit;

namespace fettle {

class PhotoStrip;

class ReturnDialog : public AnswerDialog {
    Q_OBJECT
  public:
    // `findings`: of the job or the machine, at least one; `job` 0: without one.
    ReturnDialog(FleetWork& work, const Theme& theme, const QString& machine, std::int64_t job,
                 const std::vector<JobFinding>& findings, QWidget* parent);
    // What was typed before and refused.
    void setReturn(const PlannerReturn& half, std::vector<NewPhoto> photos);

  signals:
    void given(const fettle::PlannerReturn& half, const std::vector<fettle::NewPhoto>& photos);

  private:
    void addCodes();
    void addRest(FleetWork& work, const Theme& theme);
    void check();
    PlannerReturn half() const;
    JobFinding finding() const;

    QString machine_;
    std::int64_t job_;
    std::vector<JobFinding> findings_;
    QComboBox *finding_, *outcome_, *showedAs_, *cameFrom_, *damage_, *part_;
    QDoubleSpinBox* hours_;
    QLineEdit *partTag_, *before_, *after_;
    QPlainTextEdit* text_;
    QDateEdit* on_;
    PhotoStrip* photos_;
};

}  // namespace fettle
