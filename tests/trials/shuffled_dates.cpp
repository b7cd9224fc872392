#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <random>

#include "core/fleet/machine_desk.h"
#include "core/store/fleet_file.h"
#include "core/trend/change.h"
#include "tests/trials/made_trends.h"
#include "tests/trials/share.h"
#include "tests/trials/trials.h"

namespace fettle::trials {

namespace {

constexpr std::array<double, 3> kLevels = {10, 20, 30};
constexpr int kWeek = 7;

struct Cluster {
    double trials = 0;
    std::array<double, 3> hits{};
};

// Weights of one rule, by machine.
struct Tally {
    std::map<std::size_t, Cluster> clusters;

    void add(std::size_t machine, double weightDban) {
        Cluster& c = clusters[machine];
        ++c.trials;
        for (std::size_t i = 0; i < kLevels.size(); ++i)
            c.hits[i] += weightDban >= kLevels[i];
    }
    // Trials of one machine are alike: as many as would give the same scatter of its share.
    void print(const std::string& name) const {
        double n = 0;
        for (const auto& [machine, c] : clusters)
            n += c.trials;
        fmt::print("{:<52} {:>8.0f}", name, n);
        for (std::size_t i = 0; i < kLevels.size(); ++i) {
            double hits = 0, scatter = 0;
            for (const auto& [machine, c] : clusters)
                hits += c.hits[i];
            const double share = n > 0 ? hits / n : 0;
            for (const auto& [machine, c] : clusters)
                scatter += std::pow(c.hits[i] - share * c.trials, 2);
            const double independent =
                scatter > 0 ? std::min(n, share * (1 - share) * n * n / scatter) : double(clusters.size());
            const Interval interval = shareInterval(hits, n, independent);
            fmt::print("  {:>6.3f} ({:.3f}-{:.3f})", 100 * share, 100 * interval.low, 100 * interval.high);
        }
        fmt::print("\n");
    }
};

using Values = std::vector<double>;

void shuffleDays(Values& values, std::mt19937_64& random) {
    std::shuffle(values.begin(), values.end(), random);
}

// Whole weeks change places; the order within them stays.
void shuffleWeeks(Values& values, std::mt19937_64& random) {
    const std::size_t weeks = values.size() / kWeek, offset = values.size() % kWeek;
    std::vector<std::size_t> order(weeks);
    for (std::size_t i = 0; i < weeks; ++i)
        order[i] = i;
    std::shuffle(order.begin(), order.end(), random);
    const Values before = values;
    for (std::size_t w = 0; w < weeks; ++w)
        for (std::size_t d = 0; d < kWeek; ++d)
            values[offset + w * kWeek + d] = before[offset + order[w] * kWeek + d];
}

// The last seven against the first ones, dates counted on.
void weighBoth(const Values& values, std::size_t machine, std::array<Tally, 2>& tallies) {
    std::vector<DayValue> days;
    for (std::size_t i = 0; i < values.size(); ++i)
        days.push_back({int(i) + 4, values[i], 1});
    const int first = days[days.size() - kWeek].day;
    const BaselineSearch search = baselineOf(days, std::nullopt, first);
    if (!search.baseline) return;
    for (std::size_t rule = 0; rule < tallies.size(); ++rule) {
        ChangeOptions options;
        options.rule = rule == 0 ? WeekRule::MeanOfDays : WeekRule::MiddleDay;
        const auto change = weighChange(*search.baseline, std::span(days).last(kWeek), options);
        if (change) tallies[rule].add(machine, change->weightDban);
    }
}

void printBoth(const std::string& name, const std::array<Tally, 2>& tallies) {
    tallies[0].print(name + ", mean of days");
    tallies[1].print(name + ", middle day");
}

void printHead() {
    fmt::print("{:<52} {:>8}", "share of weights at or above, % (95 %)", "weights");
    for (const double level : kLevels)
        fmt::print("  {:>15.0f} decibans", level);
    fmt::print("\n");
}

void simulated(long machines, std::uint64_t seed) {
    const struct {
        const char* name;
        int days;
    } lengths[] = {{"21 days", 21}, {"49 days", 49}, {"182 days", 182}};
    for (const auto& length : lengths) {
        MadeTrends made(seed);
        std::mt19937_64 random(seed + 1);
        std::array<Tally, 2> asTheyCame, byDays, byWeeks;
        for (long m = 0; m < machines; ++m) {
            Values values = made.swings(length.days, {});
            for (double& value : values)
                value = std::pow(10, value / 20);
            weighBoth(values, std::size_t(m), asTheyCame);
            shuffleWeeks(values, random);
            weighBoth(values, std::size_t(m), byWeeks);
            shuffleDays(values, random);
            weighBoth(values, std::size_t(m), byDays);
        }
        printBoth(fmt::format("{}, days shuffled", length.name), byDays);
        printBoth(fmt::format("{}, weeks shuffled", length.name), byWeeks);
        printBoth(fmt::format("{}, in their order", length.name), asTheyCame);
    }
}

Values dailyOf(const std::vector<TrendValues>& rows, Quantity quantity) {
    std::vector<TimedValue> values;
    for (const TrendValues& row : rows)
        if (row.of(quantity) && isRunning(row.running)) values.push_back({row.time, *row.of(quantity)});
    Values daily;
    for (const DayValue& day : dailyMedians(values))
        daily.push_back(day.value);
    return daily;
}

int ofFleet(const std::string& path, std::uint64_t seed) {
    auto fleet = FleetFile::open(path);
    const auto machines = fleet ? (*fleet)->machines().all() : Result<std::vector<MachineEntry>>({});
    if (!fleet || !machines) {
        fmt::print(stderr, "{}\n", (fleet ? machines.error() : fleet.error()).sentence());
        return 3;
    }
    constexpr int kRepeats = 20;
    std::mt19937_64 random(seed);
    std::array<Tally, 2> byDays, byWeeks;
    for (const MachineEntry& machine : *machines) {
        const auto channels = (*fleet)->trends().channels(machine.id);
        if (!channels) continue;
        for (const ChannelEntry& channel : *channels) {
            const auto rows = (*fleet)->trends().values(channel.id, Instant::min(), Instant::max());
            if (!rows || channel.quantity != "acceleration") continue;
            for (const Quantity q : {Quantity::VelocityRms, Quantity::Order1, Quantity::Order2,
                                     Quantity::Order3, Quantity::HighBand}) {
                Values values = dailyOf(*rows, q);
                if (values.size() < 3 * kWeek) continue;
                for (int i = 0; i < kRepeats; ++i) {
                    shuffleWeeks(values, random);
                    weighBoth(values, std::size_t(machine.id), byWeeks);
                    shuffleDays(values, random);
                    weighBoth(values, std::size_t(machine.id), byDays);
                }
            }
        }
    }
    printBoth("days shuffled", byDays);
    printBoth("weeks shuffled", byWeeks);
    return 0;
}

}  // namespace

int shuffledDates(const Arguments& arguments) {
    const long machines = numberAfter(arguments, "--machines", 2000),
               seed = numberAfter(arguments, "--seed", 1);
    const bool fleet = !arguments.empty() && arguments[0].rfind("--", 0) != 0;
    fmt::print(
        "Weight of the last week against its baseline where nothing changed; bounds 10, 1 and 0.1 %. {}\n\n",
        fleet ? "Daily medians of " + arguments[0]
              : fmt::format("{} simulated trends, daily, weekly and drift swings of 1 dB, seed {}", machines,
                            seed));
    printHead();
    if (fleet) return ofFleet(arguments[0], std::uint64_t(seed));
    simulated(machines, std::uint64_t(seed));
    return 0;
}

}  // namespace fettle::trials
