// Why: the rules by which files are read are listed, with what each says, and can be taken away. Thread: the
// window's.
#pragma once

#include <QDialog>
#include <vector>

#include "core/store/reading_rule_store.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"

class QLabel;
class QPushButton;
class QStandardItemModel;
class QTableView;

namespace fettle {

class RulesDialog : public QDialog {
    Q_OBJECT
  public:
    RulesDialog(FleetWork& work, const Theme& theme, QWidget* parent);

  signals:
    void changed();  // one was removed

  private:
    void read();
    void show(std::vector<ReadingRuleEntry> rules);
    void removeCurrent();

    FleetWork& work_;
    std::vector<ReadingRuleEntry> rules_;
    QLabel* word_;
    QTableView* table_;
    QStandardItemModel* model_;
    QPushButton* remove_;
};

}  // namespace fettle
