#include "tests/trials/made_weeks.h"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <mutex>
#include <thread>

#include "core/diagnosis/examine.h"

namespace fettle::trials {

namespace {

[[noreturn]] void giveUp(const std::string& sentence) {
    fmt::print(stderr, "{}\n", sentence);
    std::exit(3);
}

const sim::NodeKind& kindOf(const sim::Scenario& scenario, const std::string& name) {
    for (const sim::FleetMachine& machine : scenario.machines)
        for (const sim::FleetNode& node : machine.nodes)
            if (node.kind.name == name) return node.kind;
    giveUp("no machine of the scenario has a node of kind " + name);
}

// The machine alone in a scenario of its own, sound but for the conditions, all week long.
sim::Scenario scenarioOf(const sim::Scenario& whole, const WeekOrder& order) {
    sim::Scenario one = whole;
    one.machines = {whole.machines[order.like]};
    one.intake.clear();
    sim::FleetMachine& fleet = one.machines[0];
    fleet.machine.tag = order.tag;
    fleet.stories.clear();
    fleet.dense.clear();
    for (const sim::Condition& condition : order.conditions) {
        sim::Story story;
        story.condition = condition;
        story.severity = {{whole.start, condition.severity}};
        fleet.stories.push_back(std::move(story));
    }
    for (sim::FleetNode& node : fleet.nodes) {
        if (!order.nodeKind.empty()) node.kind = kindOf(whole, order.nodeKind);
        node.kind.noisePerRtHz *= order.noiseFactor;
        for (sim::CaptureKind& capture : node.captures) {
            if (capture.rateHz > node.kind.rateHz) capture.rateHz = 0;
            if (capture.name.empty()) capture.onDays.clear();
        }
    }
    return one;
}

RecordingPtr recordingOf(const sim::Scenario& scenario, const sim::PlannedRecording& planned,
                         const sim::SimulationSetup& setup) {
    const auto simulated = sim::simulate(setup);
    if (!simulated) giveUp(simulated.error().sentence());
    const sim::FleetNode& node = scenario.machines[0].nodes[planned.node];
    auto recording = std::make_shared<Recording>();
    recording->file = planned.name;
    recording->machine = setup.machine.tag;
    recording->point = setup.machine.points[setup.point].id;
    recording->time = planned.time;
    recording->simultaneous = node.simultaneous ? Simultaneous::Yes : Simultaneous::No;
    if (node.givesSpeed && simulated->shaftHz > 0)
        recording->speedRpm = std::round(600 * simulated->shaftHz) / 10;
    if (setup.machine.driver.inverter) recording->outputHz = simulated->supplyHz;
    const double steps = std::ldexp(1.0, simulated->bits - 1);
    for (const sim::SimulatedChannel& from : simulated->channels) {
        Channel channel{from.name, recording->point, from.unit, simulated->rateHz, {}, from.scale};
        channel.samples.reserve(from.samples.size());
        for (const std::int32_t sample : from.samples)
            channel.samples.push_back(sample / steps * from.scale);
        recording->channels.push_back(std::move(channel));
    }
    return recording;
}

}  // namespace

sim::Scenario sampleScenario(const std::string& folder) {
    const RealFileSystem files;
    auto scenario = sim::loadScenario(files, folder);
    if (!scenario) giveUp(scenario.error().sentence());
    return std::move(*scenario);
}

MadeWeek madeWeek(const sim::Scenario& whole, const WeekOrder& order) {
    sim::Scenario one = scenarioOf(whole, order);
    one.start += std::chrono::days(7 * order.weeksIn);
    one.weeks = 1;
    sim::SampleOptions options;
    options.perWeek = order.perNode;
    options.key = order.key;
    MadeWeek week{one.machines[0].machine, {}};
    for (const sim::PlannedRecording& planned : sim::planRecordings(one, options))
        week.recordings.push_back(recordingOf(one, planned, sim::setupOf(one, planned, order.key)));
    return week;
}

Examination examinedWeek(const MadeWeek& week) {
    auto examination = examine(week.machine, week.recordings);
    if (!examination) giveUp(examination.error().sentence());
    return std::move(*examination);
}

std::vector<std::string> nodeKinds(const sim::Scenario& scenario) {
    std::vector<std::string> names;
    for (const sim::FleetMachine& machine : scenario.machines)
        for (const sim::FleetNode& node : machine.nodes)
            if (std::find(names.begin(), names.end(), node.kind.name) == names.end())
                names.push_back(node.kind.name);
    return names;
}

void onAllCores(std::size_t count, const std::function<void(std::size_t)>& work) {
    std::atomic<std::size_t> next{0}, done{0};
    std::mutex telling;
    const auto run = [&] {
        for (std::size_t i = next++; i < count; i = next++) {
            work(i);
            const std::lock_guard hold(telling);
            if (++done % std::max<std::size_t>(1, count / 10) == 0)
                fmt::print(stderr, "{} of {}\n", done.load(), count);
        }
    };
    std::vector<std::jthread> helpers;
    for (unsigned t = 1; t < std::max(1u, std::thread::hardware_concurrency()); ++t)
        helpers.emplace_back(run);
    run();
}

}  // namespace fettle::trials
