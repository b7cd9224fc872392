// Why: the same seeded faults are asked of the round (seeded_matrix) and of the alerts (fault_alerts): every
// kind the simulator knows, at each severity, on machines that can have it, heard by every kind of node at
// three noise levels. Thread: pure.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/simulate/scenario.h"
#include "tests/trials/seeded_matrix_table.h"

namespace fettle::trials {

struct SeededCell {
    std::string kind, at;  // empty kind: sound
    std::size_t severity = 0;
};
using SeededBenches = std::map<BenchOrder, std::vector<SeededCell>>;

// `only`: kinds, comma between; empty: all. Severities from `least` on; each bench has a sound cell last.
SeededBenches seededBenches(const sim::Scenario& scenario, const std::string& only, std::size_t least);
// Every nth bench, so that a sample has all kinds of node; some so many cells are left, 0: all.
void thin(SeededBenches& benches, std::size_t cells);
std::vector<sim::Condition> conditionsOf(const SeededCell& cell);
std::uint64_t keyOf(const SeededCell& cell);

}  // namespace fettle::trials
