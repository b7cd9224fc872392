// Why: recordings whose truth is known, from the simulator or drawn from plain noise, and the machines they
// are of, for the tests of diagnosis and of everything that reads an examination. Machines come by the same
// door as a user's. Units: g, Hz, seconds, r/min. Everything follows from the seeds given: the same on every
// run.
#pragma once

#include <gtest/gtest.h>

#include <cmath>
#include <memory>
#include <random>
#include <string>
#include <vector>

#include "core/base/units.h"
#include "core/machine/machine.h"
#include "core/signal/recording.h"
#include "core/simulate/simulation.h"

namespace fettle::made {

inline Machine machineOf(const std::string& text) {
    auto parsed = parseMachine(text, "test");
    EXPECT_TRUE(parsed) << (parsed ? "" : parsed.error().sentence());
    return parsed ? parsed->machine : Machine{};
}

// 75 kW, 4 poles, 50 Hz, 1484 r/min, group 2 of ISO 20816-3 on a rigid base; two different bearings with all
// orders well away from whole numbers (9 elements: FTF 0.3958, BPFO 3.562, BPFI 5.438).
inline std::string motorText(const std::string& more = "") {
    return R"({ "tag": "T-1", "service": "test motor", "mains_hz": 50, "support": "rigid",
        "driver": { "power_kw": 75, "poles": 4, "rated_rpm": 1484,
          "bearings": { "DE": { "rolling_elements": 9, "element_mm": 25, "pitch_mm": 120.0 },
                        "NDE": { "rolling_elements": 11, "element_mm": 22, "pitch_mm": 130.0 } } },)" +
           more + R"(
        "points": [ { "id": "P", "at": "driver DE", "mount": "bearing_housing", "fixing": "stud", "channels": [
            { "name": "x", "quantity": "acceleration", "unit": "g", "direction": "horizontal" },
            { "name": "z", "quantity": "acceleration", "unit": "g", "direction": "axial" } ] } ] })";
}
inline Machine motor() {
    return machineOf(motorText());
}

// The same with a fan behind a coupling, its own bearings and a point on it, and flux at the motor.
inline Machine fanSet() {
    return machineOf(R"({ "tag": "T-2", "service": "test fan", "mains_hz": 50, "support": "rigid",
        "driver": { "power_kw": 75, "poles": 4, "rated_rpm": 1484,
          "bearings": { "DE": { "rolling_elements": 9, "element_mm": 25, "pitch_mm": 120.0 },
                        "NDE": { "rolling_elements": 11, "element_mm": 22, "pitch_mm": 130.0 } } },
        "driven": { "kind": "fan", "blades": 12,
          "bearings": { "DE": { "rolling_elements": 13, "element_mm": 18, "pitch_mm": 110.0 } } },
        "points": [
          { "id": "M", "at": "driver DE", "mount": "bearing_housing", "fixing": "stud", "channels": [
            { "name": "x", "quantity": "acceleration", "unit": "g", "direction": "horizontal" },
            { "name": "z", "quantity": "acceleration", "unit": "g", "direction": "axial" },
            { "name": "flux", "quantity": "flux", "unit": "1" } ] },
          { "id": "F", "at": "driven DE", "mount": "bearing_housing", "fixing": "stud", "channels": [
            { "name": "x", "quantity": "acceleration", "unit": "g", "direction": "horizontal" } ] } ] })");
}

inline sim::SimulationSetup setupOf(const Machine& machine, std::uint64_t seed = 1, double seconds = 4) {
    sim::SimulationSetup setup;
    setup.machine = machine;
    setup.character = sim::characterOf(machine);
    setup.node.bits = 24;
    setup.node.noisePerRtHz = 5e-5;
    setup.seconds = seconds;
    setup.seed = seed;
    return setup;
}

