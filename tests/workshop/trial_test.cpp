// What a change has to do, worked out before it is made; what came held against it; the document read back.
// Numbers: ISO 21940-11 formulae (tests/workshop/unbalance_test.cpp), plane vectors by hand.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/workshop/trial_expect.h"
#include "core/workshop/trial_json.h"
#include "core/workshop/trial_judge.h"
#include "tests/machine/describe.h"

namespace fettle {
namespace {

using namespace std::chrono_literals;
using testing::HasSubstr;

const Instant kStart = parseUtc("2026-05-04T06:00:00Z").value();

Machine machine() {
    return parsed(changed(R"({"driver": {"bearings": {"DE": {"designation": "6205", "type": "deep_groove",
        "rolling_elements": 9, "element_mm": 7.94, "pitch_mm": 39.04, "contact_deg": 0, "source": "nameplate"}}}})"))
        .machine;
}

TrialChange mass() {
    TrialChange change;
    change.at = "driver";
    change.point = "P1";
    change.channel = "v";
    change.massG = 10;
    change.radiusMm = 100;
    change.rotorKg = 20;
    return change;
}

TrialGround ground() {
    TrialGround known;
    known.driverRpm = 1500;
    known.onceMmS = 1;
    known.before = 20;
    known.seconds = 4;
    return known;
}

// 10 g at 100 mm and 1500 r/min: 24.674 N; G 6.3 allows 802.14 g mm of a rotor of 20 kg, this is 1000:
// e 50 um, e omega 7.854 mm/s.
TEST(TrialExpectation, OfAMassByTheBalancingStandard) {
    const TrialExpectation e = expectedOf(mass(), machine(), ground());
    EXPECT_EQ(e.lacking, "");
    EXPECT_NEAR(*e.unbalanceGmm, 1000, 1e-9);
    EXPECT_NEAR(*e.forceN, 24.6740110027, 1e-9);
    EXPECT_NEAR(*e.weightShare, 24.6740110027 / (20 * 9.80665), 1e-12);
    EXPECT_NEAR(*e.permissibleGmm, 802.140913183, 1e-8);
    EXPECT_NEAR(*e.permissibleMassG, 8.02140913183, 1e-10);
    EXPECT_NEAR(*e.equivalentGrade, 7.85398163397, 1e-9);
    EXPECT_NEAR(*e.moveHighMmS, 7.85398163397 / std::sqrt(2.0), 1e-9);
    EXPECT_NEAR(*e.moveLowMmS, 0.1 * *e.moveHighMmS, 1e-12);
    ASSERT_EQ(e.warnings.size(), 2u);
    EXPECT_THAT(e.warnings[0], HasSubstr("8.02 g is the most"));
    EXPECT_THAT(e.warnings[1], HasSubstr("13 % of the rotor's weight"));
}

TEST(TrialExpectation, OfAMassWithinWhatIsAllowedWarnsOfNothing) {
    TrialChange small = mass();
    small.massG = 5;
    EXPECT_TRUE(expectedOf(small, machine(), ground()).warnings.empty());
}

TEST(TrialExpectation, ASavedCoefficientTakesThePlaceOfTheRange) {
    TrialGround known = ground();
    known.influences = {{"balancing of 4 May 2026", "driver", "P1", "v", 0.002, 1490}};
    const TrialExpectation e = expectedOf(mass(), machine(), known);
    EXPECT_NEAR(*e.moveLowMmS, 0.85 * 2, 1e-12);
    EXPECT_NEAR(*e.moveHighMmS, 1.15 * 2, 1e-12);
    EXPECT_THAT(e.how, HasSubstr("balancing of 4 May 2026"));
    known.influences[0].speedRpm = 1000;  // another speed, another coefficient
    EXPECT_THAT(expectedOf(mass(), machine(), known).how, HasSubstr("no influence coefficient"));
}

