// Why: storing must cost little beside examining. Both are timed in one run on the same files with the same
// number of threads, slice by slice in turns, so that what else the machine does falls on both. Units:
// seconds of the clock and of the processors. Thread: starts its own.
#pragma once

#include <string>

namespace fettle::bench {

struct ImportBenchOptions {
    std::string folder;  // as `fettle-cli sample` writes it: machines/ and recordings/
    int recordings = 2000;
    int threads = 2;
    int turns = 3;
};

// Prints a table on stdout. The exit status: 0, or 3 where something could not be read or written.
int importBench(const ImportBenchOptions& options);

}  // namespace fettle::bench
