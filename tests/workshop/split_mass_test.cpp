// Splitting and joining masses: forces add as arrows (statics).
#include "core/workshop/split_mass.h"

#include <gtest/gtest.h>

#include <cmath>

namespace fettle {
namespace {

Phasor sumOf(const SplitMass& split) {
    Phasor sum;
    for (const PlacedMass& one : split.masses)
        sum += phasorOf(one.mass);
    return sum;
}

double most(const SplitMass& split) {
    double grams = 0;
    for (const PlacedMass& one : split.masses)
        grams = std::max(grams, one.mass.amount);
    return grams;
}

TEST(Split, BetweenTheTwoNearestPlaces) {
    const PlacesOnRotor places{8, 0, {}, {}, 0};
    const SplitMass split = splitOver({100, 30}, places);
    ASSERT_EQ(split.masses.size(), 2u);
    EXPECT_EQ(split.masses[0].place, 1);
    EXPECT_EQ(split.masses[1].place, 2);
    // Law of sines in the parallelogram: 100 sin 15 / sin 45 and 100 sin 30 / sin 45.
    EXPECT_NEAR(split.masses[0].mass.amount, 36.602540378, 1e-6);
    EXPECT_NEAR(split.masses[1].mass.amount, 70.710678119, 1e-6);
    EXPECT_EQ(split.leftOver.amount, 0);
}

TEST(Split, OnAPlaceItselfAndWithoutPlaces) {
    EXPECT_EQ(splitOver({100, 90}, {8, 0, {}, {}, 0}).masses.size(), 1u);
    const SplitMass free = splitOver({100, 33}, {});
    ASSERT_EQ(free.masses.size(), 1u);
    EXPECT_EQ(free.masses[0].place, 0);
    EXPECT_NEAR(free.masses[0].mass.degrees, 33, 1e-9);
}

TEST(Split, AroundTakenPlaces) {
    const SplitMass split = splitOver({100, 30}, {8, 0, {1, 2}, {}, 0});
    EXPECT_LT(std::abs(sumOf(split) - phasorOf({100, 30})), 1e-6);
    for (const PlacedMass& one : split.masses)
        EXPECT_TRUE(one.place == 8 || one.place == 3) << one.place;
}

TEST(Split, WithinTheMostAPlaceCanCarry) {
    for (const double degrees : {3.0, 30.0, 44.0, 181.0, 300.0}) {
        const SplitMass split = splitOver({100, degrees}, {12, 5, {}, 40, 0});
        EXPECT_LE(most(split), 40 + 1e-9);
        EXPECT_LT(std::abs(sumOf(split) - phasorOf({100, degrees})), 0.5) << degrees;
        EXPECT_LE(split.masses.size(), 5u) << degrees;
    }
}

TEST(Split, WhatFindsNoPlaceIsTold) {
    // All four places full pull together at most as much as the three on the side of the mass.
    const SplitMass split = splitOver({100, 0}, {4, 0, {}, 10, 0});
    EXPECT_NEAR(split.leftOver.amount, 90, 0.1);
    EXPECT_NEAR(std::abs(sumOf(split) + phasorOf(split.leftOver) - phasorOf({100, 0})), 0, 1e-9);
    // Nothing free at all: all of it.
    EXPECT_NEAR(splitOver({100, 70}, {2, 0, {1, 2}, {}, 0}).leftOver.amount, 100, 1e-9);
}

TEST(Split, StepsOfMassLeaveTheirRest) {
    const SplitMass split = splitOver({103, 30}, {8, 0, {}, {}, 5});
    for (const PlacedMass& one : split.masses)
        EXPECT_NEAR(std::remainder(one.mass.amount, 5), 0, 1e-9);
    EXPECT_GT(split.leftOver.amount, 0);
    EXPECT_LT(split.leftOver.amount, 5);
}

TEST(Combine, MassesAtTheirRadii) {
    const FittedMass square[] = {{{30, 0}, 100}, {{40, 90}, 100}};
    EXPECT_NEAR(combined(square, 100).amount, 50, 1e-12);  // 3, 4, 5
    EXPECT_NEAR(combined(square, 200).amount, 25, 1e-12);
    const FittedMass opposite[] = {{{30, 10}, 100}, {{15, 190}, 200}};
    EXPECT_NEAR(combined(opposite, 150).amount, 0, 1e-12);
    EXPECT_EQ(combined({}, 100).amount, 0);
}

}  // namespace
}  // namespace fettle
