// Why: where an examination's time goes, stage by stage, so that work is spent where it pays.
// Each stage is run by itself, many times, on what the stages before it made; its best time is told.
// Units: milliseconds. Thread: one.
#pragma once

#include <string>
#include <vector>

#include "tests/bench/bench_case.h"

namespace fettle::bench {

struct Stage {
    std::string name;
    double ms = 0;
};

// The stages, then what is left of the whole, then the whole.
std::vector<Stage> stagesOf(const BenchCase& subject, int repeats);

// One line a stage: ms, share of the whole, multiple of the bare transforms.
std::string tableOf(const std::vector<Stage>& stages);

}  // namespace fettle::bench
