// Why: jobs of a machine or of the fleet in one list, overdue first: what each is for, where it stands, what
// became of it step by step, and once it is done whether it cured the machine. From here a job is drafted,
// moved on, revised, reported on and its sheet printed. Reads and writes by FleetWork. Opened with open();
// deletes itself when closed. Thread: the window's. Errors: a sentence over the list.
#pragma once

#include <QDialog>

#include "core/fleet/planner_return.h"
#include "ui/model/job_model.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QPushButton;
class QTableView;
class QTextBrowser;

namespace fettle {

class JobDraftDialog;

class JobsDialog : public QDialog {
    Q_OBJECT
  public:
    // `machine`: whose jobs are shown, and the one a new job is for; empty: the fleet's.
    JobsDialog(FleetWork& work, const Theme& theme, const QString& machine, bool fleet, QWidget* parent);

  signals:
    void sheetWanted(const QString& machine);
    void compareWanted(const QString& machine);
    void said(const QString& sentence);

  private:
    void build();
    QWidget* buildHead();
    QWidget* buildFoot();
    void layOutTable();
    void read();
    void fill();
    void showDetail();
    void tell(const JobDetail& detail);
    void enable();
    void askDraft();
    JobDraftDialog* openDraft(const JobDraft& draft);
    void askMove(bool revision);
    void askReturn();
    void openReturn(const PlannerReturn* refused, std::vector<NewPhoto> photos);
    // `refused`: what to do where it could not be kept.
    void keep(std::function<Result<Job>(FleetFile&)> change, std::function<void()> refused = {});
    void keepReport(const PlannerReturn& half, const std::vector<NewPhoto>& photos);
    void say(const QString& trouble);
    const JobRow* current() const;
    QString machineHere() const;

    FleetWork& work_;
    const Theme& theme_;
    QString machine_;
    std::vector<JobRow> rows_;
    JobModel jobs_;
    std::int64_t wanted_ = 0;  // the job to stand on after reading
    QComboBox* which_;
    QCheckBox* onlyHere_;
    QLabel *count_, *trouble_;
    QTableView* table_;
    QTextBrowser* detail_;
    QPushButton *new_, *move_, *revise_, *report_, *compare_, *sheet_;
};

}  // namespace fettle
