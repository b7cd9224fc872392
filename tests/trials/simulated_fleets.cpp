// e-BH over simulated fleets: how much of the list is chance, and how many of the faulty are on it. Weeks are
// made once, sound and faulty, and fleets drawn from them.
#include <fmt/format.h>

#include <cmath>
#include <random>

#include "core/round/e_bh.h"
#include "core/round/evidence.h"
#include "tests/trials/made_weeks.h"
#include "tests/trials/trials.h"

namespace fettle::trials {

namespace {

constexpr std::size_t kFleet = 100;
constexpr double kAlpha = 0.1;
constexpr double kUpper = 0.75;  // developed and late
constexpr const char* kFaults[] = {"bearing_outer_race", "bearing_inner_race", "bearing_rolling_element",
                                   "bearing_cage"};

struct Week {
    double weightDban = 0;
    double severity = 0;
    bool rightBearing = false;  // of a faulty one: its bearing is named
    std::string what;           // seeded: fault, place and machine
};

WeekOrder orderOf(const sim::Scenario& scenario, std::size_t i, const char* what) {
    WeekOrder order;
    order.like = i % scenario.machines.size();
    order.tag = fmt::format("{} {} {}", scenario.machines[order.like].machine.tag, what, i);
    order.key = i + 1;
    order.weeksIn = i % std::size_t(std::max(1, scenario.weeks));
    return order;
}

Week soundWeek(const sim::Scenario& scenario, std::size_t i) {
    const auto week = examinedWeek(madeWeek(scenario, orderOf(scenario, i, "sound")));
    return {machineDban(hypothesesOf(week)).value_or(0), 0, false, ""};
}

// "driver DE or NDE" names "driver NDE" as well.
bool names(const std::string& either, const std::string& at) {
    const std::string end = at.substr(at.rfind(' ') + 1);
    return either == at || (either.find(" or ") != std::string::npos &&
                            either.compare(0, at.size() - end.size(), at, 0, at.size() - end.size()) == 0 &&
                            either.find(end) != std::string::npos);
}

// A bearing of the machine that a point of it hears at its own place, any element, any severity from early
// up.
Week faultyWeek(const sim::Scenario& scenario, std::size_t i) {
    std::mt19937_64 draw(7000 + i);
    const auto below = [&draw](std::size_t n) { return std::size_t(draw() % n); };
    WeekOrder order = orderOf(scenario, i, "faulty");
    std::vector<std::string> places;
    for (const BearingPlace& place : scenario.machines[order.like].machine.bearings)
        for (const Point& point : scenario.machines[order.like].machine.points)
            if (point.at == place.at && !place.bearing.variants.empty()) places.push_back(place.at);
    if (places.empty()) return faultyWeek(scenario, i + 100000 + 1);  // the next machine, another draw
    sim::Condition condition;
    condition.kind = kFaults[below(4)];
    condition.at = places[below(places.size())];
    condition.severity = 0.35 + 0.65 * double(below(1000)) / 1000;
    condition.cageShift = -0.002 + 0.008 * double(below(1000)) / 1000;
    order.conditions = {condition};
    const auto week = examinedWeek(madeWeek(scenario, order));
    Week result{machineDban(hypothesesOf(week)).value_or(0), condition.severity, false,
                fmt::format("{} @ {} of {}", condition.kind, condition.at, order.tag)};
    for (const Hypothesis& h : week.findings)
        result.rightBearing |= h.weightDban && names(h.at, condition.at);
    for (const BlindSpot& spot : week.blind)
        if (spot.fault == condition.kind && names(spot.at, condition.at))
            result.what += ", blind: " + spot.why;
    return result;
}

struct Tally {
    double chanceShare = 0, chanceSquares = 0, listed = 0, faultyListed = 0, faulty = 0;
    std::vector<std::size_t> ofSeverity = std::vector<std::size_t>(4), listedOf = ofSeverity;
};

void addFleet(const std::vector<Week>& sound, const std::vector<Week>& faulty, std::size_t bad,
              std::mt19937_64& draw, Tally& tally) {
    std::vector<const Week*> fleet;
    for (std::size_t i = 0; i < kFleet; ++i)
        fleet.push_back(i < bad ? &faulty[draw() % faulty.size()] : &sound[draw() % sound.size()]);
    std::vector<double> weights;
    for (const Week* week : fleet)
        weights.push_back(week->weightDban);
    const EbhResult list = eBh(weights, kAlpha);
    double all = 0, chance = 0;
    for (std::size_t i = 0; i < kFleet; ++i) {
        all += list.listed[i];
        chance += list.listed[i] && i >= bad;
        if (i >= bad) continue;
        const auto band = std::min<std::size_t>(3, std::size_t(fleet[i]->severity * 4));
        ++tally.ofSeverity[band];
        tally.listedOf[band] += list.listed[i];
        tally.faultyListed += list.listed[i];
        ++tally.faulty;
    }
    const double share = all > 0 ? chance / all : 0;
    tally.chanceShare += share;
    tally.chanceSquares += share * share;
    tally.listed += all;
}

}  // namespace

int simulatedFleets(const Arguments& arguments) {
    const auto scenario = sampleScenario(textAfter(arguments, "--scenario", "sample_fleet"));
    const auto fleets = std::size_t(numberAfter(arguments, "--fleets", 200));
    const auto pool = std::size_t(numberAfter(arguments, "--pool", 400));
    std::vector<Week> sound(pool), faulty(pool);
    onAllCores(2 * pool, [&](std::size_t i) {
        (i < pool ? sound[i] : faulty[i - pool]) =
            i < pool ? soundWeek(scenario, i) : faultyWeek(scenario, i - pool);
    });
    fmt::print("{} fleets of {} machines drawn from {} sound and {} faulty machine-weeks, alpha {}\n", fleets,
               kFleet, pool, pool, kAlpha);
    for (const std::size_t bad : {std::size_t(0), std::size_t(5)}) {
        std::mt19937_64 draw(1);
        Tally tally;
        for (std::size_t f = 0; f < fleets; ++f)
            addFleet(sound, faulty, bad, draw, tally);
        const double n = double(fleets), mean = tally.chanceShare / n;
        const double error = std::sqrt(std::max(0.0, tally.chanceSquares / n - mean * mean) / n);
        fmt::print("{} % faulty: listed {:.2f} a fleet, chance share of the list {:.4f} +- {:.4f}", bad,
                   tally.listed / n, mean, error);
        if (bad > 0) fmt::print(", power {:.3f}", tally.faultyListed / tally.faulty);
        fmt::print("\n");
        for (std::size_t band = 0; band < 4; ++band)
            if (tally.ofSeverity[band] > 0)
                fmt::print("    severity {:.2f} to {:.2f}: {} of {} listed\n", 0.25 * double(band),
                           0.25 * double(band + 1), tally.listedOf[band], tally.ofSeverity[band]);
    }
    std::size_t right = 0;
    for (const Week& week : faulty)
        right += week.rightBearing;
    fmt::print("of {} faulty weeks {} name the bearing at 20 decibans or more; not named at severity {}:\n",
               pool, right, kUpper);
    for (const Week& week : faulty)
        if (!week.rightBearing && week.severity >= kUpper)
            fmt::print("    {} (severity {:.2f}, {:.1f} decibans)\n", week.what, week.severity,
                       week.weightDban);
    return 0;
}

}  // namespace fettle::trials
