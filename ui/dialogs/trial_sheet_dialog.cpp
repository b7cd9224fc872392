#include "ui/dialogs/trial_sheet_dialog.h"

#include <QDialogButtonBox>
#include <QPushButton>
#include <QVBoxLayout>

#include "core/fleet/sheet_set.h"
#include "core/store/day.h"
#include "ui/dialogs/page_preview.h"
#include "ui/dialogs/save_file.h"
#include "ui/model/words.h"
#include "ui/sheet/sheet_print.h"

namespace fettle {

TrialSheetDialog::TrialSheetDialog(FleetWork& work, const Theme& theme, std::int64_t trial,
                                   const Units& units, QWidget* parent)
    : QDialog(parent), work_(work), units_(units) {
    setObjectName(QStringLiteral("trialSheetDialog"));
    setWindowTitle(tr("Trial sheet"));
    setAttribute(Qt::WA_DeleteOnClose);
    preview_ = new PagePreview(theme, usualPaper(units.inches), this);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    save_ = buttons->addButton(tr("&Save as PDF…"), QDialogButtonBox::ActionRole);
    save_->setObjectName(QStringLiteral("save"));
    save_->setShortcut(QKeySequence::Save);
    print_ = buttons->addButton(tr("&Print…"), QDialogButtonBox::ActionRole);
    print_->setObjectName(QStringLiteral("print"));
    print_->setShortcut(QKeySequence::Print);
    connect(preview_, &PagePreview::paperChanged, this, &TrialSheetDialog::layOut);
    connect(save_, &QPushButton::clicked, this, &TrialSheetDialog::askWhere);
    connect(print_, &QPushButton::clicked, this, &TrialSheetDialog::print);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* all = new QVBoxLayout(this);
    all->addWidget(preview_, 1);
    all->addWidget(buttons);
    resize(52 * fontMetrics().height(), 48 * fontMetrics().height());
    say(tr("The sheet is made…"));
    work_.ask<TrialSheet>(
        this, QStringLiteral("trial sheet"),
        [trial](FleetFile& fleet, const CancelToken&) -> Result<TrialSheet> {
            const auto today = todayOf(fleet, nowUtc());
            if (!today) return fail(today.error());
            return readTrialSheet(fleet, trial, *today);
        },
        [this](Result<TrialSheet> sheet) { take(std::move(sheet)); });
}

void TrialSheetDialog::take(Result<TrialSheet> sheet) {
    if (!sheet) return say(sentence(sheet.error()));
    sheet->units = units_;
    sheet_ = std::make_shared<const TrialSheet>(std::move(*sheet));
    setWindowTitle(tr("Trial sheet of %1").arg(shown(sheet_->entry.trial.machine)));
    say(QString());
    layOut();
}

void TrialSheetDialog::say(const QString& trouble) {
    preview_->say(trouble);
    save_->setEnabled(sheet_ != nullptr);
    print_->setEnabled(sheet_ != nullptr);
}

void TrialSheetDialog::layOut() {
    if (sheet_) preview_->show(trialPages(sheet_, preview_->paper()));
}

void TrialSheetDialog::askWhere() {
    askWhereToSave(this,
                   {tr("Save the trial sheet"), tr("PDF (*.pdf)"), QStringLiteral("pdf"),
                    sheet_->entry.trial.machine + " trial"},
                   [this](const QString& path) { savePdf(path); });
}

void TrialSheetDialog::savePdf(const QString& path) {
    if (!sheet_) return;
    const auto pages = trialPages(sheet_, preview_->paper());
    auto pdf = pdfOf(*pages, titleOf(*sheet_));
    if (!pdf) return say(sentence(pdf.error()));
    saveFile(work_, this, path, pdf->toStdString(), [this, path](const QString& trouble) {
        say(trouble);
        if (trouble.isEmpty()) emit saved(path);
    });
}

void TrialSheetDialog::print() {
    askAndPrint(
        this, plainText(sheet_->entry.trial.machine),
        [sheet = sheet_](PaperSize size) { return trialPages(sheet, size); }, preview_->paper(),
        [this](Status printed) { say(printed ? QString() : sentence(printed.error())); });
}

}  // namespace fettle
