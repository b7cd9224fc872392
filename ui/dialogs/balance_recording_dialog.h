// Why: with a once-per-turn channel in the recording nobody types phases: which recording, which of its
// channels is the mark, which channel each sensor of the balancing is. The readings are taken on a worker;
// several stretches of the recording stand as repeat readings, so that the same limits of scatter hold.
// Thread: the window's. Errors: said in the dialog, which stays.
#pragma once

#include "core/fleet/balance_desk.h"
#include "ui/dialogs/answer_dialog.h"
#include "ui/work/fleet_work.h"

class QComboBox;

namespace fettle {

class BalanceRecordingDialog : public AnswerDialog {
    Q_OBJECT
  public:
    BalanceRecordingDialog(FleetWork& work, const Theme& theme, const BalanceDesk& desk,
                           const BalanceJob& job, QWidget* parent);
    void accept() override;  // reads; closes when that succeeded

  signals:
    void given(const fettle::BalanceRun& run);

  private:
    void fillChannels();
    BalanceRun runFrom(const std::vector<RecordedReading>& readings) const;

    FleetWork& work_;
    BalanceDesk desk_;
    BalanceJob job_;
    QComboBox *recording_, *mark_;
    std::vector<QComboBox*> sensors_;
};

}  // namespace fettle
