// Why: the choice within a machine, once the list of machines is cut: which findings put it there, how urgent
// each is, and what its level says beside. Evidence and zone are asked apart and never mixed: a weight says
// whether, a stage or zone how bad. Thread: pure.
#pragma once

#include <vector>

#include "core/round/round.h"
#include "core/round/urgency_rule.h"

namespace fettle {

struct Verdict {
    std::string urgency = "leave";
    ListedBy listedBy = ListedBy::None;
    std::vector<RoundFinding> findings;  // most urgent first, then by weight
};

struct ListCut {
    bool listed = false;   // on evidence, by e-BH
    double hasDban = 0;    // the machine's weight with its prior
    double needsDban = 0;  // RoundList::listNeedsDban
};

// Of a machine that was seen. `hypotheses`: all of its week.
Verdict judge(const MachineWeek& week, const std::vector<Hypothesis>& hypotheses, const ListCut& cut,
              const RoundSettings& settings, const UrgencyRule& rule);

}  // namespace fettle