// Vectors by hand: 3 added to 1 at any angle is 2 to 4; 0.5 to 2 added to 1 can cancel it; along with it 3 is
// 4 at most and by the cosine rule at 15 degrees sqrt(1 + 9 + 6 cos 15) = 3.9744.
TEST(TrialExpectation, WithoutTheAngleAMassMayAsWellLowerOnce) {
    OnceRange range = onceAfter(1, 3, 3, {});
    EXPECT_NEAR(range.low, 2, 1e-9);
    EXPECT_NEAR(range.high, 4, 1e-9);
    range = onceAfter(1, 0.5, 2, {});
    EXPECT_EQ(range.low, 0);
    EXPECT_NEAR(range.high, 3, 1e-9);
    range = onceAfter(1, 3, 3, 0);
    EXPECT_NEAR(range.low, std::sqrt(10 + 6 * std::cos(15 * std::numbers::pi / 180)), 1e-9);
    EXPECT_NEAR(range.high, 4, 1e-9);
    const TrialExpectation e = expectedOf(mass(), machine(), ground());
    ASSERT_FALSE(e.notes.empty());
    EXPECT_THAT(e.notes[0], HasSubstr("may rise, fall or stay"));
}

// Orders of the 6205 by kinematics: tests/machine/bearing_orders_test.cpp.
TEST(TrialExpectation, OfABearingAreTheLinesOfItsElement) {
    TrialChange change;
    change.kind = TrialKind::Bearing;
    change.follows = TrialFollows::Weight;
    change.at = "driver DE";
    change.fault = "bearing_inner_race";
    const TrialExpectation e = expectedOf(change, machine(), ground());
    ASSERT_EQ(e.lacking, "");
    ASSERT_EQ(e.lines.size(), 5u);
    EXPECT_EQ(e.lines[0].name, "BPFI - 1 x shaft");
    EXPECT_NEAR(e.lines[1].order, 4.5 * (1 + 7.94 / 39.04), 1e-9);
    EXPECT_NEAR(e.lines[1].hz, 25 * e.lines[1].order, 1e-9);
    EXPECT_NEAR(e.lines[0].order, e.lines[1].order - 1, 1e-9);
    EXPECT_NEAR(e.lines[4].order, 3 * e.lines[1].order, 1e-9);

    TrialGround brief = ground();
    brief.seconds = 0.5;  // 12.5 turns
    EXPECT_THAT(expectedOf(change, machine(), brief).lacking, HasSubstr("turns"));
    change.at = "driver NDE";
    EXPECT_THAT(expectedOf(change, machine(), ground()).lacking, HasSubstr("not known"));
}

TEST(TrialExpectation, OfABoltAreHalfAndWholeOrders) {
    TrialChange change;
    change.kind = TrialKind::Bolt;
    change.follows = TrialFollows::Looseness;
    change.at = "driver";
    change.point = "P1";
    change.channel = "v";
    const TrialExpectation e = expectedOf(change, machine(), ground());
    EXPECT_EQ(e.lines.front().name, "0.5 x");
    EXPECT_EQ(e.lines.back().name, "10 x");
    EXPECT_EQ(e.lines.back().hz, 250);
}

// f(p) = 0.15 p^-0.85 at the least p of (n + 1)^-3 first reaches 100 at n = 12.
TEST(TrialExpectation, TooFewRecordingsBeforeCannotCarryTheWeight) {
    EXPECT_EQ(neededBefore(20), 12u);
    EXPECT_LT(mostChangeDban(11), 20);
    EXPECT_GE(mostChangeDban(12), 20);
    TrialGround few = ground();
    few.before = 11;
    const auto warnings = expectedOf(mass(), machine(), few).warnings;
    ASSERT_EQ(warnings.size(), 3u);
    EXPECT_THAT(warnings.back(), HasSubstr("11 running recordings"));
}

TEST(TrialCautions, TellOfTheChangeThatIsMade) {
    EXPECT_THAT(trialCautions(TrialKind::Bolt).back(), HasSubstr("never while it turns"));
    EXPECT_THAT(trialCautions(TrialKind::Mass).back(), HasSubstr("neither turn nor fly off"));
    EXPECT_GT(trialCautions(TrialKind::Mass).size(), trialCautions(TrialKind::Other).size());
}

