#include "ui/dialogs/sheet_dialog.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <algorithm>

#include "core/fleet/sheet_set.h"
#include "core/store/day.h"
#include "ui/dialogs/page_preview.h"
#include "ui/dialogs/save_file.h"
#include "ui/model/engine_words.h"
#include "ui/model/words.h"
#include "ui/sheet/sheet_file.h"
#include "ui/sheet/sheet_print.h"

namespace fettle {

namespace {

// "2. misalignment, driver: plan"; its own from what it says of itself.
QString findingText(const SheetContent& sheet, std::size_t number) {
    const QString mark = QString::number(number) + QStringLiteral(". ");
    if (number == sheet.number)
        return mark + engineText(sheet.faultName) +
               (sheet.atWords.empty() ? QString() : QStringLiteral(", ") + shown(sheet.atWords)) +
               QStringLiteral(": ") + urgencyWord(sheet.urgency);
    for (const std::string& other : sheet.otherFindings)
        if (shown(other).startsWith(mark)) return shown(other);
    return mark.trimmed();
}

}  // namespace

SheetDialog::SheetDialog(FleetWork& work, const Theme& theme, const QString& machine, QWidget* parent,
                         const Units& units)
    : QDialog(parent), work_(work), machine_(machine), units_(units) {
    setObjectName(QStringLiteral("sheetDialog"));
    setWindowTitle(tr("Findings sheet of %1").arg(machine));
    setAttribute(Qt::WA_DeleteOnClose);
    build(theme);
    read(0);
}

void SheetDialog::build(const Theme& theme) {
    preview_ = new PagePreview(theme, usualPaper(units_.inches), this);
    findings_ = new QComboBox(preview_);
    findings_->setObjectName(QStringLiteral("finding"));
    findings_->setAccessibleName(tr("Finding"));
    findings_->setToolTip(tr("Which finding of the machine the sheet is for"));
    findings_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    preview_->head()->insertWidget(0, findings_, 1);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    save_ = buttons->addButton(tr("&Save as PDF…"), QDialogButtonBox::ActionRole);
    save_->setObjectName(QStringLiteral("save"));
    save_->setShortcut(QKeySequence::Save);
    print_ = buttons->addButton(tr("&Print…"), QDialogButtonBox::ActionRole);
    print_->setObjectName(QStringLiteral("print"));
    print_->setShortcut(QKeySequence::Print);
    connect(findings_, &QComboBox::activated, this, [this](int index) { read(std::size_t(index) + 1); });
    connect(preview_, &PagePreview::paperChanged, this, &SheetDialog::layOut);
    connect(save_, &QPushButton::clicked, this, &SheetDialog::askWhere);
    connect(print_, &QPushButton::clicked, this, &SheetDialog::print);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* all = new QVBoxLayout(this);
    all->addWidget(preview_, 1);
    all->addWidget(buttons);
    const int em = fontMetrics().height();
    resize(52 * em, 48 * em);
    say({});
    preview_->wait(tr("The sheet is made…"));
}

double SheetDialog::zoom() const {
    return preview_->zoom();
}

void SheetDialog::setZoom(double zoom) {
    preview_->setZoom(zoom);
}

void SheetDialog::read(std::size_t finding) {
    work_.ask<SheetData>(
        this, QStringLiteral("sheet"),
        [tag = kept(machine_), finding, units = units_](FleetFile& fleet,
                                                        const CancelToken&) -> Result<SheetData> {
            const auto today = todayOf(fleet, nowUtc());
            if (!today) return fail(today.error());
            auto sheet = readSheet(fleet, {tag, finding, {}, *today});
            if (sheet) sheet->units = units;
            return sheet;
        },
        [this](Result<SheetData> sheet) { take(std::move(sheet)); });
}

void SheetDialog::take(Result<SheetData> sheet) {
    if (!sheet) return say(sentence(sheet.error()));
    sheet_ = std::make_shared<const SheetData>(std::move(*sheet));
    fillFindings();
    say(QString());
    layOut();
}

void SheetDialog::fillFindings() {
    const QSignalBlocker quiet(findings_);
    findings_->clear();
    for (std::size_t i = 1; i <= std::max<std::size_t>(sheet_->content.ofFindings, 1); ++i)
        findings_->addItem(findingText(sheet_->content, i));
    findings_->setCurrentIndex(int(sheet_->content.number) - 1);
    findings_->setEnabled(findings_->count() > 1);
}

void SheetDialog::say(const QString& trouble) {
    preview_->say(trouble);
    save_->setEnabled(sheet_ != nullptr);
    print_->setEnabled(sheet_ != nullptr);
}

void SheetDialog::layOut() {
    if (sheet_) preview_->show(std::make_shared<SheetPainter>(*sheet_, preview_->paper()));
}

void SheetDialog::askWhere() {
    askWhereToSave(
        this, {tr("Save the findings sheet"), tr("PDF (*.pdf)"), QStringLiteral("pdf"), sheet_->content.tag},
        [this](const QString& path) { savePdf(path); });
}

void SheetDialog::savePdf(const QString& path) {
    if (!sheet_) return;
    auto pdf = sheetPdf(*sheet_, preview_->paper());
    if (!pdf) return say(sentence(pdf.error()));
    saveFile(work_, this, path, pdf->toStdString(), [this, path](const QString& trouble) {
        say(trouble);
        if (trouble.isEmpty()) emit saved(path);
    });
}

void SheetDialog::print() {
    askAndPrint(this, plainText(sheet_->content.tag), pagesOf(sheet_), preview_->paper(),
                [this](Status printed) { say(printed ? QString() : sentence(printed.error())); });
}

}  // namespace fettle
