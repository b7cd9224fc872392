// Why: which stretch of time a recording stands for, so that a gap is drawn as a gap: it covers half the way
// to each neighbour, but at most 0.75 of the usual interval to either side (1.5 together). The usual
// interval is the median of the eight nearest, because a fleet is denser in some weeks than in others. Plain
// numbers: milliseconds of UTC since 1970, ascending. Shared by waterfall and trend.
#pragma once

#include <vector>

namespace fettle {

struct Cover {
    double from = 0, until = 0;
};

std::vector<Cover> coversOf(const std::vector<double>& times);

// True where the cover of i ends before that of i + 1 begins.
bool gapAfter(const std::vector<Cover>& covers, std::size_t i);

}  // namespace fettle
