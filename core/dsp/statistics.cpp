#include "core/dsp/statistics.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <numeric>
#include <vector>

namespace fettle {

namespace {

constexpr double kNoSpread = 1e-13;  // of the mean: below it the spread is rounding

struct CentralMoments {
    double second = 0, third = 0, fourth = 0;
};

// Values taken in turn into eight parts, which are joined at the end: the processor need not wait for one
// step to start the next, and of a sum less is rounded off.
template <class Step, class Join>
double inParts(std::span<const double> values, Step step, Join join) {
    std::array<double, 8> parts{};
    const std::size_t whole = values.size() - values.size() % parts.size();
    for (std::size_t at = 0; at < whole; at += parts.size())
        for (std::size_t i = 0; i < parts.size(); ++i)
            parts[i] = step(parts[i], values[at + i]);
    for (std::size_t i = whole; i < values.size(); ++i)
        parts[i - whole] = step(parts[i - whole], values[i]);
    return std::accumulate(parts.begin(), parts.end(), 0.0, join);
}

template <class Term>
double sumOf(std::span<const double> values, Term term) {
    return inParts(
        values, [=](double sum, double value) { return sum + term(value); }, std::plus<>());
}

CentralMoments centralMoments(std::span<const double> values) {
    CentralMoments sum;
    const double centre = mean(values);
    const auto squared = [centre](double value) { return (value - centre) * (value - centre); };
    sum.second = sumOf(values, squared);
    sum.third = sumOf(values, [=](double value) { return squared(value) * (value - centre); });
    sum.fourth = sumOf(values, [=](double value) { return squared(value) * squared(value); });
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
    return ratio(sumOf(values, [](double value) { return value; }), double(values.size()));
}

double rms(std::span<const double> values) {
    return std::sqrt(ratio(sumOf(values, [](double value) { return value * value; }), double(values.size())));
}

double standardDeviation(std::span<const double> values, std::size_t lostDegrees) {
    const double n = double(values.size());
    return std::sqrt(ratio(centralMoments(values).second * n, n - double(lostDegrees)));
}

double peak(std::span<const double> values) {
    const auto larger = [](double largest, double value) { return std::max(largest, std::abs(value)); };
    return inParts(values, larger, larger);
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
