// Why: the rules that raise alerts, listed and changed: what, how much, in how many recordings, for which
// machines, told how. Only fields of the chosen kind are shown, each with its unit; what breaks a rule of the
// trade is said while one types and cannot be saved. Thread: the window's.
#pragma once

#include <QWidget>
#include <vector>

#include "core/store/alert_store.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"

class QCheckBox;
class QComboBox;
class QFormLayout;
class QHBoxLayout;
class QLabel;
class QLineEdit;
class QPushButton;
class QSpinBox;
class QStandardItemModel;
class QTableView;

namespace fettle {

class GivenNumber;

class AlertRulesForm : public QWidget {
    Q_OBJECT
  public:
    AlertRulesForm(FleetWork& work, const Theme& theme, QWidget* parent);

    AlertRule rule() const;  // as typed
    void setRule(const AlertRule& rule);
    void save();

  private:
    void build(const Theme& theme);
    void buildFields();
    void read();
    void show(std::vector<AlertRule> rules);
    void chosen();
    void startNew();
    void kindChosen();
    void fieldChanged();
    void remove();

    FleetWork& work_;
    std::vector<AlertRule> rules_;
    QStandardItemModel* model_;
    QTableView* table_;
    QLabel* word_;
    QLineEdit *name_, *fault_, *machine_, *area_;
    QComboBox *kind_, *grade_, *criticality_, *deliver_;
    GivenNumber *least_, *hours_;
    QSpinBox *hits_, *of_;
    QCheckBox *second_, *enabled_;
    QPushButton *new_, *save_, *remove_;
    QFormLayout* form_ = nullptr;
    QHBoxLayout* recordings_ = nullptr;
};

}  // namespace fettle
