// Sound machines for weeks, every recording heard by the shipped rules as it comes in: what is told all the
// same. A gateway fails once a machine, for up to a week: what the silence rule makes of that.
#include <fmt/format.h>
#include <unistd.h>

#include <filesystem>
#include <map>

#include "tests/trials/alert_ear.h"
#include "tests/trials/share.h"
#include "tests/trials/trials.h"

namespace fettle::trials {

namespace {

using std::chrono::hours;

constexpr double kWeeksAMonth = 365.25 / 12 / 7;
constexpr int kOutageHours[] = {0, 12, 24, 36, 48, 60, 72, 168};
constexpr hours kLookEvery{6};  // a program that runs looks for silence oftener

struct HealthyOrder {
    std::size_t machines;
    int weeks, perWeek;
    std::string folder;
};

struct Outage {
    Instant from, to;
    int length = 0;
    bool has(Instant time) const { return time >= from && time < to; }
};

struct HeardSound {
    std::vector<Alert> alerts;
    std::size_t recordings = 0, grown = 0;
    int outage = 0;
};

// In the second week or later, at another hour for each machine.
Outage outageOf(const WeekMaker& maker, std::size_t i, int weeks) {
    const int spread = std::max(1, (weeks - 2) * 7 * 24);
    Outage outage;
    outage.length = kOutageHours[i % std::size(kOutageHours)];
    outage.from = maker.start() + hours(7 * 24 + int(i * 37 % std::size_t(spread)));
    outage.to = outage.from + hours(outage.length);
    return outage;
}

HeardSound heardSound(const sim::Scenario& scenario, std::size_t i, const HealthyOrder& how) {
    WeekOrder order;
    order.like = i % scenario.machines.size();
    order.tag = fmt::format("{} {}", scenario.machines[order.like].machine.tag, i);
    order.perNode = how.perWeek;
    order.key = i + 1;
    order.weeks = how.weeks;
    order.weeksIn = i % std::size_t(std::max(1, scenario.weeks - how.weeks));
    const WeekMaker maker(scenario, order);
    const Outage outage = outageOf(maker, i, how.weeks);
    AlertEar ear(maker, how.perWeek, fmt::format("{}/{}.fettle", how.folder, i));
    HeardSound heard;
    heard.outage = outage.length;
    const auto add = [&](const std::vector<Alert>& alerts) {
        heard.alerts.insert(heard.alerts.end(), alerts.begin(), alerts.end());
    };
    Instant looked = maker.start() + hours(7 * 24);
    for (std::size_t r = 0; r < maker.size(); ++r) {
        for (; looked < maker.time(r); looked += kLookEvery)
            add(ear.look(looked));
        if (outage.has(maker.time(r))) continue;
        add(ear.hear(maker.make(r)));
        ++heard.recordings;
    }
    heard.grown = ear.grown();
    return heard;
}

void printRule(const std::string& rule, std::size_t alerts, std::size_t machines, double months) {
    const Interval interval = countInterval(alerts);
    const double scale = 100 / months;
    fmt::print(
        "  {:<18} {:>4} on {:>3} machines   {:.3g} per 100 machines and month, 95 % {:.3g} to {:.3g}\n", rule,
        alerts, machines, double(alerts) * scale, interval.low * scale, interval.high * scale);
}

// Growth cannot be told in the first week.
double monthsOf(const HealthyOrder& how, bool growth) {
    return double(how.machines) * (how.weeks - growth) / kWeeksAMonth;
}

void printRules(const std::vector<HeardSound>& all, const HealthyOrder& how) {
    const std::map<std::string, bool> shipped = {
        {"Zone D", false}, {"Late stage", false}, {"Strong evidence", false}, {"Level grows", true}};
    std::size_t total = 0, bad = 0;
    for (const auto& [rule, growth] : shipped) {
        std::size_t alerts = 0, machines = 0;
        for (const HeardSound& one : all) {
            const auto own = std::size_t(
                std::count_if(one.alerts.begin(), one.alerts.end(),
                              [&, name = rule](const Alert& alert) { return alert.rule == name; }));
            alerts += own;
            machines += own > 0;
        }
        printRule(rule, alerts, machines, monthsOf(how, growth));
    }
    for (const HeardSound& one : all) {
        const auto own = std::count_if(one.alerts.begin(), one.alerts.end(),
                                       [](const Alert& alert) { return alert.kind != "silence"; });
        total += std::size_t(own);
        bad += own > 0;
    }
    printRule("all of these", total, bad, monthsOf(how, false));
}

void printSilence(const std::vector<HeardSound>& all) {
    fmt::print("\nsilent sensors told, by the length of the gateway's one outage\n");
    for (const int length : kOutageHours) {
        std::size_t machines = 0, told = 0, alerts = 0;
        for (const HeardSound& one : all) {
            if (one.outage != length) continue;
            const auto own = std::count_if(one.alerts.begin(), one.alerts.end(),
                                           [](const Alert& alert) { return alert.kind == "silence"; });
            ++machines;
            told += own > 0;
            alerts += std::size_t(own);
        }
        fmt::print("  {:>2} h: {} of {} machines, {} alerts\n", length, told, machines, alerts);
    }
}

}  // namespace

int healthyAlerts(const Arguments& arguments) {
    const auto scenario = sampleScenario(textAfter(arguments, "--scenario", "sample_fleet"));
    HealthyOrder how;
    how.machines = std::size_t(std::max(1L, numberAfter(arguments, "--machines", 400)));
    how.weeks = int(std::max(3L, numberAfter(arguments, "--weeks", 5)));
    how.perWeek = int(std::max(1L, numberAfter(arguments, "--per-week", 7)));
    how.folder =
        (std::filesystem::temp_directory_path() / fmt::format("fettle-alerts-{}", getpid())).string();
    std::filesystem::create_directories(how.folder);
    std::vector<HeardSound> all(how.machines);
    onAllCores(how.machines, [&](std::size_t i) { all[i] = heardSound(scenario, i, how); });
    std::filesystem::remove_all(how.folder);
    std::size_t recordings = 0, grown = 0;
    for (const HeardSound& one : all) {
        recordings += one.recordings;
        grown += one.grown;
    }
    fmt::print(
        "{} sound machines of {} kinds, {} weeks each ({:.0f} machine-months), {} recordings of a node a "
        "week, "
        "{} in all, each heard as it came; told again because grown {}\n",
        how.machines, scenario.machines.size(), how.weeks, monthsOf(how, false), how.perWeek, recordings,
        grown);
    printRules(all, how);
    printSilence(all);
    if (numberAfter(arguments, "--list", 0) > 0)
        for (const HeardSound& one : all)
            for (const Alert& alert : one.alerts)
                fmt::print("{} {} {}: {}\n", alert.machine, formatUtc(alert.raised), alert.rule, alert.words);
    return 0;
}

}  // namespace fettle::trials
