// The round as a table, over a list made by hand. Rules: groups in the order act, plan, watch, unseen, leave;
// the sample first among those to leave (*common practice, no source*).
#include "ui/model/ledger_model.h"

#include <gtest/gtest.h>

#include <limits>

#include "ui/model/words.h"

namespace fettle {
namespace {

RoundMachine machine(const std::string& tag, const std::string& urgency, const std::string& area,
                     std::optional<double> weight = {}) {
    RoundMachine m;
    m.tag = tag;
    m.urgency = urgency;
    m.area = area;
    m.service = "service of " + tag;
    m.weightDban = weight;
    m.changed = "No change.";
    if (urgency == "unseen") m.unseenReason = "silent";
    return m;
}

RoundShown sampleRound() {
    RoundShown round;
    round.entry = RoundEntry{};
    round.entry->id = 1;
    round.list.from = "2026-05-04";
    round.list.until = "2026-05-10";
    round.end = parseUtc("2026-05-11T00:00:00Z").value();
    round.list.machines = {machine("A", "act", "kiln", 10),     machine("B", "plan", "kiln", 30),
                           machine("C", "plan", "packing", 60), machine("D", "unseen", "quarry"),
                           machine("E", "leave", "kiln", -3),   machine("F", "leave", "packing", -5)};
    round.list.machines[5].inSample = true;
    round.list.machines[0].newest = parseUtc("2026-05-08T00:00:00Z").value();
    round.refresh();
    return round;
}

std::vector<std::string> tags(const LedgerModel& model) {
    std::vector<std::string> all;
    for (int row = 0; row < model.rowCount(); ++row)
        all.push_back(model.isGroup(row) ? "[" + model.groupAt(row) + "]" : model.machineAt(row)->tag);
    return all;
}

using Tags = std::vector<std::string>;

TEST(Ledger, GroupsStandInOrderWithTheSampleFirstAmongThoseToLeave) {
    LedgerModel model;
    model.setRound(sampleRound());
    EXPECT_EQ(tags(model), (Tags{"[act]", "A", "[plan]", "B", "C", "[unseen]", "D", "[leave]", "F", "E"}));
    EXPECT_EQ(model.shownMachines(), 6);
    EXPECT_EQ(model.groupRows(), (std::vector<int>{0, 2, 5, 7}));
    EXPECT_EQ(model.rowOf("C"), 4);
}

TEST(Ledger, FiltersByAreaAndByTextOfAnyKind) {
    LedgerModel model;
    model.setRound(sampleRound());
    model.setFilter({"packing", "", "", ""});
    EXPECT_EQ(tags(model), (Tags{"[plan]", "C", "[leave]", "F"}));
    model.setFilter({"", "SERVICE OF b", "", ""});
    EXPECT_EQ(tags(model), (Tags{"[plan]", "B"}));
    model.setFilter({"", "silent", "", ""});
    EXPECT_EQ(tags(model), (Tags{"[unseen]", "D"}));
    model.setFilter({"", "no such thing", "", ""});
    EXPECT_EQ(model.rowCount(), 0);
    EXPECT_EQ(model.areas(), (QStringList{"kiln", "packing", "quarry"}));
}

TEST(Ledger, SortsWithinTheGroups) {
    LedgerModel model;
    model.setRound(sampleRound());
    model.setOrder(LedgerModel::ByWeight);
    EXPECT_EQ(tags(model), (Tags{"[act]", "A", "[plan]", "C", "B", "[unseen]", "D", "[leave]", "F", "E"}));
}

TEST(Ledger, SortsBackwardsAndByShareOfTheLimit) {
    LedgerModel model;
    RoundShown round = sampleRound();
    round.list.machines[1].strip = {1.0, 4.0};  // B at 0.8 of its limit, C at 0.9
    round.list.machines[1].limit = 5.0;
    round.list.machines[2].strip = {0.9};
    round.list.machines[2].limit = 1.0;
    model.setRound(round);
    model.setOrder(LedgerModel::ByLevel);
    EXPECT_LT(model.rowOf("C"), model.rowOf("B"));
    model.setOrder(LedgerModel::ByLevel, true);
    EXPECT_LT(model.rowOf("B"), model.rowOf("C"));
    model.setOrder(LedgerModel::ByTag, true);
    EXPECT_EQ(tags(model), (Tags{"[act]", "A", "[plan]", "C", "B", "[unseen]", "D", "[leave]", "F", "E"}));
}

TEST(Ledger, GroupsByAreaByCriticalityOrNotAtAll) {
    LedgerModel model;
    RoundShown round = sampleRound();
    round.list.machines[3].area.clear();
    round.list.machines[0].criticality = "C";
    round.list.machines[1].criticality = "A";
    model.setRound(round);
    model.setGrouping(LedgerModel::ByArea);
    EXPECT_EQ(model.groupTitle(model.groupAt(0)).toStdString(), "kiln");
    EXPECT_EQ(model.groupTitle(model.groupAt(model.groupRows().back())).toStdString(), "no area");
    EXPECT_EQ(model.groupText("kiln").toStdString(), "3, 0 settled");
    EXPECT_EQ(model.rowOf("D"), model.rowCount() - 1);
    model.setGrouping(LedgerModel::ByCriticality);
    EXPECT_EQ(tags(model), (Tags{"[A]", "B", "[B]", "C", "D", "E", "F", "[C]", "A"}));
    model.setGrouping(LedgerModel::Together);
    EXPECT_EQ(tags(model), (Tags{"A", "B", "C", "D", "E", "F"}));
    model.setOrder(LedgerModel::ByWeight);
    EXPECT_EQ(tags(model), (Tags{"C", "B", "A", "E", "F", "D"}));
}

TEST(Ledger, FiltersByUrgencyAndByDecisionAndAWithdrawnOneIsNone) {
    LedgerModel model;
    model.setRound(sampleRound());
    model.setFilter({"", "", "", "plan"});
    EXPECT_EQ(tags(model), (Tags{"[plan]", "B", "C"}));
    RoundState state;
    state.decisions = {{1, "A", "", "", "me", DecisionKind::Accept, Instant{}},
                       {2, "B", "plate says 6316", "", "me", DecisionKind::Dispute, Instant{}},
                       {3, "C", "", "", "me", DecisionKind::Accept, Instant{}},
                       {4, "C", "", "", "me", DecisionKind::Withdraw, Instant{}}};
    model.setState(state);
    model.setFilter({"", "", "dispute", ""});
    EXPECT_EQ(tags(model), (Tags{"[plan]", "B"}));
    model.setFilter({"", "", "accept", ""});
    EXPECT_EQ(tags(model), (Tags{"[act]", "A"}));
    model.setFilter({"", "", "undecided", ""});
    EXPECT_EQ(tags(model), (Tags{"[plan]", "C", "[unseen]", "D", "[leave]", "F"}));
    EXPECT_EQ(model.groupText("plan").toStdString(), "2, 1 settled");
}

TEST(Ledger, AFoldedGroupKeepsItsOwnRow) {
    LedgerModel model;
    model.setRound(sampleRound());
    model.setFolded("plan", true);
    EXPECT_EQ(tags(model), (Tags{"[act]", "A", "[plan]", "[unseen]", "D", "[leave]", "F", "E"}));
    EXPECT_EQ(model.rowOf("B"), -1);
    model.setFolded("plan", false);
    EXPECT_EQ(model.rowOf("B"), 3);
}

TEST(Ledger, TheNewestDecisionHoldsWhateverItsPlace) {
    LedgerModel model;
    model.setRound(sampleRound());
    RoundState state;
    const Instant day = parseUtc("2026-05-11T08:00:00Z").value();
    state.decisions.push_back({2, "A", "not before the stop", "2026-06-01", "me", DecisionKind::Defer,
                               day + std::chrono::hours(2)});
    state.decisions.push_back({1, "A", "", "", "me", DecisionKind::Accept, day});
    model.setState(state);
    ASSERT_NE(model.decisionOf("A"), nullptr);
    EXPECT_EQ(model.decidedText(*model.machineAt(1)), "deferred to 1 June 2026\nnot before the stop");
    EXPECT_EQ(model.round().progress.decided, 1u);
}

TEST(Ledger, WhatEachGroupAsksForSettlesItsMachines) {
    LedgerModel model;
    model.setRound(sampleRound());
    model.setFilter({"", "", "undecided", ""});
    EXPECT_EQ(tags(model), (Tags{"[act]", "A", "[plan]", "B", "C", "[unseen]", "D", "[leave]", "F"}));
    RoundState state;
    state.decisions = {{1, "A", "", "", "me", DecisionKind::Accept, Instant{}},
                       {2, "B", "", "", "me", DecisionKind::Accept, Instant{}},
                       {3, "C", "plate says 6316", "", "me", DecisionKind::Dispute, Instant{}}};
    state.unseenAnswered = {"D"};
    state.opened = {"F"};
    model.setState(state);
    EXPECT_EQ(model.rowCount(), 0);
}

TEST(Ledger, AgeCountsToTheEndOfThePeriodAndMinusIsAMinus) {
    LedgerModel model;
    model.setRound(sampleRound());
    EXPECT_EQ(model.index(1, LedgerModel::Age).data().toString(), "3 d");
    EXPECT_EQ(model.index(8, LedgerModel::Weight).data().toString(), QString(QChar(0x2212)) + "5.0");
    EXPECT_EQ(ageText(Instant{}, Instant{} + std::chrono::minutes(119)), "119 min");
    EXPECT_EQ(ageText(Instant{}, Instant{} + std::chrono::hours(47)), "47 h");
    EXPECT_EQ(ageText(Instant{}, Instant{} + std::chrono::hours(24 * 63)), "9 weeks");
}

// Two weights of one machine stand in the window: what each is has to be said where they are read.
TEST(Ledger, TheWeightOfTheMachineIsSetAgainstThatOfItsFinding) {
    RoundShown round = sampleRound();
    RoundFinding found;
    found.finding.fault = "bearing_inner_race";
    found.finding.at = "driver DE";
    found.finding.weightDban = 69;
    round.list.machines[2].findings = {found};
    round.list.machines[2].criticality = "A";
    round.list.machines[2].priorDban = 2.5;
    round.list.listNeedsDban = 24;
    LedgerModel model;
    model.setRound(round);
    const QString hint = model.index(4, LedgerModel::Weight).data(Qt::ToolTipRole).toString();
    for (const char* part : {"60.0", "inner-race defect, driver DE: 69.0", "mean", "A, +2.5", "24.0"})
        EXPECT_TRUE(hint.contains(part)) << part << " in " << hint.toStdString();
    EXPECT_TRUE(model.weightNote(*model.machineAt(4)).contains("60.0 of the machine, 69.0 of the finding"));
    EXPECT_EQ(model.weightNote(*model.machineAt(3)), "");  // nothing was found there: one weight alone
}

// An entry by change would read as evidence against where the lines of the week weigh nothing.
TEST(Ledger, AnEntryByChangeShowsTheWeightOfTheChange) {
    RoundShown round = sampleRound();
    RoundFinding found;
    found.finding.fault = "dry_bearing";
    found.finding.weightDban = 33.4;
    found.change = ChangeFacts{};
    round.list.machines[1].findings = {found};
    round.list.machines[1].listedBy = ListedBy::Change;
    round.list.machines[1].weightDban = -7.4;
    LedgerModel model;
    model.setRound(round);
    EXPECT_TRUE(model.index(3, LedgerModel::Weight).data().toString().startsWith("33.4"));
    EXPECT_TRUE(model.index(3, LedgerModel::Weight)
                    .data(Qt::ToolTipRole)
                    .toString()
                    .contains(QChar(0x2212) + QString("7.4")));
}

// The period ends at the site's midnight: 11 May 2026 00:00 of London's summer is 10 May 23:00 UTC.
TEST(Ledger, TheAgesEndIsSaidByTheSitesClock) {
    RoundShown round = sampleRound();
    round.timeZone = "Europe/London";
    round.end = parseUtc("2026-05-10T23:00:00Z").value();
    round.list.machines[0].newest = parseUtc("2026-05-10T13:00:00Z").value();
    LedgerModel model;
    model.setRound(round);
    EXPECT_EQ(model.index(1, LedgerModel::Age).data().toString(), "10 h");
    EXPECT_EQ(model.index(1, LedgerModel::Age).data(Qt::ToolTipRole).toString(),
              "newest recording of the machine: 10 May 2026 14:00 UTC+1,\n10 h before the end of the period, "
              "11 May 2026 00:00 UTC+1");
    EXPECT_TRUE(model.levelAndAge(*model.machineAt(1)).contains("10 h before the end of the period"));
}

TEST(Ledger, ADraftAsksForNoDecision) {
    RoundShown round = sampleRound();
    round.entry.reset();
    LedgerModel model;
    model.setRound(round);
    EXPECT_EQ(model.decidedText(*model.machineAt(1)), "");
}

TEST(Ledger, FifteenHundredMachinesAreAllThere) {
    RoundShown round = sampleRound();
    round.list.machines.clear();
    for (int i = 0; i < 1500; ++i)
        round.list.machines.push_back(machine("M-" + std::to_string(i), i < 30 ? "plan" : "leave", "kiln"));
    LedgerModel model;
    model.setRound(round);
    EXPECT_EQ(model.rowCount(), 1502);
    model.setFilter({"", "M-149", "", ""});
    EXPECT_EQ(model.shownMachines(), 11);  // M-149 and M-1490 to M-1499
}

}  // namespace
}  // namespace fettle
