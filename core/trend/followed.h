// Why: what is followed from week to week at one place of a machine, and what the week says of it against its
// baseline: the weight of the change, the days it stands on, or why there is none. Besides levels and first
// shaft orders these are the measures of fault families (core/diagnosis: FaultMeasure). Plain data for round
// and sheet. Thread: pure.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/trend/change.h"
#include "core/trend/condition.h"
#include "core/trend/limits.h"

namespace fettle {

enum class Followed { Order1, Order2, Order3, Velocity, HighBand, TemperatureRise, Measure };
std::string followedName(Followed quantity);  // "1x" "2x" "3x" "vibration" "high band" "frame over ambient"

struct WeekChange {
    std::optional<Change> change;
    std::string why;                                         // where there is none
    int baselineDays = 0, baselineFrom = 0, baselineTo = 0;  // of the baseline; 0: none
    std::string condition;                                   // "near 1484 r/min and 80 % load"
    std::optional<int> since;                                // day from which it has stayed apart
    bool matters = false;
    std::optional<StatisticalLimits> limits;  // of a change that matters: from the baseline's days

    std::string baselineWords() const;  // "42 days from 2026-01-05 to 2026-02-20"; without one `why`
};

// `values`: of running recordings, by the site's clock, oldest first. The week is [firstDay, lastDay]; its
// usual condition is the one compared in.
WeekChange changeOfWeek(std::span<const RunValue> values, std::optional<int> segmentStart, int firstDay,
                        int lastDay, Scale scale, const MattersBy& by);

// One quantity of one channel.
struct FollowedChange {
    Followed quantity = Followed::Velocity;
    std::string fault;                            // of a Measure: the fault it speaks for
    std::string name;                             // "1x", "orders 4-10"
    std::string at;                               // place: of the point, or of the measure
    std::string point, channel, direction, unit;  // direction: horizontal vertical axial radial unknown
    WeekChange week;
};

}  // namespace fettle
