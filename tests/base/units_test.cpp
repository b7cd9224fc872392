#include "core/base/units.h"

#include <gtest/gtest.h>

#include <type_traits>

namespace fettle {
namespace {

// v = a / (2 pi f): 1 g at 1000/(2 pi) Hz is 9.80665 mm/s, as 1 g is 9.80665 m/s2 (ISO 80000-3).
TEST(Units, VelocityOfAnAcceleration) {
    EXPECT_NEAR(velocityMmPerS(1, Hertz(1000 / kTwoPi)), 9.80665, 1e-12);
    EXPECT_NEAR(velocityMmPerS(1, Hertz(159.1549431)), 9.80665, 1e-8);
    // check values: NumPy 1.24.2
    EXPECT_NEAR(velocityMmPerS(1, Hertz(159.2)), 9.80387451427, 1e-10);
    EXPECT_NEAR(velocityMmPerS(1, Hertz(100)), 15.6077682267, 1e-9);
    EXPECT_NEAR(velocityMmPerS(0.0160176648172, Hertz(25)), 1, 1e-10);
}

// s = v / (2 pi f); check values: NumPy 1.24.2.
TEST(Units, DisplacementOfAVelocity) {
    EXPECT_NEAR(displacementUm(1, Hertz(25)), 6.36619772368, 1e-10);
    EXPECT_NEAR(displacementUm(9.80665, Hertz(1000 / kTwoPi)), 9.80665, 1e-12);
}

// 25.4 mm in an inch, exact; r.m.s. of a sine is its peak over the square root of 2. Check values:
// NumPy 1.24.2.
TEST(Units, InchesPerSecondPeak) {
    EXPECT_NEAR(rmsMmPerSFromInchPeak(1), 17.9605122421, 1e-10);
    EXPECT_NEAR(rmsMmPerSFromInchPeak(0.250549647), 4.5, 1e-8);
    EXPECT_NEAR(rmsMmPerSFromInchPeak(0.395311665), 7.1, 1e-8);
}

TEST(Units, SpeedsAndOrders) {
    EXPECT_DOUBLE_EQ(toHertz(Rpm(1500)).value, 25);
    EXPECT_DOUBLE_EQ(toRpm(Hertz(50)).value, 3000);
    EXPECT_DOUBLE_EQ((Order(3.0857) * toHertz(Rpm(1484))).value, 3.0857 * 1484 / 60);
    EXPECT_DOUBLE_EQ(Hertz(100) / Hertz(25), 4);
    EXPECT_LT(Rpm(1484), Rpm(1500));
}

TEST(Units, CannotBeTakenForOneAnother) {
    EXPECT_FALSE((std::is_convertible_v<Rpm, Hertz>));
    EXPECT_FALSE((std::is_constructible_v<Hertz, Rpm>));
    EXPECT_FALSE((std::is_convertible_v<double, Hertz>));
}

// ISO 1683 reference levels: 1e-9 m/s for velocity, 1e-6 m/s2 for acceleration. Check values: NumPy 1.24.2.
TEST(Units, Decibels) {
    EXPECT_NEAR(decibels(100), 20, 1e-12);
    EXPECT_NEAR(decibels(std::pow(4.5e-3 / 1e-9, 2)), 133.064250276, 1e-8);
    EXPECT_NEAR(decibels(std::pow(kStandardGravity / 1e-6, 2)), 139.830413512, 1e-8);
}

}  // namespace
}  // namespace fettle
