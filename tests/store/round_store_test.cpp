#include "core/store/round_store.h"

#include <gmock/gmock.h>

#include "core/store/database.h"
#include "tests/store/store_fixture.h"

namespace fettle {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

class RoundStoreTest : public StoreTest {
  protected:
    RoundStore& rounds() { return fleet_->rounds(); }

    RoundEntry week() {
        RoundEntry entry;
        entry.from = "2026-05-04";
        entry.until = "2026-05-10";
        entry.engine = "0.1.0 5c1f";
        entry.alpha = 0.2;
        entry.listNeedsDban = 24.1;
        entry.sampleSeed = 0xfedcba9876543210;
        entry.openedAt = at("2026-05-11T07:00:00Z");
        return entry;
    }
    std::vector<RoundRow> machines() {
        return {{"KL-ID-01", "plan", "evidence", 31.2, false, R"({"tag": "KL-ID-01"})", R"({"schema": 1})"},
                {"KL-ID-02", "unseen", "none", {}, false, "{}", "{}"},
                {"KL-ID-03", "leave", "none", -3.0, true, "{}", ""}};
    }
    std::int64_t opened() { return rounds().open(week(), machines()).value(); }
    Decision decision(DecisionKind kind, const std::string& reason = "", const std::string& to = "") {
        Decision made;
        made.machine = "KL-ID-01";
        made.kind = kind;
        made.reason = reason;
        made.deferTo = to;
        made.by = "R. Hale";
        made.at = at("2026-05-11T08:00:00Z");
        return made;
    }
};

TEST_F(RoundStoreTest, ARoundIsKeptAsItWasOpened) {
    const std::int64_t id = opened();
    reopen();
    const RoundEntry entry = rounds().entry(id).value();
    const RoundEntry put = week();
    EXPECT_EQ(std::tie(entry.from, entry.until, entry.engine, entry.alpha, entry.listNeedsDban,
                       entry.sampleSeed, entry.openedAt),
              std::tie(put.from, put.until, put.engine, put.alpha, put.listNeedsDban, put.sampleSeed,
                       put.openedAt));
    EXPECT_EQ(entry.closedAt, std::nullopt);
    EXPECT_EQ(rounds().openOne().value()->id, id);
    const auto rows = rounds().rows(id).value();
    ASSERT_EQ(rows.size(), 3u);
    EXPECT_EQ(rows[0].machine, "KL-ID-01");
    EXPECT_EQ(rows[0].urgency, "plan");
    EXPECT_EQ(rows[0].listedBy, "evidence");
    EXPECT_EQ(rows[0].weightDban, 31.2);
    EXPECT_EQ(rows[0].json, R"({"tag": "KL-ID-01"})");
    EXPECT_EQ(rows[0].examinationJson, "") << "those one by one";
    EXPECT_EQ(rows[1].weightDban, std::nullopt);
    EXPECT_TRUE(rows[2].inSample);
    EXPECT_EQ(rounds().examinationJson(id, "KL-ID-01").value(), R"({"schema": 1})");
    EXPECT_EQ(rounds().examinationJson(id, "KL-ID-03").error().kind, ErrorKind::NotFound);
    expectClean();
}

TEST_F(RoundStoreTest, OneRoundAtATime) {
    const std::int64_t first = opened();
    const auto refused = rounds().open(week(), machines());
    ASSERT_FALSE(refused);
    EXPECT_THAT(refused.error().sentence(),
                HasSubstr("round 1: to 2026-05-10 is still open; close it first"));
    ASSERT_TRUE(rounds().close(first, "R. Hale"));
    EXPECT_EQ(rounds().openOne().value(), std::nullopt);
    EXPECT_TRUE(rounds().open(week(), machines()));
    EXPECT_EQ(rounds().all()->size(), 2u);
    EXPECT_EQ(rounds().all()->front().closedBy, "R. Hale");
}

TEST_F(RoundStoreTest, AMachineTwiceInARoundIsRefusedWhole) {
    auto rows = machines();
    rows.push_back(rows[0]);
    EXPECT_EQ(rounds().open(week(), rows).error().kind, ErrorKind::Invalid);
    EXPECT_TRUE(rounds().all()->empty());
}

TEST_F(RoundStoreTest, DecisionsAreAppended) {
    const std::int64_t id = opened();
    ASSERT_TRUE(rounds().decide(id, decision(DecisionKind::Accept)));
    ASSERT_TRUE(rounds().decide(id, decision(DecisionKind::Dispute, "line is of the neighbour")));
    ASSERT_TRUE(rounds().decide(id, decision(DecisionKind::Defer, "shut-down", "2026-06-01")));
    ASSERT_TRUE(rounds().markOpened(id, "KL-ID-03"));
    ASSERT_TRUE(rounds().markOpened(id, "KL-ID-03"));
    ASSERT_TRUE(rounds().answerUnseen(id, "KL-ID-02", "node taken off", "R. Hale"));
    ASSERT_TRUE(rounds().acceptLeave(id, "R. Hale"));
    reopen();
    const RoundState state = rounds().state(id).value();
    ASSERT_EQ(state.decisions.size(), 3u);
    EXPECT_EQ(state.decisions[1].kind, DecisionKind::Dispute);
    EXPECT_EQ(state.decisions[1].reason, "line is of the neighbour");
    EXPECT_EQ(state.decisions[2].kind, DecisionKind::Defer);
    EXPECT_EQ(state.decisions[2].deferTo, "2026-06-01");
    EXPECT_EQ(state.decisions[2].by, "R. Hale");
    EXPECT_EQ(state.decisions[2].at, at("2026-05-11T08:00:00Z"));
    EXPECT_EQ(state.decisions[2].machine, "KL-ID-01");
    EXPECT_THAT(state.opened, ElementsAre("KL-ID-03"));
    EXPECT_THAT(state.unseenAnswered, ElementsAre("KL-ID-02"));
    EXPECT_TRUE(state.leaveAccepted);
}

TEST_F(RoundStoreTest, ADecisionOfAnUnknownKindIsNotTakenForAccepted) {
    const std::int64_t id = opened();
    ASSERT_TRUE(rounds().decide(id, decision(DecisionKind::Withdraw)));
    EXPECT_EQ(rounds().state(id)->decisions.at(0).kind, DecisionKind::Withdraw);
    auto database = Database::open(path_, Access::ReadWrite).value();
    ASSERT_TRUE(
        database->run("INSERT INTO decision(round, machine, kind, reason, defer_to, by, time) "
                      "VALUES (?, 'KL-ID-01', 'split', '', '', '', 0)",
                      id));
    const auto state = rounds().state(id);
    ASSERT_FALSE(state);
    EXPECT_EQ(state.error().kind, ErrorKind::Damaged);
    EXPECT_THAT(state.error().sentence(), HasSubstr("decision 2 on KL-ID-01 is of a kind this program"));
}

TEST_F(RoundStoreTest, ADecisionSaysWhatItMust) {
    const std::int64_t id = opened();
    const auto rule = [&](const Decision& made) { return rounds().decide(id, made).error().sentence(); };
    EXPECT_THAT(rule(decision(DecisionKind::Dispute)),
                HasSubstr("decision on KL-ID-01: to dispute needs a reason"));
    EXPECT_THAT(rule(decision(DecisionKind::Defer, "", "2026-06-01")), HasSubstr("to defer needs a reason"));
    EXPECT_THAT(rule(decision(DecisionKind::Defer, "later")), HasSubstr("to defer needs a day"));
    EXPECT_THAT(rule(decision(DecisionKind::Defer, "later", "June")), HasSubstr("must be a day"));
    Decision stranger = decision(DecisionKind::Accept);
    stranger.machine = "KL-ID-99";
    EXPECT_THAT(rule(stranger), HasSubstr("round 1: machine KL-ID-99 is not in it"));
    stranger.machine = "";
    EXPECT_FALSE(rounds().decide(id, stranger));
    EXPECT_EQ(rounds().answerUnseen(id, "KL-ID-02", "", "R. Hale").error().kind, ErrorKind::Invalid);
    EXPECT_TRUE(rounds().state(id)->decisions.empty());
}

TEST_F(RoundStoreTest, AfterClosingNothingIsAcceptedAnyMore) {
    const std::int64_t id = opened();
    ASSERT_TRUE(rounds().close(id, "R. Hale"));
    EXPECT_TRUE(rounds().entry(id)->closedAt);
    for (const Status& status :
         {rounds().decide(id, decision(DecisionKind::Accept)).map([](auto) {}),
          rounds().markOpened(id, "KL-ID-03"), rounds().answerUnseen(id, "KL-ID-02", "silent", "R. Hale"),
          rounds().acceptLeave(id, "R. Hale"), rounds().close(id, "R. Hale")}) {
        ASSERT_FALSE(status);
        EXPECT_EQ(status.error().kind, ErrorKind::Invalid);
        EXPECT_THAT(status.error().sentence(), HasSubstr("the round is closed"));
    }
    const auto missing = rounds().decide(7, decision(DecisionKind::Accept));
    EXPECT_EQ(missing.error().kind, ErrorKind::NotFound);
    EXPECT_EQ(rounds().rows(7).error().kind, ErrorKind::NotFound);
    EXPECT_EQ(rounds().state(7).error().kind, ErrorKind::NotFound);
}

}  // namespace
}  // namespace fettle
