#include "ui/dialogs/report_dialog.h"

#include <QDialogButtonBox>
#include <QPushButton>
#include <QVBoxLayout>

#include "core/fleet/sheet_set.h"
#include "core/store/day.h"
#include "ui/dialogs/page_preview.h"
#include "ui/dialogs/save_file.h"
#include "ui/model/words.h"
#include "ui/sheet/report_layout.h"
#include "ui/sheet/sheet_print.h"

namespace fettle {

namespace {

std::unique_ptr<PrintedPages> pagesOf(const RoundReport& report, PaperSize size, const Units& units) {
    return std::make_unique<PrintedPages>(layOutReport(report, size, units), size);
}

}  // namespace

ReportDialog::ReportDialog(FleetWork& work, const Theme& theme, std::optional<std::int64_t> round,
                           const Units& units, QWidget* parent)
    : QDialog(parent), work_(work), units_(units) {
    setObjectName(QStringLiteral("reportDialog"));
    setWindowTitle(tr("Round report"));
    setAttribute(Qt::WA_DeleteOnClose);
    build(theme);
    read(round);
}

void ReportDialog::build(const Theme& theme) {
    preview_ = new PagePreview(theme, usualPaper(units_.inches), this);
    connect(preview_, &PagePreview::paperChanged, this, [this] {
        if (report_) layOut();
    });
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    const auto add = [&](const QString& text, const char* name, const QString& hint) {
        QPushButton* made = buttons->addButton(text, QDialogButtonBox::ActionRole);
        made->setObjectName(QString::fromLatin1(name));
        made->setToolTip(hint);
        outlets_.push_back(made);
        return made;
    };
    QPushButton* pdf = add(tr("&Save as PDF…"), "save", tr("Vector pages, to read or to print"));
    QPushButton* paper = add(tr("&Print…"), "print", tr("On one of the system's printers"));
    QPushButton* csv = add(tr("&CSV…"), "csv", tr("The work in its order, a row for each machine"));
    QPushButton* json = add(tr("&JSON…"), "json", tr("All that stands in the report, for other programs"));
    pdf->setShortcut(QKeySequence::Save);
    paper->setShortcut(QKeySequence::Print);
    connect(pdf, &QPushButton::clicked, this, [this] {
        askWhereToSave(this,
                       {tr("Save the round report"), tr("PDF (*.pdf)"), QStringLiteral("pdf"),
                        "round-" + report_->until},
                       [this](const QString& path) { savePdf(path); });
    });
    connect(paper, &QPushButton::clicked, this, &ReportDialog::print);
    connect(csv, &QPushButton::clicked, this, [this] {
        askAndSave(tr("CSV (*.csv)"), QStringLiteral("csv"), [this] { return reportCsv(*report_); });
    });
    connect(json, &QPushButton::clicked, this, [this] {
        askAndSave(tr("JSON (*.json)"), QStringLiteral("json"), [this] {
            return toJson(*report_).dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
        });
    });
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* all = new QVBoxLayout(this);
    all->addWidget(preview_, 1);
    all->addWidget(buttons);
    const int em = fontMetrics().height();
    resize(52 * em, 48 * em);
    say({});
    preview_->wait(tr("The report is made: a sheet is drawn up for each machine with work…"));
}

void ReportDialog::read(std::optional<std::int64_t> round) {
    work_.ask<RoundReport>(
        this, QStringLiteral("report"),
        [round](FleetFile& fleet, const CancelToken& cancel) -> Result<RoundReport> {
            const auto today = todayOf(fleet, nowUtc());
            if (!today) return fail(today.error());
            return roundReport(fleet, {round, *today}, {}, cancel);
        },
        [this](Result<RoundReport> report) { take(std::move(report)); });
}

void ReportDialog::take(Result<RoundReport> report) {
    if (!report) return say(sentence(report.error()));
    report_ = std::make_shared<const RoundReport>(std::move(*report));
    say({});
    layOut();
}

void ReportDialog::say(const QString& word) {
    preview_->say(word);
    for (QPushButton* outlet : outlets_)
        outlet->setEnabled(report_ != nullptr);
}

void ReportDialog::layOut() {
    preview_->show(pagesOf(*report_, preview_->paper(), units_));
}

void ReportDialog::save(const QString& path, std::string bytes) {
    saveFile(work_, this, path, std::move(bytes), [this, path](const QString& trouble) {
        say(trouble);
        if (trouble.isEmpty()) emit saved(path);
    });
}

void ReportDialog::savePdf(const QString& path) {
    if (!report_) return;
    const auto pages = pagesOf(*report_, preview_->paper(), units_);
    auto pdf = pdfOf(*pages, titleOf(*report_));
    if (!pdf) return say(sentence(pdf.error()));
    save(path, pdf->toStdString());
}

void ReportDialog::askAndSave(const QString& filter, const QString& suffix,
                              std::function<std::string()> bytes) {
    askWhereToSave(this, {tr("Save the round report"), filter, suffix, "round-" + report_->until},
                   [this, bytes = std::move(bytes)](const QString& path) { save(path, bytes()); });
}

void ReportDialog::print() {
    const auto pages = [report = report_, units = units_](PaperSize size) {
        return pagesOf(*report, size, units);
    };
    askAndPrint(this, titleOf(*report_).title, pages, preview_->paper(),
                [this](Status printed) { say(printed ? QString() : sentence(printed.error())); });
}

}  // namespace fettle