Trial started() {
    Trial trial;
    trial.name = "outer race, seeded";
    trial.machine = "CR-07";
    trial.change.kind = TrialKind::Bearing;
    trial.change.follows = TrialFollows::Weight;
    trial.change.at = "driver DE";
    trial.change.fault = "bearing_outer_race";
    trial.expectation = expectedOf(trial.change, machine(), ground());
    TrialPromise asked;
    asked.within = 8;
    trial.promise = promisedOf(trial.change, trial.expectation, asked);
    trial.precautions = trialCautions(TrialKind::Bearing);
    trial.startedAt = kStart;
    trial.beforeFrom = kStart - 24h * 14;
    trial.changeFrom = kStart + 1h;
    trial.changeUntil = kStart + 3h;
    return trial;
}

std::vector<TrialRecording> heard(const std::vector<double>& before, const std::vector<double>& after) {
    std::vector<TrialRecording> all;
    for (std::size_t i = 0; i < before.size(); ++i)
        all.push_back(
            {std::int64_t(i), kStart - 24h * int(before.size() - i), false, before[i], 1.0, 1480.0, ""});
    for (std::size_t i = 0; i < after.size(); ++i)
        all.push_back(
            {std::int64_t(100 + i), kStart + 3h + 1h * int(i + 1), true, after[i], 2.0, 1480.0, ""});
    return all;
}

TEST(TrialJudged, PassesWhereThePromiseIsKept) {
    const TrialResult r = judgeTrial(started(), heard({-3, 1, -2, 0, 4, -1}, {12, 25, 18, 31, 40, 35}));
    EXPECT_EQ(r.outcome, "passed") << r.verdict;
    EXPECT_EQ(*r.firstAt, kStart + 5h);
    EXPECT_EQ(*r.toldAt, kStart + 8h);  // the third of the last five at 20: the fifth recording
    EXPECT_EQ(*r.toldAfter, 5);
    EXPECT_EQ(r.falseBefore, 0u);
    EXPECT_THAT(r.verdict, HasSubstr("5 h 0 min after the change"));
    EXPECT_NEAR(*r.weightAfterDban, 28, 1e-12);
}

TEST(TrialJudged, FailsWhereNothingIsToldInTime) {
    std::vector<double> quiet(8, 3);
    EXPECT_EQ(judgeTrial(started(), heard({0, 0, 0, 0, 0}, quiet)).outcome, "failed");
    quiet.pop_back();  // one recording fewer than promised: still open
    EXPECT_EQ(judgeTrial(started(), heard({0, 0, 0, 0, 0}, quiet)).outcome, "open");
    std::vector<double> late(8, 3);
    late.insert(late.end(), {30, 30, 30});
    EXPECT_EQ(judgeTrial(started(), heard({0, 0, 0, 0, 0}, late)).outcome, "failed");
}

TEST(TrialJudged, FailsWhereItWasToldBeforeTheChangeToo) {
    const TrialResult r = judgeTrial(started(), heard({25, 30, 28, 22, 26}, {30, 30, 30, 30, 30}));
    EXPECT_EQ(r.outcome, "failed");
    EXPECT_EQ(r.falseBefore, 5u);
    EXPECT_THAT(r.verdict, HasSubstr("quiet before"));
}

TEST(TrialJudged, FailsWhereSomethingElseIsNamedMoreStrongly) {
    auto all = heard({0, 0, 0, 0, 0}, {30, 30, 30, 30, 30});
    for (std::size_t i = 5; i < 8; ++i)
        all[i].strongest = "bearing_inner_race, driver DE";
    const TrialResult r = judgeTrial(started(), all);
    EXPECT_EQ(r.outcome, "failed");
    EXPECT_THAT(r.verdict, HasSubstr("bearing_inner_race, driver DE in 3 of 5"));
}

TEST(TrialJudged, OnceIsHeldAgainstItsRange) {
    Trial trial = started();
    trial.change = mass();
    trial.expectation = expectedOf(trial.change, machine(), ground());
    trial.promise = promisedOf(trial.change, trial.expectation, {});
    trial.promise.onceLowMmS = 1.5;
    trial.promise.onceHighMmS = 2.5;
    const auto all = heard({0, 0, 0, 0, 0}, {30, 30, 30, 30, 30});
    EXPECT_EQ(judgeTrial(trial, all).outcome, "passed") << judgeTrial(trial, all).verdict;
    trial.promise.onceHighMmS = 1.9;
    EXPECT_EQ(judgeTrial(trial, all).outcome, "failed");
}

