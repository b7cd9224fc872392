#include "app/desktop/sheet.h"

#include <cstdio>

#include "core/fleet/sheet_set.h"
#include "core/store/day.h"
#include "core/store/file_probe.h"
#include "ui/sheet/sheet_file.h"

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

Status writeOne(FleetFile& fleet, const DesktopOptions& options) {
    RealFileSystem files;
    const auto today = dayOfMaking(fleet, options);
    if (!today) return fail(today.error());
    const auto sheet = readSheet(fleet, {options.machine, std::size_t(options.finding), {}, *today});
    if (!sheet) return fail(sheet.error());
    return writeSheet(*sheet, options.sheet, paperOf(options), files);
}

// One after another: what is done stays where a later one fails.
Status writeAll(FleetFile& fleet, const DesktopOptions& options) {
    RealFileSystem files;
    const auto today = dayOfMaking(fleet, options);
    if (!today) return fail(today.error());
    const auto set = sheetSet(fleet);
    if (!set) return fail(set.error());
    if (auto made = files.makeFolders(options.sheet); !made) return made;
    std::set<std::string> used;
    for (const std::string& tag : set->machines()) {
        auto content = sheetContent(fleet, set->list, set->round, {tag, 1, {}, *today});
        if (!content) return fail(content.error());
        const std::string path = options.sheet + "/" + sheetFileName(tag, ".pdf", used);
        if (isPartOfFleet(path, options.fleet)) return fail(overwriting(path));
        const SheetData sheet = withDetail(fleet, std::move(*content));
        if (auto written = writeSheet(sheet, path, paperOf(options), files); !written) return written;
    }
    return {};
}

}  // namespace

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
