// Why: the week's level against the zones of a standard. Zone C or D of the week's median lists a machine
// whatever was weighed; such an entry carries no bound and says what the zone stands on. Level, growth and
// the date at the next limit are those of daily medians: one loud recording is no level. Thread: pure.
#pragma once

#include <vector>

#include "core/round/round.h"
#include "core/round/urgency_rule.h"

namespace fettle {

// One finding a cause that the week's recordings name, one without a name where they name none; empty in
// zones A and B and where no zone applies.
std::vector<RoundFinding> zoneFindings(const MachineWeek& week, const std::vector<Hypothesis>& hypotheses,
                                       const RoundSettings& settings, const UrgencyRule& rule);

}  // namespace fettle
