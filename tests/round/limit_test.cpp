// Entries by a figure of the trade: no weight, no zone, listed beside those by zone and never above what the
// urgency table gives (resources/tables/urgency.json, common practice).
#include <gtest/gtest.h>

#include "tests/round/made_weeks.h"

namespace fettle {
namespace {

using namespace made;

Hypothesis bars(const std::string& value, double belowDb) {
    Hypothesis h;
    h.fault = "rotor_bar";
    h.at = "driver";
    h.severity = {"db_below_carrier", value, belowDb, 45, "dB", "figures for motor current"};
    h.sentence = "Possible broken or cracked rotor bars.";
    h.recordingCount = 1;
    h.persistence = 1;
    return h;
}

TEST(Limit, RotorBarsAreListedByTheirFigureWithoutAWeight) {
    const RoundMachine m = alone(with(plain("A"), {bars("suspect", 41)}));
    ASSERT_EQ(m.findings.size(), 1u);
    EXPECT_EQ(m.findings[0].finding.fault, "rotor_bar");
    EXPECT_EQ(m.findings[0].finding.urgency, "plan");
    EXPECT_EQ(m.urgency, "plan");
    EXPECT_EQ(m.listedBy, ListedBy::Zone);
    EXPECT_FALSE(m.findings[0].finding.weightDban);
}

TEST(Limit, WhatIsNotNamedIsNotListed) {
    Hypothesis sound = bars("", 60);
    sound.severity = {};
    sound.sentence.clear();
    const RoundMachine m = alone(with(plain("A"), {sound}));
    EXPECT_TRUE(m.findings.empty());
    EXPECT_EQ(m.urgency, "leave");
}

}  // namespace
}  // namespace fettle
