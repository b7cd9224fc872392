// Why: a machine that could not be judged is on the list with its reason and a date, never left out and never
// called sound. Reasons: silent low_battery poor_data moved idle not_fitted not_judged
// (turning, but no fault could be weighed and no limit applies). Thread: pure.
#pragma once

#include <optional>
#include <string>

#include "core/round/round.h"

namespace fettle {

struct Unseen {
    std::string reason, words;  // words: "no recording since 2026-06-20"
};
std::optional<Unseen> unseenOf(const MachineWeek& week, const RoundSettings& settings);

}  // namespace fettle
