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

// What the zone stands on: the note of the governing channel, else of any channel that is in such a zone; of
// levels without an examination (ready-made, or thinned) the limits of the description.
ZoneNote zoneNoteOf(const MachineWeek& week);
// The week's zone with the level of its daily medians; of kind "" where no zone applies.
Severity zoneSeverity(const MachineWeek& week, const RoundSettings& settings, const std::string& basis);
// Growth of the governing quantity, and the date at its limit, within what the round may look at.
void addGrowth(RoundFinding& finding, const MachineWeek& week, int lastDay);

}  // namespace fettle
