// Why: what changed against the machine's own baseline, as entries of the list in a group of their own: their
// weight says how unlike chance the change is, not what the list's share of chance promises, so they stay
// outside e-BH. Quantities at one point are weighed together (mean of the channels' e-values); an entry needs
// the weight of a finding and a change that matters. Raised shaft lines get causes with shares from the
// pattern of what was added; a raised high band without a bearing's lines is "dry or worn", never an element;
// a frame hotter over ambient at like load is overheating, never a winding class; measures of a fault family
// speak for that family, and an overall level that their lines explain is no entry beside them; a fall is a
// cure that nobody entered or a node that lost its grip. Thread: pure.
#pragma once

#include <vector>

#include "core/round/round.h"
#include "core/round/urgency_rule.h"

namespace fettle {

// `hypotheses`: all of the week, for what explains a change otherwise.
std::vector<RoundFinding> changeFindings(const MachineWeek& week, const std::vector<Hypothesis>& hypotheses,
                                         const RoundSettings& settings, const UrgencyRule& rule);

// Which days changes are weighed against: the most usual of the quantities' baselines, or why there is none.
std::string baselineWords(const MachineWeek& week);

}  // namespace fettle
