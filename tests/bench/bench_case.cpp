#include "tests/bench/bench_case.h"

#include <cstdio>
#include <cstdlib>

#include "core/simulate/simulation.h"
#include "tests/bench/or_end.h"

namespace fettle::bench {

namespace {

constexpr double kRateHz = 12000, kSeconds = 10, kRpm = 1772;

// Bearing sizes of a 6205 and a 6203: 9 and 8 balls, orders 3.585 / 5.415 and 3.053 / 4.947 (common tables).
constexpr const char* kMachine = R"({ "tag": "BENCH-1", "mains_hz": 60, "support": "rigid",
    "driver": { "kind": "induction", "power_kw": 1.5, "poles": 4, "rated_rpm": 1730, "supply": "mains",
      "bearings": {
        "DE":  { "designation": "6205", "rolling_elements": 9, "element_mm": 7.94, "pitch_mm": 39.04 },
        "NDE": { "designation": "6203", "rolling_elements": 8, "element_mm": 6.746, "pitch_mm": 28.5 } } },
    "points": [ { "id": "DE", "at": "driver DE", "mount": "bearing_housing",
      "channels": [ { "name": "de", "quantity": "acceleration", "unit": "g", "direction": "vertical" } ] } ] })";

RecordingPtr recorded(const Machine& machine, const std::vector<sim::Condition>& conditions,
                      double seconds = kSeconds) {
    sim::SimulationSetup setup;
    setup.machine = machine;
    setup.character = sim::characterOf(machine);
    setup.node.rateHz = kRateHz;
    setup.node.bits = 24;
    setup.node.rangeG = 50;
    setup.operation.mainsHz = 60;
    setup.conditions = conditions;
    setup.seconds = seconds;
    const sim::SimulatedRecording made = orEnd(sim::simulate(setup));
    auto recording = std::make_shared<Recording>();
    recording->file = "simulated";
    recording->machine = machine.tag;
    recording->speedRpm = kRpm;
    for (const sim::SimulatedChannel& from : made.channels) {
        const double unit = from.scale / double(1 << (made.bits - 1));
        Channel channel;
        channel.name = from.name;
        channel.point = "DE";
        channel.unit = from.unit;
        channel.sampleRateHz = made.rateHz;
        for (const std::int32_t sample : from.samples)
            channel.samples.push_back(sample * unit);
        recording->channels.push_back(std::move(channel));
    }
    return recording;
}

BenchCase make(const std::string& name, const std::vector<sim::Condition>& conditions) {
    const Machine machine = orEnd(parseMachine(kMachine, "benchmark")).machine;
    return {name, machine, recorded(machine, conditions)};
}

}  // namespace

BenchCase caseOf(double seconds, int channels) {
    Machine machine = orEnd(parseMachine(kMachine, "benchmark")).machine;
    std::vector<PointChannel>& fitted = machine.points.front().channels;
    for (int i = 1; i < channels; ++i) {
        fitted.push_back(fitted.front());
        fitted.back().name = "de" + std::to_string(i);
    }
    return {"sound", machine, recorded(machine, {}, seconds)};
}

const BenchCase& soundCase() {
    static const BenchCase made = make("sound", {});
    return made;
}

const BenchCase& faultyCase() {
    static const BenchCase made =
        make("outer race", {{.kind = "bearing_outer_race", .at = "driver DE", .severity = 0.5}});
    return made;
}

}  // namespace fettle::bench
