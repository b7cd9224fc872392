#include "core/trend/followed.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace fettle {

namespace {

std::vector<RunValue> within(std::span<const RunValue> values, int firstDay, int lastDay) {
    std::vector<RunValue> some;
    for (const RunValue& one : values)
        if (dayOf(one.time) >= firstDay && dayOf(one.time) <= lastDay) some.push_back(one);
    return some;
}

std::optional<StatisticalLimits> limitsOf(const Baseline& baseline) {
    std::vector<double> values;
    for (const DayValue& day : baseline.days)
        values.push_back(day.value);
    return statisticalLimits(values);
}

// Of days oldest first: those in [first, last].
std::span<const DayValue> daysIn(std::span<const DayValue> days, int first, int last) {
    const auto from =
        std::find_if(days.begin(), days.end(), [&](const DayValue& d) { return d.day >= first; });
    const auto to = std::find_if(from, days.end(), [&](const DayValue& d) { return d.day > last; });
    return {from, to};
}

}  // namespace

std::string followedName(Followed quantity) {
    static constexpr std::array<const char*, 7> kNames = {
        "1x", "2x", "3x", "vibration", "high band", "frame over ambient", "measure"};
    return kNames[std::size_t(quantity)];
}

std::string WeekChange::baselineWords() const {
    if (baselineDays == 0) return why;
    const auto date = [](int day) { return formatDate(startOfDay(day)); };
    return fmt::format("{} days from {} to {}", baselineDays, date(baselineFrom), date(baselineTo));
}

WeekChange changeOfWeek(std::span<const RunValue> values, std::optional<int> segmentStart, int firstDay,
                        int lastDay, Scale scale, const MattersBy& by) {
    WeekChange out;
    const auto condition = usualCondition(within(values, firstDay, lastDay));
    if (!condition) {
        out.why = "no running recording in the week";
        return out;
    }
    out.condition = condition->words();
    const std::vector<DayValue> days = likeDays(values, *condition);
    const BaselineSearch search = baselineOf(days, segmentStart, firstDay, scale);
    out.why = search.why;
    if (!search.baseline) return out;
    out.baselineDays = int(search.baseline->days.size());
    out.baselineFrom = search.baseline->firstDay();
    out.baselineTo = search.baseline->lastDay();
    out.change = weighChange(*search.baseline, daysIn(days, firstDay, lastDay));
    if (!out.change) {
        out.why = "too few days of the week at like speed and load";
        return out;
    }
    out.since = changedSince(*search.baseline, daysIn(days, search.baseline->lastDay() + 1, lastDay));
    out.matters = matters(*out.change, by);
    if (out.matters) out.limits = limitsOf(*search.baseline);
    return out;
}

}  // namespace fettle
