#include "core/trend/dependence.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/trend/median.h"

namespace fettle {

namespace {

constexpr std::size_t kFewest = 20, kMost = 300;  // values; of more, evenly drawn ones
constexpr double kSpeedRange = 0.15, kLoadRange = 15, kWarmthRange = 8;

struct Pair {
    double x = 0, y = 0;
};
using Pairs = std::vector<Pair>;

Pairs pairsOf(std::span<const RunValue> values, std::optional<double> RunValue::*of) {
    Pairs all;
    for (const RunValue& one : values)
        if (one.*of && one.value > 0 && std::isfinite(one.value)) all.push_back({*(one.*of), one.value});
    if (all.size() <= kMost) return all;
    Pairs some;
    for (std::size_t i = 0; i < kMost; ++i)
        some.push_back(all[i * all.size() / kMost]);
    return some;
}

// From the tenth to the ninetieth of a hundred: a single odd value is no range.
double rangeOf(const Pairs& pairs) {
    std::vector<double> xs;
    for (const Pair& one : pairs)
        xs.push_back(one.x);
    std::sort(xs.begin(), xs.end());
    return xs[xs.size() * 9 / 10] - xs[xs.size() / 10];
}

double sign(double x) {
    return x > 0 ? 1 : x < 0 ? -1 : 0;
}

double kendall(const Pairs& pairs) {
    double agree = 0, xs = 0, ys = 0;
    for (std::size_t j = 1; j < pairs.size(); ++j)
        for (std::size_t i = 0; i < j; ++i) {
            const double dx = sign(pairs[j].x - pairs[i].x), dy = sign(pairs[j].y - pairs[i].y);
            agree += dx * dy;
            xs += dx * dx;
            ys += dy * dy;
        }
    return xs > 0 && ys > 0 ? agree / std::sqrt(xs * ys) : 0;
}

std::optional<double> follows(std::span<const RunValue> values, std::optional<double> RunValue::*of,
                              double range) {
    const Pairs pairs = pairsOf(values, of);
    if (pairs.size() < kFewest || rangeOf(pairs) < range) return std::nullopt;
    return kendall(pairs);
}

}  // namespace

std::optional<double> speedPower(std::span<const RunValue> values) {
    Pairs pairs = pairsOf(values, &RunValue::speedRpm);
    std::erase_if(pairs, [](const Pair& one) { return !(one.x > 0); });
    for (Pair& one : pairs)
        one = {std::log(one.x), std::log(one.y)};
    if (pairs.size() < kFewest || rangeOf(pairs) < std::log1p(kSpeedRange)) return std::nullopt;
    std::vector<double> slopes;
    for (std::size_t j = 1; j < pairs.size(); ++j)
        for (std::size_t i = 0; i < j; ++i)
            if (std::abs(pairs[j].x - pairs[i].x) > kSpeedRange / 3)
                slopes.push_back((pairs[j].y - pairs[i].y) / (pairs[j].x - pairs[i].x));
    if (slopes.empty()) return std::nullopt;
    return medianOf(std::move(slopes));
}

std::optional<double> followsLoad(std::span<const RunValue> values) {
    return follows(values, &RunValue::loadPct, kLoadRange);
}

std::optional<double> followsWarmth(std::span<const RunValue> values) {
    return follows(values, &RunValue::frameTempC, kWarmthRange);
}

}  // namespace fettle
