#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "core/round/change_findings.h"
#include "tests/trials/made_trends.h"
#include "tests/trials/share.h"
#include "tests/trials/trials.h"

namespace fettle::trials {

namespace {

constexpr double kWeeksAMonth = 365.25 / 12 / 7;
constexpr double kBelowCarrierDb = -30, kKelvinADb = 2;
constexpr double kLimitAB = 1.4, kLimitBC = 2.8;  // ISO 20816-3 group 2 rigid, mm/s

// A quantity of a sound machine: its share of the level, its own swings beside those all share.
struct Quantity {
    Followed followed;
    const char* fault;
    const char* name;
    const char* unit;
    double least, most;
    bool line;
};
constexpr Quantity kQuantities[] = {
    {Followed::Velocity, "", "vibration", "mm/s", 1, 1, false},
    {Followed::Order1, "", "1x", "mm/s", 0.3, 0.8, true},
    {Followed::Order2, "", "2x", "mm/s", 0.1, 0.4, true},
    {Followed::Order3, "", "3x", "mm/s", 0.03, 0.2, true},
    {Followed::Measure, "looseness", "orders 4-10", "mm/s", 0.05, 0.3, true},
    {Followed::Measure, "looseness", "half orders", "mm/s", 0.01, 0.05, true},
    {Followed::Measure, "blade_pass", "blade pass", "mm/s", 0.05, 0.4, true},
    {Followed::HighBand, "", "high band", "g", 0.1, 0.5, false},
    {Followed::Measure, "supply_unbalance", "3 x mains in flux", "dB", 0, 0, true},
};

// Half of a channel's swing is the machine's, half its own.
std::vector<double> mixed(const std::vector<double>& common, MadeTrends& made, const Swings& swings) {
    std::vector<double> own = made.swings(int(common.size()), swings);
    for (std::size_t i = 0; i < own.size(); ++i)
        own[i] = std::sqrt(0.5) * (own[i] + common[i]);
    return own;
}

std::vector<RunValue> runValues(const std::vector<double>& decibels, double level, int lastDay, Scale scale,
                                double unitsADb = 1) {
    std::vector<RunValue> values;
    for (std::size_t i = 0; i < decibels.size(); ++i) {
        RunValue one;
        one.time = startOfDay(lastDay - int(decibels.size()) + 1 + int(i));
        one.running = "running";
        one.value =
            scale == Scale::Linear ? level + unitsADb * decibels[i] : level * std::pow(10, decibels[i] / 20);
        values.push_back(one);
    }
    return values;
}

void addChange(MachineWeek& week, const Quantity& q, const std::string& direction,
               const std::vector<RunValue>& values, int lastDay, const MattersBy& by, Scale scale) {
    FollowedChange one;
    one.quantity = q.followed;
    one.fault = q.fault;
    one.name = q.name;
    one.unit = q.unit;
    one.at = "driver DE";
    one.point = "M-DE";
    one.channel = direction.substr(0, 1);
    one.direction = direction;
    one.week = changeOfWeek(values, std::nullopt, lastDay - 6, lastDay, scale, by);
    week.changes.push_back(std::move(one));
}

// One point with three directions and a thermometer, 4 to 26 weeks of history.
MachineWeek soundWeek(MadeTrends& made, const Swings& swings, int lastDay) {
    MachineWeek week;
    week.zone = "B";
    const int days = 7 * made.whole(4, 26);
    const std::vector<double> common = made.swings(days, swings);
    const double level = made.logUniform(0.5, 2.4);
    for (const std::string direction : {"horizontal", "vertical", "axial"})
        for (const Quantity& q : kQuantities) {
            MattersBy by;
            if (q.unit == std::string("mm/s")) by.limitAB = kLimitAB, by.limitBC = kLimitBC;
            by.line = q.line;
            const bool belowCarrier = q.unit == std::string("dB");
            const Scale scale = belowCarrier ? Scale::Linear : Scale::Decibels;
            const double middle = belowCarrier ? kBelowCarrierDb : level * made.logUniform(q.least, q.most);
            addChange(week, q, direction, runValues(mixed(common, made, swings), middle, lastDay, scale),
                      lastDay, by, scale);
        }
    MattersBy heat;
    heat.leastStep = 10;
    addChange(week, {Followed::TemperatureRise, "", "frame over ambient", "K", 0, 0, false}, "horizontal",
              runValues(mixed(common, made, swings), 30, lastDay, Scale::Linear, kKelvinADb), lastDay, heat,
              Scale::Linear);
    return week;
}

void run(const char* name, const Swings& swings, long weeks, std::uint64_t seed) {
    MadeTrends made(seed);
    const RoundSettings settings{"2026-05-04", "2026-05-10", *parseUtc("2026-05-11T00:00:00Z"), 0.1, 20, 7};
    const UrgencyRule rule;
    const int lastDay = dayOf(*parseUtc("2026-05-10T12:00:00Z"));
    std::size_t entries = 0;
    std::map<std::string, int> faults;
    for (long i = 0; i < weeks; ++i) {
        const auto found = changeFindings(soundWeek(made, swings, lastDay), {}, settings, rule);
        entries += !found.empty();
        for (const RoundFinding& f : found)
            ++faults[f.finding.fault.empty() ? "not named" : f.finding.fault];
    }
    const Interval count = countInterval(entries);
    const double scale = 100 * kWeeksAMonth / double(weeks);
    fmt::print("{:<44} {:>6} {:>7} {:>9.2f}  {:.2f} to {:.2f} ", name, weeks, entries,
               double(entries) * scale, count.low * scale, count.high * scale);
    for (const auto& [fault, times] : faults)
        fmt::print("  {} {}", fault, times);
    fmt::print("\n");
}

}  // namespace

int healthyTrends(const Arguments& arguments) {
    const long weeks = numberAfter(arguments, "--weeks", 2000);
    const auto seed = std::uint64_t(numberAfter(arguments, "--seed", 1));
    fmt::print(
        "Trends of sound machines, 28 quantities at one point each, 4 to 26 weeks of history; entries by "
        "change\nof one week. Rate: a month, 100 machines; 95 %, exact.\n\n{:<44} {:>6} {:>7} {:>9}  95 %\n",
        "swings", "weeks", "entries", "rate");
    run("daily, weekly and drift 1 dB", {}, weeks, seed);
    run("daily 1 dB only", {1, 0, 0}, weeks, seed + 1);
    run("daily 1, weekly 1, drift 2 dB over 60 days", {1, 1, 2, 60}, weeks, seed + 2);
    run("daily 2, weekly 2, drift 2 dB", {2, 2, 2}, weeks, seed + 3);
    return 0;
}

}  // namespace fettle::trials
