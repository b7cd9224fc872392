// Why: storing must cost little beside examining, and be known beside a plain copy. All three are timed in
// one run on the same files with the same number of threads (the copy with one), slice by slice in turns, so
// that what else the machine does falls on all. Units: seconds of the clock and of the processors. Thread:
// starts its own.
#pragma once

#include <string>

namespace fettle::bench {

struct ImportBenchOptions {
    std::string folder;  // as `fettle-cli sample` writes it: machines/ and recordings/
    int recordings = 2000;
    int threads = 2;
    int turns = 3;
};

// Prints tables on stdout: the three, and what the stages of an import cost. The exit status: 0, or 3 where
// something could not be read or written.
int importBench(const ImportBenchOptions& options);

// 25,000, 50,000 and 100,000 tiny files made in `folder`: time a file and peak memory of finding, reading and
// refusing them. The peak is the program's so far.
int manyFilesBench(const std::string& folder);

}  // namespace fettle::bench
