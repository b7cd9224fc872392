// Why: what is old is thinned by rules that stand in the fleet file. Here they are set, and what they would
// take is listed, with why the rest stays, before anything goes: thinning works only on what was just listed.
// Listing and thinning run on a connection of their own, say how far they are and can be stopped; what was
// done by then stays done. Closing stops too. Sizes as packed in the file. Thread: the window's.
#pragma once

#include <QDialog>
#include <array>
#include <memory>

#include "core/fleet/retention.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"
#include "ui/work/long_work.h"

class QGridLayout;
class QLabel;
class QProgressBar;
class QPushButton;
class QSpinBox;
class QStandardItemModel;
class QTableView;

namespace fettle {

class RetentionDialog : public QDialog {
    Q_OBJECT
  public:
    RetentionDialog(FleetWork& work, const Theme& theme, QWidget* parent);

    bool running() const { return long_->running(); }

  private:
    struct RuleBoxes {
        QSpinBox *all = nullptr, *daily = nullptr, *weekly = nullptr;
    };
    void build(const Theme& theme);
    void addRule(QGridLayout& grid, int row, KeptKind kind);
    QSpinBox* daysBox(const QString& name, const QString& accessible, int least);
    RetentionRules typed() const;
    void show(const RetentionRules& rules);
    void changed();
    void letRulesBeTyped(bool known);
    void look(bool asKept);
    void showPlan(const Result<RetentionPlan>& plan);
    void addRow(const QString& what, const QString& why, const Amount& amount);
    void askThin();
    void thin();
    void showDone(const Result<RetentionDone>& done);
    void compact();
    void begin(const QString& word);
    void end();

    FleetWork& work_;
    std::array<RuleBoxes, kKeptKinds> boxes_;
    QLabel *word_, *year_, *space_;
    QProgressBar* bar_;
    QPushButton *look_, *thin_, *compact_, *stop_;
    QTableView* table_;
    QStandardItemModel* model_;
    bool known_ = false;   // what stands there is the file's rules, or what was typed for them
    bool listed_ = false;  // what is typed
    std::size_t goes_ = 0;
    std::unique_ptr<LongWork> long_;  // last: stops before what it reports to is gone
};

}  // namespace fettle
