// What one does with a round besides deciding: looking at it grouped, sorted and filtered by keys, what comes
// before the list, taking a decision back, older rounds, two rounds side by side, the report and all sheets
// in one go. In a real window over the small site whose truth is known (tests/fleet/small_site.h).
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QProgressBar>
#include <QPushButton>
#include <QSignalSpy>
#include <QTableView>

#include "tests/ui/desk_fixture.h"
#include "ui/dialogs/answer_dialog.h"
#include "ui/dialogs/compare_dialog.h"
#include "ui/dialogs/report_dialog.h"
#include "ui/dialogs/sheets_dialog.h"
#include "ui/model/words.h"

namespace fettle::desk_test {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

class RoundDesk : public Desk {
  protected:
    void openAll() {
        kept_ = opened();
        openWindow();
        ledger().setFocus();
    }
    QTableView& ledger() { return *part<QTableView>("ledger"); }
    const LedgerModel& model() { return roundPage().model(); }
    RoundState state() { return keptRound(*fleet_, kept_.entry.id)->state; }
    void choose(const std::string& tag) {
        ledger().selectionModel()->setCurrentIndex(
            ledger().model()->index(model().rowOf(tag), 1),
            QItemSelectionModel::ClearAndSelect | QItemSelectionModel::Rows);
        ledger().setFocus();
    }
    // Without a window manager nobody makes the window active again after a dialog.
    void key(Qt::Key key, Qt::KeyboardModifiers with = {}) {
        if (QApplication::activeWindow() != window_.get()) {
            window_->activateWindow();
            ledger().setFocus();
            ASSERT_TRUE(waitFor([this] { return ledger().hasFocus(); }));
        }
        QTest::keyClick(&ledger(), key, with);
    }
    // A first round in April, closed, then that of May, open.
    void keepTwoRounds() {
        const auto first = openRound(*fleet_, "2026-04-12");
        ASSERT_TRUE(first);
        for (const RoundMachine& machine : first->list.machines) {
            const bool unseen = machine.urgency == "unseen";
            EXPECT_TRUE(!unseen ||
                        fettle::answerUnseen(*fleet_, first->entry.id, machine.tag, "silent", "me"));
            EXPECT_TRUE(!machine.inSample || markOpened(*fleet_, first->entry.id, machine.tag));
        }
        ASSERT_TRUE(fettle::acceptLeave(*fleet_, first->entry.id, "me"));
        ASSERT_TRUE(fettle::closeRound(*fleet_, first->entry.id, "me"));
    }
    std::string file(const std::string& name) {
        const auto text = RealFileSystem().read(folder_ / name);
        return text ? *text : "";
    }

