// Why: that the same work has cured a machine before is the strongest evidence of what ails it now. Of the
// events of its history (cleaning, repair, part, greasing, inspection) the last one after which the governing
// velocity fell, and how far it has climbed back. A fall: the median of the five running days after the event
// against that of the five before, by at least half, and by at least 25 % of the B/C boundary where one is
// known (a significant change, ISO 10816-1:1995 5.3.2, criterion II). Climbed back: by half of the fall and
// by as much of the boundary. The half, five days and three weeks' reach: common practice, no source. Not
// weighed: speed and load of those days. Reaches back as far as Governing::days. Levels in mm/s r.m.s.; days
// by the site's calendar. Thread: pure, or as the FleetFile, reads only. Errors: of an unknown time zone;
// those of the stores.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/fleet/machine_week.h"

namespace fettle {

struct CuredBefore {
    Event event;
    int day = 0;  // of the event
    double before = 0, after = 0, now = 0;
    // "After the cleaning of 24 March 2026 (lime scraped off) M-DE x velocity r.m.s. fell from 6.5 to 0.8
    // mm/s; since then it has climbed back to 5.6."
    std::string sentence;
};

// Empty: nothing in the history cured it, or what did still holds.
Result<std::optional<CuredBefore>> curedBefore(const std::vector<Event>& events, const Governing& governing,
                                               const Period& period);
Result<std::optional<CuredBefore>> curedBefore(FleetFile& fleet, const std::string& tag,
                                               const Period& period);

}  // namespace fettle
