// Why: what a recording names by a figure of the trade, without a weight and without a zone: rotor bars by
// decibels below the mains, a tooth that strikes. Such an entry carries no bound; it stands with those by
// zone, outside the stated share of chance, as urgent as its severity says. Thread: pure.
#pragma once

#include <string>
#include <vector>

#include "core/round/round.h"
#include "core/round/urgency_rule.h"

namespace fettle {

std::vector<RoundFinding> limitFindings(const std::vector<Hypothesis>& hypotheses,
                                        const std::string& criticality, const UrgencyRule& rule);

}  // namespace fettle
