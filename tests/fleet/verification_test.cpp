// Jobs verified on months made by hand. Rules: core/round/verify_window.h and verification.h (practice of
// acceptance after a repair, common practice, no source).
#include "core/fleet/verification.h"

#include "core/fleet/due.h"
#include "core/fleet/round_desk.h"
#include "tests/fleet/made_history.h"

namespace fettle::fleet_test {
namespace {

using testing::HasSubstr;

const char* const kRace = "bearing_outer_race @ driver DE";

class Verification : public MadeHistory {
  protected:
    // Sound for eight weeks, a race spalls for three, new bearing on 20 April at 09:00.
    void spall() {
        hearDays("FN-01", "2026-02-02", "2026-03-29", {});
        hearDays("FN-01", "2026-03-30", "2026-04-20", spalled());
        tell("FN-01", "2026-04-20T09:00:00Z", "part", "driver DE", "new bearing");
    }
    static Heard spalled() {
        Heard heard;
        heard.highBandG = 0.4;
        heard.raceDban = 40;
        return heard;
    }
    JobVerification verify(const Job& job, const std::string& until = "") {
        auto v = verifyJob(*fleet_, job, until);
        EXPECT_TRUE(v) << (v ? "" : v.error().sentence());
        return v.value_or(JobVerification{});
    }
};

TEST_F(Verification, ANewBearingThatIsQuietIsCured) {
    spall();
    hearDays("FN-01", "2026-04-21", "2026-05-05", {});
    const auto v = verify(job("FN-01", "2026-04-10T08:00:00Z", kRace));
    ASSERT_TRUE(v.verdict) << v.words();
    EXPECT_EQ(v.verdict->outcome, CureOutcome::Cured) << v.verdict->reason;
    EXPECT_EQ(v.doneOn, "2026-04-20");
    // 72 h of run-in from the first running, then three days.
    EXPECT_EQ(v.window.after.front(), at("2026-04-24T06:00:00Z"));
    EXPECT_EQ(v.window.after.back(), at("2026-04-26T06:00:00Z"));
    ASSERT_EQ(v.figures.findings.size(), 1u);
    EXPECT_NEAR(v.figures.findings[0].weightBefore.value_or(0), 40, 0.1);
    ASSERT_EQ(v.figures.findings[0].lines.size(), 1u);
    const CureLine& line = v.figures.findings[0].lines[0];
    EXPECT_NEAR(line.before.value_or(0), 0.4, 1e-6);
    EXPECT_NEAR(line.after.value_or(0), 0.1, 1e-6);
    // Days all alike at 0.1 g: three times the least spread of 1 dB above it.
    EXPECT_NEAR(line.soundMost.value_or(0), 0.1 * std::pow(10.0, 3.0 / 20), 1e-6);
}

TEST_F(Verification, TheBaselineOfBeforeTheFaultIsKept) {
    spall();
    hearDays("FN-01", "2026-04-21", "2026-05-05", {});
    const auto v = verify(job("FN-01", "2026-04-10T08:00:00Z", kRace));
    EXPECT_THAT(v.figures.findings[0].lines[0].baseline, HasSubstr("from 2026-02-02"));
}

TEST_F(Verification, OneThatSoundsAsBeforeIsUnchanged) {
    spall();
    hearDays("FN-01", "2026-04-21", "2026-05-05", spalled());
    const auto v = verify(job("FN-01", "2026-04-10T08:00:00Z", kRace));
    ASSERT_TRUE(v.verdict);
    EXPECT_EQ(v.verdict->outcome, CureOutcome::Unchanged) << v.verdict->reason;
}

TEST_F(Verification, AtAnotherLoadItIsNotComparable) {
    spall();
    Heard light;
    light.loadPct = 40;
    hearDays("FN-01", "2026-04-21", "2026-05-10", light);
    const auto v = verify(job("FN-01", "2026-04-10T08:00:00Z", kRace));
    ASSERT_TRUE(v.verdict);
    EXPECT_EQ(v.verdict->outcome, CureOutcome::NotComparable);
    EXPECT_THAT(v.verdict->reason, HasSubstr("at other speed or load"));
}

TEST_F(Verification, AMovedNodeIsNotComparable) {
    spall();
    hearDays("FN-01", "2026-04-21", "2026-05-05", {});
    tell("FN-01", "2026-04-22T09:00:00Z", "moved_node");
    const auto v = verify(job("FN-01", "2026-04-10T08:00:00Z", kRace));
    ASSERT_TRUE(v.verdict);
    EXPECT_EQ(v.verdict->outcome, CureOutcome::NotComparable);
}

TEST_F(Verification, AsKnownOnADay) {
    spall();
    hearDays("FN-01", "2026-04-21", "2026-05-05", {});
    const Job one = job("FN-01", "2026-04-10T08:00:00Z", kRace);
    EXPECT_EQ(verify(one, "2026-04-20").window.state, VerifyState::NotRunYet);
    EXPECT_EQ(verify(one, "2026-04-22").window.state, VerifyState::RunIn);
    EXPECT_EQ(verify(one, "2026-04-25").window.state, VerifyState::Collecting);
    EXPECT_EQ(verify(one, "2026-04-27").window.state, VerifyState::Complete);
}

TEST_F(Verification, WhenItWasDoneIsNotGuessed) {
    hearDays("FN-01", "2026-02-02", "2026-03-29", {});
    tell("FN-01", "2026-03-01T09:00:00Z", "greasing", "driver");  // no work on a race
    const Job one = job("FN-01", "2026-02-20T08:00:00Z", kRace);
    EXPECT_THAT(verify(one).words(), HasSubstr("not known when"));
    ASSERT_TRUE(keepDone(*fleet_, one, {"2026-03-10"}, "test"));
    EXPECT_EQ(verify(one).doneOn, "2026-03-10");
    EXPECT_FALSE(keepDone(*fleet_, one, {"10 March"}, "test"));
}

TEST_F(Verification, TheRoundSaysTheOutcome) {
    spall();
    hearDays("FN-01", "2026-04-21", "2026-05-05", {});
    job("FN-01", "2026-04-10T08:00:00Z", kRace);
    const auto words = [&](const std::string& until) {
        const auto due = dueOf(*fleet_, listNow(*fleet_, until).value());
        EXPECT_TRUE(due);
        return due && due->size() == 1 ? due->front().words : "";
    };
    EXPECT_THAT(words("2026-04-22"), HasSubstr("verify that it cured; running in"));
    EXPECT_THAT(words("2026-05-03"), HasSubstr("is done: cured: "));
}

}  // namespace
}  // namespace fettle::fleet_test
