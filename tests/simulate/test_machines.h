// Why: small machines for the tests of the simulator, by the same door as a user's: parseMachine.
#pragma once

#include <gtest/gtest.h>

#include <string>

#include "core/simulate/simulation.h"

namespace fettle::sim::probe {

inline Machine parsed(const std::string& text) {
    auto machine = parseMachine(text, "test");
    EXPECT_TRUE(machine) << (machine ? "" : machine.error().sentence());
    return machine ? machine->machine : Machine{};
}

inline const std::string kPoint =
    R"("points": [ { "id": "M-DE", "at": "driver DE", "channels": [
        { "name": "x", "direction": "horizontal" }, { "name": "y", "direction": "vertical" },
        { "name": "z", "direction": "axial" }, { "name": "flux", "quantity": "flux", "unit": "1" } ] } ])";

// 75 kW, 4 poles, 1484 r/min: rated slip 16/1500. Bearing 6316 by the sizes in the machine description's
// example.
inline Machine fan(const std::string& supply = "") {
    return parsed(R"({ "tag": "T-FAN", "mains_hz": 50, "support": "rigid",
        "driver": { "power_kw": 75, "poles": 4, "rated_rpm": 1484, "rotor_bars": 58)" +
                  supply + R"(,
          "bearings": { "DE": { "rolling_elements": 8, "element_mm": 28.575, "pitch_mm": 125.0 },
                        "NDE": { "rolling_elements": 9, "element_mm": 25, "pitch_mm": 120.0 } } },
        "driven": { "kind": "fan", "blades": 12 }, )" +
                  kPoint + "}");
}

inline Machine inverterFan() {
    return fan(R"(, "supply": "inverter", "rated_hz": 50, "carrier_hz": 3000)");
}

inline Machine gearbox() {
    return parsed(
        R"({ "tag": "T-GEAR", "mains_hz": 50, "driver": { "power_kw": 37, "poles": 4, "rated_rpm": 1475 },
        "driven": { "kind": "mixer" },
        "shafts": [ { "id": "S1", "of": "driver" }, { "id": "S2", "of": "driven" } ],
        "gears": [ { "id": "G1", "from": "S1", "to": "S2", "teeth": [23, 88] } ],
        "intermediate": [ { "id": "G1 box", "shaft": "S1", "bearings": {
          "DE": { "rolling_elements": 16, "element_mm": 14.8, "pitch_mm": 95, "contact_deg": 14 } } } ],
        "points": [ { "id": "G", "at": "G1 box DE", "channels": [ { "name": "x", "direction": "horizontal" } ] } ] })");
}

inline Machine belted() {
    return parsed(
        R"({ "tag": "T-BELT", "mains_hz": 50, "driver": { "power_kw": 15, "poles": 6, "rated_rpm": 970 },
        "driven": { "kind": "fan", "blades": 6 },
        "shafts": [ { "id": "S1", "of": "driver" }, { "id": "S2", "of": "driven" } ],
        "belts": [ { "id": "B1", "from": "S1", "to": "S2", "pulley_mm": [180, 530], "length_mm": 2800 } ], )" +
        kPoint + "}");
}

// A quiet, fine sensor: what it shows is the machine.
inline SimulationSetup setupOf(const Machine& machine) {
    SimulationSetup setup;
    setup.machine = machine;
    setup.character = characterOf(machine);
    setup.node.rateHz = 12800;
    setup.node.bits = 24;
    setup.node.noisePerRtHz = 1e-5;
    setup.seconds = 4;
    if (machine.driver.inverter) setup.operation.outputHz = 40;
    return setup;
}

inline SimulationSetup with(SimulationSetup setup, const std::string& kind, const std::string& at,
                            double severity) {
    Condition condition;
    condition.kind = kind;
    condition.at = at;
    condition.severity = severity;
    setup.conditions.push_back(condition);
    return setup;
}

inline SimulatedRecording made(const SimulationSetup& setup) {
    auto recording = simulate(setup);
    EXPECT_TRUE(recording) << (recording ? "" : recording.error().sentence());
    return recording ? *recording : SimulatedRecording{};
}

}  // namespace fettle::sim::probe
