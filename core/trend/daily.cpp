#include "core/trend/daily.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "core/trend/median.h"

namespace fettle {

namespace {
constexpr int kWeek = 7;
}

int dayOf(Instant time) {
    return int(std::chrono::floor<std::chrono::days>(time).time_since_epoch().count());
}

Instant startOfDay(int day) {
    return std::chrono::sys_days(std::chrono::days(day));
}

std::vector<DayValue> dailyMedians(std::span<const TimedValue> values) {
    std::map<int, std::vector<double>> byDay;
    for (const TimedValue& one : values)
        if (std::isfinite(one.value)) byDay[dayOf(one.time)].push_back(one.value);
    std::vector<DayValue> days;
    for (auto& [day, ofDay] : byDay) {
        const int count = int(ofDay.size());
        days.push_back({day, medianOf(std::move(ofDay)), count});
    }
    return days;
}

std::vector<double> weeklyMedians(std::span<const DayValue> days, int lastDay, int weeks) {
    std::vector<std::vector<double>> byWeek(std::size_t(std::max(weeks, 0)));
    for (const DayValue& one : days) {
        if (one.day > lastDay || !std::isfinite(one.value)) continue;
        const auto back = std::size_t((lastDay - one.day) / kWeek);
        if (back < byWeek.size()) byWeek[byWeek.size() - 1 - back].push_back(one.value);
    }
    std::vector<double> medians;
    for (auto& ofWeek : byWeek)
        medians.push_back(medianOf(std::move(ofWeek)));
    return medians;
}

}  // namespace fettle
