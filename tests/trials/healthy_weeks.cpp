// Healthy machines by the thousand, through the engine and the round: what gets onto the list all the same.
#include <fmt/format.h>

#include <map>

#include "core/round/evidence.h"
#include "core/round/round.h"
#include "tests/trials/made_weeks.h"
#include "tests/trials/share.h"
#include "tests/trials/trials.h"

namespace fettle::trials {

namespace {

constexpr std::size_t kFleet = 100;  // machines a round
constexpr double kWeeksAMonth = 365.25 / 12 / 7;

struct Outcome {
    MachineWeek week;
    std::optional<double> weightDban;
};

Outcome outcomeOf(const sim::Scenario& scenario, std::size_t i, int perNode) {
    WeekOrder order;
    order.like = i % scenario.machines.size();
    order.tag = fmt::format("{} {}", scenario.machines[order.like].machine.tag, i);
    order.perNode = perNode;
    order.key = i + 1;
    order.weeksIn = i % std::size_t(std::max(1, scenario.weeks));
    const MadeWeek made = madeWeek(scenario, order);
    Outcome outcome;
    outcome.week.tag = order.tag;
    outcome.week.criticality = made.machine.criticality;
    outcome.week.recordings = outcome.week.turning = made.recordings.size();
    outcome.week.week = examinedWeek(made);
    outcome.week.newest = made.recordings.back()->time;
    outcome.weightDban = machineDban(hypothesesOf(*outcome.week.week));
    return outcome;
}

void printRate(const char* what, std::size_t entries, std::size_t weeks) {
    const double scale = kFleet * kWeeksAMonth / double(weeks);
    const Interval interval = countInterval(entries);
    fmt::print("{:<44} {:>4}   {:.3g} per 100 machines and month, 95 % {:.3g} to {:.3g}\n", what, entries,
               double(entries) * scale, interval.low * scale, interval.high * scale);
}

// What is weighed line by line: how many of a fault's weeks reach a weight by chance.
struct Reached {
    std::size_t weighed = 0, at[3] = {};
};

void addReached(std::map<std::string, Reached>& all, const Examination& week) {
    for (const Hypothesis& h : week.considered) {
        if (!h.weightDban) continue;
        Reached& reached = all[h.fault];
        ++reached.weighed;
        for (int i = 0; i < 3; ++i)
            reached.at[i] += *h.weightDban >= 10 * (i + 1);
    }
}

void printReached(const std::map<std::string, Reached>& all) {
    fmt::print("\nweeks of a place in which a fault reaches a weight (95 % interval of the share)\n");
    for (const auto& [fault, reached] : all) {
        fmt::print("  {:<26} {:>6}", fault, reached.weighed);
        for (int i = 0; i < 3; ++i) {
            const Interval interval = countInterval(reached.at[i]);
            const double n = double(reached.weighed);
            fmt::print("   {} dban: {} ({:.2g} to {:.2g} %)", 10 * (i + 1), reached.at[i],
                       100 * interval.low / n, 100 * interval.high / n);
        }
        fmt::print("\n");
    }
}

}  // namespace

int healthyWeeks(const Arguments& arguments) {
    const auto scenario = sampleScenario(textAfter(arguments, "--scenario", "sample_fleet"));
    const auto count = std::size_t(numberAfter(arguments, "--weeks", 2000));
    const int perNode = int(numberAfter(arguments, "--per-node", 7));
    std::vector<Outcome> all(count);
    onAllCores(count, [&](std::size_t i) { all[i] = outcomeOf(scenario, i, perNode); });
    std::map<std::string, std::size_t> listed, named;
    std::size_t recordings = 0, reached = 0;
    double largest = -1e9;
    std::map<std::string, Reached> weights;
    for (const Outcome& outcome : all)
        addReached(weights, *outcome.week.week);
    for (std::size_t from = 0; from < count; from += kFleet) {
        std::vector<MachineWeek> fleet;
        for (std::size_t i = from; i < std::min(count, from + kFleet); ++i) {
            recordings += all[i].week.recordings;
            largest = std::max(largest, all[i].weightDban.value_or(largest));
            reached += all[i].weightDban.value_or(0) >= 20;
            fleet.push_back(all[i].week);
        }
        RoundSettings settings;
        settings.until = "2026-07-05";
        settings.end = *parseUtc("2026-07-06T00:00:00Z");
        settings.silentDays = 400;  // their weeks lie anywhere in the half year
        for (const RoundMachine& machine : makeRound(fleet, settings, nullptr).machines) {
            ++listed[toText(machine.listedBy)];
            for (const RoundFinding& f : machine.findings)
                ++named[toText(machine.listedBy) + ": " + findingName(f.finding)];
        }
    }
    fmt::print("{} healthy machine-weeks of {} kinds of machine, {} recordings, rounds of {}\n", count,
               scenario.machines.size(), recordings, kFleet);
    printRate("listed on evidence", listed["evidence"], count);
    printRate("listed by change", listed["change"], count);
    printRate("listed by zone", listed["zone"], count);
    fmt::print("machines at 20 decibans or more {}, largest {:.1f} decibans\n", reached, largest);
    for (const auto& [name, times] : named)
        fmt::print("  {:>4} x {}\n", times, name);
    printReached(weights);
    return 0;
}

}  // namespace fettle::trials
