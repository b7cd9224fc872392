// Why: two kept rounds side by side, any two: which machines came on the list, left it, moved up or down or
// were lost from sight, why by what was measured, and what was decided in each. A table to read by keyboard,
// saved as CSV or PDF or printed. Opened with open(); deletes itself when closed. Thread: the window's.
// Errors: a sentence over the table.
#pragma once

#include <QDialog>
#include <memory>

#include "core/fleet/round_report.h"
#include "ui/model/round_shown.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"

class QComboBox;
class QLabel;
class QPushButton;
class QTableView;

namespace fettle {

class MoveModel;

class CompareDialog : public QDialog {
    Q_OBJECT
  public:
    // Begins with the round shown against the one before it.
    CompareDialog(FleetWork& work, const Theme& theme, const RoundShown& round, QWidget* parent);

    void savePdf(const QString& path);
    void saveCsv(const QString& path);
    const RoundComparison* comparison() const { return comparison_.get(); }

  signals:
    void machineWanted(const QString& tag);
    void saved(const QString& path);

  private:
    void build(const Theme& theme);
    void fillRounds(const RoundShown& round);
    void read();
    void take(Result<RoundComparison> comparison);
    void say(const QString& word);
    void save(const QString& path, std::string bytes);
    void print();
    void openCurrent();

    FleetWork& work_;
    const Theme& theme_;
    QString site_;
    std::shared_ptr<const RoundComparison> comparison_;
    MoveModel* model_;
    QComboBox *before_, *after_;
    QLabel *counts_, *trouble_;
    QTableView* table_;
    std::vector<QPushButton*> outlets_;
};

}  // namespace fettle
