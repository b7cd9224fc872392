#include "ui/plot/time_cover.h"

#include <algorithm>

namespace fettle {

namespace {

constexpr std::size_t kNear = 4;             // intervals looked at to either side
constexpr double kMostShare = 0.75;          // of the usual interval, to either side
constexpr double kLoneMs = 24 * 3600 * 1e3;  // a single recording stands for a day
constexpr double kTouchMs = 1;

double usualAround(const std::vector<double>& intervals, std::size_t i) {
    const std::size_t first = i > kNear ? i - kNear : 0;
    const std::size_t last = std::min(intervals.size(), i + kNear);
    std::vector<double> near;
    for (std::size_t k = first; k < last; ++k)
        if (intervals[k] > 0) near.push_back(intervals[k]);
    if (near.empty()) return kLoneMs;
    const auto middle = near.begin() + std::ptrdiff_t((near.size() - 1) / 2);
    std::nth_element(near.begin(), middle, near.end());
    return *middle;
}

}  // namespace

std::vector<Cover> coversOf(const std::vector<double>& times) {
    std::vector<double> intervals;
    for (std::size_t i = 1; i < times.size(); ++i)
        intervals.push_back(times[i] - times[i - 1]);
    std::vector<Cover> covers(times.size());
    for (std::size_t i = 0; i < times.size(); ++i) {
        const double most = kMostShare * usualAround(intervals, i);
        const double before = i > 0 ? std::min(intervals[i - 1] / 2, most) : most / 1.5;
        const double after = i < intervals.size() ? std::min(intervals[i] / 2, most) : most / 1.5;
        covers[i] = {times[i] - before, times[i] + after};
    }
    return covers;
}

bool gapAfter(const std::vector<Cover>& covers, std::size_t i) {
    return i + 1 < covers.size() && covers[i].until + kTouchMs < covers[i + 1].from;
}

}  // namespace fettle
