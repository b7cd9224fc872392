// Why: what fits a small machine must not be known only on a large one. Units: megabytes (1024 x 1024), the
// most this program has held so far. Source: getrusage(2), ru_maxrss in kilobytes.
#pragma once

#include <sys/resource.h>

namespace fettle::bench {

inline double peakMegabytes() {
    rusage use{};
    ::getrusage(RUSAGE_SELF, &use);
    return double(use.ru_maxrss) / 1024;
}

}  // namespace fettle::bench
