// Why: one median for the whole room: the middle value, the mean of the two middle ones where their number is
// even, NaN of none. Values are finite. Thread: pure.
#pragma once

#include <algorithm>
#include <limits>
#include <vector>

namespace fettle {

inline double medianOf(std::vector<double> values) {
    if (values.empty()) return std::numeric_limits<double>::quiet_NaN();
    const auto middle = values.begin() + std::ptrdiff_t(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    if (values.size() % 2 == 1) return *middle;
    return (*std::max_element(values.begin(), middle) + *middle) / 2;
}

}  // namespace fettle
