#include "ui/dialogs/sheets_run.h"

#include "core/fleet/sheet_set.h"
#include "core/store/day.h"
#include "ui/dialogs/save_file.h"
#include "ui/model/words.h"
#include "ui/sheet/sheet_file.h"

namespace fettle {

namespace {

Result<SheetData> readOne(FleetFile& fleet, const SheetsOrder& order, const std::string& machine) {
    const auto today = todayOf(fleet, nowUtc());
    if (!today) return fail(today.error());
    auto content = sheetContent(fleet, *order.list, order.round, {machine, 1, {}, *today});
    if (!content) return fail(content.error());
    SheetData sheet = withDetail(fleet, std::move(*content));
    sheet.units = order.units;
    return sheet;
}

}  // namespace

void SheetsRun::start(SheetsOrder order) {
    if (running_ || order.machines.isEmpty()) return;
    order_ = std::move(order);
    used_.clear();
    csv_ = sheetCsvHeader();
    troubles_.clear();
    at_ = made_ = 0;
    stopped_ = false;
    running_ = true;
    if (!order_.folder)
        book_ = std::make_unique<PdfBook>(
            order_.paper, PdfTitle{tr("Findings sheets, round to %1").arg(dateText(order_.list->until)),
                                   shown(order_.list->engine)});
    else if (auto made = RealFileSystem().makeFolders(kept(order_.path)); !made)
        return end(sentence(made.error()));
    next();
}

void SheetsRun::stop() {
    stopped_ = true;
}

void SheetsRun::next() {
    emit progressed(at_, int(order_.machines.size()));
    if (stopped_) return end(tr("Stopped on request."));
    if (at_ >= order_.machines.size()) return close();
    const QString machine = order_.machines[at_];
    work_.ask<SheetData>(
        this, QStringLiteral("sheets"),
        [order = order_, tag = kept(machine)](FleetFile& fleet, const CancelToken&) {
            return readOne(fleet, order, tag);
        },
        [this, machine](Result<SheetData> sheet) { take(machine, std::move(sheet)); });
}

void SheetsRun::take(const QString& machine, Result<SheetData> sheet) {
    ++at_;
    if (sheet) return put(*sheet);
    troubles_ << tr("%1: %2").arg(machine, sentence(sheet.error()));
    next();
}

void SheetsRun::put(const SheetData& sheet) {
    csv_ += sheetCsvRow(sheet.content);
    if (book_) {
        SheetPainter pages(sheet, order_.paper);
        if (auto added = book_->add(pages); !added) return end(sentence(added.error()));
        ++made_;
        return next();
    }
    auto pdf = sheetPdf(sheet, order_.paper);
    if (!pdf) return end(sentence(pdf.error()));
    const QString path = order_.path + u'/' + shown(sheetFileName(sheet.content.tag, ".pdf", used_));
    saveFile(work_, this, path, pdf->toStdString(), [this](const QString& trouble) {
        if (!trouble.isEmpty()) return end(trouble);
        ++made_;
        next();
    });
}

void SheetsRun::close() {
    const auto saveCsv = [this] {
        if (!order_.csv) return end({});
        const QString path = order_.folder ? order_.path + QStringLiteral("/sheets.csv")
                                           : order_.path + QStringLiteral(".csv");
        saveFile(work_, this, path, csv_, [this](const QString& trouble) { end(trouble); });
    };
    if (!book_ || book_->pages() == 0) return saveCsv();
    saveFile(work_, this, order_.path, book_->finish().toStdString(),
             [this, saveCsv](const QString& trouble) { trouble.isEmpty() ? saveCsv() : end(trouble); });
}

void SheetsRun::end(const QString& trouble) {
    running_ = false;
    book_.reset();
    if (!trouble.isEmpty()) troubles_ << trouble;
    const bool lost = !order_.folder && !trouble.isEmpty();
    emit finished(lost ? 0 : made_, troubles_.join(u'\n'));
}

}  // namespace fettle
