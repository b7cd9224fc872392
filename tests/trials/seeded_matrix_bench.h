// Why: a cell of the matrix is what a user has: weeks of a sound machine in a fleet file, then a week with a
// fault, and what the round says of that week. The sound weeks are made once for all cells of one machine,
// kind of node and noise; each cell gets a copy of the file. Every capture of a node comes on five days a
// week. The machine stands as one of a hundred: its list needs 30 decibans. Waveforms and spectra are not
// kept: no verdict reads them. Thread: each bench its own. Errors: end the program with a word.
#pragma once

#include <string>

#include "core/round/judge.h"
#include "tests/trials/made_weeks.h"

namespace fettle::trials {

struct BenchOrder {
    std::size_t like = 0;
    std::string node;  // kind
    double noiseFactor = 1;
    int baselineWeeks = 4;
    auto operator<=>(const BenchOrder&) const = default;
};

struct CellVerdict {
    Verdict verdict;
    MachineWeek week;
};

class MatrixBench {
  public:
    MatrixBench(const sim::Scenario& scenario, const BenchOrder& order, const std::string& folder);
    ~MatrixBench();
    MatrixBench(const MatrixBench&) = delete;
    MatrixBench& operator=(const MatrixBench&) = delete;

    // The week after the sound ones, with these conditions in it.
    CellVerdict weekWith(const std::vector<sim::Condition>& conditions, std::uint64_t key) const;

  private:
    WeekOrder weeksFrom(int first, int count) const;

    const sim::Scenario& scenario_;
    BenchOrder order_;
    std::string path_, tag_;
};

}  // namespace fettle::trials
