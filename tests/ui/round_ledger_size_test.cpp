// The ledger over 1,500 machines: what it shows is right at that size, and its rows are not counted or looked
// up anew for every cell painted. How long things take is measured in tests/bench, not here.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <QScrollBar>
#include <QTest>

#include "ui/model/ledger_model.h"
#include "ui/pages/round_ledger.h"

namespace fettle {
namespace {

RoundShown largeRound(int machines) {
    static const char* const urgencies[] = {"act", "plan", "watch", "unseen", "leave"};
    RoundShown round;
    round.entry = RoundEntry{};
    round.list.until = "2026-05-10";
    for (int i = 0; i < machines; ++i) {
        RoundMachine one;
        one.tag = fmt::format("M-{:04}", i);
        one.service = "pump of line " + std::to_string(i % 40);
        one.area = "area " + std::to_string(i % 12);
        one.criticality = i % 3 ? "B" : "A";
        one.urgency = urgencies[i < 10 ? 0 : i < 40 ? 1 : i < 60 ? 2 : i < 75 ? 3 : 4];
        if (one.urgency == "unseen") one.unseenReason = "silent";
        one.inSample = one.urgency == "leave" && i % 33 == 0;
        one.changed = "No change.";
        one.weightDban = double(i % 97);
        one.strip.assign(26, 1.0 + i % 7);
        one.limit = 4.5;
        one.unit = "mm/s";
        round.list.machines.push_back(std::move(one));
    }
    round.refresh();
    return round;
}

TEST(LedgerSize, GroupsFiltersAndSortsFifteenHundredMachines) {
    LedgerModel model;
    model.setRound(largeRound(1500));
    EXPECT_EQ(model.rowCount(), 1505);
    model.setGrouping(LedgerModel::ByArea);
    EXPECT_EQ(model.rowCount(), 1512);
    model.setFilter({"", "line 7", "", ""});
    EXPECT_EQ(model.shownMachines(), 38);  // every 40th
    model.setGrouping(LedgerModel::Together);
    model.setFilter({});
    model.setOrder(LedgerModel::ByWeight);
    EXPECT_EQ(*model.machineAt(0)->weightDban, 96);
    EXPECT_EQ(*model.machineAt(1499)->weightDban, 0);
    for (int row = 1; row < 1500; ++row)
        ASSERT_GE(*model.machineAt(row - 1)->weightDban, *model.machineAt(row)->weightDban);
}

TEST(LedgerSize, TheViewStandsOnTheLastLineAfterTheEndKey) {
    LedgerModel model;
    const Theme theme(ThemeChoice::Light);
    RoundLedger ledger(model, theme);
    ledger.resize(1280, 600);
    model.setRound(largeRound(1500));
    ledger.show();
    QTest::qWait(0);
    ledger.chooseFirst();
    QTest::keyClick(&ledger, Qt::Key_End, Qt::ControlModifier);
    EXPECT_EQ(ledger.current(), model.machineAt(model.rowCount() - 1)->tag);
    EXPECT_EQ(ledger.verticalScrollBar()->value(), ledger.verticalScrollBar()->maximum());
    const std::string kept = ledger.current();
    model.setOrder(LedgerModel::ByTag, true);
    EXPECT_EQ(ledger.current(), kept);  // the machine stays chosen, wherever it goes
}

}  // namespace
}  // namespace fettle
