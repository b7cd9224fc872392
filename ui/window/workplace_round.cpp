// What is made of a round that is decided: its report, its sheets, its comparison with another one.
#include "ui/dialogs/compare_dialog.h"
#include "ui/dialogs/report_dialog.h"
#include "ui/dialogs/sheets_dialog.h"
#include "ui/model/words.h"
#include "ui/pages/round_page.h"
#include "ui/window/workplace.h"

namespace fettle {

void Workplace::showReport() {
    const RoundShown& round = round_->round();
    if (round.list.machines.empty()) return emit troubled(tr("There is no round to report on yet."));
    const auto id = round.entry ? std::optional(round.entry->id) : std::nullopt;
    auto* dialog = new ReportDialog(*work_, theme_, id, selection_->units(), this);
    connect(dialog, &ReportDialog::saved, this,
            [this](const QString& path) { emit said(tr("The report was saved as %1").arg(path)); });
    dialog->open();
}

void Workplace::compareRounds() {
    auto* dialog = new CompareDialog(*work_, theme_, round_->round(), this);
    connect(dialog, &CompareDialog::saved, this,
            [this](const QString& path) { emit said(tr("The comparison was saved as %1").arg(path)); });
    connect(dialog, &CompareDialog::machineWanted, this, [this](const QString& tag) {
        selection_->setMachine(tag);
        showPage(QStringLiteral("machine"));
    });
    dialog->open();
}

void Workplace::showSheets() {
    if (round_->round().list.machines.empty())
        return emit troubled(tr("There is no round to make sheets of yet."));
    auto* dialog = new SheetsDialog(*work_, theme_, round_->round(), selection_->units(), this);
    connect(dialog, &SheetsDialog::made, this, [this](int count, const QString& path) {
        emit said(tr("%1 saved at %2").arg(counted(count, tr("sheet"), tr("sheets")), path));
    });
    dialog->open();
}

}  // namespace fettle
