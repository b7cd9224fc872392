// Why: what a round could not see, over its listed machines: for each fault on how many of them it could be
// seen at no place at all, on how many at some places only, and what would show it most often. Thread: as the
// FleetFile; reads only. Errors: those of the stores.
#pragma once

#include <vector>

#include "core/fleet/round_report.h"

namespace fettle {

// Of the machines whose week was kept, most often blind first; eight at most.
Result<std::vector<ReportBlind>> reportBlind(FleetFile& fleet, const RoundList& list, std::int64_t round);

}  // namespace fettle
