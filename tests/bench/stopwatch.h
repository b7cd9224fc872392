// Why: on a shared machine the best of many runs says what the code costs; a mean says what the neighbours
// did. Units: milliseconds of processor time of this program, its one thread.
#pragma once

#include <algorithm>
#include <ctime>
#include <limits>

namespace fettle::bench {

template <class Work>
double onceMs(Work work) {
    const std::clock_t start = std::clock();
    work();
    return 1000.0 * double(std::clock() - start) / CLOCKS_PER_SEC;
}

template <class Work>
double bestMs(int repeats, Work work) {
    double best = std::numeric_limits<double>::infinity();
    for (int i = 0; i < repeats; ++i)
        best = std::min(best, onceMs(work));
    return best;
}

}  // namespace fettle::bench
