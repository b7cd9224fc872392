#include "core/simulate/exact_math.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace fettle::sim::exact {
namespace {

// Expected: the C library's functions, which are good to about 1e-16.
TEST(ExactMath, SineAndCosineAgreeWithTheLibrary) {
    for (int i = -4000; i <= 4000; ++i) {
        const double turns = i / 977.0;
        EXPECT_NEAR(sine(turns), std::sin(2 * std::numbers::pi * turns), 4e-15) << turns;
        EXPECT_NEAR(cosine(turns), std::cos(2 * std::numbers::pi * turns), 4e-15) << turns;
    }
}

TEST(ExactMath, SineIsExactAtQuarterTurnsAndPeriodic) {
    for (const double whole : {-1e6, -3.0, 0.0, 7.0, 123456789.0}) {
        EXPECT_EQ(sine(whole), 0);
        EXPECT_NEAR(sine(whole + 0.25), 1, 1e-15);
        EXPECT_EQ(sine(whole + 0.5), 0);
        EXPECT_NEAR(cosine(whole), 1, 1e-15);
        EXPECT_EQ(sine(whole + 0.125), sine(0.125));
    }
}

TEST(ExactMath, ExponentialAndLogarithmAgreeWithTheLibrary) {
    for (int i = -600; i <= 600; ++i) {
        const double x = i * 1.17;
        if (std::abs(x) < 700) {
            EXPECT_NEAR(exponential(x) / std::exp(x), 1, 1e-14) << x;
        }
        const double y = std::exp(x / 10);
        EXPECT_NEAR(logarithm(y), std::log(y), 2e-15 * (1 + std::abs(x / 10))) << y;
    }
    EXPECT_EQ(exponential(-800), 0);
    EXPECT_EQ(exponential(900), exponential(700));
}

TEST(ExactMath, DecibelsOfAmplitude) {
    EXPECT_NEAR(fromDecibels(20), 10, 1e-13);
    EXPECT_NEAR(fromDecibels(-40), 0.01, 1e-15);
}

TEST(ExactMath, NearestWholeTakesHalvesToEven) {
    EXPECT_EQ(nearestWhole(2.5), 2);
    EXPECT_EQ(nearestWhole(3.5), 4);
    EXPECT_EQ(nearestWhole(-2.5), -2);
    EXPECT_EQ(nearestWhole(-0.4), 0);
}

TEST(ExactMath, ManyAtOnceAreTheSameAsOneByOne) {
    const std::vector<double> turns{-2.3, -0.25, 0, 0.1, 0.49, 0.51, 1e5 + 0.3};
    std::vector<double> cosines, sines, sum(turns.size(), 1);
    phasors(turns, cosines, sines);
    addSines(turns, 2, sum);
    for (std::size_t i = 0; i < turns.size(); ++i) {
        EXPECT_EQ(sines[i], sine(turns[i]));
        EXPECT_EQ(cosines[i], cosine(turns[i]));
        EXPECT_EQ(sum[i], 1 + 2 * sine(turns[i]));
    }
}

}  // namespace
}  // namespace fettle::sim::exact
