#include "core/trend/limits.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/trend/distribution.h"
#include "core/trend/median.h"

namespace fettle {

namespace {

constexpr double kSigmas = 3, kRobustSigma = 1.4826, kShare = 0.95;

struct Moments {
    double mean = 0, spread = 0;
};

Moments momentsOf(const std::vector<double>& values) {
    Moments m;
    for (const double value : values)
        m.mean += value / double(values.size());
    for (const double value : values)
        m.spread += (value - m.mean) * (value - m.mean) / double(values.size() - 1);
    m.spread = std::sqrt(m.spread);
    return m;
}

double logNormalLimit(std::vector<double> values) {
    for (double& value : values) {
        if (!(value > 0)) return 0;
        value = std::log(value);
    }
    const Moments m = momentsOf(values);
    return std::exp(m.mean + kSigmas * m.spread);
}

double madLimit(std::vector<double> values) {
    const double median = medianOf(values);
    for (double& value : values)
        value = std::abs(value - median);
    return median + kSigmas * kRobustSigma * medianOf(std::move(values));
}

double percentile(std::vector<double> values, double share) {
    std::sort(values.begin(), values.end());
    const double place = share * double(values.size() - 1);
    const auto below = std::min(std::size_t(place), values.size() - 2);
    return values[below] + (place - double(below)) * (values[below + 1] - values[below]);
}

}  // namespace

std::optional<StatisticalLimits> statisticalLimits(std::span<const double> given) {
    if (given.size() < 3) return std::nullopt;
    const std::vector<double> values(given.begin(), given.end());
    const Moments m = momentsOf(values);
    StatisticalLimits limits;
    limits.count = int(values.size());
    limits.meanPlus3s = m.mean + kSigmas * m.spread;
    limits.logNormal = logNormalLimit(values);
    limits.medianMad = madLimit(values);
    limits.p95 = percentile(values, kShare);
    limits.tolerance = m.mean + toleranceFactor(limits.count, kShare, kShare) * m.spread;
    return limits;
}

}  // namespace fettle
