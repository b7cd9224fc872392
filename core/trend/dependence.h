// Why: what a level follows tells causes apart: a force in proportion to speed squared, load, heat. Only
// where the weeks hold enough of a range to tell; else nothing is said. Slopes: Theil-Sen (growth.h);
// correlation: Kendall's tau-b, M. G. Kendall, Rank Correlation Methods (1948). Least ranges: common
// practice, no source. Thread: pure.
#pragma once

#include <optional>
#include <span>

#include "core/trend/condition.h"

namespace fettle {

// Power n of the speed that the value follows, value ~ speed^n; the speeds must range over 15 % or more.
std::optional<double> speedPower(std::span<const RunValue> values);
// -1 to 1; loads must range over 15 points, temperatures over 8 K.
std::optional<double> followsLoad(std::span<const RunValue> values);
std::optional<double> followsWarmth(std::span<const RunValue> values);

}  // namespace fettle
