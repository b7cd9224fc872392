// The round decided in a real window by keys and buttons, over the small site whose truth is known; what was
// decided is read back from the fleet file. Rules: each listed machine a decision, each unseen one a reason,
// leave as a block after its sample.
#include "ui/pages/round_page.h"

#include <QComboBox>
#include <QDateEdit>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QTableView>

#include "tests/ui/desk_fixture.h"
#include "ui/dialogs/answer_dialog.h"
#include "ui/model/words.h"

namespace fettle::desk_test {
namespace {

using testing::HasSubstr;

class RoundPageTest : public Desk {
  protected:
    void openRoundAndWindow() {
        kept_ = opened();
        openWindow();
    }
    QTableView& ledger() { return *part<QTableView>("ledger"); }
    void choose(const std::string& tag) {
        const int row = roundPage().model().rowOf(tag);
        ASSERT_GE(row, 0) << tag;
        // Alone, whatever key an earlier test left held.
        ledger().selectionModel()->setCurrentIndex(
            ledger().model()->index(row, 1), QItemSelectionModel::ClearAndSelect | QItemSelectionModel::Rows);
        ledger().setFocus();
    }
    std::string chosen() {
        const RoundMachine* machine = roundPage().model().machineAt(ledger().currentIndex().row());
        return machine ? machine->tag : "";
    }
    RoundState state() { return keptRound(*fleet_, kept_.entry.id)->state; }
    std::string text(const char* label) { return part<QLabel>(label)->text().toStdString(); }
    void key(Qt::Key key) { QTest::keyClick(&ledger(), key); }

