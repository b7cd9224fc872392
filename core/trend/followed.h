// Why: what is followed from week to week at one place of a machine, and what the week says of it against its
// baseline: the weight of the change, the days it stands on, or why there is none. Plain data for round and
// sheet. Thread: pure.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/trend/change.h"
#include "core/trend/condition.h"

namespace fettle {

enum class Followed { Order1, Order2, Order3, Velocity, HighBand, TemperatureRise };
std::string toText(
    Followed quantity);  // "1x", "2x", "3x", "vibration", "band above 1 kHz", "frame over ambient"
bool isLine(Followed quantity);
Scale scaleOf(Followed quantity);
double leastStepOf(Followed quantity);  // that matters where no limit applies: dB or kelvin

struct WeekChange {
    std::optional<Change> change;
    std::string why;                                         // where there is none
    int baselineDays = 0, baselineFrom = 0, baselineTo = 0;  // of the baseline; 0: none
    std::string condition;                                   // "near 1484 r/min and 80 % load"
    std::optional<int> since;                                // day from which it has stayed apart
    bool matters = false;
};

// `values`: of running recordings, by the site's clock, up to the end of the week at least. The week is
// [firstDay, lastDay]; its usual condition is the one compared in.
WeekChange changeOfWeek(std::span<const RunValue> values, std::optional<int> segmentStart, int firstDay,
                        int lastDay, Followed quantity, const MattersBy& by);

// One quantity of one channel.
struct FollowedChange {
    Followed quantity = Followed::Velocity;
    std::string point, at, channel, direction, unit;
    WeekChange week;
};

}  // namespace fettle
