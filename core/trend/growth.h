// Why: how fast a level grows and when it reaches its limit, told with an interval and without trusting
// single days. Slope: Theil-Sen (median of pairwise slopes) with Sen's interval from Kendall's statistic.
// Source: P. K. Sen, J. Am. Stat. Assoc. 63 (1968) 1379-1389. Date at the limit: the same medians carried on;
// only for levels with a zone limit, never for bearings (a date by stage instead). Thread: pure functions.
#pragma once

#include <optional>
#include <span>

#include "core/trend/daily.h"

namespace fettle {

struct Growth {
    double perWeek = 0, low = 0, high = 0;  // unit a week; interval of `cover`
    double now = 0;                         // fitted value at lastDay
    int days = 0;                           // daily medians used
    int sinceDay = 0;                       // first day used
    int lastDay = 0;                        // last day with a value: dates count from it
};

struct GrowthOptions {
    int mostDays = 42;    // look back no farther
    int fewestDays = 10;  // daily medians needed
    double cover = 0.8;   // of the interval
};

// Over the days since the last step down by more than half (a repair, a cleaning) within mostDays. Empty
// where there are too few days.
std::optional<Growth> growthOf(std::span<const DayValue> days, const GrowthOptions& options = {});

struct LimitDate {
    std::optional<int> median, from, to;  // days since 1970-01-01; `to` empty: open end
};
// Empty where the level does not grow (interval reaches 0 or below), is already over, or the date lies
// farther than `mostDays` from the last day.
std::optional<LimitDate> limitReached(const Growth& growth, int lastDay, double limit, int mostDays = 365);

}  // namespace fettle
