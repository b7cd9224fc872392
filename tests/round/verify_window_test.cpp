// When a job may be verified and on which moments: worked out by hand from the rules in verify_window.h (24
// to 72 h of run-in, 20 moments over 3 days: practice of acceptance after a repair, common practice, no
// source).
#include "core/round/verify_window.h"

#include <gtest/gtest.h>

namespace fettle {
namespace {

using std::chrono::hours;

Instant at(const std::string& text) {
    const auto time = parseUtc(text);
    EXPECT_TRUE(time) << text;
    return time.value_or(Instant{});
}

const Instant kDone = at("2026-05-10T12:00:00Z");

RunValue run(Instant time, double rpm = 1484, std::optional<double> load = 80) {
    RunValue value;
    value.time = time;
    value.running = "running";
    value.speedRpm = rpm;
    value.loadPct = load;
    return value;
}

// One every `step` hours from `from` to `until`.
std::vector<RunValue> runs(Instant from, Instant until, int step, double rpm = 1484,
                           std::optional<double> load = 80) {
    std::vector<RunValue> all;
    for (Instant t = from; t <= until; t += hours(step))
        all.push_back(run(t, rpm, load));
    return all;
}

std::vector<RunValue> joined(std::vector<RunValue> a, const std::vector<RunValue>& b) {
    a.insert(a.end(), b.begin(), b.end());
    return a;
}

const std::vector<RunValue> kWeekBefore = runs(at("2026-05-01T06:00:00Z"), at("2026-05-10T06:00:00Z"), 24);

VerifyOptions bearing() {
    VerifyOptions options;
    options.runInHours = 72;
    return options;
}

TEST(VerifyWindow, TheWeekBeforeLeavesOutTheDayOfTheWork) {
    const auto w = verifyWindow(kWeekBefore, kDone, kDone, {});
    ASSERT_EQ(w.before.size(), 7U);
    EXPECT_EQ(w.before.front(), at("2026-05-03T06:00:00Z"));
    EXPECT_EQ(w.before.back(), at("2026-05-09T06:00:00Z"));
    EXPECT_EQ(w.state, VerifyState::NotRunYet);
}

TEST(VerifyWindow, ABearingRunsInForThreeDaysFromItsFirstRunning) {
    const auto all = joined(kWeekBefore, runs(at("2026-05-12T06:00:00Z"), at("2026-05-14T06:00:00Z"), 1));
    const auto w = verifyWindow(all, kDone, at("2026-05-14T06:00:00Z"), bearing());
    EXPECT_EQ(w.state, VerifyState::RunIn);
    EXPECT_EQ(w.runInEnds, at("2026-05-15T06:00:00Z"));
    EXPECT_TRUE(w.after.empty());
}

TEST(VerifyWindow, TwentyMomentsAreSpreadOverTheThreeDays) {
    const auto all = joined(kWeekBefore, runs(at("2026-05-12T06:00:00Z"), at("2026-05-20T06:00:00Z"), 1));
    const auto w = verifyWindow(all, kDone, at("2026-05-20T06:00:00Z"), bearing());
    EXPECT_EQ(w.state, VerifyState::Complete);
    ASSERT_EQ(w.after.size(), 20U);
    EXPECT_EQ(w.after.front(), at("2026-05-15T06:00:00Z"));  // the run-in is over
    EXPECT_EQ(w.after.back(), at("2026-05-18T05:00:00Z"));   // the last before three days have gone
}

TEST(VerifyWindow, StillCollectingUntilThreeDaysHaveGone) {
    const auto all = joined(kWeekBefore, runs(at("2026-05-10T18:00:00Z"), at("2026-05-12T18:00:00Z"), 1));
    const auto w = verifyWindow(all, kDone, at("2026-05-12T18:00:00Z"), {});
    EXPECT_EQ(w.state, VerifyState::Collecting);
    EXPECT_EQ(w.firstRun, at("2026-05-10T18:00:00Z"));
}

TEST(VerifyWindow, ARecordingEverySecondDayIsWaitedForUntilThereAreThree) {
    const auto two = joined(kWeekBefore, runs(at("2026-05-11T06:00:00Z"), at("2026-05-13T06:00:00Z"), 48));
    EXPECT_EQ(verifyWindow(two, kDone, at("2026-05-14T12:00:00Z"), {}).state, VerifyState::Collecting);
    const auto three = joined(kWeekBefore, runs(at("2026-05-11T06:00:00Z"), at("2026-05-15T06:00:00Z"), 48));
    const auto w = verifyWindow(three, kDone, at("2026-05-15T06:00:00Z"), {});
    EXPECT_EQ(w.state, VerifyState::Complete);
    EXPECT_EQ(w.after.size(), 3U);
}

TEST(VerifyWindow, OtherSpeedOrLoadIsNotLike) {
    // 3 % of the speed and 15 points of the load make the band (core/trend/condition.h).
    const auto slow =
        joined(kWeekBefore, runs(at("2026-05-11T06:00:00Z"), at("2026-05-30T06:00:00Z"), 24, 1400));
    const auto w = verifyWindow(slow, kDone, at("2026-05-30T06:00:00Z"), {});
    EXPECT_EQ(w.state, VerifyState::TooFew);
    EXPECT_EQ(w.unlike, 20U);
    const auto light =
        joined(kWeekBefore, runs(at("2026-05-11T06:00:00Z"), at("2026-05-30T06:00:00Z"), 24, 1484, 60));
    EXPECT_EQ(verifyWindow(light, kDone, at("2026-05-30T06:00:00Z"), {}).state, VerifyState::TooFew);
}

TEST(VerifyWindow, TwoWeeksWithTooFewAreGivenUp) {
    const auto all = joined(kWeekBefore, {run(at("2026-05-11T06:00:00Z")), run(at("2026-05-12T06:00:00Z"))});
    EXPECT_EQ(verifyWindow(all, kDone, at("2026-05-25T05:00:00Z"), {}).state, VerifyState::Collecting);
    EXPECT_EQ(verifyWindow(all, kDone, at("2026-05-25T06:00:00Z"), {}).state, VerifyState::TooFew);
}

TEST(VerifyWindow, AMachineThatStoodForLongHasNothingToCompareWith) {
    const auto old = runs(at("2026-03-01T06:00:00Z"), at("2026-03-20T06:00:00Z"), 24);
    EXPECT_EQ(verifyWindow(old, kDone, kDone, {}).state, VerifyState::NothingBefore);
    EXPECT_EQ(verifyWindow({}, kDone, kDone, {}).state, VerifyState::NothingBefore);
}

TEST(VerifyWindow, TheWeekBeforeIsThatOfTheLastRunning) {
    const auto stood = runs(at("2026-04-10T06:00:00Z"), at("2026-04-20T06:00:00Z"), 24);
    const auto w = verifyWindow(stood, kDone, kDone, {});
    ASSERT_EQ(w.before.size(), 7U);
    EXPECT_EQ(w.before.back(), at("2026-04-20T06:00:00Z"));
}

TEST(RunIn, HoursByWhatWasDone) {
    const std::vector<std::string> race{"bearing_outer_race"}, shaft{"unbalance"};
    EXPECT_EQ(runInHours(race, false), 72);
    EXPECT_EQ(runInHours(race, true), 24);
    EXPECT_EQ(runInHours(shaft, false), 0);
}

}  // namespace
}  // namespace fettle
