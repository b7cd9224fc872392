#include "core/dsp/statistics.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <vector>

namespace fettle {

namespace {

constexpr double kNoSpread = 1e-13;  // of the mean: below it the spread is rounding

struct CentralMoments {
    double second = 0, third = 0, fourth = 0;
};

CentralMoments centralMoments(std::span<const double> values) {
    CentralMoments sum;
    const double centre = mean(values);
    for (const double value : values) {
        const double d = value - centre, square = d * d;
        sum.second += square;
        sum.third += square * d;
        sum.fourth += square * square;
    }
    const double n = std::max(1.0, double(values.size()));
    if (std::sqrt(sum.second / n) <= kNoSpread * std::abs(centre)) return {};
    return {sum.second / n, sum.third / n, sum.fourth / n};
}

double ratio(double over, double under) {
    return under > 0 ? over / under : 0;
}

double medianInPlace(std::vector<double>& values) {
    if (values.empty()) return 0;
    const auto middle = values.begin() + std::ptrdiff_t(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    if (values.size() % 2 == 1) return *middle;
    return (*middle + *std::max_element(values.begin(), middle)) / 2;
}

}  // namespace

double mean(std::span<const double> values) {
    return ratio(std::accumulate(values.begin(), values.end(), 0.0), double(values.size()));
}

double rms(std::span<const double> values) {
    const double sum = std::inner_product(values.begin(), values.end(), values.begin(), 0.0);
    return std::sqrt(ratio(sum, double(values.size())));
}

double standardDeviation(std::span<const double> values, std::size_t lostDegrees) {
    const double n = double(values.size());
    return std::sqrt(ratio(centralMoments(values).second * n, n - double(lostDegrees)));
}

double peak(std::span<const double> values) {
    double largest = 0;
    for (const double value : values)
        largest = std::max(largest, std::abs(value));
    return largest;
}

double peakToPeak(std::span<const double> values) {
    if (values.empty()) return 0;
    const auto [least, most] = std::minmax_element(values.begin(), values.end());
    return *most - *least;
}

double crestFactor(std::span<const double> values) {
    return ratio(peak(values), rms(values));
}

double skewness(std::span<const double> values) {
    const CentralMoments m = centralMoments(values);
    return ratio(m.third, m.second * std::sqrt(m.second));
}

double kurtosis(std::span<const double> values) {
    const CentralMoments m = centralMoments(values);
    return ratio(m.fourth, m.second * m.second);
}

double median(std::span<const double> values) {
    std::vector<double> copy(values.begin(), values.end());
    return medianInPlace(copy);
}

double medianAbsoluteDeviation(std::span<const double> values) {
    std::vector<double> distance(values.begin(), values.end());
    const double centre = median(values);
    for (double& d : distance)
        d = std::abs(d - centre);
    return medianInPlace(distance);
}

}  // namespace fettle