    KeptRound kept_;
};

TEST_F(RoundDesk, ADecisionIsTakenBackByOneKeyAndTheMachineIsUndecidedAgain) {
    openAll();
    choose("A-RACE");
    key(Qt::Key_A);
    settle();
    EXPECT_EQ(roundPage().round().progress.decided, 1u);
    choose("C-SHAKE");
    key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(roundPage().round().progress.decided, 0u);
    EXPECT_EQ(roundPage().currentTag(), "A-RACE");
    settle();
    ASSERT_EQ(state().decisions.size(), 2u);  // nothing is erased
    EXPECT_EQ(state().decisions[1].kind, DecisionKind::Withdraw);
    EXPECT_FALSE(part<QAbstractButton>("round.undo.button")->isEnabled());
}

TEST_F(RoundDesk, WhatHeldBeforeHoldsAgain) {
    openAll();
    choose("A-RACE");
    roundPage().decide({{0, "A-RACE", "the plate says 6316", "", "", DecisionKind::Dispute, Instant{}}});
    key(Qt::Key_A);
    settle();
    EXPECT_EQ(model().decisionOf("A-RACE")->kind, DecisionKind::Accept);
    key(Qt::Key_Z, Qt::ControlModifier);
    settle();
    EXPECT_EQ(model().decisionOf("A-RACE")->kind, DecisionKind::Dispute);
    EXPECT_EQ(model().decisionOf("A-RACE")->reason, "the plate says 6316");
    key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(model().decisionOf("A-RACE"), nullptr);
    settle();
    EXPECT_EQ(state().decisions.size(), 4u);
}

TEST_F(RoundDesk, SeveralAreDisputedWithOneReason) {
    openAll();
    ledger().selectAll();
    key(Qt::Key_D);
    auto* asked = dialog<AnswerDialog>("decisionDialog");
    asked->findChild<QPlainTextEdit*>("reason")->setPlainText("measured on the wrong motor");
    asked->findChild<QAbstractButton*>("yes")->click();
    settle();
    ASSERT_EQ(state().decisions.size(), 2u);
    for (const Decision& decision : state().decisions)
        EXPECT_EQ(decision.reason, "measured on the wrong motor");
    key(Qt::Key_Z, Qt::ControlModifier);  // as one step
    EXPECT_EQ(roundPage().round().progress.decided, 0u);
    settle();
}

TEST_F(RoundDesk, KeysSortGroupAndTurnTheLedger) {
    openAll();
    key(Qt::Key_S);
    EXPECT_EQ(model().order(), LedgerModel::ByTag);
    EXPECT_EQ(part<QComboBox>("orderChoice")->currentIndex(), int(LedgerModel::ByTag));
    key(Qt::Key_S, Qt::ShiftModifier);
    EXPECT_TRUE(model().backwards());
    EXPECT_THAT(part<QComboBox>("orderChoice")->currentText().toStdString(), HasSubstr("turned"));
    key(Qt::Key_V);
    EXPECT_EQ(model().grouping(), LedgerModel::ByArea);
    key(Qt::Key_V);
    key(Qt::Key_V);
    EXPECT_EQ(model().grouping(), LedgerModel::Together);
    EXPECT_EQ(model().rowCount(), 5);
    EXPECT_EQ(model().machineAt(0)->tag, "E-FLAT");  // by tag, turned
    key(Qt::Key_V);
    EXPECT_EQ(model().grouping(), LedgerModel::ByUrgency);
}

TEST_F(RoundDesk, FiltersByUrgencyAndDecisionAndNextUndecidedLooksPastThem) {
    openAll();
    part<QComboBox>("urgencyFilter")->setCurrentIndex(4);
    EXPECT_EQ(model().filter().urgency, "unseen");
    EXPECT_EQ(model().shownMachines(), 2);
    key(Qt::Key_N);
    EXPECT_NE(roundPage().currentTag(), "");
    part<QComboBox>("decisionFilter")->setCurrentIndex(2);
    EXPECT_EQ(model().shownMachines(), 0);
    key(Qt::Key_N);  // what is shown has nothing: the filter gives way
    EXPECT_NE(roundPage().currentTag(), "");
    EXPECT_EQ(part<QComboBox>("decisionFilter")->currentIndex(), 0);
}

TEST_F(RoundDesk, WhatComesBeforeTheListIsReachedByOneKeyAndLeadsThere) {
    Job job;
    job.machine = "C-SHAKE";
    job.findings = {"unbalance @ driver"};
    job.state = "issued";
    job.plannedStop = "2026-05-01";
    ASSERT_TRUE(fleet_->log().putJob(job));
    openAll();
    auto* lines = part<QListWidget>("beforeList");
    EXPECT_TRUE(lines->isVisible());  // something is overdue
    choose("A-RACE");
    key(Qt::Key_B);
    EXPECT_TRUE(lines->hasFocus());
    ASSERT_EQ(lines->count(), 3);  // the job, silent, low battery
    EXPECT_THAT(lines->item(0)->text().toStdString(), HasSubstr("was due 1 May 2026"));
    QTest::keyClick(lines, Qt::Key_Return);
    EXPECT_EQ(roundPage().currentTag(), "C-SHAKE");
    EXPECT_TRUE(ledger().hasFocus());
    key(Qt::Key_B);
    lines->setCurrentRow(1);
    QTest::keyClick(lines, Qt::Key_Return);
    EXPECT_EQ(model().filter().urgency, "unseen");
    EXPECT_EQ(model().shownMachines(), 1);
    key(Qt::Key_B);
    QTest::keyClick(lines, Qt::Key_B);  // the same key leads back and folds it
    EXPECT_FALSE(lines->isVisible());
    EXPECT_TRUE(ledger().hasFocus());
}

TEST_F(RoundDesk, OlderRoundsAreOneKeyAway) {
    keepTwoRounds();
    openAll();
    EXPECT_EQ(roundPage().round().list.until, "2026-05-10");
    key(Qt::Key_PageUp, Qt::ControlModifier);
    ASSERT_TRUE(waitFor([this] { return roundPage().round().list.until == "2026-04-12"; }));
    settle();
    EXPECT_FALSE(part<QAbstractButton>("round.accept.button")->isEnabled());
    key(Qt::Key_PageDown, Qt::ControlModifier);
    ASSERT_TRUE(waitFor([this] { return roundPage().round().list.until == "2026-05-10"; }));
    settle();
}

TEST_F(RoundDesk, TwoRoundsAreComparedAndTheMovesSaved) {
    keepTwoRounds();
    openAll();
    QTest::keyClick(window_.get(), Qt::Key_R, Qt::ControlModifier | Qt::ShiftModifier);
    auto* compare = dialog<CompareDialog>("compareDialog");
    settle();
    ASSERT_NE(compare->comparison(), nullptr);
    EXPECT_EQ(compare->comparison()->beforeUntil, "2026-04-12");
    EXPECT_EQ(compare->comparison()->count(RoundMove::CameOn), 2u);
    EXPECT_THAT(compare->findChild<QLabel*>("counts")->text().toStdString(), HasSubstr("2 came on the list"));
    QSignalSpy saved(compare, &CompareDialog::saved);
    compare->saveCsv(QString::fromStdString(folder_ / "moves.csv"));
    compare->savePdf(QString::fromStdString(folder_ / "moves.pdf"));
    ASSERT_TRUE(waitFor([&] { return saved.count() == 2; }));
    EXPECT_THAT(file("moves.csv"), HasSubstr("\"A-RACE\""));
    EXPECT_THAT(file("moves.csv"), HasSubstr("\"came_on\""));
    EXPECT_EQ(file("moves.pdf").substr(0, 5), "%PDF-");
    auto* moves = compare->findChild<QTableView*>("moves");
    const std::string first = compare->comparison()->moves[0].tag;
    moves->setFocus();
    QTest::keyClick(moves, Qt::Key_Return);
    EXPECT_EQ(window_->workplace()->selection().machine().toStdString(), first);
    settle();
}

TEST_F(RoundDesk, OneRoundAloneCannotBeCompared) {
    openAll();
    window_->workplace()->compareRounds();
    auto* compare = dialog<CompareDialog>("compareDialog");
    EXPECT_TRUE(compare->findChild<QLabel*>("trouble")->isVisible());
    EXPECT_FALSE(compare->findChild<QPushButton*>("csv")->isEnabled());
}

TEST_F(RoundDesk, TheReportShowsItsPagesAndIsSaved) {
    openAll();
    QTest::keyClick(window_.get(), Qt::Key_P, Qt::ControlModifier | Qt::ShiftModifier);
    auto* report = dialog<ReportDialog>("reportDialog");
    ASSERT_TRUE(waitFor([&] { return report->report() != nullptr; }));
    ASSERT_EQ(report->report()->work.size(), 2u);
    EXPECT_FALSE(report->findChild<QLabel*>("page")->pixmap(Qt::ReturnByValue).isNull());
    QSignalSpy saved(report, &ReportDialog::saved);
    report->savePdf(QString::fromStdString(folder_ / "round.pdf"));
    ASSERT_TRUE(waitFor([&] { return saved.count() == 1; }));
    EXPECT_EQ(file("round.pdf").substr(0, 5), "%PDF-");
    report->savePdf(QString::fromStdString(path_));
    EXPECT_TRUE(report->findChild<QLabel*>("trouble")->isVisible());
    EXPECT_TRUE(FleetFile::open(path_, OpenMode::ReadOnly));
}

TEST_F(RoundDesk, AllSheetsOfTheRoundAreMadeAsOnePdfOrAsAFolder) {
    openAll();
    roundPage().decide({{0, "A-RACE", "the plate says 6316", "", "", DecisionKind::Dispute, Instant{}}});
    settle();
    QTest::keyClick(window_.get(), Qt::Key_F, Qt::ControlModifier | Qt::ShiftModifier);
    auto* sheets = dialog<SheetsDialog>("sheetsDialog");
    EXPECT_EQ(sheets->chosen(), QStringList{"C-SHAKE"});  // the disputed one is left out
    sheets->findChild<QPushButton*>("all")->click();
    EXPECT_EQ(sheets->chosen().size(), 2);
    QSignalSpy made(sheets, &SheetsDialog::made);
    sheets->findChild<QLineEdit*>("path")->setText(QString::fromStdString(folder_ / "all.pdf"));
    sheets->findChild<QAbstractButton*>("csv")->click();
    sheets->findChild<QPushButton*>("make")->click();
    ASSERT_TRUE(waitFor([&] { return made.count() == 1; }));
    EXPECT_EQ(made[0][0].toInt(), 2);
    const std::string book = file("all.pdf");
    EXPECT_EQ(book.substr(0, 5), "%PDF-");
    const std::string rows = file("all.pdf.csv");
    EXPECT_EQ(std::count(rows.begin(), rows.end(), '\n'), 3);
    EXPECT_THAT(rows, HasSubstr("\"A-RACE\""));
    sheets->findChild<QComboBox*>("how")->setCurrentIndex(1);
    sheets->findChild<QLineEdit*>("path")->setText(QString::fromStdString(folder_ / "sheets"));
    sheets->findChild<QPushButton*>("make")->click();
    ASSERT_TRUE(waitFor([&] { return made.count() == 2; }));
    EXPECT_LT(file("sheets/A-RACE.pdf").size(), book.size());
    EXPECT_EQ(file("sheets/C-SHAKE.pdf").substr(0, 5), "%PDF-");
    EXPECT_EQ(sheets->findChild<QProgressBar*>("progress")->value(), 2);
}

TEST_F(RoundDesk, MakingSheetsStopsWhenAskedAndWritesNoHalfBook) {
    openAll();
    window_->workplace()->showSheets();
    auto* sheets = dialog<SheetsDialog>("sheetsDialog");
    sheets->findChild<QLineEdit*>("path")->setText(QString::fromStdString(folder_ / "half.pdf"));
    sheets->findChild<QPushButton*>("make")->click();
    sheets->findChild<QPushButton*>("stop")->click();
    auto* word = sheets->findChild<QLabel*>("word");
    ASSERT_TRUE(waitFor([&] { return word->text().contains(QStringLiteral("Stopped")); }));
    EXPECT_FALSE(std::filesystem::exists(folder_ / "half.pdf"));
    EXPECT_TRUE(sheets->findChild<QPushButton*>("make")->isEnabled());
}

TEST_F(RoundDesk, SheetsAreNeverWrittenOverTheFleetFile) {
    openAll();
    window_->workplace()->showSheets();
    auto* sheets = dialog<SheetsDialog>("sheetsDialog");
    sheets->findChild<QLineEdit*>("path")->setText(QString::fromStdString(path_));
    sheets->findChild<QPushButton*>("make")->click();
    auto* word = sheets->findChild<QLabel*>("word");
    ASSERT_TRUE(waitFor([&] { return word->text().contains(QStringLiteral("is the fleet file")); }));
    EXPECT_TRUE(FleetFile::open(path_, OpenMode::ReadOnly));
}

}  // namespace
}  // namespace fettle::desk_test
