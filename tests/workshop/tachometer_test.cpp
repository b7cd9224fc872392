// Once-per-turn readings of signals whose arrow is known, because they are made from it.
#include "core/workshop/tachometer.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "core/base/units.h"

namespace fettle {
namespace {

constexpr double kRate = 5120, kSeconds = 4;

struct Made {
    std::vector<double> signal, mark;
};

// The mark passes whenever the angle is whole; the vibration peaks `lag` degrees of turning later.
Made turning(double rpm, double drift, double rms, double lagDegrees, double markWidth = 0.05) {
    Made made;
    for (int i = 0; i < int(kRate * kSeconds); ++i) {
        const double t = i / kRate, turns = rpm / 60 * (t + drift * t * t / 2) + 0.37;
        const double angle = kTwoPi * turns;
        made.signal.push_back(0.3 + rms * std::numbers::sqrt2 * std::cos(angle - lagDegrees * kTwoPi / 360) +
                              0.8 * std::cos(2.03 * angle + 1) + 0.5 * std::sin(5.5 * angle));
        made.mark.push_back(turns - std::floor(turns) < markWidth ? 4.8 : 0.1);
    }
    return made;
}

// An edge is known to half a sample, which is half a sample's turning.
double edgeDegrees(double rpm) {
    return 360 * rpm / 60 / kRate;
}

TEST(Tachometer, GivesTheArrowThatIsThere) {
    for (const double lag : {0.0, 75.0, 190.0, 350.0})
        for (const double rpm : {890.0, 1487.0, 2975.0}) {
            const Made made = turning(rpm, 0, 2.5, lag);
            const auto once = onceAsTurned(made.signal, "mm/s", made.mark, kRate);
            ASSERT_TRUE(once) << once.error().sentence();
            EXPECT_NEAR(once->reading.amount, 2.5, 0.06);
            EXPECT_NEAR(degreesBetween(lag, once->reading.degrees), 0, 1.5 + edgeDegrees(rpm));
            EXPECT_NEAR(once->rpm, rpm, 0.005 * rpm);
            EXPECT_EQ(once->unit, "mm/s r.m.s.");
        }
}

TEST(Tachometer, FollowsASpeedThatWanders) {
    const Made made = turning(1487, 0.01, 2.5, 75);
    const auto once = onceAsTurned(made.signal, "mm/s", made.mark, kRate);
    ASSERT_TRUE(once) << once.error().sentence();
    EXPECT_NEAR(once->reading.amount, 2.5, 0.06);
    EXPECT_NEAR(once->reading.degrees, 75, 1.5 + edgeDegrees(1487));
    EXPECT_LT(once->stretches.scatterDegrees, kMostScatterDegrees);
}

// The derivative of a velocity of 1 mm/s r.m.s. leads it by a quarter turn and is omega times as large.
TEST(Tachometer, AccelerationComesBackAsVelocity) {
    const double rpm = 1500, omega = kTwoPi * rpm / 60;
    const Made made = turning(rpm, 0, omega / 1000, 40);
    const auto once = onceAsTurned(made.signal, "m/s2", made.mark, kRate);
    ASSERT_TRUE(once);
    EXPECT_NEAR(once->reading.amount, 1, 0.3);
    EXPECT_NEAR(degreesBetween(130, once->reading.degrees), 0, 12);
    Made pure = made;
    for (std::size_t i = 0; i < pure.signal.size(); ++i)
        pure.signal[i] = 2 * std::cos(kTwoPi * (rpm / 60 * double(i) / kRate + 0.37));
    const auto inG = onceAsTurned(pure.signal, "g", pure.mark, kRate);
    ASSERT_TRUE(inG);
    EXPECT_NEAR(inG->reading.amount, 2 / std::numbers::sqrt2 * 1000 * kStandardGravity / omega, 0.1);
    EXPECT_NEAR(inG->reading.degrees, 90, 2.5);
}

TEST(Tachometer, TakesMarksEitherWayAndSquareWaves) {
    Made made = turning(1487, 0, 2.5, 75);
    for (double& x : made.mark)
        x = -x;
    const auto down = onceAsTurned(made.signal, "mm/s", made.mark, kRate);
    ASSERT_TRUE(down);
    EXPECT_NEAR(down->reading.degrees, 75, 1.5 + edgeDegrees(1487));
    made = turning(1487, 0, 2.5, 75, 0.5);
    const auto square = onceAsTurned(made.signal, "mm/s", made.mark, kRate);
    ASSERT_TRUE(square) << square.error().sentence();
    EXPECT_NEAR(square->reading.degrees, 75, 1.5 + edgeDegrees(1487));
}

TEST(Tachometer, RefusesWhatIsNoMark) {
    const Made made = turning(1487, 0, 2.5, 75);
    EXPECT_FALSE(onceAsTurned(made.signal, "mm/s", made.signal, kRate));
    const std::vector<double> still(made.signal.size(), 1.0);
    EXPECT_FALSE(onceAsTurned(made.signal, "mm/s", still, kRate));
    EXPECT_FALSE(findPulses({}, kRate));
    // One pulse taken out: a turn twice as long.
    Made gap = made;
    for (std::size_t i = gap.mark.size() / 2; i < gap.mark.size() / 2 + std::size_t(kRate * 60 / 1487); ++i)
        gap.mark[i] = 0.1;
    const auto missing = findPulses(gap.mark, kRate);
    ASSERT_FALSE(missing);
    EXPECT_EQ(missing.error().place, "tachometer");
    // Five turns only.
    const std::span<const double> shortMark(made.mark.data(), 1000), shortSignal(made.signal.data(), 1000);
    EXPECT_FALSE(onceAsTurned(shortSignal, "mm/s", shortMark, kRate));
}

}  // namespace
}  // namespace fettle
