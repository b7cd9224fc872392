// Why: a level alone says little; beside it a reader wants what was usual, the limits of the machine's own
// past, since when it has stayed apart, and where it is heading. All of it is what the round weighs and says,
// of one quantity on one channel, up to a day: baseline and change for what is followed
// (velocity, 1x to 3x, high band), growth and date at the next zone boundary for velocity. Days by the site's
// calendar (days since 1970-01-01); values in the quantity's unit. Thread: as the FleetFile; reads only.
// Errors: those of the stores.
#pragma once

#include <optional>
#include <string>

#include "core/store/fleet_file.h"
#include "core/trend/forecast.h"
#include "core/trend/limits.h"

namespace fettle {

struct BaselineBand {
    int from = 0, to = 0, days = 0;        // first and last day; days with a value
    double low = 0, middle = 0, high = 0;  // median, and two spreads to either side
    std::string condition;                 // "near 1484 r/min and 80 % load"
};

struct Heading {
    int day = 0;            // the last one with a value
    double level = 0;       // fitted there
    double limit = 0;       // next boundary up
    std::string limitName;  // "B/C"
    LimitDate date;         // `median` is set
};

struct TrendPast {
    std::optional<BaselineBand> baseline;
    std::string why;  // where there is none; empty for a quantity that is not followed
    std::optional<StatisticalLimits> limits;  // of the baseline's days
    std::optional<int> since;                 // of a change that matters
    std::optional<Heading> heading;           // where it grows towards a limit
};

// `machine`: as described then. `until`: the last day asked; empty: that of the newest recording.
Result<TrendPast> trendPast(FleetFile& fleet, const std::string& tag, const Machine& machine,
                            const ChannelEntry& channel, Quantity quantity, const std::string& until = "");

// First and last day of the baseline that trendPast tells of velocity up to the newest recording; empty where
// there is none. Reads of each day the first value at like speed and load, and nothing after the baseline.
struct DaySpan {
    int first = 0, last = 0;
};
Result<std::optional<DaySpan>> baselineDays(FleetFile& fleet, const std::string& tag, const Machine& machine,
                                            const ChannelEntry& channel);

}  // namespace fettle
