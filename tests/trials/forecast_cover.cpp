#include <fmt/format.h>

#include <algorithm>
#include <string_view>

#include "core/trend/forecast.h"
#include "tests/trials/made_trends.h"
#include "tests/trials/share.h"
#include "tests/trials/trials.h"

namespace fettle::trials {

namespace {

struct Arm {
    const char* name;
    bool exponential;
    Swings swings;
    double missing;  // share of days without a recording
    int gapDays;     // and one gap in a row
};

constexpr Arm kArms[] = {
    {"straight, daily swing only", false, {1, 0, 0}, 0, 0},
    {"straight, daily and weekly", false, {1, 1, 0}, 0, 0},
    {"straight, daily, weekly, drift", false, {1, 1, 1}, 0, 0},
    {"straight, all and gaps", false, {1, 1, 1}, 0.3, 7},
    {"straight, half swings", false, {0.5, 0.5, 0.5}, 0, 0},
    {"exponential, daily swing only", true, {1, 0, 0}, 0, 0},
    {"exponential, daily and weekly", true, {1, 1, 0}, 0, 0},
    {"exponential, daily, weekly, drift", true, {1, 1, 1}, 0, 0},
    {"exponential, all and gaps", true, {1, 1, 1}, 0.3, 7},
    {"exponential, half swings", true, {0.5, 0.5, 0.5}, 0, 0},
};

struct Tally {
    int asked = 0, given = 0, held = 0, early = 0, late = 0, open = 0;
    std::vector<double> halfWidths, errors;  // of the days left

    void add(const Tally& other) {
        asked += other.asked, given += other.given, held += other.held;
        early += other.early, late += other.late, open += other.open;
        halfWidths.insert(halfWidths.end(), other.halfWidths.begin(), other.halfWidths.end());
        errors.insert(errors.end(), other.errors.begin(), other.errors.end());
    }
};

double middleOf(std::vector<double> values) {
    if (values.empty()) return 0;
    const auto middle = values.begin() + std::ptrdiff_t(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

// One machine: a level that grows from 1.2 .. 2.2 to its limit 4.5 mm/s within 40 to 240 days, looked at when
// 30 to 90 % of that time is over.
void addOne(MadeTrends& made, const Arm& arm, Tally& tally) {
    const double limit = 4.5, start = made.uniform(1.2, 2.2);
    const double whole = made.uniform(40, 240);
    const int seen = int(whole * made.uniform(0.3, 0.9));
    const auto level = [&](double day) {
        return arm.exponential ? start * std::pow(limit / start, day / whole)
                               : start + (limit - start) * day / whole;
    };
    const std::vector<double> swings = made.swings(seen + 1, arm.swings);
    const int gapAt = made.whole(0, std::max(seen - arm.gapDays, 1));
    std::vector<DayValue> days;
    for (int day = 0; day <= seen; ++day) {
        const bool gap = arm.gapDays > 0 && day >= gapAt && day < gapAt + arm.gapDays;
        if (gap || made.uniform(0, 1) < arm.missing) continue;
        days.push_back({day, level(day) * std::pow(10, swings[std::size_t(day)] / 20), 1});
    }
    ++tally.asked;
    const auto date = forecastLimit(days, limit);
    if (!date) return;
    ++tally.given;
    const double from = *date->from, to = date->to ? double(*date->to) : 1e9;
    tally.held += whole >= from && whole <= to;
    tally.early += whole < from;
    tally.late += whole > to;
    tally.open += !date->to;
    const double left = whole - days.back().day;
    tally.halfWidths.push_back((std::min(to, from + 730) - from) / 2 / left);
    tally.errors.push_back(std::abs(*date->median - whole) / left);
}

void print(std::string_view name, const Tally& t) {
    const Interval i = shareInterval(t.held, t.given);
    const double n = std::max(t.given, 1);
    fmt::print(
        "{:<36} {:>6} {:>6.1f} {:>7.1f} {:>5.1f} to {:<5.1f} {:>6.1f} {:>6.1f} {:>6.1f} {:>7.2f} {:>7.2f}\n",
        name, t.given, 100 * t.given / double(std::max(t.asked, 1)), 100 * t.held / n, 100 * i.low,
        100 * i.high, 100 * t.early / n, 100 * t.late / n, 100 * t.open / n, middleOf(t.halfWidths),
        middleOf(t.errors));
}

}  // namespace

int forecastCover(const Arguments& arguments) {
    const long count = numberAfter(arguments, "--machines", 1000), seed = numberAfter(arguments, "--seed", 1);
    fmt::print(
        "Date at the limit, nominal 80 % interval, {} simulated machines an arm, seed {}. A date is given "
        "where\nthe growth stands out. Reached before the interval, after it; half-width and error of the "
        "middle date as\nshares of the days left (medians).\n\n",
        count, seed);
    fmt::print("{:<36} {:>6} {:>6} {:>7} {:>14} {:>6} {:>6} {:>6} {:>7} {:>7}\n", "arm", "dates", "given",
               "held", "95 %", "before", "after", "open", "half", "error");
    Tally all;
    for (const Arm& arm : kArms) {
        MadeTrends made(std::uint64_t(seed) * 1000 + std::uint64_t(&arm - kArms));
        Tally tally;
        for (long i = 0; i < count; ++i)
            addOne(made, arm, tally);
        print(arm.name, tally);
        all.add(tally);
    }
    print("all arms", all);
    return 0;
}

}  // namespace fettle::trials
