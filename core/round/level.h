// Why: the level of a machine's week is one number wherever it is said: the newest weekly median of the
// governing quantity; nothing where the week has none. Unit: that of the machine. Thread: pure.
#pragma once

#include <cmath>
#include <optional>

#include "core/round/last_day.h"
#include "core/round/round.h"
#include "core/trend/daily.h"

namespace fettle {

inline std::optional<double> levelOf(const RoundMachine& machine) {
    if (machine.strip.empty() || !std::isfinite(machine.strip.back())) return std::nullopt;
    return machine.strip.back();
}

inline std::optional<double> levelOf(const MachineWeek& week, const RoundSettings& settings) {
    const double level = weeklyMedians(week.days, lastDayOf(settings), 1).front();
    return std::isfinite(level) ? std::optional(level) : std::nullopt;
}

}  // namespace fettle
