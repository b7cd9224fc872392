// The round page in the units its people read in, the machine page by the line that is current, the age of
// the period. 1 in = 25.4 mm exactly.
#include <QAction>
#include <QLabel>
#include <QListWidget>
#include <QTableView>

#include "tests/ui/desk_fixture.h"
#include "ui/dialogs/bearing_finder_dialog.h"
#include "ui/dialogs/round_dialogs.h"
#include "ui/dialogs/trial_dialog.h"
#include "ui/dialogs/trial_form.h"
#include "ui/model/words.h"
#include "ui/pages/round_before.h"
#include "ui/pages/round_heading.h"

namespace fettle::desk_test {
namespace {

using testing::HasSubstr;
using testing::Not;

class RoundInUnits : public Desk {
  protected:
    QTableView& ledger() { return *part<QTableView>("ledger"); }
    void stand(const std::string& tag) {
        const int row = roundPage().model().rowOf(tag);
        ASSERT_GE(row, 0) << tag;
        ledger().selectionModel()->setCurrentIndex(
            ledger().model()->index(row, 1), QItemSelectionModel::ClearAndSelect | QItemSelectionModel::Rows);
        ledger().setFocus();
    }
    void openPage(const char* action) {
        const QKeySequence keys = part<QAction>(action)->shortcut();
        QTest::keySequence(window_.get(), keys);
        settle();
    }
};

TEST(RoundUnits, LevelAndLimitAreToldInInchesAndSentencesHaveThemBeside) {
    RoundMachine machine;
    machine.tag = "A";
    machine.urgency = "act";
    machine.governing = "velocity r.m.s.";
    machine.unit = "mm/s";
    machine.strip = {2.54, 5.08};
    machine.limit = 7.62;
    machine.changed = "Velocity rose to 5.08 mm/s.";
    RoundShown round;
    round.list.machines = {machine};
    LedgerModel model;
    model.setRound(round);
    const auto strip = model.index(model.rowOf("A"), LedgerModel::Strip);
    EXPECT_EQ(strip.data().toString().toStdString(), "5.08 mm/s");
    model.setUnits({true, false, false});
    EXPECT_EQ(strip.data().toString().toStdString(), "0.200 in/s");
    EXPECT_EQ(model.limitText(machine).toStdString(), "0.300");
    EXPECT_THAT(strip.data(Qt::ToolTipRole).toString().toStdString(), HasSubstr("limit 0.300 in/s"));
    EXPECT_THAT(model.levelAndAge(machine).toStdString(), HasSubstr("0.200 in/s of 0.300"));
    EXPECT_EQ(model.changedText(machine).toStdString(), "Velocity rose to 5.08 mm/s (0.200 in/s).");
}

TEST(RoundUnits, WhatComesBeforeTheListAndTheDecisionHaveInchesBesideToo) {
    const Units inches{true, false, false};
    Theme theme(ThemeChoice::Light);
    RoundShown round;
    DueItem due;
    due.machine = "A";
    due.kind = "verify";
    due.words = "velocity 5.08 mm/s before the job";
    round.due = {due};
    RoundBefore before(theme);
    before.show(round, inches);
    const auto* list = before.findChild<QListWidget*>("beforeList");
    ASSERT_EQ(list->count(), 1);
    EXPECT_THAT(list->item(0)->text().toStdString(), HasSubstr("5.08 mm/s (0.200 in/s)"));
    RoundMachine machine;
    machine.tag = "A";
    machine.changed = "Velocity rose to 5.08 mm/s.";
    DecisionDialog dialog(theme, {machine}, DecisionKind::Defer, QDate(2026, 7, 6), inches, nullptr);
    bool told = false;
    for (const auto* label : dialog.findChildren<QLabel*>())
        told |= label->text().contains("5.08 mm/s (0.200 in/s)");
    EXPECT_TRUE(told);
}

TEST_F(RoundInUnits, TheFootFollowsThePreference) {
    opened();
    openWindow();
    stand("A-RACE");
    EXPECT_THAT(part<QLabel>("roundDetail")->text().toStdString(), Not(HasSubstr("in/s")));
    window_->workplace()->selection().setUnits({true, false, false});
    const RoundMachine* machine = roundPage().model().machineAt(ledger().currentIndex().row());
    ASSERT_NE(machine, nullptr);
    EXPECT_THAT(roundPage().model().levelText(*machine).toStdString(), HasSubstr("in/s"));
    EXPECT_THAT(ledger().currentIndex().siblingAtColumn(LedgerModel::Strip).data().toString().toStdString(),
                HasSubstr("in/s"));
    const std::string foot = part<QLabel>("roundDetail")->text().toStdString();
    EXPECT_EQ(foot.find("mm/s") != std::string::npos, foot.find("in/s") != std::string::npos) << foot;
}

TEST_F(RoundInUnits, TheMachinePageOpensTheLineThatIsCurrent) {
    opened();
    openWindow();
    stand("A-RACE");
    openPage("page.machine");
    EXPECT_EQ(window_->workplace()->pageName(), "machine");
    EXPECT_EQ(window_->workplace()->selection().machine(), "A-RACE");
    openPage("page.round");
    const std::string other = *std::find_if(fleet_test::kTags.begin(), fleet_test::kTags.end(),
                                            [](const auto& tag) { return std::string(tag) != "A-RACE"; });
    stand(other);
    openPage("page.machine");
    EXPECT_EQ(window_->workplace()->selection().machine().toStdString(), other);
}

TEST(RoundAge, APeriodThatEndedAFortnightAgoIsSaidToBeOld) {
    RoundShown round;
    round.list.until = "2026-05-10";
    EXPECT_EQ(periodAge(round, QDate(2026, 5, 24)), "");
    EXPECT_EQ(periodAge(round, QDate(2026, 5, 25)).toStdString(),
              "ended 15 days ago: newer recordings may tell otherwise");
    EXPECT_EQ(periodAge({}, QDate(2026, 5, 25)), "");
}

TEST_F(RoundInUnits, ABearingIsNotPutWhereNoFormIsOpen) {
    openWindow();
    window_->workplace()->showDialog(QStringLiteral("bearings"));
    auto* finder = dialog<BearingFinderDialog>("bearingFinder");
    auto* put = finder->findChild<QAbstractButton*>("finderPut");
    EXPECT_FALSE(put->isEnabled());
    EXPECT_THAT(put->toolTip().toStdString(), HasSubstr("No form is open"));
}

TEST_F(RoundInUnits, ATrialOnAMachineInTroubleIsWarnedOf) {
    openWindow({QStringLiteral("machine"), QStringLiteral("A-RACE"), {}, {}, {}, {}});
    part<QAction>("machine.trial")->trigger();
    auto* asked = dialog<TrialDialog>("trialDialog");
    settle();
    auto* said = asked->findChild<QLabel*>("trialStanding");
    asked->form().setStanding("plan", "C");
    EXPECT_FALSE(said->isVisible());
    asked->form().setStanding("act", "D");
    EXPECT_TRUE(said->isVisible());
    EXPECT_THAT(said->text().toStdString(), testing::AllOf(HasSubstr("at act"), HasSubstr("zone D")));
}

}  // namespace
}  // namespace fettle::desk_test
