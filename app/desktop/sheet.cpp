#include "app/desktop/sheet.h"

#include <cstdio>

#include "ui/sheet/sheet_file.h"

namespace fettle {

namespace {

Status make(const DesktopOptions& options) {
    const auto fleet = FleetFile::open(options.fleet, OpenMode::ReadOnly);
    if (!fleet) return fail(fleet.error());
    const auto sheet = readSheet(**fleet, {options.machine, std::size_t(options.finding), {}});
    if (!sheet) return fail(sheet.error());
    RealFileSystem files;
    return writeSheet(*sheet, options.sheet, PaperSize::A4, files);
}

}  // namespace

int makeSheet(const DesktopOptions& options) {
    const Status made = make(options);
    if (made) return 0;
    std::fprintf(stderr, "fettle: %s\n", made.error().sentence().c_str());
    return 3;
}

}  // namespace fettle
