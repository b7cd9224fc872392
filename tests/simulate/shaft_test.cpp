#include "core/simulate/shaft_sources.h"

#include <gtest/gtest.h>

#include "core/base/units.h"
#include "tests/simulate/probe.h"
#include "tests/simulate/test_machines.h"

namespace fettle::sim {
namespace {

using namespace probe;

double velocityAt(const SimulatedRecording& recording, const std::string& channel, double hz) {
    const double peakG = peakAt(valuesOf(recording, channel), recording.trueRateHz, hz);
    return velocityMmPerS(peakG, Hertz(hz)) / std::numbers::sqrt2;
}

// IEC 60034 terms: slip = (synchronous - actual) / synchronous; it grows in proportion to load below rated
// torque (common practice, no source). Rated slip of this plate: 16 / 1500.
TEST(Slip, FollowsLoad) {
    for (const double load : {0.3, 0.6, 1.0}) {
        auto setup = setupOf(fan());
        setup.operation.load = load;
        setup.operation.loadSwing = 0;
        const auto recording = made(setup);
        const double expected = recording.supplyHz / 2 * (1 - 16.0 / 1500 * load);
        const Found line = strongest(valuesOf(recording, "x"), recording.trueRateHz, expected, 0.3);
        EXPECT_NEAR(line.hz, expected, 0.01) << load;
        EXPECT_NEAR(recording.slip, 16.0 / 1500 * load, 1e-6) << load;
    }
}

TEST(Slip, MainsFrequencyMovesTheShaftWithIt) {
    auto setup = setupOf(fan());
    setup.operation.mainsHz = 49.9;
    const auto recording = made(setup);
    EXPECT_NEAR(strongest(valuesOf(recording, "flux"), recording.trueRateHz, 50, 0.4).hz, 49.9, 0.01);
    EXPECT_NEAR(recording.shaftHz, 49.9 / 2 * (1 - 16.0 / 1500 * 0.75), 0.01);
}

// Centrifugal force m e omega^2; far below the support's resonance the displacement follows the force
// (Rao, Mechanical Vibrations, rotating unbalance; from memory).
TEST(Unbalance, GrowsWithSpeedSquared) {
    auto setup = with(setupOf(inverterFan()), "unbalance", "driver", 0.5);
    setup.character.horizontal = {4000, 0.05};
    const auto displacement = [&](double outputHz) {
        setup.operation.outputHz = outputHz;
        const auto recording = made(setup);
        const double hz = recording.shaftHz;
        const Found line = strongest(valuesOf(recording, "x"), recording.trueRateHz, hz, 0.2);
        return std::pair(hz, line.peak / (hz * hz));
    };
    const auto [slowHz, slow] = displacement(20);
    const auto [fastHz, fast] = displacement(45);
    EXPECT_NEAR(fast / slow, (fastHz / slowHz) * (fastHz / slowHz), 0.03 * fast / slow);
}

// One degree of freedom: mobility at resonance over the stiffness-governed value r is 1 / (2 zeta) at r = 1.
TEST(Unbalance, IsMagnifiedAtTheSupportsResonance) {
    const Support support{30, 0.05};
    EXPECT_NEAR(mobilityRatio(support, 30, 3), (1 / (2 * 0.05)) / (0.1 / (1 - 0.01)), 0.01);
    EXPECT_GT(mobilityRatio(support, 30, 25), 2);
}

TEST(Unbalance, SoundMachineIsInZoneABAndSevereIsWorse) {
    const auto sound = made(setupOf(fan()));
    const double level = velocityAt(sound, "x", sound.shaftHz);
    EXPECT_GT(level, 0.4);
    EXPECT_LT(level, 1.4);  // A/B of group 2 rigid, ISO 10816-3:2009 table A.1 as remembered
    const auto bad = made(with(setupOf(fan()), "unbalance", "driver", 0.6));
    EXPECT_GT(velocityAt(bad, "x", bad.shaftHz), 4.5);  // C/D of the same table
}

// Common practice, no source: misalignment raises 2x and the axial direction.
TEST(Misalignment, ShowsAtTwiceShaftSpeedAndAlongTheShaft) {
    const auto sound = made(setupOf(fan()));
    const auto bad = made(with(setupOf(fan()), "misalignment", "driver DE", 0.6));
    EXPECT_GT(velocityAt(bad, "x", 2 * bad.shaftHz), 2);
    EXPECT_GT(velocityAt(bad, "x", 2 * bad.shaftHz), velocityAt(bad, "x", bad.shaftHz));
    EXPECT_GT(velocityAt(bad, "z", bad.shaftHz), 5 * velocityAt(sound, "z", sound.shaftHz));
}

// Common practice, no source: a lifting foot truncates the motion: many harmonics and half orders.
TEST(Looseness, DrawsHarmonicsAndHalfOrders) {
    const auto sound = made(setupOf(fan()));
    const auto bad = made(with(setupOf(fan()), "looseness", "driver", 0.6));
    for (const double order : {0.5, 1.5, 2.0, 3.0, 4.5, 6.0}) {
        EXPECT_GT(velocityAt(bad, "y", order * bad.shaftHz),
                  2 * velocityAt(sound, "y", order * sound.shaftHz))
            << order;
    }
}

TEST(Looseness, UntruncatedMotionHasNoHarmonics) {
    const auto orders = truncatedMotion(10, 8);
    EXPECT_NEAR(std::hypot(orders[1].cosine, orders[1].sine), 1, 1e-12);
    EXPECT_NEAR(std::hypot(orders[0].cosine, orders[0].sine), 0.35 / 2, 1e-12);
    for (std::size_t k = 3; k <= 8; ++k) {
        EXPECT_NEAR(std::hypot(orders[k - 1].cosine, orders[k - 1].sine), 0, 1e-12) << k;
    }
    const auto cut = truncatedMotion(0.3, 8);
    EXPECT_GT(std::hypot(cut[3].cosine, cut[3].sine), 0.1);
}

TEST(Path, FarHousingsAreHeardLess) {
    const auto near = made(with(setupOf(fan()), "unbalance", "driver", 0.5));
    const auto far = made(with(setupOf(fan()), "unbalance", "driven", 0.5));
    const auto sound = made(setupOf(fan()));
    const double level = velocityAt(far, "x", far.shaftHz);
    EXPECT_GT(level, 1.5 * velocityAt(sound, "x", sound.shaftHz));
    EXPECT_LT(level, 0.6 * velocityAt(near, "x", near.shaftHz));
}

}  // namespace
}  // namespace fettle::sim
