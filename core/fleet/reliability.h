// Why: the site's own record, gathered from kept rounds and planner's reports, for the command, the sheet and
// the round page. Days by the site's calendar. Thread: as the FleetFile; reads only. Errors: those of the
// stores.
#pragma once

#include <string>
#include <vector>

#include "core/round/reliability.h"
#include "core/store/fleet_file.h"

namespace fettle {

struct SiteReliability {
    FaultRecord site;
    std::vector<FaultRecord> faults;
    ListRecord list;
    std::string firstRound, lastRound;  // last days of the first and last kept round; empty: none kept
};
Result<SiteReliability> siteReliability(FleetFile& fleet);

// The planner's reports as answers, oldest first.
Result<std::vector<Answer>> answersOf(FleetFile& fleet);

// Sentences, a line each: by fault, over the site, the list beside its promise, the sample.
std::vector<std::string> reliabilityWords(const SiteReliability& record);

}  // namespace fettle
