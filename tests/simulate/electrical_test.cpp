#include <gtest/gtest.h>

#include "tests/simulate/probe.h"
#include "tests/simulate/test_machines.h"

namespace fettle::sim {
namespace {

using namespace probe;

SimulationSetup longRecord(const Machine& machine) {
    auto setup = setupOf(machine);
    setup.node.rateHz = 1000;
    setup.seconds = 16;
    setup.operation.load = 1;
    setup.operation.loadSwing = 0;
    return setup;
}

// Broken bars draw (1 +- 2ks) f1 in current and stray field (Thomson and Fenger, IEEE Ind. Appl. Mag. 7(4)
// (2001) 26-34, from memory).
TEST(RotorBars, DrawSidebandsAtTwiceSlipInTheField) {
    const auto sound = made(longRecord(fan()));
    const auto broken = made(with(longRecord(fan()), "rotor_bar", "driver", 0.8));
    const auto field = valuesOf(broken, "flux"), before = valuesOf(sound, "flux");
    const double mains = broken.supplyHz, slip = broken.slip;
    EXPECT_NEAR(slip, 16.0 / 1500, 1e-5);
    const Found lower = strongest(field, 1000, (1 - 2 * slip) * mains, 0.2);
    EXPECT_NEAR(lower.hz, (1 - 2 * slip) * mains, 0.01);
    const double carrier = peakAt(field, 1000, mains);
    EXPECT_NEAR(20 * std::log10(lower.peak / carrier), -62 + 32 * 0.8, 2);
    EXPECT_GT(lower.peak, 5 * peakAt(before, 1000, lower.hz));
    EXPECT_GT(peakAt(field, 1000, (1 + 2 * slip) * mains), 3 * peakAt(before, 1000, (1 + 2 * slip) * mains));
}

TEST(RotorBars, VanishWithoutLoad) {
    auto setup = with(longRecord(fan()), "rotor_bar", "driver", 0.8);
    setup.operation.load = 0.3;
    const auto light = made(setup);
    const double lower = peakAt(valuesOf(light, "flux"), 1000, (1 - 2 * light.slip) * light.supplyHz);
    EXPECT_LT(20 * std::log10(lower / peakAt(valuesOf(light, "flux"), 1000, light.supplyHz)), -40);
}

TEST(RotorBars, ShowAroundTheShaftLineInVibration) {
    const auto broken = made(with(longRecord(fan()), "rotor_bar", "driver", 1));
    const auto sound = made(longRecord(fan()));
    const double hz = broken.shaftHz - 2 * broken.slip * broken.supplyHz;
    EXPECT_GT(peakAt(valuesOf(broken, "x"), 1000, hz), 3 * peakAt(valuesOf(sound, "x"), 1000, hz));
}

// Mixed eccentricity draws f1 +- fr in current and field (the same source).
TEST(AirGap, DrawsSupplyPlusAndMinusShaft) {
    const auto sound = made(longRecord(fan()));
    const auto bad = made(with(longRecord(fan()), "air_gap", "driver", 0.8));
    for (const double sign : {-1.0, 1.0}) {
        const double hz = bad.supplyHz + sign * bad.shaftHz;
        EXPECT_GT(peakAt(valuesOf(bad, "flux"), 1000, hz), 4 * peakAt(valuesOf(sound, "flux"), 1000, hz))
            << sign;
    }
}

TEST(TwiceMains, IsNotTwiceShaft) {
    auto setup = with(longRecord(fan()), "electrical_2x_mains", "driver", 0.5);
    const auto bad = made(setup);
    const auto values = valuesOf(bad, "x");
    EXPECT_NEAR(strongest(values, 1000, 100, 0.5).hz, 2 * bad.supplyHz, 0.01);
    EXPECT_GT(peakAt(values, 1000, 2 * bad.supplyHz), 4 * peakAt(values, 1000, 4 * bad.shaftHz));
}

TEST(Slots, StandBesideBarsTimesShaft) {
    const auto sound = made(setupOf(fan()));
    const double bars = 58 * sound.shaftHz, field = 2 * sound.supplyHz;
    for (const double hz : {bars, bars - field, bars + field}) {
        EXPECT_NEAR(strongest(valuesOf(sound, "x"), sound.trueRateHz, hz, 2).hz, hz, 0.1) << hz;
    }
}

TEST(Inverter, CarrierAndOutputFrequencyReplaceTheMains) {
    const auto recording = made(setupOf(inverterFan()));
    EXPECT_NEAR(recording.supplyHz, 40, 0.01);
    EXPECT_NEAR(strongest(valuesOf(recording, "flux"), 12800, 40, 1).hz, 40, 0.01);
    const auto values = valuesOf(recording, "x");
    const double side = peakAt(values, 12800, 3000 * recording.supplyHz / 40 + 2 * recording.supplyHz);
    EXPECT_GT(side, 5 * peakAt(values, 12800, 3020));
    EXPECT_LT(peakAt(valuesOf(recording, "flux"), 12800, 50), 1e-3);
}

TEST(Stopped, OnlySensorNoiseRemains) {
    auto setup = with(setupOf(fan()), "bearing_outer_race", "driver DE", 0.9);
    setup.operation.turning = setup.operation.energised = false;
    const auto recording = made(setup);
    EXPECT_NEAR(rmsOf(valuesOf(recording, "x")), 1e-5 * std::sqrt(6400.0), 5e-6);
    EXPECT_LT(rmsOf(valuesOf(recording, "flux")), 0.002);
    EXPECT_EQ(recording.shaftHz, 0);
    setup.operation.energised = true;
    EXPECT_GT(rmsOf(valuesOf(made(setup), "flux")), 0.05);
}

}  // namespace
}  // namespace fettle::sim
