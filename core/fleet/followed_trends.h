// Why: what a round asks of a machine's history: did anything of this week change against its own baseline?
// The stores' trends (levels, first shaft orders, high band, temperature) and the measures of fault families,
// each at like speed and load, by the site's days. Read are the first months since the machine was last
// altered and the last weeks, not the years between. A repair, a part, a moved or newly fitted node and
// "rebaseline" end a segment: no change is weighed across them. Thread: as the FleetFile. Errors: those of
// the stores.
#pragma once

#include <vector>

#include "core/diagnosis/cause_table.h"
#include "core/fleet/machine_week.h"
#include "core/trend/followed.h"

namespace fettle {

struct FollowedTrends {
    std::vector<FollowedChange> changes;    // every quantity followed, with a change or why there is none
    std::vector<CauseFeature> dependences;  // speed_power, load_follow, warm_follow of 1x where told
};

// Day of the last alteration before the end of the period, on the site's calendar: a baseline begins there.
Result<std::optional<int>> segmentStart(const std::vector<Event>& events, const Point* point,
                                        const Period& period);
// When a change of a level or a shaft order matters at this point.
MattersBy mattersBy(const Machine& machine, const Point* point, Followed quantity);

// Levels of a channel while running, by the site's clock, within [from, until], oldest first; no measures.
Result<std::vector<RunValue>> followedLevels(FleetFile& fleet, std::int64_t channel, Followed quantity,
                                             const std::string& timeZone, Instant from, Instant until);

Result<FollowedTrends> followedTrends(FleetFile& fleet, const MachineEntry& machine, const Machine& described,
                                      const Period& period);

}  // namespace fettle
