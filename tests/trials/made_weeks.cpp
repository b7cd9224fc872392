#include "tests/trials/made_weeks.h"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <mutex>
#include <thread>

#include "core/base/json_object.h"
#include "core/diagnosis/examine.h"

namespace fettle::trials {

namespace {

[[noreturn]] void giveUp(const std::string& sentence) {
    fmt::print(stderr, "{}\n", sentence);
    std::exit(3);
}

// A node of this kind in the scenario and how its owner describes the point under it.
struct Donor {
    const sim::NodeKind& kind;
    const Json& point;
};

Donor donorOf(const sim::Scenario& scenario, const std::string& name) {
    for (const sim::FleetMachine& machine : scenario.machines)
        for (const sim::FleetNode& node : machine.nodes)
            if (node.kind.name == name) return {node.kind, machine.description["points"][node.point]};
    giveUp("no machine of the scenario has a node of kind " + name);
}

// The sensor as it is now, on the machine's description.
void describeNode(const Donor& donor, double noiseFactor, Json& point) {
    for (const char* key : {"usable_hz", "fixing", "range"})
        if (donor.point.contains(key)) point[key] = donor.point[key];
    point["noise_per_rt_hz"] = donor.kind.noisePerRtHz * noiseFactor;
}

void parseAgain(sim::FleetMachine& fleet) {
    auto parsed = parseMachine(fleet.description.dump(), fleet.machine.tag);
    if (!parsed) giveUp(parsed.error().sentence());
    fleet.machine = std::move(parsed->machine);
}

// The machine alone in a scenario of its own, sound but for the conditions, all week long.
sim::Scenario scenarioOf(const sim::Scenario& whole, const WeekOrder& order) {
    sim::Scenario one = whole;
    one.machines = {whole.machines[order.like]};
    one.intake.clear();
    sim::FleetMachine& fleet = one.machines[0];
    fleet.description["tag"] = order.tag;
    fleet.stories.clear();
    fleet.dense.clear();
    for (const sim::Condition& condition : order.conditions) {
        sim::Story story;
        story.condition = condition;
        story.severity = {{whole.start, condition.severity}};
        fleet.stories.push_back(std::move(story));
    }
    for (sim::FleetNode& node : fleet.nodes) {
        if (!order.nodeKind.empty()) {
            const Donor donor = donorOf(whole, order.nodeKind);
            node.kind = donor.kind;
            describeNode(donor, order.noiseFactor, fleet.description["points"][node.point]);
        }
        node.kind.noisePerRtHz *= order.noiseFactor;
        for (sim::CaptureKind& capture : node.captures) {
            if (capture.rateHz > node.kind.rateHz) capture.rateHz = 0;
            if (capture.name.empty() || order.everyDay) capture.onDays.clear();
        }
    }
    parseAgain(fleet);
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
    recording->frameTempC = simulated->frameTempC;
    recording->ambientTempC = simulated->ambientTempC;
    if (node.givesLoad) recording->loadPct = 100 * simulated->load;
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

WeekMaker::WeekMaker(const sim::Scenario& whole, const WeekOrder& order)
    : one_(scenarioOf(whole, order)), key_(order.key) {
    one_.start += std::chrono::days(7 * order.weeksIn);
    one_.weeks = order.weeks;
    sim::SampleOptions options;
    options.perWeek = order.perNode;
    options.key = order.key;
    plan_ = sim::planRecordings(one_, options);
}

RecordingPtr WeekMaker::make(std::size_t i) const {
    return recordingOf(one_, plan_[i], sim::setupOf(one_, plan_[i], key_));
}

MadeWeek madeWeek(const sim::Scenario& whole, const WeekOrder& order) {
    const WeekMaker maker(whole, order);
    MadeWeek week{maker.machine(), maker.description(), {}};
    for (std::size_t i = 0; i < maker.size(); ++i)
        week.recordings.push_back(maker.make(i));
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
