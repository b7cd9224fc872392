// Why: how fast a level grows, told with an interval and without trusting single days. Slope: Theil-Sen
// (median of pairwise slopes) with Sen's interval from Kendall's statistic. Source: P. K. Sen, J. Am. Stat.
// Assoc. 63 (1968) 1379-1389. Thread: pure functions.
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

// The days a growth is judged on, oldest first.
std::vector<DayValue> growthDays(std::span<const DayValue> days, const GrowthOptions& options = {});

// The middle line through days: value at day d is level + slope x (d - centre).
struct MiddleLine {
    double centre = 0, level = 0, slope = 0;  // median day, median value, median of the pairwise slopes
    double at(double day) const { return level + slope * (day - centre); }
};
// Of two days or more.
MiddleLine middleLine(std::span<const DayValue> days);

}  // namespace fettle
