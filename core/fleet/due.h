// Why: before the list comes what was promised: entries deferred to a day that has come, jobs past their day,
// jobs done whose cure nobody has verified yet, recordings that came after the list of their week was kept. A
// deferred entry is told from the first round that reaches its day until it is decided anew or that round is
// closed; of a machine taken out of the register only its open jobs are told, to be closed. Oldest day first.
// Days "2026-05-04" in the site's calendar. Thread: as the FleetFile; reads only. Errors: those of the
// stores.
#pragma once

#include <string>
#include <vector>

#include "core/round/round.h"
#include "core/store/fleet_file.h"

namespace fettle {

struct DueItem {
    std::string machine;
    std::string kind;   // deferred | overdue | verify | late
    std::string day;    // since when; empty for late
    std::string words;  // "deferred to 2026-06-01: stop in June"
};

// Of a list that ends on its `until`.
Result<std::vector<DueItem>> dueOf(FleetFile& fleet, const RoundList& list);

}  // namespace fettle
