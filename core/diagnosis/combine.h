// Why: a week of one machine is the arithmetic mean of its recordings' e-values, an e-value whatever their
// dependence (Vovk and Wang, Ann. Statist. 49 (2021), section 3). The same function joins recordings examined
// together on the command line and examinations read back from the fleet file, so that both add up alike.
// Which of two faults owns the lines that both explain is asked of the week, not of each recording: where a
// recording gave them to the one that all recordings together make the weaker, it says nothing for that one
// (e-value 1 at most). A smaller e-value is still an e-value. Thread: pure.
#pragma once

#include <vector>

#include "core/base/result.h"
#include "core/diagnosis/examination.h"
#include "core/diagnosis/settings.h"
#include "core/machine/machine.h"

namespace fettle {

// `parts` hold one or more recordings each, weighed by `examine`; at least one part. Rows shown are those of
// the strongest recording; `recording` indexes the joint list.
Result<Examination> combine(const Machine& machine, const std::vector<Examination>& parts,
                            const WeighingSettings& settings = {});

}  // namespace fettle
