#include "core/simulate/simulation.h"

#include <gtest/gtest.h>

#include "core/simulate/condition_table.h"
#include "core/simulate/place.h"
#include "tests/simulate/probe.h"
#include "tests/simulate/test_machines.h"

namespace fettle::sim {
namespace {

using namespace probe;

// Gaussian: 3 (check value: kurtosis as the fourth moment over the square of the second).
TEST(SoundMachine, KurtosisAndFloorAreThoseOfASoundMachine) {
    const auto recording = made(setupOf(fan()));
    for (const std::string channel : {"x", "y", "z"}) {
        const auto values = valuesOf(recording, channel);
        EXPECT_GT(kurtosisOf(values), 2.7) << channel;
        EXPECT_LT(kurtosisOf(values), 3.5) << channel;
        EXPECT_GT(rmsOf(values), 0.02) << channel;  // broadband 0.02 to 0.2 g: common practice, no source
        EXPECT_LT(rmsOf(values), 0.2) << channel;
    }
}

// The samples of one setup are the same on every computer and at every optimisation. A change of these
// numbers changes the sample fleet: raise kSimulatorVersion in sample_plan.cpp.
TEST(SameBytes, HashesOfRecordings) {
    auto plain = setupOf(fan());
    plain.seconds = 1;
    EXPECT_EQ(hashOf(made(plain)), 0xCCDD0D7E5A563BCBULL);
    auto cheap = with(plain, "unbalance", "driven", 0.5);
    cheap.node = {"cheap", 3200, 0.016, 16, 8, 3e-4, 0, 0.04, true, 0.05};
    EXPECT_EQ(hashOf(made(cheap)), 0x4A2B96DFF5EC7049ULL);
    auto bearings = with(with(plain, "bearing_outer_race", "driver DE", 0.9), "bearing_rolling_element",
                         "driver NDE", 0.6);
    bearings.node.mountHz = 4800;
    bearings.seed = 99;
    EXPECT_EQ(hashOf(made(bearings)), 0x3459FB342BE93507ULL);
    auto drive = setupOf(inverterFan());
    drive.seconds = 1;
    EXPECT_EQ(hashOf(made(drive)), 0xB3C5696A59C137F9ULL);
    auto gears =
        with(with(setupOf(gearbox()), "gear_mesh", "G1", 0.5), "bearing_inner_race", "G1 box DE", 0.7);
    gears.seconds = 1;
    EXPECT_EQ(hashOf(made(gears)), 0x42EDDE18DABE0DB3ULL);
    auto everything = setupOf(belted());
    everything.seconds = 1;
    for (const char* kind :
         {"looseness", "rotor_bar", "air_gap", "supply_unbalance", "flow", "cavitation", "blade_pass"})
        everything = with(everything, kind, "driven", 0.4);
    everything = with(everything, "loose_node", "driver", 0.5);
    EXPECT_EQ(hashOf(made(everything)), 0x2586FAB7BE10D9B7ULL);
}

TEST(SameBytes, AnotherKeyIsAnotherNoise) {
    auto setup = setupOf(fan());
    const auto first = hashOf(made(setup));
    EXPECT_EQ(hashOf(made(setup)), first);
    setup.seed = 2;
    EXPECT_NE(hashOf(made(setup)), first);
}

TEST(Refused, WhatTheMachineDoesNotHave) {
    const auto refusal = [](const SimulationSetup& setup) {
        const auto recording = simulate(setup);
        return recording ? std::string() : recording.error().sentence();
    };
    const auto sound = setupOf(fan());
    EXPECT_NE(refusal(with(sound, "gremlins", "driver", 1)).find("gremlins"), std::string::npos);
    EXPECT_NE(refusal(with(sound, "unbalance", "propeller", 1)).find("propeller"), std::string::npos);
    EXPECT_NE(refusal(with(sound, "bearing_outer_race", "driven DE", 1)).find("no bearing"),
              std::string::npos);
    EXPECT_NE(refusal(with(sound, "gear_mesh", "G7", 1)).find("G7"), std::string::npos);
    auto bits = sound;
    bits.node.bits = 12;
    EXPECT_NE(refusal(bits).find("16 or 24"), std::string::npos);
    auto noOutput = setupOf(inverterFan());
    noOutput.operation.outputHz = 0;
    EXPECT_NE(refusal(noOutput).find("output frequency"), std::string::npos);
    auto noPoint = sound;
    noPoint.point = 3;
    EXPECT_NE(refusal(noPoint).find("point"), std::string::npos);
}

// Every row is a kind that does something: a flux or vibration channel, or the temperature, changes.
TEST(ConditionTable, EveryKindLeavesATrace) {
    const Machine machines[] = {fan(), gearbox(), belted()};
    for (const ConditionRow& row : conditionTable()) {
        const bool gear = row.kind.starts_with("gear"), belt = row.kind == "belt";
        auto setup = setupOf(machines[gear ? 1 : belt ? 2 : 0]);
        setup.seconds = 0.5;
        const auto sound = made(setup);
        setup = with(setup, row.kind, gear ? "G1" : belt ? "B1" : "driver DE", 0.8);
        setup.conditions[0].rpm = 1400;
        setup.conditions[0].levelMmS = 2;
        const auto bad = made(setup);
        EXPECT_TRUE(hashOf(bad) != hashOf(sound) || bad.frameTempC > sound.frameTempC) << row.kind;
    }
}

TEST(Places, ComponentIsTheHousing) {
    const Machine machine = gearbox();
    EXPECT_EQ(placeOf(machine, "G1")->component, "G1 box");
    EXPECT_EQ(placeOf(machine, "S2")->component, "driven");
    EXPECT_EQ(placeOf(machine, "S1")->component, "driver");
    EXPECT_EQ(placeOf(machine, "driven")->shaft, 1u);
    EXPECT_FALSE(placeOf(machine, "G2"));
}

TEST(Places, GainFallsWithWhatLiesBetween) {
    const Machine machine = belted();
    const Place here = *placeOf(machine, "driver DE");
    const PathGain same = pathGain(machine, here, *placeOf(machine, "driver DE"));
    const PathGain other = pathGain(machine, here, *placeOf(machine, "driver NDE"));
    const PathGain belt = pathGain(machine, here, *placeOf(machine, "driven"));
    const PathGain coupling = pathGain(fan(), here, *placeOf(fan(), "driven"));
    EXPECT_EQ(same.high, 1);
    EXPECT_GT(other.high, coupling.high);
    EXPECT_GT(coupling.high, belt.high);
    EXPECT_GT(coupling.low, coupling.high);
}

}  // namespace
}  // namespace fettle::sim
