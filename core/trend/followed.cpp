#include "core/trend/followed.h"

#include <algorithm>
#include <array>

namespace fettle {

namespace {

struct Row {
    Followed quantity;
    const char* name;
    bool line;
    Scale scale;
    double leastStep;
};
// Least steps: common practice, no source.
constexpr std::array<Row, 6> kRows = {
    {{Followed::Order1, "1x", true, Scale::Decibels, 6},
     {Followed::Order2, "2x", true, Scale::Decibels, 6},
     {Followed::Order3, "3x", true, Scale::Decibels, 6},
     {Followed::Velocity, "vibration", false, Scale::Decibels, 6},
     {Followed::HighBand, "band above 1 kHz", false, Scale::Decibels, 6},
     {Followed::TemperatureRise, "frame over ambient", false, Scale::Linear, 10}}};

const Row& rowOf(Followed quantity) {
    return kRows[std::size_t(quantity)];
}

std::vector<RunValue> within(std::span<const RunValue> values, int firstDay, int lastDay) {
    std::vector<RunValue> some;
    for (const RunValue& one : values)
        if (dayOf(one.time) >= firstDay && dayOf(one.time) <= lastDay) some.push_back(one);
    return some;
}

}  // namespace

std::string toText(Followed quantity) {
    return rowOf(quantity).name;
}

bool isLine(Followed quantity) {
    return rowOf(quantity).line;
}

Scale scaleOf(Followed quantity) {
    return rowOf(quantity).scale;
}

double leastStepOf(Followed quantity) {
    return rowOf(quantity).leastStep;
}

WeekChange changeOfWeek(std::span<const RunValue> values, std::optional<int> segmentStart, int firstDay,
                        int lastDay, Followed quantity, const MattersBy& by) {
    WeekChange out;
    const auto condition = usualCondition(within(values, firstDay, lastDay));
    if (!condition) {
        out.why = "no running recording in the week";
        return out;
    }
    out.condition = condition->words();
    const std::vector<DayValue> days = likeDays(values, *condition);
    const BaselineSearch search = baselineOf(days, segmentStart, firstDay, scaleOf(quantity));
    out.why = search.why;
    if (!search.baseline) return out;
    out.baselineDays = int(search.baseline->days.size());
    out.baselineFrom = search.baseline->firstDay();
    out.baselineTo = search.baseline->lastDay();
    std::vector<DayValue> week, upToNow;
    for (const DayValue& one : days) {
        if (one.day > lastDay) continue;
        upToNow.push_back(one);
        if (one.day >= firstDay) week.push_back(one);
    }
    out.change = weighChange(*search.baseline, week);
    if (!out.change) {
        out.why = "too few days of the week at like speed and load";
        return out;
    }
    out.since = changedSince(*search.baseline, upToNow);
    out.matters = matters(*out.change, by);
    return out;
}

}  // namespace fettle
