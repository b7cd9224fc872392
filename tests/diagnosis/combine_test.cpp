// A week is one statement: the mean of e-values, and one order of claims for all its recordings.
#include "core/diagnosis/combine.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

Hypothesis innerRace(const std::string& at, double weight, double before) {
    Hypothesis h;
    h.fault = "bearing_inner_race";
    h.at = at;
    h.weightDban = weight;
    h.beforeClaimsDban = before;
    h.recordingCount = 1;
    h.best.weightDban = weight;
    return h;
}

// Both ends as one recording weighs them: `claims` took the lines of the other, which had 60 decibans before.
Examination recordingWhere(const std::string& claims, double weight) {
    const std::string other = claims == "driver DE" ? "driver NDE" : "driver DE";
    Examination one;
    one.recordings.resize(1);
    one.considered = {innerRace(claims, weight, weight), innerRace(other, 2, 60)};
    one.considered[0].rivals = {{"bearing_inner_race", other, 60, kClaimedFromRival}};
    one.considered[1].rivals = {{"bearing_inner_race", claims, weight, kClaimedByRival}};
    return one;
}

const Hypothesis& at(const Examination& week, const std::string& place) {
    for (const Hypothesis& h : week.considered)
        if (h.at == place) return h;
    throw std::out_of_range(place);
}

double mean(std::vector<double> decibans) {
    double e = 0;
    for (const double d : decibans)
        e += std::pow(10, d / 10);
    return 10 * std::log10(e / double(decibans.size()));
}

// Vovk and Wang, Ann. Statist. 49 (2021), section 3: a mean of e-values; capping one only makes it smaller.
TEST(Combine, WhatTheWeekMakesTheWeakerKeepsNoLinesOfTheStronger) {
    const auto week = combine(
        made::motor(),
        {recordingWhere("driver DE", 90), recordingWhere("driver DE", 85), recordingWhere("driver NDE", 75)});
    ASSERT_TRUE(week);
    EXPECT_NEAR(*at(*week, "driver NDE").weightDban, mean({2, 2, 0}), 1e-9);
    EXPECT_NEAR(*at(*week, "driver DE").weightDban, mean({90, 85, 2}), 1e-9);
    ASSERT_EQ(week->findings.size(), 1u);
    EXPECT_EQ(week->findings[0].at, "driver DE");
    EXPECT_EQ(*at(*week, "driver NDE").persistence, 0);
}

TEST(Combine, TwoFaultsThatClaimNothingOfEachOtherBothStand) {
    Examination one;
    one.recordings.resize(1);
    one.considered = {innerRace("driver DE", 70, 70), innerRace("driver NDE", 50, 50)};
    const auto week = combine(made::motor(), {one, one});
    ASSERT_TRUE(week);
    EXPECT_EQ(week->findings.size(), 2u);
}

// The rows shown are those of the strongest recording that counts, and they still add up.
TEST(Combine, RowsShownAreThoseOfARecordingThatCounts) {
    const auto week =
        combine(made::motor(), {recordingWhere("driver DE", 90), recordingWhere("driver NDE", 75)});
    ASSERT_TRUE(week);
    const Hypothesis& weaker = at(*week, "driver NDE");
    EXPECT_EQ(weaker.recording, 0u);
    EXPECT_NEAR(weaker.best.weightDban + weaker.meanDban, *weaker.weightDban, 1e-9);
}

}  // namespace
}  // namespace fettle
