// Seeded faults of the matrix from one hour to the next, after sound weeks: how many the shipped rules tell
// within a week, which rule, how soon, and whether what is told names the fault.
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <map>

#include "core/trend/median.h"
#include "tests/trials/alert_ear.h"
#include "tests/trials/made_store.h"
#include "tests/trials/seeded_cells.h"
#include "tests/trials/share.h"
#include "tests/trials/trials.h"

namespace fettle::trials {

namespace {

constexpr int kFirstWeek = 3, kSoundWeeks = 2;  // of the scenario's weather; before the fault
constexpr int kSoundPerWeek = 7;

struct HeardFault {
    std::string kind, rule, fault, words, machine, node;  // rule empty: nothing told
    double hours = 0;
    std::size_t recordings = 0;  // until then
};

struct FaultBench {
    const sim::Scenario& scenario;
    const BenchOrder& order;
    int perWeek;

    WeekOrder weeks() const {
        WeekOrder weeks;
        weeks.like = order.like;
        weeks.tag =
            fmt::format("{} {} {}", scenario.machines[order.like].machine.tag, order.node, order.noiseFactor);
        weeks.noiseFactor = order.noiseFactor;
        weeks.nodeKind = order.node;
        weeks.weeksIn = kFirstWeek;
        weeks.weeks = kSoundWeeks;
        weeks.perNode = kSoundPerWeek;
        return weeks;
    }
    std::vector<NewRecording> sound() const {
        const WeekMaker maker(scenario, weeks());
        std::vector<NewRecording> all;
        for (std::size_t i = 0; i < maker.size(); ++i)
            all.push_back(storedRow(maker.machine(), 0, maker.make(i)));
        return all;
    }
    HeardFault hear(const SeededCell& cell, const std::vector<NewRecording>& before,
                    const std::string& path) const;
};

HeardFault FaultBench::hear(const SeededCell& cell, const std::vector<NewRecording>& before,
                            const std::string& path) const {
    WeekOrder week = weeks();
    week.weeksIn += kSoundWeeks;
    week.weeks = 1;
    week.perNode = perWeek;
    week.conditions = conditionsOf(cell);
    week.key = keyOf(cell);
    const WeekMaker maker(scenario, week);
    AlertEar ear(maker, perWeek, path);
    for (const NewRecording& row : before)
        ear.store(row);
    ear.look(maker.start());  // what stood before is none of the fault's
    HeardFault heard{cell.kind, "", "", "", maker.machine().tag, order.node};
    for (std::size_t i = 0; i < maker.size() && heard.rule.empty(); ++i) {
        const std::vector<Alert> alerts = ear.hear(maker.make(i));
        heard.recordings = i + 1;
        heard.hours = std::chrono::duration<double, std::ratio<3600>>(maker.time(i) - maker.start()).count();
        const auto told = std::find_if(alerts.begin(), alerts.end(),
                                       [](const Alert& alert) { return alert.kind != "silence"; });
        if (told == alerts.end()) continue;
        heard.rule = told->rule;
        heard.fault = told->fault;
        heard.words = told->words;
    }
    return heard;
}

struct Share {
    std::size_t cells = 0, heard = 0, named = 0, otherwise = 0;
    std::vector<double> hours, recordings;
    std::map<std::string, std::size_t> rules;

    void add(const HeardFault& one) {
        ++cells;
        if (one.rule.empty()) return;
        ++heard;
        named += one.fault == one.kind;
        otherwise += !one.fault.empty() && one.fault != one.kind;
        hours.push_back(one.hours);
        recordings.push_back(double(one.recordings));
        ++rules[one.rule];
    }
};

double quantile(std::vector<double> values, double share) {
    std::sort(values.begin(), values.end());
    return values[std::size_t(share * double(values.size() - 1) + 0.5)];
}

void printShare(const std::string& what, const Share& share) {
    const Interval interval = shareInterval(double(share.heard), double(share.cells));
    fmt::print("  {:<22} {:>3} of {:>3}  {:>3.0f} % ({:.0f} to {:.0f})", what, share.heard, share.cells,
               100.0 * double(share.heard) / double(share.cells), 100 * interval.low, 100 * interval.high);
    if (share.heard > 0) {
        fmt::print(
            "  {:>3} by name, {:>2} by another; hours {:.0f} (10 % {:.0f}, 90 % {:.0f}), recordings {:.0f};",
            share.named, share.otherwise, medianOf(share.hours), quantile(share.hours, 0.1),
            quantile(share.hours, 0.9), medianOf(share.recordings));
        for (const auto& [rule, times] : share.rules)
            fmt::print(" {} {}", rule, times);
    }
    fmt::print("\n");
}

void print(const std::vector<HeardFault>& all) {
    std::map<std::string, Share> kinds;
    Share faults, sound;
    for (const HeardFault& one : all) {
        (one.kind.empty() ? sound : faults).add(one);
        if (!one.kind.empty()) kinds[one.kind].add(one);
    }
    if (faults.cells > 0) printShare("all faults", faults);
    if (sound.cells > 0) printShare("sound", sound);
    for (const auto& [kind, share] : kinds)
        printShare(kind, share);
}

}  // namespace

int faultAlerts(const Arguments& arguments) {
    const auto scenario = sampleScenario(textAfter(arguments, "--scenario", "sample_fleet"));
    const int perWeek = int(std::max(1L, numberAfter(arguments, "--per-week", 84)));
    SeededBenches benches = seededBenches(scenario, textAfter(arguments, "--kinds", ""), kUpper);
    thin(benches, std::size_t(numberAfter(arguments, "--cells", 0)));
    const std::vector<std::pair<BenchOrder, std::vector<SeededCell>>> each(benches.begin(), benches.end());
    const auto folder = std::filesystem::temp_directory_path() / fmt::format("fettle-alerts-{}", getpid());
    std::filesystem::create_directories(folder);
    std::vector<std::vector<HeardFault>> heard(each.size());
    onAllCores(each.size(), [&](std::size_t i) {
        const FaultBench bench{scenario, each[i].first, perWeek};
        const std::vector<NewRecording> before = bench.sound();
        for (const SeededCell& cell : each[i].second)
            heard[i].push_back(bench.hear(cell, before, fmt::format("{}/{}.fettle", folder.string(), i)));
    });
    std::filesystem::remove_all(folder);
    std::vector<HeardFault> all;
    for (const auto& some : heard)
        all.insert(all.end(), some.begin(), some.end());
    fmt::print(
        "a fault at severity 0.75 or 1 after {} sound weeks, {} recordings of a node a week, until the "
        "first alert or a week is over\n",
        kSoundWeeks, perWeek);
    print(all);
    if (numberAfter(arguments, "--list", 0) > 0)
        for (const HeardFault& one : all)
            fmt::print("{} on {}, {}: {}\n", one.kind.empty() ? "sound" : one.kind, one.machine, one.node,
                       one.rule.empty() ? "nothing told" : one.rule + ": " + one.words);
    return 0;
}

}  // namespace fettle::trials