    KeptRound kept_;
};

TEST_F(RoundPageTest, WithoutARoundItShowsTheListAsItWouldBeAndDecidesNothing) {
    openWindow();
    EXPECT_TRUE(roundPage().round().draft());
    EXPECT_EQ(roundPage().round().list.machines.size(), fleet_test::kTags.size());
    EXPECT_THAT(text("roundPeriod"), HasSubstr("draft"));
    choose("A-RACE");
    EXPECT_FALSE(part<QAbstractButton>("round.accept.button")->isEnabled());
    EXPECT_TRUE(part<QAbstractButton>("startRound")->isVisible());
}

TEST_F(RoundPageTest, ARoundIsOpenedFromThePage) {
    openWindow();
    press("startRound");
    auto* asked = dialog<AnswerDialog>("startRoundDialog");
    asked->findChild<QDateEdit*>("until")->setDate(QDate(2026, 5, 10));
    asked->findChild<QAbstractButton*>("yes")->click();
    ASSERT_TRUE(waitFor([this] { return roundPage().round().open() && window_->settled(); }));
    EXPECT_EQ(roundPage().round().list.until, "2026-05-10");
    EXPECT_THAT(text("roundProgress"), HasSubstr("0 of 2 listed decided"));
}

TEST_F(RoundPageTest, AcceptIsOneKeyAndIsKept) {
    openRoundAndWindow();
    choose("A-RACE");
    key(Qt::Key_A);
    EXPECT_THAT(text("roundProgress"), HasSubstr("1 of 2 listed decided"));
    settle();
    ASSERT_EQ(state().decisions.size(), 1u);
    EXPECT_EQ(state().decisions[0].machine, "A-RACE");
    EXPECT_EQ(state().decisions[0].kind, DecisionKind::Accept);
    EXPECT_NE(state().decisions[0].by, "");
}

TEST_F(RoundPageTest, ADisputeNeedsItsReason) {
    openRoundAndWindow();
    choose("A-RACE");
    key(Qt::Key_D);
    auto* asked = dialog<AnswerDialog>("decisionDialog");
    auto* yes = asked->findChild<QAbstractButton*>("yes");
    EXPECT_FALSE(yes->isEnabled());
    asked->findChild<QPlainTextEdit*>("reason")->setPlainText("  bearing was changed in April  ");
    EXPECT_TRUE(yes->isEnabled());
    yes->click();
    settle();
    ASSERT_EQ(state().decisions.size(), 1u);
    EXPECT_EQ(state().decisions[0].kind, DecisionKind::Dispute);
    EXPECT_EQ(state().decisions[0].reason, "bearing was changed in April");
}

TEST_F(RoundPageTest, ADeferralNeedsADayAfterTheRound) {
    openRoundAndWindow();
    choose("C-SHAKE");
    key(Qt::Key_F);
    auto* asked = dialog<AnswerDialog>("decisionDialog");
    auto* yes = asked->findChild<QAbstractButton*>("yes");
    asked->findChild<QPlainTextEdit*>("reason")->setPlainText("stop planned");
    auto* day = asked->findChild<QDateEdit*>("deferTo");
    day->setDate(QDate(2026, 5, 10));
    EXPECT_FALSE(yes->isEnabled());
    day->setDate(QDate(2026, 5, 20));
    yes->click();
    settle();
    ASSERT_EQ(state().decisions.size(), 1u);
    EXPECT_EQ(state().decisions[0].deferTo, "2026-05-20");
    EXPECT_EQ(
        roundPage().model().decidedText(*roundPage().model().machineAt(roundPage().model().rowOf("C-SHAKE"))),
        "deferred to 20 May 2026\nstop planned");
}

TEST_F(RoundPageTest, ACancelledDialogDecidesNothing) {
    openRoundAndWindow();
    choose("A-RACE");
    key(Qt::Key_D);
    auto* asked = dialog<AnswerDialog>("decisionDialog");
    asked->findChild<QPlainTextEdit*>("reason")->setPlainText("never mind");
    asked->findChild<QAbstractButton*>("no")->click();
    settle();
    EXPECT_TRUE(state().decisions.empty());
}

TEST_F(RoundPageTest, AnUnseenMachineTakesAReasonAndNoDecision) {
    openRoundAndWindow();
    choose("E-FLAT");
    EXPECT_FALSE(part<QAbstractButton>("round.accept.button")->isEnabled());
    key(Qt::Key_U);
    auto* asked = dialog<AnswerDialog>("unseenDialog");
    EXPECT_EQ(asked->findChild<QComboBox*>("reason")->currentData().toString(), "low_battery");
    asked->findChild<QAbstractButton*>("yes")->click();
    settle();
    EXPECT_EQ(state().unseenAnswered, std::vector<std::string>{"E-FLAT"});
}

TEST_F(RoundPageTest, SeveralMachinesAreAnsweredTogether) {
    openRoundAndWindow();
    ledger().selectAll();
    key(Qt::Key_U);
    dialog<AnswerDialog>("unseenDialog")->findChild<QAbstractButton*>("yes")->click();
    key(Qt::Key_A);
    settle();
    EXPECT_EQ(state().unseenAnswered.size(), 2u);
    EXPECT_EQ(state().decisions.size(), 2u);
}

TEST_F(RoundPageTest, LeaveIsAcceptedAsABlockOnlyAfterItsSampleWasOpened) {
    openRoundAndWindow();
    auto* block = part<QAbstractButton>("round.leave.button");
    EXPECT_FALSE(block->isEnabled());
    choose("B-SOUND");
    key(Qt::Key_Return);
    EXPECT_EQ(window_->workplace()->pageName(), "machine");
    EXPECT_EQ(window_->workplace()->selection().machine(), "B-SOUND");
    settle();
    EXPECT_EQ(state().opened, std::vector<std::string>{"B-SOUND"});
    window_->workplace()->go({"round", {}, {}, {}, {}, {}});
    EXPECT_TRUE(block->isEnabled());
    block->click();
    settle();
    EXPECT_TRUE(state().leaveAccepted);
}

TEST_F(RoundPageTest, OpeningAListedMachineChoosesItsFinding) {
    openRoundAndWindow();
    const auto& first =
        fleet_test::SmallSite::machineIn(roundPage().round().list, "A-RACE").findings.at(0).finding;
    choose("A-RACE");
    key(Qt::Key_Return);
    EXPECT_EQ(window_->workplace()->selection().fault().toStdString(), first.fault);
    EXPECT_EQ(window_->workplace()->selection().at().toStdString(), first.at);
    EXPECT_EQ(first.fault, "bearing_inner_race");
    settle();
}

TEST_F(RoundPageTest, OneKeyGoesToTheNextUndecidedUntilNothingIsLeftAndTheRoundIsClosed) {
    openRoundAndWindow();
    choose(roundPage().round().list.machines.front().tag);
    for (int i = 0; i < 10 && !nextUndecided(roundPage().round().list, roundPage().round().state, "").empty();
         ++i) {
        key(Qt::Key_N);
        const RoundMachine machine = *roundPage().model().machineAt(ledger().currentIndex().row());
        EXPECT_FALSE(roundPage().model().settled(machine));
        if (machine.urgency == "unseen")
            roundPage().answerUnseen({shown(machine.tag)}, "silent");
        else if (machine.urgency == "leave")
            roundPage().look(shown(machine.tag));
        else
            key(Qt::Key_A);
        window_->workplace()->go({"round", {}, {}, {}, {}, {}});
        settle();
    }
    press("closeRound");
    auto* early = dialog<AnswerDialog>("closeRoundDialog");
    EXPECT_FALSE(early->findChild<QAbstractButton*>("yes")->isEnabled());
    EXPECT_THAT(early->findChild<QLabel*>("lack")->text().toStdString(), HasSubstr("block"));
    early->findChild<QAbstractButton*>("no")->click();
    roundPage().acceptLeave();
    settle();
    press("closeRound");
    dialog<AnswerDialog>("closeRoundDialog")->findChild<QAbstractButton*>("yes")->click();
    ASSERT_TRUE(waitFor([this] { return !roundPage().round().open() && window_->settled(); }));
    EXPECT_TRUE(keptRound(*fleet_, kept_.entry.id)->entry.closedAt.has_value());
    EXPECT_THAT(text("roundPeriod"), HasSubstr("closed"));
    EXPECT_FALSE(part<QAbstractButton>("round.accept.button")->isEnabled());
}

TEST_F(RoundPageTest, FiltersNarrowTheLedgerAndTheNextUndecidedIsFoundAllTheSame) {
    openRoundAndWindow();
    auto* filter = part<QLineEdit>("textFilter");
    QTest::keyClicks(filter, "b-sound");
    EXPECT_EQ(roundPage().model().shownMachines(), 1);
    press("round.next.button");
    EXPECT_NE(chosen(), "");
    QTest::keyClick(&ledger(), Qt::Key_F, Qt::ControlModifier);
    filter->clear();
    EXPECT_EQ(roundPage().model().shownMachines(), 5);
}

TEST_F(RoundPageTest, WhatWasDecidedElsewhereShowsAfterTheNextChange) {
    openRoundAndWindow();
    Decision elsewhere;
    elsewhere.machine = "C-SHAKE";
    elsewhere.by = "another window";
    ASSERT_TRUE(decide(*fleet_, kept_.entry.id, elsewhere));
    choose("A-RACE");
    key(Qt::Key_A);
    settle();
    EXPECT_EQ(roundPage().round().progress.decided, 2u);
}

TEST_F(RoundPageTest, WhatIsDueStandsBeforeTheList) {
    Job job;
    job.machine = "A-RACE";
    job.findings = {"bearing_inner_race @ driver DE"};
    job.state = "done";
    ASSERT_TRUE(fleet_->log().putJob(job));
    openRoundAndWindow();
    EXPECT_THAT(text("roundNotices"), HasSubstr("1 to be verified"));
    auto* lines = part<QListWidget>("beforeList");
    ASSERT_TRUE(lines->isVisible());
    EXPECT_THAT(lines->item(0)->text().toStdString(), HasSubstr("A-RACE, to be verified"));
}

TEST_F(RoundPageTest, ThePromiseStandsUnderTheTitle) {
    openRoundAndWindow();
    EXPECT_THAT(text("roundPromise"), HasSubstr("at most 1 in 10 on average over rounds"));
    EXPECT_THAT(text("roundNotices"), HasSubstr("silent"));
}

}  // namespace
}  // namespace fettle::desk_test
