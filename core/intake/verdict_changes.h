// Why: weighed again with another engine or a corrected description, a verdict may change; the difference is
// told hypothesis by hypothesis, so that nobody has to look for it. Told: what was or is at 10 decibans or
// more and moved by at least 1, what is named on one side only, and what is named with another urgency.
// Units: decibans, unrounded. Thread: pure.
#pragma once

#include <vector>

#include "core/diagnosis/examination.h"
#include "core/store/re_examination_store.h"

namespace fettle {

// In the order of `after`, then what stood in `before` alone. Of two variants of one fault at one place the
// more urgent, then the stronger one counts.
std::vector<VerdictChange> verdictChanges(const Examination& before, const Examination& after);

// How far the weight moved, decibans; on a side that was not weighed as if it had been 0.
double movedDban(const VerdictChange& change);

}  // namespace fettle
