#include "core/trend/baseline.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/trend/median.h"

namespace fettle {

namespace {

constexpr double kLeast = 1e-12;  // of a level, so that a zero has a logarithm

int floorDiv(int a, int b) {
    return a >= 0 ? a / b : -((b - 1 - a) / b);
}

std::string dateOf(int day) {
    return formatDate(startOfDay(day));
}

void addMoments(Baseline& baseline) {
    std::vector<double> values;
    double sum = 0, squares = 0;
    for (const DayValue& one : baseline.days) {
        values.push_back(one.value);
        sum += onScale(one.value, baseline.scale);
    }
    const auto count = double(values.size());
    baseline.mean = sum / count;
    for (const double value : values)
        squares += std::pow(onScale(value, baseline.scale) - baseline.mean, 2);
    baseline.spread = std::sqrt(squares / std::max(count - 1, 1.0));
    baseline.median = medianOf(std::move(values));
}

// A day so late belongs no longer to the first ones, and they are enough.
bool isFull(const std::vector<DayValue>& days, int day, const BaselineOptions& options) {
    if (days.size() < std::size_t(std::max(options.fewestDays, 2))) return false;
    return day >= days.front().day + options.mostDays &&
           weekendsIn(days.front().day, days.back().day) >= options.fewestWeekends;
}

std::string missingWords(const BaselineSearch& search, std::size_t days, std::optional<int> segmentStart,
                         const BaselineOptions& options) {
    std::string words = fmt::format("no baseline: {} of {} days at like speed and load", days,
                                    std::max<int>(options.fewestDays, int(days)));
    if (segmentStart) words += " since " + dateOf(*segmentStart);
    if (search.daysMissing > 0) return words + fmt::format(", {} more needed", search.daysMissing);
    return words + fmt::format(", but {} more weekend{} needed", search.weekendsMissing,
                               search.weekendsMissing == 1 ? "" : "s");
}

}  // namespace

double onScale(double value, Scale scale) {
    return scale == Scale::Linear ? value : 20 * std::log10(std::max(value, kLeast));
}

double fromScale(double value, Scale scale) {
    return scale == Scale::Linear ? value : std::pow(10.0, value / 20);
}

// Day 0 is a Thursday: its weekend is days 2 and 3.
int weekendsIn(int first, int last) {
    constexpr int kWeek = 7, kSaturday = 2;
    const int nextSaturday = kSaturday + kWeek * -floorDiv(-(first - kSaturday), kWeek);
    return last <= nextSaturday ? 0 : floorDiv(last - 1 - nextSaturday, kWeek) + 1;
}

std::string Baseline::words() const {
    return fmt::format("{} days from {} to {}", days.size(), dateOf(firstDay()), dateOf(lastDay()));
}

BaselineSearch baselineOf(std::span<const DayValue> days, std::optional<int> segmentStart, int before,
                          Scale scale, const BaselineOptions& options) {
    Baseline baseline;
    baseline.scale = scale;
    for (const DayValue& one : days) {
        if (segmentStart && one.day < *segmentStart + options.runInDays) continue;
        if (one.day >= before || isFull(baseline.days, one.day, options)) break;
        baseline.days.push_back(one);
    }
    BaselineSearch search;
    const std::size_t count = baseline.days.size();
    search.daysMissing = std::max(options.fewestDays - int(count), 0);
    const int weekends = count ? weekendsIn(baseline.firstDay(), baseline.lastDay()) : 0;
    search.weekendsMissing = std::max(options.fewestWeekends - weekends, 0);
    if (search.daysMissing > 0 || search.weekendsMissing > 0) {
        search.why = missingWords(search, count, segmentStart, options);
        return search;
    }
    addMoments(baseline);
    search.baseline = std::move(baseline);
    return search;
}

}  // namespace fettle
