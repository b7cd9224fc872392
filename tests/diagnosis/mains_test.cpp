// The mains as frequency, as ruler of the sample rate and as the other half of slip.
// Source of the tolerances: a line 20 dB above its floor is placed within a tenth of a bin (Rife and
// Boorstyn, IEEE Trans. Inf. Theory 20 (1974) 591-598); a grid stays within 0.4 % of its name (50 +- 0.2 Hz,
// from memory of European operating rules).
#include "core/diagnosis/mains.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/diagnosis/prepare.h"
#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

bool hasNote(const PreparedRecording& prepared, const std::string& code) {
    return std::any_of(prepared.facts.quality.begin(), prepared.facts.quality.end(),
                       [&](const QualityNote& note) { return note.code == code; });
}

struct Heard {
    PreparedRecording prepared;
    double trueShaftHz = 0, trueRateHz = 0;
};

// `machine` must outlive what comes out.
Heard heard(const Machine& machine, double gridHz, double clockError, double seconds = 4) {
    auto setup = made::setupOf(machine, 3, seconds);
    setup.operation.mainsHz = gridHz;
    setup.node.clockError = clockError;
    auto made = made::made(setup);
    const double trueRate = setup.node.rateHz * (1 + clockError);
    made.recording->speedRpm.reset();
    return {prepare(machine, made.recording, {}), made.shaftHz * trueRate / setup.node.rateHz, trueRate};
}

TEST(Mains, IsReadFromFluxFarFinerThanTheBinsLie) {
    const Machine machine = made::fanSet();
    for (const double grid : {49.91, 49.98, 50.03}) {
        const Heard h = heard(machine, grid, 0);
        ASSERT_TRUE(h.prepared.mains.measured);
        EXPECT_EQ(h.prepared.mains.from, "flux");
        EXPECT_NEAR(h.prepared.mains.hz, grid, 0.01);  // bins are 0.25 Hz
        EXPECT_LT(h.prepared.mains.plusMinusHz, 0.02);
    }
}

TEST(Mains, WithoutACarrierItIsOnlyStated) {
    const Machine machine = made::fanSet();
    auto made = made::made(made::setupOf(machine));
    for (Channel& channel : made.recording->channels)
        if (channel.name == "flux") channel.samples = made::noise(channel.samples.size(), 1e-3, 1);
    const PreparedRecording prepared = prepare(machine, made.recording, {});
    EXPECT_FALSE(prepared.mains.leads);
    EXPECT_NE(prepared.mains.from, "flux");
}

TEST(SampleRate, AClockOnePerCentOffIsPutRightByTheMains) {
    const Machine machine = made::fanSet();
    for (const double clock : {-0.012, 0.01, 0.02}) {
        const Heard h = heard(machine, 50, clock);
        EXPECT_TRUE(hasNote(h.prepared, "sample_rate")) << clock;
        EXPECT_NEAR(h.prepared.recording->channels[0].sampleRateHz / h.trueRateHz, 1, 2e-4) << clock;
        ASSERT_TRUE(h.prepared.facts.speed.rpm) << h.prepared.facts.speed.from;
        EXPECT_NEAR(*h.prepared.facts.speed.rpm / 60 / h.trueShaftHz, 1, 5e-4) << clock;
    }
}

TEST(SampleRate, WhatAGridMayDoIsToldButNotCorrected) {
    const Machine machine = made::fanSet();
    const Heard h = heard(machine, 50.1, 0);
    EXPECT_TRUE(hasNote(h.prepared, "sample_rate"));
    EXPECT_EQ(h.prepared.recording->channels[0].sampleRateHz, 12800);
}

TEST(SampleRate, AGoodClockOnAGoodGridIsNotMentioned) {
    const Machine machine = made::fanSet();
    EXPECT_FALSE(hasNote(heard(machine, 50.02, 0).prepared, "sample_rate"));
}

// Without flux: 2 x mains in the vibration, parted from four times the shaft by the slip.
TEST(SampleRate, IsPutRightByTwiceTheMainsInVibration) {
    const Machine machine = made::motor();
    for (const double clock : {-0.012, 0.008}) {
        const Heard h = heard(machine, 50, clock, 8);
        EXPECT_EQ(h.prepared.mains.from, "2 x mains in vibration") << clock;
        EXPECT_NEAR(h.prepared.recording->channels[0].sampleRateHz / h.trueRateHz, 1, 1e-3) << clock;
    }
}

TEST(SampleRate, AnInvertersOutputIsNoRuler) {
    Mains mains;
    mains.hz = 42.3;
    mains.measured = mains.output = true;
    EXPECT_FALSE(checkClock(made::motor(), mains).told);
}

TEST(Mains, AnInvertersOutputIsFoundInItsWholeRange) {
    Machine machine = made::fanSet();
    machine.driver.inverter = true;
    machine.driver.rpmMin = 700;
    machine.driver.rpmMax = 1490;
    machine.driver.ratedHz = 50;
    auto setup = made::setupOf(machine, 7);
    for (const double output : {26.4, 37.7, 48.2}) {
        setup.operation.outputHz = output;
        auto made = made::made(setup);
        made.recording->speedRpm.reset();
        const PreparedRecording prepared = prepare(machine, made.recording, {});
        EXPECT_TRUE(prepared.mains.output);
        EXPECT_NEAR(prepared.mains.hz, output, 0.01);
        ASSERT_TRUE(prepared.facts.speed.rpm) << output << ": " << prepared.facts.speed.from;
        EXPECT_NEAR(*prepared.facts.speed.rpm / 60 / made.shaftHz, 1, 1e-3) << output;
    }
}

}  // namespace
}  // namespace fettle
