// Why: one job, one leaf: a SheetContent is set on one A4 or Letter page where all of it fits, else on two:
// the job first, then why, with the figures. Sentences are never under 8.5 pt and never cut; what a register
// or a table of advice makes longer than two pages runs on over more. Every page tells the tag and "1 of 2".
// Nothing overlaps and nothing is cut at an edge. Thread: the window's (fonts). Errors: none; whatever the
// content is, there is a page.
#pragma once

#include <vector>

#include "core/fleet/sheet_content.h"
#include "ui/sheet/sheet_page.h"

namespace fettle {

// `spectrum`: whether there is one to be drawn.
std::vector<SheetPage> layOutSheet(const SheetContent& sheet, bool spectrum, PaperSize size);

}  // namespace fettle
