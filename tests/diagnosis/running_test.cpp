// Running state from one recording: a stopped machine has no verdict.
#include "core/diagnosis/running.h"

#include <gtest/gtest.h>

#include "core/diagnosis/examine.h"
#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

std::string stateOf(const Machine& machine, const RecordingPtr& recording) {
    return prepare(machine, recording, {}).facts.running;
}

made::Made stopped(bool energised, std::size_t point = 0) {
    auto setup = made::setupOf(made::fanSet(), 5);
    setup.operation.turning = false;
    setup.operation.energised = energised;
    setup.point = point;
    return made::made(setup);
}

void expectNothingWeighed(const Machine& machine, const RecordingPtr& recording) {
    const auto examination = examine(machine, {recording});
    ASSERT_TRUE(examination);
    EXPECT_TRUE(examination->findings.empty());
    for (const Hypothesis& h : examination->considered) {
        EXPECT_FALSE(h.weightDban) << h.fault;
        EXPECT_NE(h.why, "") << h.fault;
    }
}

TEST(Running, ASoundMachineAtWorkRuns) {
    EXPECT_EQ(stateOf(made::fanSet(), made::made(made::setupOf(made::fanSet())).recording), "running");
}

TEST(Running, SensorNoiseAloneIsStoppedAndNothingIsWeighed) {
    for (const std::size_t point : {0u, 1u}) {
        const auto made = stopped(false, point);
        EXPECT_EQ(stateOf(made::fanSet(), made.recording), "stopped") << point;
        expectNothingWeighed(made::fanSet(), made.recording);
    }
}

TEST(Running, MainsInTheFluxOfAStillMachineIsEnergisedNotTurning) {
    const auto made = stopped(true);
    EXPECT_EQ(stateOf(made::fanSet(), made.recording), "energised_not_turning");
    expectNothingWeighed(made::fanSet(), made.recording);
}

// A sidecar that goes on saying 1484 r/min must not make a stopped machine one that is weighed.
TEST(Running, AGivenSpeedDoesNotTurnAStoppedMachine) {
    auto made = stopped(false);
    made.recording->speedRpm = 1484;
    EXPECT_EQ(stateOf(made::fanSet(), made.recording), "stopped");
    expectNothingWeighed(made::fanSet(), made.recording);
}

TEST(Running, TurnedByItsLoadWithoutPowerIsNotRunning) {
    const auto made = made::made(made::setupOf(made::fanSet(), 6));
    for (Channel& channel : made.recording->channels)
        if (channel.name == "flux") channel.samples = made::noise(channel.samples.size(), 1e-3, 1);
    EXPECT_EQ(stateOf(made::fanSet(), made.recording), "turning_unpowered");
}

// Without flux nobody can tell a turning machine without a comb from a shaken one.
TEST(Running, ShakenWithoutAnyShaftOrderIsUnknown) {
    EXPECT_EQ(stateOf(made::motor(), made::recordingOf(made::noise(51200, 0.2, 1), 12800)), "unknown");
}

// Somebody measured that it turns, and it shakes: a smooth machine without shaft orders runs all the same.
TEST(Running, ShakenWithASpeedMeasuredRuns) {
    EXPECT_EQ(stateOf(made::motor(), made::recordingOf(made::noise(51200, 0.2, 1), 12800, 1484)), "running");
}

// A cheap node's own noise covers the hiss of a sound machine; what shakes by 6 mm/s or has its speed read
// runs.
TEST(Running, BehindANoisySensorAMachineThatShakesOrIsReadRuns) {
    auto setup = made::setupOf(made::motor(), 3, 6);
    setup.node.rateHz = 3200;
    setup.node.noisePerRtHz = 3e-3;
    setup.machine.points[0].noisePerRtHz = 3e-3;
    const auto read = made::made(setup);
    EXPECT_EQ(prepare(setup.machine, read.recording, {}).facts.running, "running");
    const auto shaken = made::made(made::with(setup, "unbalance", "driver", 0.6));
    PrepareOptions unread;
    unread.ignoreSpeed = true;
    const auto prepared = prepare(setup.machine, shaken.recording, unread);
    EXPECT_TRUE(prepared.facts.speed.rpm) << prepared.facts.speed.from;
    EXPECT_EQ(prepared.facts.running, "running");
}

// The floor carries a neighbour's orders at a speed this motor could run at as well.
TEST(Running, ShakenByANeighbourAStoppedMachineDoesNotRun) {
    for (const bool energised : {false, true})
        for (const std::size_t point : {0u, 1u})
            for (const double rpm : {1488.0, 1479.0, 993.0}) {
                auto setup = made::setupOf(made::fanSet(), 5);
                setup.operation.turning = false;
                setup.operation.energised = energised;
                setup.point = point;
                setup.conditions.push_back({"neighbour", "driver", 1, 0, 0, rpm, 1.2, 0});
                const std::string state = stateOf(made::fanSet(), made::made(setup).recording);
                EXPECT_NE(state, "running") << rpm << " " << point;
                EXPECT_NE(state, "turning_unpowered") << rpm << " " << point;
                if (point == 0) {
                    EXPECT_EQ(state, energised ? "energised_not_turning" : "stopped") << rpm;
                }
            }
}

// Less than an eighth of the rated slip; the rated one is 16 r/min.
TEST(Running, AMotorAlmostWithoutSlipRunsUnloaded) {
    auto setup = made::setupOf(made::fanSet(), 5, 8);
    setup.operation.load = 0.04;
    EXPECT_EQ(stateOf(made::fanSet(), made::made(setup).recording), "running_unloaded");
    setup.operation.load = 0.5;
    EXPECT_EQ(stateOf(made::fanSet(), made::made(setup).recording), "running");
}

TEST(Running, WithoutAVibrationChannelNothingIsKnown) {
    auto recording = std::make_shared<Recording>();
    recording->file = "flux only.wav";
    recording->channels.push_back({"flux", "M", "1", 12800, made::sine(0.3, 50, 12800, 51200), 1});
    EXPECT_EQ(stateOf(made::fanSet(), recording), "unknown");
}

}  // namespace
}  // namespace fettle