// A change is weighed against what was before: with too little before there is nothing to weigh.
TEST(TrialJudged, AChangeWithoutABeforeIsNotComparable) {
    Trial trial = started();
    trial.change = mass();
    EXPECT_EQ(judgeTrial(trial, heard({0, 0, 0, 0}, {30, 30, 30, 30, 30})).outcome, "not comparable");
}

TEST(TrialJudged, AnotherSpeedIsSaid) {
    auto all = heard({0, 0, 0, 0, 0}, {30, 30, 30, 30, 30});
    for (TrialRecording& one : all)
        if (one.after) one.speedRpm = 1300;
    const TrialResult r = judgeTrial(started(), all);
    ASSERT_FALSE(r.notes.empty());
    EXPECT_THAT(r.notes[0], HasSubstr("1480 r/min before and 1300 after"));
}

TEST(TrialJson, ReadsBackToTheSameText) {
    Trial trial = started();
    trial.stopAt = "7.1 mm/s r.m.s. at P1";
    trial.responsible = "Ida Quarry";
    trial.permit = "PTW 118";
    trial.startedBy = "ida";
    trial.change.rotorKg = 0.1 + 0.2;
    trial.result = judgeTrial(trial, heard({-3, 1, -2, 0, 4, -1}, {12, 25, 18, 31, 40, 35}), true);
    const std::string text = trialAsText(trial);
    const auto back = trialFromText(text, "trial 3");
    ASSERT_TRUE(back) << back.error().sentence();
    EXPECT_EQ(trialAsText(*back), text);
    EXPECT_EQ(back->result->toldAfter, trial.result->toldAfter);
    EXPECT_EQ(back->change.rotorKg, trial.change.rotorKg);
    Trial draft;
    draft.machine = "CR-07";
    const auto empty = trialFromText(trialAsText(draft), "");
    ASSERT_TRUE(empty) << empty.error().sentence();
    EXPECT_EQ(trialAsText(*empty), trialAsText(draft));
}

TEST(TrialJson, WhatIsNoTrialIsRefusedWithItsPlace) {
    EXPECT_EQ(trialFromText("{", "trial 3").error().kind, ErrorKind::Damaged);
    EXPECT_THAT(trialFromText("{}", "trial 3").error().sentence(), HasSubstr("trial 3"));
    std::string text = trialAsText(started());
    text.replace(text.find("\"bearing\""), 9, "\"hammer\"");
    EXPECT_THAT(trialFromText(text, "trial 3").error().place, HasSubstr("change"));
    text = trialAsText(started());
    text.replace(text.find("2026-05-04T06:00:00Z"), 20, "yesterday, 6 o'clock");
    EXPECT_FALSE(trialFromText(text, "trial 3"));
}

TEST(TrialSpans, HoldTheRecordingsThatATrialStandsOn) {
    Trial trial = started();
    const Instant now = kStart + 24h * 3;
    auto spans = spansOf(trial, now);
    ASSERT_EQ(spans.size(), 2u);
    EXPECT_EQ(spans[0].from, *trial.beforeFrom);
    EXPECT_EQ(spans[0].until, *trial.changeFrom);
    EXPECT_EQ(spans[1].from, *trial.changeUntil);
    EXPECT_EQ(spans[1].until, now);
    trial.afterUntil = kStart + 24h;
    EXPECT_EQ(spansOf(trial, now)[1].until, kStart + 24h);
    trial.startedAt.reset();
    EXPECT_TRUE(spansOf(trial, now).empty());
}

TEST(TrialDurations, AreSaidInTwoParts) {
    EXPECT_EQ(durationWords(35min), "35 min");
    EXPECT_EQ(durationWords(5h + 7min), "5 h 7 min");
    EXPECT_EQ(durationWords(52h), "2 d 4 h");
}

}  // namespace
}  // namespace fettle
