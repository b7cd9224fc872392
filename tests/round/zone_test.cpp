// Entries by zone: the week's median decides, never one loud recording; no bound, no weight; growth and date.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/round/made_weeks.h"

namespace fettle {
namespace {

using namespace made;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

TEST(Zone, CIsPlanAndDIsAct) {
    const RoundMachine c = alone(inZone(plain("A"), "C", 3.4, 4.5));
    EXPECT_EQ(c.urgency, "plan");
    EXPECT_EQ(c.listedBy, ListedBy::Zone);
    const RoundMachine d = alone(inZone(plain("A"), "D", 6.1, 4.5));
    EXPECT_EQ(d.urgency, "act");
    for (const char* zone : {"A", "B", ""}) {
        const RoundMachine fine = alone(inZone(plain("A"), zone, 1.0, 1.4));
        EXPECT_EQ(fine.urgency, "leave") << zone;
        EXPECT_THAT(fine.findings, IsEmpty());
    }
}

TEST(Zone, WithoutANamedCauseItSaysSo) {
    const RoundMachine m = alone(inZone(plain("A"), "C", 3.4, 4.5));
    ASSERT_EQ(m.findings.size(), 1u);
    const RoundFinding& f = m.findings[0];
    EXPECT_EQ(f.finding.fault, "");
    EXPECT_EQ(findingName(f.finding), "raised vibration, cause not named");
    EXPECT_FALSE(f.finding.weightDban);
    EXPECT_EQ(f.finding.severity.kind, "zone");
    EXPECT_EQ(f.finding.severity.value, "C");
    EXPECT_NEAR(*f.finding.severity.level, 3.4, 1e-12);
    EXPECT_EQ(*f.finding.severity.limit, 4.5);
    EXPECT_THAT(f.finding.sentence,
                HasSubstr("3.4 mm/s in the week's median is zone C (ISO 20816-3 group 2 rigid)"));
}

TEST(Zone, NamedCausesShareTheLevel) {
    MachineWeek week = plain("A");
    week = with(week, {cause("unbalance", "C", 3.4, 0.9), cause("looseness", "C", 3.4, 0.3)});
    const RoundMachine m = alone(inZone(week, "C", 3.4, 4.5));
    ASSERT_EQ(m.findings.size(), 2u);
    EXPECT_NEAR(*m.findings[0].causeShare, 0.75, 1e-12);
    EXPECT_NEAR(*m.findings[1].causeShare, 0.25, 1e-12);
    EXPECT_EQ(m.findings[0].finding.sentence, "Possible unbalance: it looks like it.");
}

// One recording in zone D among a week in C: graded by the week, the recording told as what it is.
TEST(Zone, TheWeeksMedianGrades) {
    const RoundMachine c =
        alone(inZone(with(plain("A"), {cause("unbalance", "D", 6.0, 0.9)}), "C", 3.4, 4.5));
    ASSERT_EQ(c.findings.size(), 1u);
    EXPECT_EQ(c.urgency, "plan");
    EXPECT_EQ(c.findings[0].finding.severity.value, "C");
    EXPECT_THAT(c.findings[0].finding.sentence, HasSubstr("3.4 mm/s in the week's median is zone C"));
    EXPECT_THAT(c.findings[0].finding.sentence, HasSubstr("Possible unbalance"));
    const RoundMachine b =
        alone(inZone(with(plain("A"), {cause("unbalance", "D", 6.0, 0.6)}), "B", 2.0, 2.8));
    EXPECT_EQ(b.urgency, "leave");
    EXPECT_THAT(b.findings, IsEmpty());
}

TEST(Zone, ANoteOnlyIsNeverAboveWatchAndIndicativeIsSaid) {
    MachineWeek week = inZone(plain("A"), "D", 6.1, 4.5);
    week.week->recordings = {recording("D", false, true)};
    RoundMachine m = alone(week);
    EXPECT_EQ(m.urgency, "watch");
    EXPECT_EQ(m.listedBy, ListedBy::Zone);
    EXPECT_THAT(m.findings[0].finding.sentence, HasSubstr("a note only: alone never above watch"));
    week.week->recordings = {recording("D", true, false)};
    m = alone(week);
    EXPECT_EQ(m.urgency, "act");
    EXPECT_THAT(m.findings[0].finding.sentence, HasSubstr("indicative: not on a bearing housing"));
}

// The note of the governing channel holds, not that of another in the same zone.
TEST(Zone, StandsOnTheGoverningChannel) {
    MachineWeek week = inZone(plain("A"), "C", 3.4, 4.5);
    RecordingFacts grey = recording("C", false, true);
    grey.channels[0].point = "P-DE";
    grey.levels[0].zones[0].basis = "ISO 10816-1 class I";
    week.week->recordings = {grey, recording("C")};
    EXPECT_EQ(alone(week).findings[0].finding.severity.basis, "ISO 20816-3 group 2 rigid");
    EXPECT_EQ(alone(week).urgency, "plan");
    week.governing = "P-DE x velocity r.m.s.";
    EXPECT_EQ(alone(week).findings[0].finding.severity.basis, "ISO 10816-1 class I");
    EXPECT_EQ(alone(week).urgency, "watch");
}

// 3.0 mm/s and 0.02 a day more: 3.82 after 42 days, 4.5 another 34 days later. By hand.
TEST(Zone, GrowthAndDateComeFromTheDailyMedians) {
    MachineWeek week = inZone(plain("A"), "C", 3.82, 4.5);
    week.days = days(3.0, 3.82, 42);
    const RoundFinding f = alone(week).findings[0];
    ASSERT_TRUE(f.growthPerWeek);
    EXPECT_NEAR(*f.growthPerWeek, 0.14, 1e-9);
    ASSERT_TRUE(f.limitDate);
    EXPECT_NEAR(*f.limitDate->median, lastDay() + 34, 1);
}

// The same line with two weeks not heard and nothing in the last three days: the days that are there lie on
// it still. By hand.
TEST(Zone, AGapInTheTrendMovesNeitherGrowthNorDate) {
    MachineWeek week = inZone(plain("A"), "C", 3.82, 4.5);
    week.days = days(3.0, 3.82, 42);
    std::erase_if(week.days, [](const DayValue& d) {
        const int ago = lastDay() - d.day;
        return ago < 3 || (ago >= 10 && ago < 24);
    });
    ASSERT_EQ(week.days.size(), 25u);
    const RoundFinding f = alone(week).findings[0];
    ASSERT_TRUE(f.growthPerWeek);
    EXPECT_NEAR(*f.growthPerWeek, 0.14, 1e-9);
    ASSERT_TRUE(f.limitDate && f.limitDate->median);
    EXPECT_NEAR(*f.limitDate->median, lastDay() + 34, 1);
}

TEST(Zone, ABearingHasNoLimitDateWhateverTheLevelDoes) {
    MachineWeek week = inZone(with(plain("A"), {staged("bearing_outer_race", "driver DE", 60, "developed")}),
                              "C", 3.82, 4.5);
    week.days = days(3.0, 3.82, 42);
    const RoundMachine m = alone(week);
    ASSERT_EQ(m.findings.size(), 2u);
    EXPECT_EQ(m.listedBy, ListedBy::Evidence);
    EXPECT_EQ(m.findings[0].finding.fault, "bearing_outer_race");
    EXPECT_FALSE(m.findings[0].growthPerWeek);
    EXPECT_FALSE(m.findings[0].limitDate);
    EXPECT_TRUE(m.findings[1].limitDate);
}

TEST(Zone, DaysAfterThePeriodAreNotLookedAt) {
    MachineWeek week = inZone(plain("A"), "C", 3.4, 4.5);
    week.days.push_back({lastDay() + 1, 100, 1});
    EXPECT_NEAR(*alone(week).findings[0].finding.severity.level, 3.4, 1e-12);
    EXPECT_LT(alone(week).strip.back(), 4);
}

}  // namespace
}  // namespace fettle