inline sim::SimulationSetup with(sim::SimulationSetup setup, const std::string& kind, const std::string& at,
                                 double severity) {
    sim::Condition condition;
    condition.kind = kind;
    condition.at = at;
    condition.severity = severity;
    setup.conditions.push_back(condition);
    return setup;
}

// A simulated recording and what the shaft really did, in the node's own time.
struct Made {
    std::shared_ptr<Recording> recording;
    double shaftHz = 0;
};

inline Made made(const sim::SimulationSetup& setup) {
    const auto simulated = sim::simulate(setup);
    EXPECT_TRUE(simulated) << (simulated ? "" : simulated.error().sentence());
    Made out{std::make_shared<Recording>(), 0};
    if (!simulated) return out;
    out.shaftHz = simulated->shaftHz * simulated->rateHz / simulated->trueRateHz;
    out.recording->file = "made " + std::to_string(setup.seed) + ".wav";
    out.recording->point = setup.machine.points[setup.point].id;
    if (out.shaftHz > 0) out.recording->speedRpm = out.shaftHz * 60;
    const double steps = std::ldexp(1.0, simulated->bits - 1);
    for (const sim::SimulatedChannel& from : simulated->channels) {
        Channel channel{from.name, out.recording->point, from.unit, simulated->rateHz, {}, from.scale};
        for (const std::int32_t sample : from.samples)
            channel.samples.push_back(sample / steps * from.scale);
        out.recording->channels.push_back(std::move(channel));
    }
    return out;
}

inline std::vector<double> noise(std::size_t n, double sigma, std::uint64_t seed) {
    std::mt19937_64 bits(seed);
    std::normal_distribution<double> normal(0, sigma);
    std::vector<double> out(n);
    for (double& value : out)
        value = normal(bits);
    return out;
}

// One acceleration channel "x" of the machine's first point.
inline std::shared_ptr<Recording> recordingOf(std::vector<double> g, double rateHz,
                                              std::optional<double> rpm = std::nullopt) {
    auto recording = std::make_shared<Recording>();
    recording->file = "made.wav";
    recording->speedRpm = rpm;
    recording->channels.push_back({"x", "", "g", rateHz, std::move(g), 0});
    return recording;
}

// A sine's acceleration in g from its velocity in mm/s r.m.s. (v = a / 2 pi f).
inline double peakG(double mmS, double hz) {
    return mmS * std::sqrt(2.0) * kTwoPi * hz / (kStandardGravity * 1000);
}

inline std::vector<double> sine(double peak, double hz, double rateHz, std::size_t n, double phase = 0) {
    std::vector<double> out(n);
    for (std::size_t i = 0; i < n; ++i)
        out[i] = peak * std::sin(kTwoPi * hz * double(i) / rateHz + phase);
    return out;
}

inline std::vector<double> sum(std::vector<double> a, const std::vector<double>& b) {
    for (std::size_t i = 0; i < a.size(); ++i)
        a[i] += b[i];
    return a;
}

// Several kinds of recording: sound, each element at fault, two faults, short, noisy, loose.
struct Kind {
    std::string name;
    sim::SimulationSetup setup;
};

inline constexpr std::size_t kKinds = 9;
inline std::vector<Kind> kinds() {
    const Machine machine = motor();
    const auto plain = setupOf(machine, 11);
    std::vector<Kind> all{{"sound", plain}};
    for (const char* fault : {"outer_race", "inner_race", "rolling_element", "cage"})
        all.push_back({fault, with(plain, std::string("bearing_") + fault, "driver DE", 0.75)});
    all.push_back({"two faults", with(all[1].setup, "bearing_inner_race", "driver NDE", 0.75)});
    all.push_back({"loose as well", with(all[1].setup, "looseness", "driver", 0.8)});
    auto brief = all[1].setup;
    brief.seconds = 0.9;
    all.push_back({"short", brief});
    auto noisy = all[2].setup;
    noisy.node.noisePerRtHz = 3e-3;
    all.push_back({"noisy", noisy});
    return all;
}

}  // namespace fettle::made
