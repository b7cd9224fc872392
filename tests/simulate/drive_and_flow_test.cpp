#include <gtest/gtest.h>

#include "core/base/units.h"
#include "tests/simulate/probe.h"
#include "tests/simulate/test_machines.h"

namespace fettle::sim {
namespace {

using namespace probe;

struct HeardLines {
    SimulatedRecording recording;
    std::vector<double> values;
    double at(double hz) const { return peakAt(values, recording.trueRateHz, hz); }
};

HeardLines hearLines(const SimulationSetup& setup, const std::string& channel = "x") {
    HeardLines heard{made(setup), {}};
    heard.values = valuesOf(heard.recording, channel);
    return heard;
}

// Mesh at teeth x shaft speed; wear raises the harmonics and the sidebands at shaft speed (Randall,
// Vibration-based Condition Monitoring, 2011, sec. 2.2 and 5.3; from memory).
TEST(GearMesh, StandsAtTeethTimesShaftAndWearGrowsSidebands) {
    const HeardLines sound = hearLines(setupOf(gearbox()));
    const double shaft = sound.recording.shaftHz, mesh = 23 * shaft;
    EXPECT_NEAR(strongest(sound.values, 12800, mesh, 3).hz, mesh, 0.05);
    const HeardLines worn = hearLines(with(setupOf(gearbox()), "gear_mesh", "G1", 0.8));
    EXPECT_GT(worn.at(mesh), 1.5 * sound.at(mesh));
    EXPECT_GT(worn.at(2 * mesh) / worn.at(mesh), 1.2 * sound.at(2 * mesh) / sound.at(mesh));
    EXPECT_LT(sound.at(mesh + shaft) / sound.at(mesh), 0.15);
    EXPECT_GT(worn.at(mesh + shaft) / worn.at(mesh), 0.2);
    EXPECT_GT(worn.at(mesh + shaft * 23 / 88), 0.1 * worn.at(mesh));
}

TEST(GearTooth, KnocksOnceATurn) {
    const HeardLines sound = hearLines(setupOf(gearbox()));
    const HeardLines broken = hearLines(with(setupOf(gearbox()), "gear_tooth", "G1", 0.7));
    const auto envelope = liveliness(broken.values);
    const double shaft = broken.recording.shaftHz;
    EXPECT_NEAR(strongest(envelope, 12800, 3 * shaft, 2).hz, 3 * shaft, 0.05);
    EXPECT_GT(kurtosisOf(broken.values), 1.5 * kurtosisOf(sound.values));
}

// Belt turns: pi x pulley x speed / length: geometry.
TEST(Belt, TurnsByItsLength) {
    const HeardLines worn = hearLines(with(setupOf(belted()), "belt", "B1", 0.6));
    const double hz = std::numbers::pi * 180 / 2800 * worn.recording.shaftHz;
    for (const int order : {1, 2, 3}) {
        EXPECT_NEAR(strongest(worn.values, 12800, order * hz, 0.4).hz, order * hz, 0.02) << order;
    }
}

TEST(Belt, DrivenShaftTurnsSlowerThanThePulleysSay) {
    auto setup = setupOf(belted());
    setup.operation.beltCreep = 0.9;
    const Machine machine = setup.machine;
    const HeardLines heard = hearLines(setup);
    const double middle = machine.shafts[1].ratio, spread = machine.shafts[1].ratioSpread;
    const double ratio = middle * (1 + spread * (1 - 2 * 0.9));
    EXPECT_LT(ratio, 180.0 / 530);
    const double hz = ratio * heard.recording.shaftHz;
    EXPECT_NEAR(strongest(heard.values, 12800, hz, 0.1).hz, hz, 0.02);
}

TEST(BladePass, StandsAtBladesTimesShaft) {
    const HeardLines sound = hearLines(setupOf(fan()), "y");
    const double hz = 12 * sound.recording.shaftHz;
    EXPECT_NEAR(strongest(sound.values, 12800, hz, 1).hz, hz, 0.05);
    const HeardLines bad = hearLines(with(setupOf(fan()), "blade_pass", "driven", 0.5), "y");
    EXPECT_GT(bad.at(hz), 3 * sound.at(hz));
}

// Common practice, no source: cavitation is broadband above some 2 kHz, breathing with the blades.
TEST(Cavitation, RaisesTheHighBandAndBreathesWithTheBlades) {
    const HeardLines sound = hearLines(setupOf(fan()));
    const HeardLines bad = hearLines(with(setupOf(fan()), "cavitation", "driver", 0.8));
    EXPECT_GT(rmsOf(bad.values), 3 * rmsOf(sound.values));
    EXPECT_NEAR(bad.at(bad.recording.shaftHz), sound.at(bad.recording.shaftHz), 0.002);
    const double blades = 12 * bad.recording.shaftHz;
    const auto envelope = liveliness(bad.values);
    EXPECT_GT(peakAt(envelope, 12800, blades), 4 * peakAt(envelope, 12800, blades * 1.03));
}

TEST(RoughFlow, IsRandomBelowShaftSpeed) {
    const HeardLines sound = hearLines(setupOf(fan()));
    const HeardLines rough = hearLines(with(setupOf(fan()), "flow", "driver", 0.8));
    double before = 0, now = 0;
    for (double hz = 3; hz < 20; hz += 0.25) {
        before += sound.at(hz);
        now += rough.at(hz);
    }
    EXPECT_GT(now, 3 * before);
}

TEST(Neighbour, ArrivesAtItsOwnSpeedEvenWhenThisMachineStands) {
    auto setup = with(setupOf(fan()), "neighbour", "driver", 1);
    setup.conditions[0].rpm = 1440;
    setup.conditions[0].levelMmS = 1.5;
    setup.operation.turning = setup.operation.energised = false;
    const HeardLines heard = hearLines(setup);
    EXPECT_NEAR(strongest(heard.values, 12800, 24, 1).hz, 24, 0.01);
    EXPECT_NEAR(velocityMmPerS(heard.at(24), Hertz(24)) / std::numbers::sqrt2, 1.5, 0.05);
}

}  // namespace
}  // namespace fettle::sim
