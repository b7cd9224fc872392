#include "core/trend/growth.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/trend/distribution.h"
#include "core/trend/median.h"

namespace fettle {

namespace {

constexpr int kDaysOfWeek = 7;
constexpr double kStepDown = 0.5;        // to less than this share of what it was
constexpr std::size_t kAround = 3;       // daily medians on either side that say so,
constexpr std::size_t kLeastAround = 2;  // and never a single one

using DaySpan = std::span<const DayValue>;

double medianOfValues(DaySpan days) {
    std::vector<double> values;
    for (const DayValue& one : days)
        values.push_back(one.value);
    return medianOf(std::move(values));
}

bool stepsDownAt(DaySpan days, std::size_t i) {
    const std::size_t before = std::min(i, kAround), after = std::min(days.size() - i, kAround);
    if (before < kLeastAround || after < kLeastAround) return false;
    return medianOfValues(days.subspan(i, after)) <
           kStepDown * medianOfValues(days.subspan(i - before, before));
}

// The first day after the last step down. Several neighbours of a step look like it; the largest fall is it.
std::size_t startAfterStep(DaySpan days) {
    std::size_t at = days.size();
    while (at > 0 && !stepsDownAt(days, at - 1))
        --at;
    if (at == 0) return 0;
    std::size_t step = --at;
    const auto fall = [&](std::size_t i) { return days[i - 1].value - days[i].value; };
    for (; at > 0 && stepsDownAt(days, at); --at)
        if (fall(at) > fall(step)) step = at;
    return step;
}

// n (n - 1) (2 n + 5), of the sample and of each group of ties.
double kendallTerm(double n) {
    return n * (n - 1) * (2 * n + 5);
}

// Variance of Kendall's statistic with ties among the values (Sen 1968, equation 2.6); days have none.
double kendallVariance(DaySpan days) {
    std::map<double, int> ties;
    for (const DayValue& one : days)
        ++ties[one.value];
    double sum = kendallTerm(double(days.size()));
    for (const auto& [value, count] : ties)
        sum -= kendallTerm(count);
    return sum / 18;
}

std::vector<double> sortedSlopes(DaySpan days) {
    std::vector<double> slopes;
    for (std::size_t j = 1; j < days.size(); ++j)
        for (std::size_t i = 0; i < j; ++i)
            if (days[j].day > days[i].day)
                slopes.push_back((days[j].value - days[i].value) / double(days[j].day - days[i].day));
    std::sort(slopes.begin(), slopes.end());
    return slopes;
}

// Of the slopes in their order, those that bound the interval.
std::pair<double, double> senInterval(const std::vector<double>& slopes, double variance, double cover) {
    const double half =
        normalQuantile((1 + std::clamp(cover, 0.0, 0.999999)) / 2) * std::sqrt(std::max(variance, 0.0));
    const auto n = double(slopes.size());
    const double low = std::max(std::nearbyint((n - half) / 2) - 1, 0.0);
    const double high = std::min(std::nearbyint((n + half) / 2), n - 1);
    return {slopes[std::size_t(low)], slopes[std::size_t(high)]};
}

std::vector<DayValue> usable(DaySpan days, int mostDays) {
    std::vector<DayValue> kept;
    for (const DayValue& one : days)
        if (std::isfinite(one.value) && one.day > days.back().day - mostDays) kept.push_back(one);
    return kept;
}

}  // namespace

std::optional<Growth> growthOf(std::span<const DayValue> days, const GrowthOptions& options) {
    const std::vector<DayValue> used = growthDays(days, options);
    if (used.size() < std::size_t(std::max(options.fewestDays, 2))) return std::nullopt;
    const std::vector<double> slopes = sortedSlopes(used);
    if (slopes.empty()) return std::nullopt;
    const auto [low, high] = senInterval(slopes, kendallVariance(used), options.cover);
    const MiddleLine line = middleLine(used);
    Growth growth;
    growth.perWeek = line.slope * kDaysOfWeek;
    growth.low = low * kDaysOfWeek;
    growth.high = high * kDaysOfWeek;
    growth.now = line.at(used.back().day);
    growth.days = int(used.size());
    growth.sinceDay = used.front().day;
    growth.lastDay = used.back().day;
    return growth;
}

std::vector<DayValue> growthDays(std::span<const DayValue> days, const GrowthOptions& options) {
    if (days.empty()) return {};
    const std::vector<DayValue> recent = usable(days, options.mostDays);
    return {recent.begin() + std::ptrdiff_t(startAfterStep(recent)), recent.end()};
}

MiddleLine middleLine(std::span<const DayValue> days) {
    std::vector<double> dates;
    for (const DayValue& one : days)
        dates.push_back(one.day);
    return {medianOf(std::move(dates)), medianOfValues(days), medianOf(sortedSlopes(days))};
}

}  // namespace fettle
