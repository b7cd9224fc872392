// Why: what is asked for by hand as a leaf to walk with: by area and machine, where the instrument is held,
// in which direction, how long, how wide and with how many lines, why, and a box for the reading and for what
// was seen; then what is asked of the nodes. Black on white, A4 and Letter. Says the cautions of measuring at
// running machines. Thread: the window's (fonts).
#pragma once

#include "core/fleet/asks.h"
#include "ui/model/units.h"
#include "ui/sheet/printed_pages.h"

namespace fettle {

struct WalkSheet {
    std::string site, madeOn;  // day, 2026-05-04
    std::vector<Ask> asks;
};

std::vector<SheetPage> layOutWalk(const WalkSheet& walk, PaperSize size, const Units& units = {});
PdfTitle titleOf(const WalkSheet& walk);

// Words of one: "8 s or more, to 1000 Hz, 8000 lines, with a tachometer".
QString askedWhat(const AskSpec& spec, const Units& units);
QString askedWhere(const Request& request);  // "driver DE, axial"

}  // namespace fettle
