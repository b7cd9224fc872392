#include "app/desktop/sheet.h"

#include <QObject>
#include <cstdio>

#include "core/base/text.h"
#include "core/fleet/round_report.h"
#include "core/fleet/sheet_set.h"
#include "core/store/day.h"
#include "core/store/file_probe.h"
#include "ui/sheet/report_layout.h"
#include "ui/sheet/sheet_file.h"
#include "ui/sheet/sheet_painter.h"

namespace fettle {

namespace {

PaperSize paperOf(const DesktopOptions& options) {
    return options.paper == "letter" ? PaperSize::Letter : PaperSize::A4;
}

int end(const Status& status) {
    if (status) return 0;
    std::fprintf(stderr, "fettle: %s\n", status.error().sentence().c_str());
    return 3;
}

Error overwriting(const std::string& path) {
    return {ErrorKind::Invalid, path, "", "is the fleet file or a part of it and is left as it is"};
}

Result<std::string> dayOfMaking(FleetFile& fleet, const DesktopOptions& options) {
    if (options.today.empty()) return todayOf(fleet, nowUtc());
    return checkDay(options.today, "", "--today").map([&] { return options.today; });
}

Units unitsOf(const DesktopOptions& options) {
    return {options.inches, false, false};
}

Status writeOne(FleetFile& fleet, const DesktopOptions& options) {
    RealFileSystem files;
    const auto today = dayOfMaking(fleet, options);
    if (!today) return fail(today.error());
    auto sheet = readSheet(fleet, {options.machine, std::size_t(options.finding), {}, *today});
    if (!sheet) return fail(sheet.error());
    sheet->units = unitsOf(options);
    return writeSheet(*sheet, options.sheet, paperOf(options), files);
}

bool isOneFile(const DesktopOptions& options) {
    return lowerAscii(options.sheet).ends_with(".pdf");
}

// Into one PDF where `book` is one, else each into its own file.
Status write(const SheetData& sheet, const DesktopOptions& options, PdfBook* book,
             std::set<std::string>& used) {
    if (book) {
        SheetPainter pages(sheet, paperOf(options));
        return book->add(pages);
    }
    RealFileSystem files;
    const std::string path = options.sheet + "/" + sheetFileName(sheet.content.tag, ".pdf", used);
    if (isPartOfFleet(path, options.fleet)) return fail(overwriting(path));
    return writeSheet(sheet, path, paperOf(options), files);
}

// One after another: what is done stays where a later one fails; one PDF is there whole or not at all.
Status writeAll(FleetFile& fleet, const DesktopOptions& options) {
    RealFileSystem files;
    const auto today = dayOfMaking(fleet, options);
    if (!today) return fail(today.error());
    const auto set = sheetSet(fleet);
    if (!set) return fail(set.error());
    std::unique_ptr<PdfBook> book;
    if (isOneFile(options))
        book = std::make_unique<PdfBook>(
            paperOf(options),
            PdfTitle{QObject::tr("Findings sheets, round to %1").arg(QString::fromStdString(set->list.until)),
                     plainText(set->list.engine)});
    else if (auto made = files.makeFolders(options.sheet); !made)
        return made;
    std::set<std::string> used;
    for (const std::string& tag : set->machines()) {
        auto content = sheetContent(fleet, set->list, set->round, {tag, 1, {}, *today});
        if (!content) return fail(content.error());
        SheetData sheet = withDetail(fleet, std::move(*content));
        sheet.units = unitsOf(options);
        if (auto written = write(sheet, options, book.get(), used); !written) return written;
    }
    if (!book) return {};
    if (book->pages() == 0)
        return fail(ErrorKind::NotFound, options.fleet, "round to " + set->list.until,
                    "has no machine to act on or plan for: there is no sheet to make");
    return files.writeSafely(options.sheet, book->finish().toStdString());
}

Status writeReport(FleetFile& fleet, const DesktopOptions& options) {
    const auto today = dayOfMaking(fleet, options);
    if (!today) return fail(today.error());
    const auto report = roundReport(fleet, {{}, *today});
    if (!report) return fail(report.error());
    PrintedPages pages(layOutReport(*report, paperOf(options), unitsOf(options)), paperOf(options));
    const auto pdf = pdfOf(pages, titleOf(*report));
    if (!pdf) return fail(pdf.error());
    return RealFileSystem().writeSafely(options.report, pdf->toStdString());
}

}  // namespace

int makeReport(const DesktopOptions& options) {
    if (isPartOfFleet(options.report, options.fleet)) {
        end(fail(overwriting(options.report)));
        return 2;
    }
    const auto fleet = FleetFile::open(options.fleet, OpenMode::ReadOnly);
    if (!fleet) return end(fail(fleet.error()));
    return end(writeReport(**fleet, options));
}

int makeSheet(const DesktopOptions& options) {
    if (isPartOfFleet(options.sheet, options.fleet)) {
        end(fail(overwriting(options.sheet)));
        return 2;
    }
    const auto fleet = FleetFile::open(options.fleet, OpenMode::ReadOnly);
    if (!fleet) return end(fail(fleet.error()));
    return end(options.allSheets ? writeAll(**fleet, options) : writeOne(**fleet, options));
}

}  // namespace fettle
