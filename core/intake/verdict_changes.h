// Why: weighed again with another engine or a corrected description, a verdict may change; the difference is
// told hypothesis by hypothesis, so that nobody has to look for it. Told: what was or is at 10 decibans or
// more and moved by at least 1, and what is named on one side only. Units: decibans, rounded to whole ones in
// the words. Thread: pure.
#pragma once

#include <string>
#include <vector>

#include "core/diagnosis/examination.h"

namespace fettle {

// "bearing_outer_race @ driver DE: 31 -> 12", "unbalance @ driver: named -> not named"; in the order of
// `after`, then what stood in `before` alone.
std::vector<std::string> weightChanges(const Examination& before, const Examination& after);

}  // namespace fettle
