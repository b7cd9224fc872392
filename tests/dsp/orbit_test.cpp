// The orbit against pairs of sines whose ellipse is known by geometry (no source needed), and against the
// acceleration of a known displacement: a = -(2 pi f)^2 d, 1 g = 9.80665 m/s2 (ISO 80000-3).
#include "core/dsp/orbit.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/dsp/signals.h"

namespace fettle {

namespace {

constexpr double kRate = 6400, kShaft = 24.7;
constexpr std::size_t kSamples = 25600;  // 4 s: 98.8 turns

// Acceleration in g of a displacement um x cos(2 pi f t + phase).
std::vector<double> accelerationOf(double um, double hz, double phaseDeg, std::size_t n = kSamples) {
    const double omega = kTwoPi * hz;
    std::vector<double> out(n);
    for (std::size_t i = 0; i < n; ++i)
        out[i] = -um * 1e-6 * omega * omega / kStandardGravity *
                 std::cos(omega * double(i) / kRate + phaseDeg * kTwoPi / 360);
    return out;
}

std::vector<double> sum(std::vector<double> a, const std::vector<double>& b) {
    for (std::size_t i = 0; i < a.size(); ++i)
        a[i] += b[i];
    return a;
}

Ellipse seen(const std::vector<double>& first, const std::vector<double>& second, double hz = kShaft) {
    return ellipseOf(displacementAt(first, kRate, hz), displacementAt(second, kRate, hz));
}

}  // namespace

TEST(Orbit, AmplitudeAndPhaseOfAKnownDisplacementComeBack) {
    for (const double phase : {-120.0, 0.0, 35.0, 180.0}) {
        const auto pointer = displacementAt(accelerationOf(42, kShaft, phase), kRate, kShaft);
        EXPECT_NEAR(std::abs(pointer), 42, 0.042);
        EXPECT_NEAR(std::remainder(std::arg(pointer) * 360 / kTwoPi - phase, 360), 0, 0.1);
    }
}

// x = 30 cos wt, y = 10 sin wt: half axes 30 and 10 along the sensors, from x towards y.
TEST(Orbit, AQuarterTurnApartTheAxesAreTheAmplitudesAndTheSenseIsKnown) {
    const auto x = accelerationOf(30, kShaft, 0), y = accelerationOf(10, kShaft, -90);
    const Ellipse forward = seen(x, y);
    EXPECT_NEAR(forward.majorUm, 30, 0.05);
    EXPECT_NEAR(forward.minorUm, 10, 0.05);
    EXPECT_NEAR(std::remainder(forward.angleDeg, 180), 0, 0.2);
    EXPECT_EQ(forward.turns, 1);
    EXPECT_EQ(seen(x, accelerationOf(10, kShaft, 90)).turns, -1);
}

// In phase: a straight line at atan(20 / 20) = 45 degrees, half length sqrt(20^2 + 20^2); it turns nowhere.
TEST(Orbit, InPhaseItIsALineWithoutASense) {
    const Ellipse line = seen(accelerationOf(20, kShaft, 10), accelerationOf(20, kShaft, 10));
    EXPECT_NEAR(line.majorUm, 28.284, 0.05);
    EXPECT_NEAR(line.minorUm, 0, 0.05);
    EXPECT_NEAR(line.angleDeg, 45, 0.2);
    EXPECT_EQ(line.turns, 0);
    EXPECT_NEAR(seen(accelerationOf(20, kShaft, 0), accelerationOf(20, kShaft, 180)).angleDeg, 135, 0.2);
}

// Rotating an ellipse of half axes 30 and 10 by 30 degrees turns its angle and nothing else.
TEST(Orbit, ATurnedEllipseKeepsItsAxes) {
    const double c = std::cos(kTwoPi / 12), s = std::sin(kTwoPi / 12);
    const auto x = sum(accelerationOf(30 * c, kShaft, 0), accelerationOf(10 * s, kShaft, 90));
    const auto y = sum(accelerationOf(30 * s, kShaft, 0), accelerationOf(10 * c, kShaft, -90));
    const Ellipse ellipse = seen(x, y);
    EXPECT_NEAR(ellipse.majorUm, 30, 0.05);
    EXPECT_NEAR(ellipse.minorUm, 10, 0.05);
    EXPECT_NEAR(ellipse.angleDeg, 30, 0.2);
    EXPECT_EQ(ellipse.turns, 1);
}

// What stands at another order, at the mains' double, or still (gravity), is not in the path of 1x.
TEST(Orbit, OtherOrdersAndGravityStayOut) {
    auto x = sum(accelerationOf(30, kShaft, 0), accelerationOf(8, 2 * kShaft, 40));
    auto y = sum(accelerationOf(30, kShaft, -90), accelerationOf(2, 100, 0));
    for (double& g : x)
        g += 1;
    const std::vector<int> first = {1}, both = {1, 2};
    const OrbitPath one = orbitOfOrders(x, y, kRate, kShaft, first);
    ASSERT_EQ(one.first.size(), 361u);
    for (std::size_t i = 0; i < one.first.size(); ++i)
        EXPECT_NEAR(std::hypot(one.first[i], one.second[i]), 30, 0.15) << i;
    EXPECT_FLOAT_EQ(one.first.front(), one.first.back());
    const OrbitPath two = orbitOfOrders(x, y, kRate, kShaft, both);
    EXPECT_NEAR(*std::max_element(two.first.begin(), two.first.end()), 37, 1.1);  // 30 + 8 where they meet
}

TEST(Orbit, UnfilteredKeepsAllAboveTheCorner) {
    const auto x = sum(accelerationOf(30, kShaft, 0), accelerationOf(5, 3 * kShaft, 0));
    const auto y = accelerationOf(30, kShaft, -90);
    const OrbitPath path = orbitUnfiltered(x, y, kRate, kShaft, 10, 4);
    EXPECT_NEAR(double(path.first.size()), 4 * kRate / kShaft, 2);
    EXPECT_NEAR(*std::max_element(path.first.begin(), path.first.end()), 35, 0.7);
    EXPECT_NEAR(*std::max_element(path.second.begin(), path.second.end()), 30, 0.6);
    EXPECT_TRUE(orbitUnfiltered(x, {}, kRate, kShaft, 10, 4).first.empty());
    EXPECT_TRUE(orbitOfOrders(x, y, kRate, 0, std::vector<int>{1}).first.empty());
}

}  // namespace fettle
