// Why: the round's report on paper: one page that a planner acts on (what needs work in which order and by
// when, who was not seen, what is due, what changed, how often the list was right here, what it cannot tell),
// then the whole as tables with repeated heads. Black on white; every urgency has its word beside its disc.
// Also a comparison of two rounds. Thread: the window's (fonts). Errors: none; whatever the content is, there
// is a page.
#pragma once

#include "core/fleet/round_report.h"
#include "ui/model/units.h"
#include "ui/sheet/printed_pages.h"

namespace fettle {

std::vector<SheetPage> layOutReport(const RoundReport& report, PaperSize size, const Units& units = {});
std::vector<SheetPage> layOutComparison(const RoundComparison& comparison, const QString& site,
                                        PaperSize size);
PdfTitle titleOf(const RoundReport& report);
PdfTitle titleOf(const RoundComparison& comparison, const QString& site);

}  // namespace fettle
