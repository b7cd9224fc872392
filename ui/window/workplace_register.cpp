// The workplace's part for the register and for what comes in: the dialogs that are asked for there.
#include "ui/dialogs/alike_dialog.h"
#include "ui/dialogs/bearing_finder_dialog.h"
#include "ui/dialogs/preview_dialog.h"
#include "ui/dialogs/refusals_dialog.h"
#include "ui/dialogs/retention_dialog.h"
#include "ui/dialogs/rules_dialog.h"
#include "ui/model/words.h"
#include "ui/pages/register_page.h"
#include "ui/window/workplace.h"

namespace fettle {

void Workplace::connectRegister() {
    connect(register_, &RegisterPage::bearingWanted, this, &Workplace::findBearing);
    connect(register_, &RegisterPage::alikeWanted, this, &Workplace::setAlike);
    connect(import_, &ImportDialog::lookWanted, this, &Workplace::lookAtFiles);
}

// What is found goes into the register's form, whichever page asked.
void Workplace::findBearing() {
    const auto& machine = register_->document().machine();
    const double rpm = machine ? machine->nominalRpm().value_or(0) : 0;
    auto* dialog = new BearingFinderDialog(theme_, selection_->units(), rpm, this);
    if (!register_->takesBearings())
        dialog->refusePut(
            tr("No form is open in the register: open a machine there to put a bearing into it."));
    connect(dialog, &BearingFinderDialog::bearingWanted, this,
            [this](const KnownBearing& bearing, bool withBuild) {
                showPage(QStringLiteral("register"));
                register_->putBearing(bearing, withBuild);
            });
    dialog->open();
}

void Workplace::setAlike() {
    if (register_->machines().empty()) {  // asked for before the register was read
        connect(
            register_, &RegisterPage::machinesRead, this,
            [this] {
                if (!register_->machines().empty()) setAlike();
            },
            Qt::SingleShotConnection);
        return;
    }
    auto* dialog = new AlikeDialog(register_->machines(), this);
    connect(dialog, &AlikeDialog::wanted, register_, &RegisterPage::setAlike);
    dialog->open();
}

void Workplace::lookAtFiles(const QStringList& paths, bool subfolders) {
    auto* dialog = new PreviewDialog(*work_, theme_, paths, subfolders, this);
    connect(dialog, &PreviewDialog::takeWanted, this,
            [this](const QStringList& wanted, bool) { importPaths(wanted); });
    dialog->open();
}

void Workplace::showRefusals() {
    auto* dialog = new RefusalsDialog(*work_, theme_, this);
    connect(dialog, &RefusalsDialog::lookWanted, this, [this, dialog](const QStringList& paths) {
        dialog->close();
        lookAtFiles(paths, false);
    });
    dialog->open();
}

// Of every file that still waits for an answer.
void Workplace::lookAtRefused() {
    work_->ask<std::vector<Refusal>>(
        this, QStringLiteral("refused"),
        [](FleetFile& fleet, const CancelToken&) { return fleet.log().refusals(); },
        [this](Result<std::vector<Refusal>> refusals) {
            if (!refusals) return emit troubled(sentence(refusals.error()));
            QStringList paths;
            for (const Refusal& refusal : *refusals)
                paths << QString::fromStdString(refusal.path);
            lookAtFiles(paths, false);
        });
}

void Workplace::showRetention() {
    (new RetentionDialog(*work_, theme_, this))->open();
}

void Workplace::showRules() {
    (new RulesDialog(*work_, theme_, this))->open();
}

}  // namespace fettle
