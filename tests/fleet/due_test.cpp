// What comes before the list. Rules: the project's own; common practice, no source.
#include "core/fleet/due.h"

#include "tests/fleet/small_site.h"

namespace fettle::fleet_test {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

class Due : public SmallSite {
  protected:
    std::vector<DueItem> at(const std::string& until) {
        const auto list = listNow(*fleet_, until);
        EXPECT_TRUE(list);
        auto due = dueOf(*fleet_, list.value_or(RoundList{}));
        EXPECT_TRUE(due);
        return due.value_or(std::vector<DueItem>{});
    }
    void put(const std::string& state, const std::string& runUntil,
             std::optional<std::int64_t> replaces = {}) {
        Job job;
        job.machine = "A-RACE";
        job.findings = {"bearing_inner_race @ driver DE"};
        job.state = state;
        job.runUntil = runUntil;
        job.replaces = replaces;
        ASSERT_TRUE(fleet_->log().putJob(job));
    }
    void defer(std::int64_t round, const std::string& tag, const std::string& to) {
        Decision decision;
        decision.machine = tag;
        decision.kind = DecisionKind::Defer;
        decision.deferTo = to;
        decision.reason = "stop in June";
        ASSERT_TRUE(decide(*fleet_, round, decision));
    }
    // Answers what is still open, then closes.
    void close(std::int64_t round) {
        const auto kept = keptRound(*fleet_, round);
        ASSERT_TRUE(kept);
        bool anyLeave = false;
        for (const RoundMachine& m : kept->list.machines) {
            Status done;
            anyLeave |= m.urgency == "leave";
            if (m.urgency == "unseen") done = answerUnseen(*fleet_, round, m.tag, "", "test");
            if (m.inSample) done = markOpened(*fleet_, round, m.tag);
            EXPECT_TRUE(done) << m.tag;
        }
        for (std::string tag; !(tag = nextUndecided(kept->list, stateOf(round), "")).empty();) {
            Decision accept;
            accept.machine = tag;
            ASSERT_TRUE(decide(*fleet_, round, accept));
        }
        if (anyLeave) {
            ASSERT_TRUE(acceptLeave(*fleet_, round, "test"));
        }
        const auto closed = closeRound(*fleet_, round, "test");
        ASSERT_TRUE(closed) << closed.error().sentence();
    }
    RoundState stateOf(std::int64_t round) { return keptRound(*fleet_, round)->state; }
    std::int64_t open(const std::string& until) {
        const auto kept = openRound(*fleet_, until);
        EXPECT_TRUE(kept) << (kept ? "" : kept.error().sentence());
        return kept ? kept->entry.id : 0;
    }
};

TEST_F(Due, ADeferredEntryIsToldUntilTheRoundThatReachesItsDayIsClosed) {
    const std::int64_t first = opened().entry.id;
    defer(first, "A-RACE", "2026-05-15");
    close(first);
    const std::int64_t second = open("2026-05-17");
    const auto due = at("2026-05-17");
    ASSERT_EQ(due.size(), 1u) << "the round that reaches the day is open";
    EXPECT_EQ(due[0].machine, "A-RACE");
    EXPECT_THAT(due[0].words, HasSubstr("not judged now: no recording since 2026-05-07"));
    EXPECT_EQ(at("2026-05-24").size(), 1u) << "nobody has answered yet";
    close(second);
    EXPECT_THAT(at("2026-05-17"), IsEmpty());
    EXPECT_THAT(at("2026-05-24"), IsEmpty());
}

TEST_F(Due, ARoundClosedBeforeTheDayDoesNotAnswerIt) {
    const std::int64_t first = opened().entry.id;
    defer(first, "A-RACE", "2026-05-20");
    close(first);
    close(open("2026-05-17"));
    EXPECT_THAT(at("2026-05-17"), IsEmpty());
    EXPECT_EQ(at("2026-05-24").size(), 1u);
}

TEST_F(Due, OfARemovedMachineOnlyItsOpenJobIsToldToBeClosed) {
    const std::int64_t first = opened().entry.id;
    defer(first, "A-RACE", "2026-05-15");
    close(first);
    put("issued", "2026-07-01");
    ASSERT_TRUE(fleet_->machines().remove("A-RACE", "2026-05-20", "sold"));
    EXPECT_EQ(at("2026-05-17")[0].kind, "deferred") << "it was in service on that day";
    const auto due = at("2026-05-24");
    ASSERT_EQ(due.size(), 1u);
    EXPECT_EQ(due[0].kind, "overdue");
    EXPECT_THAT(due[0].words, HasSubstr("taken out of the register on 2026-05-20: close the job"));
}

TEST_F(Due, ADeferredEntryComesBackOnItsDayUnlessDecidedAnew) {
    const std::int64_t id = opened().entry.id;
    Decision defer;
    defer.machine = "A-RACE";
    defer.kind = DecisionKind::Defer;
    defer.deferTo = "2026-06-01";
    defer.reason = "stop in June";
    ASSERT_TRUE(decide(*fleet_, id, defer));
    EXPECT_THAT(at("2026-05-31"), IsEmpty());
    const auto due = at("2026-06-01");
    ASSERT_EQ(due.size(), 1u);
    EXPECT_EQ(due[0].kind, "deferred");
    EXPECT_THAT(due[0].words, HasSubstr("stop in June"));
    Decision accept;
    accept.machine = "A-RACE";
    ASSERT_TRUE(decide(*fleet_, id, accept));
    EXPECT_THAT(at("2026-06-01"), IsEmpty());
}

TEST_F(Due, JobsPastTheirDayAndJobsToVerify) {
    put("issued", "2026-05-20");
    EXPECT_THAT(at("2026-05-20"), IsEmpty());
    ASSERT_EQ(at("2026-05-24").size(), 1u);
    EXPECT_EQ(at("2026-05-24")[0].kind, "overdue");
    put("done", "2026-05-18", 1);  // replaces the first
    const auto due = at("2026-05-24");
    ASSERT_EQ(due.size(), 1u);
    EXPECT_EQ(due[0].kind, "verify");
    put("closed", "2026-05-18", 2);
    EXPECT_THAT(at("2026-05-24"), IsEmpty());
}

}  // namespace
}  // namespace fettle::fleet_test
