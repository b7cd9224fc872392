// A weight is said as what it is: how seldom chance gets so far, not the odds that the fault is there.
#include "core/diagnosis/wording.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fettle {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

// Markov: w decibans by chance in at most one of 10^(w/10).
TEST(Wording, DecibansAreSaidAsChanceNeverAsMoreThanTheyAre) {
    EXPECT_THAT(chanceWords(20), HasSubstr("1 recording of 100"));
    EXPECT_THAT(chanceWords(20), Not(HasSubstr("1,000")));
    EXPECT_THAT(chanceWords(30), HasSubstr("1 recording of 1,000"));
    EXPECT_THAT(chanceWords(29.9), HasSubstr("1 recording of 900"));
    EXPECT_THAT(chanceWords(43), HasSubstr("1 recording of 10,000"));
    EXPECT_THAT(chanceWords(60), HasSubstr("1 recording of 1,000,000"));
    EXPECT_EQ(chanceWords(0), "");
    EXPECT_EQ(chanceWords(-5), "");
}

// No false-alarm curve was ever measured beyond one in a million.
TEST(Wording, BeyondOneInAMillionNothingIsClaimed) {
    for (const double dban : {61.0, 120.0, 3000.0}) {
        EXPECT_THAT(chanceWords(dban), HasSubstr("1,000,000"));
        EXPECT_THAT(chanceWords(dban), Not(HasSubstr("1,000,000,0")));
        EXPECT_THAT(chanceWords(dban), HasSubstr("limit"));
    }
}

TEST(Wording, EveryFaultHasAPlainName) {
    EXPECT_EQ(faultName("bearing_outer_race"), "outer-race defect");
    EXPECT_EQ(faultName("blade_pass"), "blade pass");
    for (const char* key :
         {"bearing_inner_race", "bearing_rolling_element", "bearing_cage", "electrical_2x_mains"})
        EXPECT_THAT(faultName(key), Not(HasSubstr("_"))) << key;
}

Hypothesis finding() {
    Hypothesis h;
    h.fault = "bearing_outer_race";
    h.at = "driver DE";
    h.weightDban = 31;
    h.severity = {"stage", "early", {}, {}, "", ""};
    LineRow found, absent, leftOut;
    found.name = "BPFO";
    found.state = LineState::Found;
    found.weightDban = 12;
    found.carrier = true;
    absent.name = "2 x BPFO";
    absent.state = LineState::Absent;
    absent.weightDban = -4.5;
    absent.carrier = true;
    leftOut.name = "3 x BPFO";
    h.best.rows = {found, absent, leftOut};
    return h;
}

TEST(Wording, TheSentenceNamesPlaceStageCountAndChance) {
    const std::string sentence = bearingSentence(finding());
    for (const char* part :
         {"Outer-race defect", "driver DE", "early", "1 of 2", "31 decibans", "1 recording of 1,000"})
        EXPECT_THAT(sentence, HasSubstr(part));
    EXPECT_THAT(sentence, Not(HasSubstr("probability")));
}

TEST(Wording, TheWayAndTheVariantAreSaid) {
    Hypothesis h = finding();
    EXPECT_THAT(bearingSentence(h), Not(HasSubstr("heard")));
    EXPECT_THAT(bearingSentence(h), Not(HasSubstr("variant")));
    h.path = "through coupling";
    h.best.variant = "9-ball variant (9 x 26 mm on 125 mm)";
    EXPECT_THAT(bearingSentence(h), HasSubstr("heard through the coupling only"));
    EXPECT_THAT(bearingSentence(h), HasSubstr("It fits the 9-ball variant (9 x 26 mm on 125 mm)."));
    EXPECT_THAT(bearingAgainst(h), testing::Contains(HasSubstr("a reading at the bearing decides")));
}

TEST(Wording, WhatSpeaksAgainstIsTold) {
    Hypothesis h = finding();
    EXPECT_THAT(bearingAgainst(h), testing::Contains(HasSubstr("2 x BPFO")));
    EXPECT_THAT(bearingAgainst(h), testing::Not(testing::Contains(HasSubstr("cage shift"))));
    h.best.cageShift = -0.018;
    EXPECT_THAT(bearingAgainst(h), testing::Contains(HasSubstr("-1.80 %")));
    h.best.rows.resize(1);
    h.best.cageShift = 0;
    EXPECT_TRUE(bearingAgainst(h).empty());
}

}  // namespace
}  // namespace fettle
