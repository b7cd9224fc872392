// Dialogs of the workshop: trials, balancing, the resonance map.
#include "ui/dialogs/balance_dialog.h"
#include "ui/dialogs/resonance_dialog.h"
#include "ui/dialogs/trial_dialog.h"
#include "ui/dialogs/trial_form.h"
#include "ui/pages/round_page.h"
#include "ui/window/workplace.h"

namespace fettle {

void Workplace::showTrials(const QString& machine) {
    if (machine.isEmpty()) return emit troubled(tr("Choose a machine first: a trial belongs to one."));
    auto* dialog = new TrialDialog(*work_, theme_, machine, selection_->units(), this);
    connect(dialog, &TrialDialog::said, this, &Workplace::said);
    whenRead([this, machine, dialog = QPointer<TrialDialog>(dialog)] {
        for (const RoundMachine& one : machinesOfRound({machine}))
            if (dialog) dialog->form().setStanding(one.urgency, one.zone);
    });
    dialog->open();
}

void Workplace::showBalance(const QString& machine) {
    if (machine.isEmpty()) return emit troubled(tr("Choose a machine first: a balancing belongs to one."));
    auto* dialog = new BalanceDialog(*work_, theme_, machine, selection_->units(), this);
    connect(dialog, &BalanceDialog::said, this, &Workplace::said);
    dialog->open();
}

void Workplace::showResonance(const QString& machine) {
    if (machine.isEmpty())
        return emit troubled(tr("Choose a machine first: a resonance map belongs to one."));
    (new ResonanceDialog(*work_, theme_, machine, selection_->units(), this))->open();
}

}  // namespace fettle
