// Why: what is usual of a machine, so that a change can be weighed: the first days since it was last altered
// (part, repair, moved node, told anew), as daily medians at like speed and load. Days are counted, never
// recordings: twenty recordings of a shift say one thing. At least 14 days over at least 2 weekends, or there
// is no baseline and the missing days are told (common practice, no source). The days of a run-in after the
// alteration are left out. A baseline stays where it is: one that moved along would learn the fault. Units:
// those of the quantity; `mean` and `spread` on its scale (20 log10 of a level; a temperature as it is).
// Thread: pure.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/trend/daily.h"

namespace fettle {

enum class Scale { Decibels, Linear };
double onScale(double value, Scale scale);
double fromScale(double value, Scale scale);

struct BaselineOptions {
    int fewestDays = 14;
    int fewestWeekends = 2;  // Saturday and Sunday both between its first and last day
    int mostDays = 42;       // of the calendar, from its first day; more only until it has enough
    int runInDays = 3;       // after the alteration
};

struct Baseline {
    std::vector<DayValue> days;  // those in it, oldest first
    Scale scale = Scale::Decibels;
    double median = 0;  // in the unit
    double mean = 0, spread = 0;
    int firstDay() const { return days.front().day; }
    int lastDay() const { return days.back().day; }
    // "42 days from 2026-01-05 to 2026-02-20"
    std::string words() const;
};

struct BaselineSearch {
    std::optional<Baseline> baseline;
    int daysMissing = 0, weekendsMissing = 0;
    std::string why;  // where there is none: "no baseline: 5 of 14 days at like speed and load since ..."
};

// `days`: at like conditions, oldest first. `segmentStart`: day of the last alteration; empty: the first day
// given. `before`: the week judged begins here; its days and later ones are not in the baseline.
BaselineSearch baselineOf(std::span<const DayValue> days, std::optional<int> segmentStart, int before,
                          Scale scale = Scale::Decibels, const BaselineOptions& options = {});

// Weekends whose both days lie in [first, last].
int weekendsIn(int first, int last);

}  // namespace fettle
