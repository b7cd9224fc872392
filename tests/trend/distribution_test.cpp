// The distributions against closed forms and printed tables.
#include "core/trend/distribution.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace fettle {
namespace {

// z of 95, 99 and 99.9 %: standard normal table.
TEST(Distribution, NormalQuantilesAreThePrintedOnes) {
    EXPECT_NEAR(normalQuantile(0.95), 1.644853627, 1e-9);
    EXPECT_NEAR(normalQuantile(0.99), 2.326347874, 1e-9);
    EXPECT_NEAR(normalQuantile(0.999), 3.090232306, 1e-9);
    EXPECT_NEAR(normalQuantile(0.5), 0, 1e-12);
    EXPECT_NEAR(normalBelow(1.644853627), 0.95, 1e-10);
}

// One degree is Cauchy's distribution, two have a closed form; both hold over many magnitudes.
TEST(Distribution, StudentsTailOfOneAndTwoDegreesIsTheClosedForm) {
    for (const double t : {0.0, 0.1, 1.0, 3.0, 12.7062, 1e3, 1e6}) {
        const double one = 2 / std::numbers::pi * std::atan2(1.0, t);
        EXPECT_NEAR(studentTwoSided(t, 1) / one, 1, 1e-10) << t;
        const double two = t == 0 ? 1 : 2 / (2 + t * t + t * std::sqrt(2 + t * t));
        EXPECT_NEAR(studentTwoSided(t, 2) / two, 1, 1e-10) << t;
        EXPECT_EQ(studentTwoSided(-t, 5), studentTwoSided(t, 5)) << t;
    }
}

// Printed quantiles of Student's t, from memory: 13, 10, 41 degrees are what 14, 11 and 42 days give.
TEST(Distribution, StudentQuantilesAreThePrintedOnes) {
    EXPECT_NEAR(studentQuantile(0.975, 10), 2.228138852, 1e-8);
    EXPECT_NEAR(studentQuantile(0.975, 13), 2.160368656, 1e-8);
    EXPECT_NEAR(studentQuantile(0.995, 5), 4.032142984, 1e-8);
    EXPECT_NEAR(studentQuantile(0.9, 1000000), normalQuantile(0.9), 1e-5);
    EXPECT_NEAR(studentTwoSided(2.228138852, 10), 0.05, 1e-9);
}

// One-sided 95/95 factors as tabled by Hahn and Meeker (1991), and 2.911 of ten values.
TEST(Distribution, ToleranceFactorsAreTheTabledOnes) {
    EXPECT_NEAR(toleranceFactor(10), 2.9110, 5e-4);
    EXPECT_NEAR(toleranceFactor(5), 4.2027, 5e-4);
    EXPECT_NEAR(toleranceFactor(20), 2.3960, 5e-4);
    EXPECT_NEAR(toleranceFactor(30), 2.2198, 5e-4);
}

}  // namespace
}  // namespace fettle
