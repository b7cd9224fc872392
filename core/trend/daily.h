// Why: a baseline and a trend count days, not recordings: twenty recordings of one shift say the same thing
// twenty times. All of core/trend works on daily medians of running recordings. Units: day = days since
// 1970-01-01 (UTC); values in the unit of their quantity. Source: practice of ISO 13379-1 and 17359 (trend on
// comparable operating conditions); daily medians: common practice, no source. Thread: pure functions.
#pragma once

#include <span>
#include <vector>

#include "core/base/time.h"

namespace fettle {

struct TimedValue {
    Instant time{};
    double value = 0;
};

struct DayValue {
    int day = 0;       // days since 1970-01-01
    double value = 0;  // median of that day
    int count = 0;     // recordings in it
};

int dayOf(Instant time);
Instant startOfDay(int day);

// Oldest first whatever the order of the input; values that are not finite are left out.
std::vector<DayValue> dailyMedians(std::span<const TimedValue> values);
// Medians of whole weeks of seven days that end with `lastDay`, oldest first, `weeks` of them; NaN: no value.
std::vector<double> weeklyMedians(std::span<const DayValue> days, int lastDay, int weeks);

}  // namespace fettle
