// Why: what one machine brings to a round, put together from the stores by questions for this machine alone,
// so that a round costs as much as its week and not as its history. Governing quantity: velocity r.m.s. of
// the channel in the worst zone, within it of the largest share of its B/C limit; without limits the largest
// level. Limits that are a note only give no zone, nor does a point from which the sensor was taken. Running
// recordings alone count. Thread: as the FleetFile. Errors: those of the stores.
#pragma once

#include <string>
#include <vector>

#include "core/machine/severity_limits.h"
#include "core/round/round.h"
#include "core/store/fleet_file.h"

namespace fettle {

// The days of a round as moments: [from, end).
struct Period {
    std::string firstDay, lastDay, timeZone;
    Instant from{}, end{};
    Instant last() const { return end - std::chrono::milliseconds(1); }
};
// The `days` days to `until` in the site's calendar.
Result<Period> periodTo(const SiteSettings& site, const std::string& until, int days = 7);

inline constexpr int kStripWeeks = 26;

// The channel whose level speaks for the machine.
struct Governing {
    std::string title;  // "M-DE x velocity r.m.s."; empty: no level at all
    std::string point, channel;
    std::vector<DayValue> days;        // medians of the site's days, kStripWeeks to the end of the period
    std::optional<double> level;       // median of the period's days; else of the newest day
    bool inPeriod = false;             // `level` is of the period
    bool retired = false;              // no node was fitted there in the period: a level without a zone
    std::optional<ZoneLimits> limits;  // the stricter set where the support is unknown,
    std::optional<ZoneLimits> otherLimits;  // then the other one
    bool indicative = false;
    std::string zone;             // of `level`; empty: none applies, or nothing in the period
    std::optional<double> limit;  // next boundary up, the last one in zone D
};
Result<Governing> governingOf(FleetFile& fleet, const MachineEntry& machine, const Machine& described,
                              const Period& period);

// `workSince`: work done from then on is told.
Result<MachineWeek> machineWeek(FleetFile& fleet, const MachineEntry& machine, const Period& period,
                                Instant workSince);
// What a round of this period tells by change against the machine's own baseline; the examination is that of
// its week. For a page that shows a week, whether it had a round or not.
Result<std::vector<RoundFinding>> changesOfWeek(FleetFile& fleet, const MachineEntry& machine,
                                                const Machine& described, const Period& period,
                                                const Examination& examination);

}  // namespace fettle
