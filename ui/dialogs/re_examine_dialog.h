// Why: after the engine or a description changed, what is kept raw is weighed again, and old verdicts stand
// beside new ones: which appear, vanish, change urgency or weight, worst first, by verdict, family or
// machine. Weighing runs on a connection of its own, says how far it is and stops when asked; it is carried
// on by starting again. Opened with open(); deletes itself when closed, and closing stops the weighing.
// Thread: the window's. Errors: a sentence in the dialog.
#pragma once

#include <QDialog>
#include <memory>

#include "core/intake/re_examination_report.h"
#include "core/intake/re_examine.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"
#include "ui/work/long_work.h"

class QCheckBox;
class QComboBox;
class QDoubleSpinBox;
class QLabel;
class QProgressBar;
class QPushButton;
class QTableWidget;

namespace fettle {

class ReExamineDialog : public QDialog {
    Q_OBJECT
  public:
    // `machine`: the one chosen in the window; empty: none, then all alone can be weighed.
    ReExamineDialog(FleetWork& work, const Theme& theme, const QString& machine, QWidget* parent);

    bool running() const { return long_->running(); }
    const ReExaminationDifference* difference() const { return difference_.get(); }

  private:
    void build(const Theme& theme);
    class QLayout* buildControls();
    void start();
    void showProgress(qulonglong done, qulonglong total, const QString& what);
    void ended(const Result<ReExamineReport>& report);
    void read();
    void show(Result<ReExaminationDifference> difference);
    void fill();
    void fillVerdicts();
    void fillGroups(const std::vector<ChangedGroup>& groups, bool families);
    void setState(bool running);

    FleetWork& work_;
    QString machine_;
    std::shared_ptr<const ReExaminationDifference> difference_;
    QLabel *word_, *run_;
    QComboBox *scope_, *by_;
    QCheckBox* all_;
    QDoubleSpinBox* least_;
    QPushButton *start_, *stop_;
    QProgressBar* bar_;
    QTableWidget* table_;
    std::unique_ptr<LongWork> long_;  // last: stops before what it reports to is gone
};

}  // namespace fettle
