// Two rounds side by side: every way a machine can move between leave, the list and unseen, once each. The
// rule is the program's own: act, plan and watch are the list.
#include "core/round/comparison.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace fettle {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

RoundMachine machine(const std::string& tag, const std::string& urgency) {
    RoundMachine m;
    m.tag = tag;
    m.urgency = urgency;
    if (urgency == "unseen") m.unseenReason = m.unseenWords = "silent";
    return m;
}

RoundList list(std::vector<RoundMachine> machines, const std::string& until) {
    RoundList all;
    all.until = until;
    all.engine = "1";
    all.machines = std::move(machines);
    return all;
}

TEST(CompareRounds, EveryMoveHasItsOwnWord) {
    const RoundList before =
        list({machine("UP", "plan"), machine("DOWN", "act"), machine("SAME", "watch"), machine("OFF", "plan"),
              machine("ON", "leave"), machine("LOST", "leave"), machine("BACK", "unseen"),
              machine("QUIET", "leave"), machine("GONE", "leave"), machine("BLINDON", "unseen")},
             "2026-05-03");
    const RoundList after = list(
        {machine("UP", "act"), machine("ON", "plan"), machine("BLINDON", "plan"), machine("DOWN", "watch"),
         machine("SAME", "watch"), machine("LOST", "unseen"), machine("OFF", "leave"),
         machine("BACK", "leave"), machine("QUIET", "leave"), machine("NEW", "leave")},
        "2026-05-10");
    const RoundComparison both = compareRounds(before, {}, after, {});
    std::vector<std::string> told;
    for (const MachineMove& one : both.moves)
        told.push_back(one.tag + " " + toText(one.move));
    EXPECT_THAT(told, ElementsAre("ON came_on", "BLINDON came_on", "UP up", "LOST unseen", "DOWN down",
                                  "OFF left", "BACK seen_again", "NEW added", "GONE removed", "SAME stayed"));
    EXPECT_EQ(both.quiet, 1u);
    EXPECT_EQ(both.count(RoundMove::CameOn), 2u);
    EXPECT_EQ(both.note, "");
}

TEST(CompareRounds, AMoveSaysWhyAndWhatWasDecided) {
    RoundMachine was = machine("A", "plan"), is = machine("A", "act");
    RoundFinding race;
    race.finding.fault = "bearing_outer_race";
    race.finding.at = "driver DE";
    race.finding.severity = {"stage", "early", {}, {}, "", ""};
    was.findings = {race};
    race.finding.severity.value = "late";
    is.findings = {race};
    RoundState then, now;
    then.decisions = {{1, "A", "stop in June", "2026-06-01", "me", DecisionKind::Defer, Instant{}}};
    now.decisions = {{1, "A", "", "", "me", DecisionKind::Accept, Instant{}},
                     {2, "A", "", "", "me", DecisionKind::Withdraw, Instant{}}};
    const RoundComparison both =
        compareRounds(list({was}, "2026-05-03"), then, list({is}, "2026-05-10"), now);
    ASSERT_EQ(both.moves.size(), 1u);
    EXPECT_THAT(both.moves[0].why, HasSubstr("from early to late stage"));
    EXPECT_EQ(both.moves[0].decidedBefore, "put off to 2026-06-01: stop in June");
    EXPECT_EQ(both.moves[0].decidedAfter, "");
    EXPECT_EQ(both.moves[0].findingAfter, "outer-race defect, driver DE");
}

TEST(CompareRounds, AnotherEngineIsSaid) {
    RoundList before = list({machine("A", "leave")}, "2026-05-03"), after = before;
    after.engine = "2";
    EXPECT_THAT(compareRounds(before, {}, after, {}).note, HasSubstr("different versions"));
}

}  // namespace
}  // namespace fettle
