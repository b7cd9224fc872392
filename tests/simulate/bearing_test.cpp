#include <gtest/gtest.h>

#include "core/simulate/bearing_sources.h"
#include "core/simulate/impact_train.h"
#include "tests/simulate/probe.h"
#include "tests/simulate/test_machines.h"

namespace fettle::sim {
namespace {

using namespace probe;

// 6316 by 8 x 28.575 on 125 mm: FTF 0.3857, BPFO 3.0856, BPFI 4.9144, BSF 2.0729 (textbook kinematics,
// Randall and Antoni, MSSP 25 (2011) eq. 1-4).
constexpr double kCage = 0.3857, kSpin = 2.07289;
constexpr int kBalls = 8;

SimulationSetup bearing(const std::string& kind, double severity, double shift) {
    auto setup = with(setupOf(fan()), kind, "driver DE", severity);
    setup.conditions[0].cageShift = shift;
    return setup;
}

struct Heard {
    SimulatedRecording recording;
    std::vector<double> envelope;
    Found near(double hz, double reach) const { return strongest(envelope, recording.trueRateHz, hz, reach); }
    double at(double hz) const { return peakAt(envelope, recording.trueRateHz, hz); }
};

Heard hear(const SimulationSetup& setup) {
    Heard heard{made(setup), {}};
    heard.envelope = liveliness(valuesOf(heard.recording, "x"));
    return heard;
}

TEST(OuterRace, StrikesAtBallsTimesTrueCageSpeed) {
    for (const double shift : {-0.006, 0.0, 0.004}) {
        const Heard heard = hear(bearing("bearing_outer_race", 0.7, shift));
        const double expected = kBalls * kCage * (1 + shift) * heard.recording.shaftHz;
        EXPECT_NEAR(heard.near(expected, 1.0).hz / expected, 1, 1e-3) << shift;
    }
}

// BPFO + BPFI = number of elements, whatever the cage does: a slower cage lowers one and raises the other.
TEST(InnerRace, MovesAgainstTheOuterRace) {
    const Heard heard = hear(bearing("bearing_inner_race", 0.8, 0.006));
    const double expected = kBalls * (1 - kCage * 1.006) * heard.recording.shaftHz;
    EXPECT_NEAR(heard.near(expected, 1.0).hz / expected, 1, 1e-3);
    EXPECT_GT(std::abs(expected / (kBalls * (1 - kCage) * heard.recording.shaftHz) - 1), 2e-3);
}

// Randall and Antoni, MSSP 25 (2011), sec. 2.1: an inner-race defect turns through the load zone, so its
// harmonics carry sidebands at shaft speed; an outer-race defect stands still in it.
TEST(InnerRace, IsModulatedByTheShaft) {
    const Heard inner = hear(bearing("bearing_inner_race", 0.8, 0.002));
    const double shaft = inner.recording.shaftHz;
    const double carrier = kBalls * (1 - kCage * 1.002) * shaft;
    EXPECT_GT(inner.at(carrier - shaft), 0.4 * inner.at(carrier));
    EXPECT_GT(inner.at(carrier + shaft), 0.4 * inner.at(carrier));
    EXPECT_GT(inner.at(shaft), 0.3 * inner.at(carrier));
    const Heard outer = hear(bearing("bearing_outer_race", 0.8, 0.002));
    const double still = kBalls * kCage * 1.002 * shaft;
    EXPECT_LT(outer.at(still - shaft), 0.15 * outer.at(still));
}

// The same source: a rolling element strikes both races in a turn (2 x BSF), modulated at cage speed.
TEST(RollingElement, StrikesTwiceASpinWithCageSidebands) {
    const Heard heard = hear(bearing("bearing_rolling_element", 0.75, 0.0));
    const double shaft = heard.recording.shaftHz;
    const Found carrier = heard.near(2 * kSpin * shaft, 1.0);
    EXPECT_NEAR(carrier.hz / (2 * kSpin * shaft), 1, 1e-3);
    EXPECT_GT(heard.near(carrier.hz - kCage * shaft, 0.3).peak, 0.3 * carrier.peak);
    EXPECT_GT(heard.near(carrier.hz + kCage * shaft, 0.3).peak, 0.3 * carrier.peak);
}

TEST(Cage, StrikesOnceATurnOfTheCage) {
    const Heard heard = hear(bearing("bearing_cage", 0.9, 0.0));
    const double expected = 4 * kCage * heard.recording.shaftHz;
    EXPECT_NEAR(heard.near(expected, 0.6).hz / expected, 1, 3e-3);
}

TEST(ImpactTrain, IntervalsScatterAsAsked) {
    DefectMotion motion;
    motion.orders = ordersOf({kBalls, 28.575, 125, 0});
    motion.slipJitter = 0.008;
    std::vector<double> turns(2000000);
    for (std::size_t i = 0; i < turns.size(); ++i)
        turns[i] = double(i) / 512;
    const auto impacts = impactTrain(motion, turns, RandomStream(3));
    std::vector<double> intervals;
    for (std::size_t i = 1; i < impacts.size(); ++i)
        intervals.push_back((impacts[i].sample - impacts[i - 1].sample) / 512 * strikesPerTurn(motion));
    ASSERT_GT(intervals.size(), 10000u);
    EXPECT_NEAR(meanOf(intervals), 1, 5 * 0.008 / 100);
    EXPECT_NEAR(rmsOf(intervals), 0.008, 0.0004);
}

// Stages as impact peaks: just above noise, then tenths of a g, then several g (common practice, no source).
TEST(BearingSeverity, RisesFromNoiseToSeveralG) {
    EXPECT_EQ(impactPeakG(0), 0);
    EXPECT_NEAR(impactPeakG(0.25), 0.105, 0.01);
    EXPECT_NEAR(impactPeakG(1), 4.45, 0.1);
    double before = kurtosisOf(valuesOf(made(setupOf(fan())), "x"));
    EXPECT_NEAR(before, 3, 0.3);
    for (const double severity : {0.5, 0.65, 0.75}) {
        const double now = kurtosisOf(valuesOf(made(bearing("bearing_outer_race", severity, 0)), "x"));
        EXPECT_GT(now, before) << severity;
        before = now;
    }
}

TEST(BearingSeverity, FarEndIsHeardLess) {
    auto far = bearing("bearing_outer_race", 0.75, 0);
    far.conditions[0].at = "driver NDE";
    EXPECT_LT(kurtosisOf(valuesOf(made(far), "x")),
              kurtosisOf(valuesOf(made(bearing("bearing_outer_race", 0.75, 0)), "x")));
}

// Common practice, no source: a dry bearing hisses without a line and runs warm.
TEST(DryBearing, RaisesTheHighBandAndTheTemperatureOnly) {
    const auto sound = made(setupOf(fan()));
    const auto dry = made(with(setupOf(fan()), "bearing_dry_or_worn", "driver DE", 0.8));
    EXPECT_GT(rmsOf(valuesOf(dry, "x")), 3 * rmsOf(valuesOf(sound, "x")));
    EXPECT_NEAR(kurtosisOf(valuesOf(dry, "x")), 3, 0.3);
    EXPECT_GT(dry.frameTempC, sound.frameTempC + 15);
    const double hz = sound.shaftHz;
    EXPECT_NEAR(peakAt(valuesOf(dry, "x"), 12800, hz), peakAt(valuesOf(sound, "x"), 12800, hz), 0.002);
}

}  // namespace
}  // namespace fettle::sim
