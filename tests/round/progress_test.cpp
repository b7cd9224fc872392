// What a round still needs before it may be closed, the sample, and the next undecided machine.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "core/round/round.h"

namespace fettle {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

RoundList listOf(const std::vector<std::pair<std::string, std::string>>& machines) {
    RoundList list;
    for (const auto& [tag, urgency] : machines) {
        RoundMachine m;
        m.tag = tag;
        m.urgency = urgency;
        if (urgency == "unseen") m.unseenReason = "silent";
        list.machines.push_back(m);
    }
    return list;
}

RoundList leaveList(std::size_t count) {
    std::vector<std::pair<std::string, std::string>> machines;
    for (std::size_t i = 0; i < count; ++i)
        machines.push_back({"M" + std::to_string(10000 + i), "leave"});
    return listOf(machines);
}

std::set<std::string> sampleOf(const RoundList& list) {
    std::set<std::string> tags;
    for (const RoundMachine& m : list.machines)
        if (m.inSample) tags.insert(m.tag);
    return tags;
}

TEST(Sample, IsFifteenOrThreePercentWhicheverIsMore) {
    const std::vector<std::pair<std::size_t, std::size_t>> sizes = {
        {0, 0}, {1, 1}, {15, 15}, {16, 15}, {500, 15}, {501, 16}, {1000, 30}, {1480, 45}};
    for (const auto& [machines, expected] : sizes) {
        RoundList list = leaveList(machines);
        drawSample(list, 7);
        EXPECT_EQ(sampleOf(list).size(), expected) << machines;
    }
}

TEST(Sample, IsDrawnAmongLeaveOnly) {
    RoundList list = leaveList(100);
    for (std::size_t i = 0; i < 90; ++i)
        list.machines[i].urgency = i % 2 ? "unseen" : "watch";
    drawSample(list, 7);
    EXPECT_EQ(sampleOf(list).size(), 10u);
    for (const RoundMachine& m : list.machines)
        EXPECT_EQ(m.inSample, m.urgency == "leave");
}

TEST(Sample, HangsOnSeedAndTagsAlone) {
    RoundList list = leaveList(200);
    drawSample(list, 42);
    const std::set<std::string> first = sampleOf(list);
    std::reverse(list.machines.begin(), list.machines.end());
    drawSample(list, 42);
    EXPECT_EQ(sampleOf(list), first);
    drawSample(list, 43);
    EXPECT_NE(sampleOf(list), first);
}

// Every machine is as likely as any other: 15 of 60 in 2,000 draws, 500 times each, within five standard
// errors of the binomial distribution (19.4).
TEST(Sample, IsFair) {
    RoundList list = leaveList(60);
    std::vector<int> drawn(60);
    for (std::uint64_t seed = 0; seed < 2000; ++seed) {
        drawSample(list, seed);
        for (std::size_t i = 0; i < 60; ++i)
            drawn[i] += list.machines[i].inSample;
    }
    for (const int count : drawn)
        EXPECT_NEAR(count, 500, 97);
}

Decision decision(const std::string& tag, DecisionKind kind = DecisionKind::Accept,
                  const std::string& reason = "", const std::string& deferTo = "") {
    Decision d;
    d.machine = tag;
    d.kind = kind;
    d.reason = reason;
    d.deferTo = deferTo;
    return d;
}

RoundList mixed() {
    RoundList list = listOf(
        {{"P1", "act"}, {"P2", "plan"}, {"W1", "watch"}, {"U1", "unseen"}, {"L1", "leave"}, {"L2", "leave"}});
    list.machines[4].inSample = true;
    return list;
}

TEST(Progress, OfAFreshRound) {
    const RoundProgress p = progressOf(mixed(), {});
    EXPECT_EQ(p.listed, 3u);
    EXPECT_EQ(p.decided, 0u);
    EXPECT_EQ(p.unseen, 1u);
    EXPECT_EQ(p.unseenDone, 0u);
    EXPECT_EQ(p.sample, 1u);
    EXPECT_EQ(p.sampleOpened, 0u);
    EXPECT_FALSE(p.leaveAccepted);
    EXPECT_THAT(p.missing, ElementsAre("3 listed machines have no decision: P1, P2, W1",
                                       "1 unseen machine has no confirmed reason: U1",
                                       "1 machine of the sample was not opened: L1",
                                       "the machines on leave are not accepted as a block"));
}

TEST(Progress, OfARoundThatMayBeClosed) {
    RoundState state;
    state.decisions = {decision("P1"), decision("P2", DecisionKind::Dispute, "belt was off"),
                       decision("W1", DecisionKind::Defer, "stop in June", "2026-06-08")};
    state.unseenAnswered = {"U1"};
    state.opened = {"L1"};
    state.leaveAccepted = true;
    const RoundProgress p = progressOf(mixed(), state);
    EXPECT_EQ(p.decided, 3u);
    EXPECT_EQ(p.unseenDone, 1u);
    EXPECT_EQ(p.sampleOpened, 1u);
    EXPECT_THAT(p.missing, IsEmpty());
}

TEST(Progress, ADisputeNeedsItsReasonAndADeferralItsDate) {
    RoundState state;
    state.decisions = {decision("P1", DecisionKind::Dispute, "  "),
                       decision("P2", DecisionKind::Defer, "stop in June"),
                       decision("W1", DecisionKind::Defer, "", "2026-06-08"), decision("not in the list")};
    EXPECT_EQ(progressOf(mixed(), state).decided, 0u);
}

TEST(Progress, TheNewestDecisionHolds) {
    RoundState state;
    state.decisions = {decision("P1", DecisionKind::Dispute), decision("P1")};
    state.decisions[0].at = *parseUtc("2026-05-11T09:00:00Z");
    state.decisions[1].at = *parseUtc("2026-05-11T08:00:00Z");
    EXPECT_EQ(progressOf(mixed(), state).decided, 0u);
    state.decisions[1].at = state.decisions[0].at;
    state.decisions[1].id = 2;
    EXPECT_EQ(progressOf(mixed(), state).decided, 1u);
}

TEST(Progress, AWithdrawnDecisionIsNone) {
    const RoundList list = listOf({{"A", "act"}});
    RoundState state;
    state.decisions.push_back({1, "A", "", "", "me", DecisionKind::Accept, Instant{}});
    EXPECT_EQ(progressOf(list, state).decided, 1u);
    state.decisions.push_back({2, "A", "", "", "me", DecisionKind::Withdraw, Instant{}});
    EXPECT_EQ(progressOf(list, state).decided, 0u);
    EXPECT_EQ(nextUndecided(list, state, ""), "A");
    state.decisions.push_back({3, "A", "", "", "me", DecisionKind::Accept, Instant{}});
    EXPECT_EQ(progressOf(list, state).decided, 1u);
}

TEST(Progress, NamesFiveAndCountsTheRest) {
    const RoundList list = listOf(
        {{"A", "act"}, {"B", "act"}, {"C", "act"}, {"D", "act"}, {"E", "act"}, {"F", "act"}, {"G", "act"}});
    EXPECT_THAT(progressOf(list, {}).missing,
                ElementsAre("7 listed machines have no decision: A, B, C, D, E and 2 more"));
}

TEST(Progress, OfARoundWithoutMachines) {
    EXPECT_THAT(progressOf({}, {}).missing, IsEmpty());
    EXPECT_TRUE(mayAcceptLeave({}, {}));
    EXPECT_EQ(nextUndecided({}, {}, "A"), "");
}

TEST(Progress, LeaveIsAcceptedAfterItsSampleOnly) {
    RoundState state;
    EXPECT_FALSE(mayAcceptLeave(mixed(), state));
    state.opened = {"L2", "P1"};
    EXPECT_FALSE(mayAcceptLeave(mixed(), state));
    state.opened = {"L1"};
    EXPECT_TRUE(mayAcceptLeave(mixed(), state));
    RoundList undrawn = mixed();
    undrawn.machines[4].inSample = false;
    EXPECT_FALSE(mayAcceptLeave(undrawn, state));
    EXPECT_TRUE(mayAcceptLeave(listOf({{"P1", "act"}}), {}));
}

TEST(Next, GoesDownTheListAndRoundAgain) {
    RoundState state;
    EXPECT_EQ(nextUndecided(mixed(), state, ""), "P1");
    EXPECT_EQ(nextUndecided(mixed(), state, "no such tag"), "P1");
    EXPECT_EQ(nextUndecided(mixed(), state, "P1"), "P2");
    EXPECT_EQ(nextUndecided(mixed(), state, "W1"), "U1");
    EXPECT_EQ(nextUndecided(mixed(), state, "U1"), "L1");
    EXPECT_EQ(nextUndecided(mixed(), state, "L1"), "P1");
    state.decisions = {decision("P1"), decision("P2")};
    EXPECT_EQ(nextUndecided(mixed(), state, "L2"), "W1");
    state.unseenAnswered = {"U1"};
    state.opened = {"L1"};
    EXPECT_EQ(nextUndecided(mixed(), state, "W1"), "W1");
    state.decisions.push_back(decision("W1"));
    EXPECT_EQ(nextUndecided(mixed(), state, "W1"), "");
}

TEST(Progress, DecisionsHaveTheirWords) {
    EXPECT_EQ(toText(DecisionKind::Accept), "accept");
    EXPECT_EQ(toText(DecisionKind::Dispute), "dispute");
    EXPECT_EQ(toText(DecisionKind::Defer), "defer");
}

}  // namespace
}  // namespace fettle
