#include "core/intake/closed_periods.h"

#include <algorithm>

#include "core/fleet/site_calendar.h"

namespace fettle {

Result<ClosedPeriods> ClosedPeriods::of(FleetFile& fleet) {
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto rounds = fleet.rounds().all();
    if (!rounds) return fail(rounds.error());
    ClosedPeriods periods;
    for (const RoundEntry& round : *rounds) {
        const auto from = startOfDate(site->timeZone, round.from);
        if (!from) return fail(from.error());
        const auto after = datePlus(round.until, 1);
        if (!after) return fail(after.error());
        const auto end = startOfDate(site->timeZone, *after);
        if (!end) return fail(end.error());
        periods.spans_.push_back({*from, *end});
    }
    return periods;
}

bool ClosedPeriods::covers(Instant time) const {
    return std::any_of(spans_.begin(), spans_.end(),
                       [&](const Span& span) { return span.from <= time && time < span.end; });
}

}  // namespace fettle
