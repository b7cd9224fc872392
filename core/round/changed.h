// Why: what a reader asks first: what is new since I last looked? One plain sentence a machine: work done,
// findings new or gone, stage or zone, weight, level; "No change." where there is none. In a first round the
// level is set against the weeks before it. Thread: pure.
#pragma once

#include <string>

#include "core/round/round.h"

namespace fettle {

// `before`: the machine in the last round; null: it was not in it. `first`: there was no last round.
std::string changedSentence(const RoundMachine& now, const RoundMachine* before, bool first,
                            const std::string& workDone);

}  // namespace fettle
