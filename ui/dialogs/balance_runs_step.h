// Why: the runs in the order they are made, each to be typed or taken from a recording that holds a
// once-per-turn channel; the check run comes when the correction is fitted. Boxes are made anew only where
// the method asks for other runs, so that typing is never disturbed. Thread: the window's.
#pragma once

#include <QScrollArea>
#include <vector>

#include "core/fleet/balance_desk.h"
#include "ui/dialogs/balance_model.h"
#include "ui/model/units.h"
#include "ui/theme/theme.h"
#include "ui/work/fleet_work.h"

class QPushButton;
class QVBoxLayout;

namespace fettle {

class BalanceRunBox;

class BalanceRunsStep : public QScrollArea {
    Q_OBJECT
  public:
    BalanceRunsStep(BalanceModel& model, FleetWork& work, const Theme& theme, QWidget* parent);
    void setDesk(const BalanceDesk& desk) { desk_ = desk; }

  signals:
    void troubled(const QString& sentence);

  private:
    QString shape() const;
    void build();
    void showValues();
    void askRecording(int number);

    BalanceModel& model_;
    FleetWork& work_;
    const Theme& theme_;
    BalanceDesk desk_;
    QWidget* page_ = nullptr;
    QString shape_;
    std::vector<BalanceRunBox*> boxes_;
    QPushButton* check_ = nullptr;
};

}  // namespace fettle
