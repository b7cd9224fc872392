// Why: a level is compared with what it was at like speed and load, or the comparison says only that the
// machine was run otherwise. The conditions of a week are those in which it ran most: a narrow band of speed
// and of load, where these are known of most of its recordings. Half-widths: common practice, no source.
// Thread: pure.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/trend/daily.h"

namespace fettle {

// A value with the conditions it was taken in. Only running recordings are given.
struct RunValue {
    Instant time{};
    double value = 0;
    std::string running;  // "running", "running_unloaded" ...
    std::optional<double> speedRpm, loadPct, frameTempC;
};

inline constexpr double kLikeSpeedShare = 0.03;  // of the speed, either way
inline constexpr double kLikeLoadPct = 15;       // points, either way

struct Condition {
    std::string running;
    std::optional<double> speedRpm, loadPct;  // middle of the band; empty: not asked for

    bool holds(const RunValue& value) const;
    std::string words() const;  // "near 1484 r/min and 80 % load"
};

// In which most of `values` were taken; empty of none.
std::optional<Condition> usualCondition(std::span<const RunValue> values);

// Daily medians of the values taken in like conditions.
std::vector<DayValue> likeDays(std::span<const RunValue> values, const Condition& condition);

}  // namespace fettle
