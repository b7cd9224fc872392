// Why: zone and change of one week are asked apart and told together: one of the same fault and place takes
// the change instead of standing twice, and no fault is named twice because both saw it. Where most of the
// week's level was added since the baseline, what was added names its cause, and the pattern of single
// recordings, which holds the sound machine's lines as well, gives way. A level whose cause no pattern names
// is told by what explains it. Thread: pure.
#pragma once

#include <vector>

#include "core/round/round.h"

namespace fettle {

// `findings`: those by zone and by limit.
void joinChanges(const MachineWeek& week, std::vector<RoundFinding>& findings,
                 std::vector<RoundFinding> changes);

}  // namespace fettle
