// Why: the desktop's command line as plain data, read before anything of Qt is there, because scale and
// platform have to be known first. `fettle [FLEET] [--page ...] ...`; ends by itself for --help, --version
// and wrong usage (exit 2).
#pragma once

#include <optional>
#include <string>

#include "core/base/time.h"

namespace fettle {

struct DesktopOptions {
    std::string fleet;
    std::string page, machine, at, fault, dialog, theme = "system";
    std::string language;  // "de"; empty: as kept, else the system's; of pictures and sheets English
    std::optional<Instant> time;
    std::optional<double> scale;
    int width = 0, height = 0;  // 0: as remembered
    std::string capture;        // picture to make; empty: none
    std::string sheet;          // PDF to make, with allSheets of all or the folder for them; empty: none
    std::string report;         // PDF of the round's report to make; empty: none
    bool inches = false;        // on paper: in/s beside mm/s
    bool allSheets = false;     // one for every machine to act on or plan for
    std::string paper = "a4";   // a4 letter
    std::string today;          // day a sheet is made on; empty: the clock's in the site's zone
    int finding = 0;            // of the machine, 1 the strongest; 0: that one

    // Ends with a file made instead of showing a window.
    bool makesFile() const { return !capture.empty() || !sheet.empty() || !report.empty(); }
};

// Empty: `status` is the program's exit status.
std::optional<DesktopOptions> readOptions(int argc, char** argv, int& status);

}  // namespace fettle
