// A machine that could not be judged is on the list with its reason and date, and never called sound.
#include "core/round/unseen.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/round/made_weeks.h"

namespace fettle {
namespace {

using namespace made;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

MachineWeek silentSince(const char* newest) {
    MachineWeek week = plain("A");
    week.newest = parseUtc(newest);
    week.recordings = week.turning = 0;
    week.week.reset();
    return week;
}

void expectUnseen(const MachineWeek& week, const std::string& reason, const std::string& words) {
    const RoundMachine m = alone(week);
    EXPECT_EQ(m.urgency, "unseen");
    EXPECT_EQ(m.unseenReason, reason);
    EXPECT_EQ(m.unseenWords, words);
    EXPECT_EQ(m.listedBy, ListedBy::None);
    EXPECT_FALSE(m.weightDban);
    EXPECT_THAT(m.findings, IsEmpty());
    EXPECT_EQ(m.zone, "");
}

TEST(Unseen, Silent) {
    expectUnseen(silentSince("2026-04-20T06:00:00Z"), "silent", "no recording since 2026-04-20");
    expectUnseen(silentSince("never"), "silent", "no recording ever");
}

TEST(Unseen, AnEventExplainsSilence) {
    MachineWeek week = silentSince("2026-04-20T06:00:00Z");
    week.told = "low_battery";
    expectUnseen(week, "low_battery", "low battery, no recording since 2026-04-20");
    week.told = "moved";
    expectUnseen(week, "moved", "sensor moved or off the machine, no recording since 2026-04-20");
}

// A recording at 23:00 in UTC is of the next day two hours farther east, where the period ends at 22:00 UTC.
TEST(Unseen, DatesAreTheSites) {
    RoundSettings site = settings();
    site.end = *parseUtc("2026-05-10T22:00:00Z");
    const auto unseen = unseenOf(silentSince("2026-04-20T23:00:00Z"), site);
    ASSERT_TRUE(unseen);
    EXPECT_EQ(unseen->words, "no recording since 2026-04-21");
}

TEST(Unseen, SilentDaysAreCountedBackFromTheEnd) {
    RoundSettings three = settings();
    three.silentDays = 3;
    MachineWeek week = plain("A");
    week.newest = parseUtc("2026-05-07T23:59:59Z");
    EXPECT_TRUE(unseenOf(week, three));
    week.newest = parseUtc("2026-05-08T00:00:00Z");
    EXPECT_FALSE(unseenOf(week, three));
}

TEST(Unseen, Idle) {
    MachineWeek week = plain("A");
    week.turning = 0;
    week.week.reset();
    expectUnseen(week, "idle", "not turning in its 14 recordings of the week, the newest of 2026-05-10");
    week.standby = true;
    week.recordings = 1;
    expectUnseen(week, "idle",
                 "standby, not turning in its one recording of the week, the newest of 2026-05-10");
}

TEST(Unseen, PoorData) {
    MachineWeek week = plain("A");
    week.poor = 14;
    expectUnseen(week, "poor_data",
                 "all 14 recordings of the turning machine in this week failed a sensor check");
    week.told = "moved";
    expectUnseen(week, "moved",
                 "sensor moved or off the machine; all 14 recordings of the turning machine in this week "
                 "failed a sensor check");
    week.poor = 13;
    EXPECT_EQ(alone(week).urgency, "leave");
}

// A node on the floor shows no turning machine; that is the sensor's matter, not production's.
TEST(Unseen, WhereEveryRecordingFailsTheMachineIsNotCalledIdle) {
    MachineWeek week = plain("A");
    week.turning = 0;
    week.week.reset();
    week.poor = 14;
    expectUnseen(week, "poor_data", "all 14 recordings in this week failed a sensor check");
    week.poor = 3;
    EXPECT_EQ(alone(week).unseenReason, "idle");
}

// A hand reading beside them takes nothing from what the recordings say of their sensor.
TEST(Unseen, ALevelBesidePoorRecordingsHidesNothing) {
    MachineWeek week = plain("A");
    week.week.reset();
    week.turning = 0;
    week.levels = 1;
    week.poor = week.recordings;
    expectUnseen(week, "poor_data", "all 14 recordings in this week failed a sensor check");
}

TEST(Unseen, NotFitted) {
    MachineWeek week = silentSince("2026-04-20T06:00:00Z");
    week.fitted = false;
    expectUnseen(week, "not_fitted", "no sensor fitted, no recording since 2026-04-20");
}

TEST(Unseen, AWeekThatSaysNothingIsNotLeave) {
    MachineWeek week = plain("A");
    week.week->considered.clear();
    week.week->recordings[0].levels[0].zones.clear();
    week.days.clear();
    week.zone.clear();
    expectUnseen(week, "poor_data", "nothing in its 14 recordings of the week could be judged");
    week.days = days(2, 2);
    week.week.reset();
    EXPECT_EQ(alone(week).urgency, "unseen");
}

// A level without a limit is a number, no verdict; the project's own rule.
TEST(Unseen, ALevelThatNothingLimitsIsNotJudged) {
    MachineWeek week = plain("A");
    week.week->considered.clear();
    week.zone.clear();
    week.days = days(112, 112);
    EXPECT_EQ(alone(week).urgency, "leave") << "a limit applies to a recording";
    week.week->recordings[0].levels[0].zones.clear();
    expectUnseen(week, "not_judged",
                 "no bearing geometry and no limit applies: nothing could be judged; level 112 mm/s");
    week.zone = "B";
    EXPECT_EQ(alone(week).urgency, "leave");
    week.zone.clear();
    week.week->considered = {weighed("bearing_outer_race", "driver DE", -3)};
    EXPECT_EQ(alone(week).urgency, "leave");
    week.week->considered[0].weightDban.reset();
    EXPECT_THAT(alone(week).unseenWords, HasSubstr("no bearing could be weighed and no limit applies"));
}

TEST(Unseen, AnUnknownRunningStateIsNotCalledIdle) {
    MachineWeek week = plain("A");
    week.turning = 0;
    week.week.reset();
    week.unknown = 14;
    expectUnseen(week, "poor_data",
                 "the running state of its 14 recordings is not known: no shaft speed found");
    week.unknown = 2;
    EXPECT_THAT(alone(week).unseenWords, HasSubstr("of 2 of its 14 recordings is not known"));
    week.unknown = 0;
    EXPECT_EQ(alone(week).unseenReason, "idle");
}

TEST(Unseen, NamesTheChecksThatFailed) {
    MachineWeek week = plain("A");
    week.recordings = week.turning = week.poor = 1;
    week.failedChecks = {"clipped on x", "held on y"};
    expectUnseen(week, "poor_data",
                 "the only recording of the turning machine in this week failed a sensor check: clipped on "
                 "x, held on y");
}

// Weights of recordings that failed never enter the list, nor its size.
TEST(Unseen, IsNotAmongTheMachinesOfEBh) {
    MachineWeek poor = with(plain("A"), {staged("bearing_outer_race", "driver DE", 90, "late")});
    poor.poor = 14;
    const RoundList list = round({poor, plain("B")});
    EXPECT_EQ(machine(list, "A").urgency, "unseen");
    EXPECT_NEAR(list.listNeedsDban, 10, 1e-9);
}

TEST(Unseen, AllUnseen) {
    MachineWeek other = silentSince("2026-04-20T06:00:00Z");
    other.tag = "B";
    const RoundList list = round({silentSince("2026-04-20T06:00:00Z"), other});
    ASSERT_EQ(list.machines.size(), 2u);
    EXPECT_EQ(list.machines[0].tag, "A");
    EXPECT_NEAR(list.listNeedsDban, 10, 1e-9);
}

TEST(Unseen, KeepsWhatWasFoundBeforeOnlyAsWords) {
    const RoundList last =
        round({with(plain("A"), {staged("bearing_outer_race", "driver DE", 60, "developed")})});
    const RoundList now = round({silentSince("2026-05-01T06:00:00Z")}, &last);
    const RoundMachine& m = now.machines[0];
    EXPECT_EQ(m.foundBefore, "outer-race defect, driver DE: plan in the round to 2026-05-10");
    EXPECT_THAT(m.findings, IsEmpty());
    // And still a round later.
    EXPECT_EQ(alone(silentSince("2026-05-01T06:00:00Z"), &now).foundBefore, m.foundBefore);
    EXPECT_EQ(alone(silentSince("2026-05-01T06:00:00Z")).foundBefore, "");
}

TEST(Unseen, ByHandStaysUnseen) {
    MachineWeek week = silentSince("2026-04-20T06:00:00Z");
    week.byHand = true;
    EXPECT_EQ(alone(week).urgency, "unseen");
    EXPECT_EQ(alone(week).listedBy, ListedBy::Hand);
}

}  // namespace
}  // namespace fettle
