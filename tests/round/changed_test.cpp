// What changed since the last round, in one plain sentence.
#include "core/round/changed.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <limits>

#include "tests/round/made_weeks.h"

namespace fettle {
namespace {

using namespace made;

std::string changed(const MachineWeek& now, const MachineWeek& before) {
    const RoundList last = round({before});
    return alone(now, &last).changed;
}

MachineWeek outerRace(double weight, const std::string& stage) {
    return with(plain("A"), {staged("bearing_outer_race", "driver DE", weight, stage)});
}

TEST(Changed, NothingIsNoChange) {
    EXPECT_EQ(changed(plain("A"), plain("A")), "No change.");
    EXPECT_EQ(changed(outerRace(45, "early"), outerRace(38, "early")), "No change.");
}

TEST(Changed, FindingsNewAndGone) {
    EXPECT_EQ(changed(outerRace(60, "early"), plain("A")), "New: outer-race defect, driver DE.");
    EXPECT_EQ(changed(plain("A"), outerRace(60, "early")), "Gone: outer-race defect, driver DE.");
    EXPECT_EQ(changed(with(plain("A"), {staged("bearing_cage", "driver NDE", 60, "early")}),
                      outerRace(60, "early")),
              "New: cage defect, driver NDE; gone: outer-race defect, driver DE.");
}

// One week had points at both ends of a motor and told them apart, the other had not.
TEST(Changed, AnEndThatWasToldApartIsNoNewFinding) {
    const MachineWeek either =
        with(plain("A"), {staged("bearing_outer_race", "driver DE or NDE", 45, "early")});
    EXPECT_EQ(changed(outerRace(45, "early"), either), "No change.");
    EXPECT_EQ(changed(either, outerRace(45, "early")), "No change.");
}

TEST(Changed, Stage) {
    EXPECT_EQ(changed(outerRace(60, "developed"), outerRace(60, "early")),
              "Outer-race defect, driver DE: from early to developed stage.");
}

TEST(Changed, WeightByTenDecibansOrMore) {
    EXPECT_EQ(changed(outerRace(45, "early"), outerRace(31, "early")),
              "Outer-race defect, driver DE: weight up from 31 to 45 decibans.");
    EXPECT_EQ(changed(outerRace(31, "early"), outerRace(41, "early")),
              "Outer-race defect, driver DE: weight down from 41 to 31 decibans.");
    // What a sound machine's weight does is nobody's business.
    EXPECT_EQ(changed(with(plain("A"), {weighed("bearing_cage", "driver DE", 9)}), plain("A")), "No change.");
}

TEST(Changed, ZoneAndLevel) {
    EXPECT_EQ(
        changed(inZone(plain("A"), "C", 3.4, 4.5), inZone(plain("A"), "B", 2.3, 2.8)),
        "New: raised vibration, cause not named; from zone B to C; level from 2.3 mm/s to 3.4 mm/s (+48 %).");
    EXPECT_EQ(changed(inZone(plain("A"), "A", 0.5, 1.4), inZone(plain("A"), "A", 0.46, 1.4)), "No change.");
    EXPECT_EQ(changed(inZone(plain("A"), "A", 0.9, 1.4), inZone(plain("A"), "A", 0.6, 1.4)),
              "Level from 0.60 mm/s to 0.90 mm/s (+50 %).");
    // A fifth more of next to nothing.
    EXPECT_EQ(changed(inZone(plain("A"), "A", 0.13, 1.4), inZone(plain("A"), "A", 0.1, 1.4)), "No change.");
}

TEST(Changed, LevelsOfDifferentPointsAreNotCompared) {
    MachineWeek now = inZone(plain("A"), "A", 1.2, 1.4);
    now.governing = "P-DE x velocity r.m.s.";
    EXPECT_EQ(changed(now, inZone(plain("A"), "A", 0.6, 1.4)), "No change.");
}

TEST(Changed, WorkDoneComesFirst) {
    MachineWeek now = inZone(plain("A"), "A", 1.2, 1.4);
    now.workDone = "cleaned on 2026-05-06";
    EXPECT_EQ(changed(now, inZone(plain("A"), "C", 4.0, 4.5)),
              "Cleaned on 2026-05-06; gone: raised vibration, cause not named; from zone C to A; level from "
              "4.0 mm/s to 1.2 mm/s (-70 %).");
}

TEST(Changed, UrgencyAloneIsSaid) {
    MachineWeek byHand = plain("A");
    byHand.byHand = true;
    EXPECT_EQ(changed(byHand, plain("A")), "From leave to watch.");
}

MachineWeek silent() {
    MachineWeek week = plain("A");
    week.newest = parseUtc("2026-05-01T06:00:00Z");
    week.recordings = week.turning = 0;
    week.week.reset();
    return week;
}

TEST(Changed, UnseenAndSeenAgain) {
    EXPECT_EQ(changed(silent(), plain("A")), "Not judged this time: no recording since 2026-05-01.");
    EXPECT_EQ(changed(silent(), silent()), "Still not judged: no recording since 2026-05-01.");
    MachineWeek idle = plain("A");
    idle.turning = 0;
    EXPECT_EQ(
        changed(idle, silent()),
        "Still not judged, now: not turning in its 14 recordings of the week, the newest of 2026-05-10.");
    EXPECT_EQ(changed(plain("A"), silent()),
              "Judged again: no recording since 2026-05-01 in the last round.");
}

TEST(Changed, AFirstRoundLooksAtTheWeeksBefore) {
    EXPECT_EQ(alone(plain("A")).changed, "First round: level 2.0 mm/s, as in the 25 weeks before.");
    MachineWeek week = plain("A");
    for (DayValue& day : week.days)
        if (day.day > lastDay() - 7) day.value = 3;
    EXPECT_EQ(alone(week).changed,
              "First round: level 3.0 mm/s, 50 % above the median of the 25 weeks before.");
    for (DayValue& day : week.days)
        if (day.day > lastDay() - 7) day.value = 112;
    EXPECT_EQ(alone(week).changed,
              "First round: level 112.0 mm/s, 56 times the median of the 25 weeks before.");
    week.days = days(2, 2, 21);
    EXPECT_EQ(alone(week).changed, "First round: level 2.0 mm/s.");
    week.days.clear();
    EXPECT_EQ(alone(week).changed, "First round.");
    week.days = days(2, 2);
    for (DayValue& day : week.days)
        day.value = std::numeric_limits<double>::quiet_NaN();
    EXPECT_EQ(alone(week).changed, "First round.");
}

TEST(Changed, AMachineThatWasNotInTheLastRound) {
    const RoundList last = round({plain("B")});
    EXPECT_EQ(alone(plain("A"), &last).changed,
              "Not in the last round: level 2.0 mm/s, as in the 25 weeks before.");
}

}  // namespace
}  // namespace fettle
