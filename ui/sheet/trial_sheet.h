// Why: a trial on paper: what was changed, what it had to do, the promise with the moment it was frozen, what
// came and whether it was kept, the curve, every recording, the cautions as they were confirmed, and room to
// sign. A4 or Letter, black on white, vector. Thread: the window's (fonts). Errors: none; whatever the trial
// is, there is a page.
#pragma once

#include <memory>

#include "core/fleet/trial_desk.h"
#include "ui/model/units.h"
#include "ui/sheet/printed_pages.h"

namespace fettle {

struct TrialSheet {
    TrialEntry entry;
    TrialResult result;
    std::string site, service, timeZone, madeOn, engine;  // madeOn: "2026-05-12"
    Units units = {};
};
Result<TrialSheet> readTrialSheet(FleetFile& fleet, std::int64_t trial, const std::string& madeOn);

std::vector<SheetPage> layOutTrial(const TrialSheet& sheet, PaperSize size);
std::unique_ptr<PrintedPages> trialPages(std::shared_ptr<const TrialSheet> sheet, PaperSize size);
PdfTitle titleOf(const TrialSheet& sheet);

}  // namespace fettle
