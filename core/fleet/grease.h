// Why: what the nearest sensor heard of each greasing. Heard by the loudest channel, before the greasing, of
// the points on the same component; a bearing behind a coupling is not heard in this band, and that is said.
// Days by the site's calendar. Thread: as the FleetFile; reads only. Errors: those of the stores.
#pragma once

#include <string>
#include <vector>

#include "core/round/grease.h"
#include "core/store/fleet_file.h"

namespace fettle {

struct GreasingHeard {
    std::int64_t event = 0;  // its id
    std::string where;       // "M-DE x"; empty: not heard
    GreaseWitness witness;   // `words` says why where it was not heard
};
// Of the machine's greasings, oldest first.
Result<std::vector<GreasingHeard>> greasingsHeard(FleetFile& fleet, const std::string& tag);

}  // namespace fettle
