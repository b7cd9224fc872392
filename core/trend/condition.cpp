#include "core/trend/condition.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace fettle {

namespace {

using Known = std::optional<double> RunValue::*;

bool nearSpeed(double speed, double middle) {
    return std::abs(speed - middle) <= kLikeSpeedShare * middle;
}

bool nearLoad(double load, double middle) {
    return std::abs(load - middle) <= kLikeLoadPct;
}

std::string usualState(std::span<const RunValue> values) {
    std::map<std::string, std::size_t> counts;
    for (const RunValue& one : values)
        ++counts[one.running];
    const auto most = std::max_element(counts.begin(), counts.end(),
                                       [](const auto& a, const auto& b) { return a.second < b.second; });
    return most->first;
}

// The middle of the window of half-width `reach(middle)` that holds most of the sorted values.
template <class Near>
double fullest(const std::vector<double>& sorted, Near near) {
    double best = sorted.front();
    std::ptrdiff_t most = 0;
    for (const double middle : sorted) {
        const auto inside =
            std::count_if(sorted.begin(), sorted.end(), [&](double one) { return near(one, middle); });
        if (inside > most) best = middle;
        most = std::max(most, inside);
    }
    return best;
}

// Empty unless more than half of the values say it.
template <class Near>
std::optional<double> usual(const std::vector<const RunValue*>& values, Known known, Near near) {
    std::vector<double> said;
    for (const RunValue* one : values)
        if (one->*known) said.push_back(*(one->*known));
    if (2 * said.size() <= values.size()) return std::nullopt;
    std::sort(said.begin(), said.end());
    return fullest(said, near);
}

}  // namespace

bool Condition::holds(const RunValue& value) const {
    if (value.running != running) return false;
    if (speedRpm && !(value.speedRpm && nearSpeed(*value.speedRpm, *speedRpm))) return false;
    return !loadPct || (value.loadPct && nearLoad(*value.loadPct, *loadPct));
}

std::string Condition::words() const {
    std::string text = speedRpm ? fmt::format("near {:.0f} r/min", *speedRpm) : "";
    if (loadPct) text += fmt::format("{} {:.0f} % load", text.empty() ? "near" : " and", *loadPct);
    return text;
}

std::optional<Condition> usualCondition(std::span<const RunValue> values) {
    if (values.empty()) return std::nullopt;
    Condition condition;
    condition.running = usualState(values);
    std::vector<const RunValue*> alike;
    for (const RunValue& one : values)
        if (one.running == condition.running) alike.push_back(&one);
    condition.speedRpm = usual(alike, &RunValue::speedRpm, nearSpeed);
    std::erase_if(alike, [&](const RunValue* one) { return !condition.holds(*one); });
    condition.loadPct = usual(alike, &RunValue::loadPct, nearLoad);
    return condition;
}

std::vector<DayValue> likeDays(std::span<const RunValue> values, const Condition& condition) {
    std::vector<TimedValue> alike;
    for (const RunValue& one : values)
        if (condition.holds(one)) alike.push_back({one.time, one.value});
    return dailyMedians(alike);
}

}  // namespace fettle
