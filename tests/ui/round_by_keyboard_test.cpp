// A whole round by keyboard alone, from the opened fleet to the printed sheets: the draft is opened as a
// round, what was promised is looked at, each listed machine is decided, the unseen get their reasons, the
// sample is opened, leave is accepted as a block, the round is closed, its sheets and its report are made as
// files. Every key is a real key event to whatever has the focus; nothing is clicked and nothing is called.
// Site: tests/fleet/small_site.h, two machines listed, two unseen, one to leave.
#include <QApplication>
#include <QDateEdit>
#include <QFileDialog>
#include <QLineEdit>

#include "tests/ui/desk_fixture.h"
#include "ui/dialogs/report_dialog.h"
#include "ui/dialogs/sheets_dialog.h"

namespace fettle::desk_test {
namespace {

class ByKeyboard : public Desk {
  protected:
    QWidget* focus() {
        QWidget* has = QApplication::focusWidget();
        return has ? has : window_.get();
    }
    void press(Qt::Key key, Qt::KeyboardModifiers with = {}) {
        QTest::keyClick(focus(), key, with);
        QCoreApplication::processEvents();
    }
    void write(const std::string& text) { QTest::keyClicks(focus(), QString::fromStdString(text)); }
    void replaceBy(const std::string& text) {
        press(Qt::Key_A, Qt::ControlModifier);
        write(text);
    }
    // By Tab, as often as it takes.
    void tabTo(const char* name) {
        for (int i = 0; i < 60; ++i) {
            if (focus()->objectName() == QLatin1String(name)) return;
            press(Qt::Key_Tab);
        }
        FAIL() << name << " is not reached by Tab; the focus is on " << focus()->objectName().toStdString();
    }
    // A dialog is open, and it has the focus.
    void awaitDialog(const char* name) {
        ASSERT_TRUE(waitFor([&] {
            const QWidget* has = QApplication::focusWidget();
            return has && has->window()->objectName() == QLatin1String(name);
        })) << name;
    }
    void awaitDesk() {
        ASSERT_TRUE(waitFor([this] { return window_->settled() && !QApplication::activeModalWidget(); }));
        window_->activateWindow();  // what a window manager does when a dialog has closed
        ASSERT_TRUE(waitFor([this] {
            const QWidget* has = QApplication::focusWidget();
            return has && has->window() == window_.get();
        }));
    }
    const RoundShown& round() { return roundPage().round(); }
    std::string urgencyHere() {
        const RoundMachine* machine =
            roundPage().model().machineAt(roundPage().model().rowOf(roundPage().currentTag().toStdString()));
        return machine ? machine->urgency : "";
    }

    void openTheRound();
    void decideOne();
    void answerUnseenOne();
    void openTheSample();
    void decideAll();
    void closeTheRound();
    void printSheets();
    void printReport();
};

void ByKeyboard::openTheRound() {
    EXPECT_TRUE(round().draft());
    press(Qt::Key_R, Qt::AltModifier);  // the menu of rounds
    ASSERT_TRUE(waitFor([] { return QApplication::activePopupWidget() != nullptr; }));
    QTest::keyClick(QApplication::activePopupWidget(), Qt::Key_O);  // Open a round...
    awaitDialog("startRoundDialog");
    tabTo("yes");
    press(Qt::Key_Space);
    ASSERT_TRUE(waitFor([this] { return round().open() && window_->settled(); }));
    awaitDesk();
}

void ByKeyboard::decideOne() {
    if (round().progress.decided == 0) return press(Qt::Key_A);
    press(Qt::Key_F);
    awaitDialog("decisionDialog");
    tabTo("reason");
    write("stop in June");
    tabTo("yes");
    press(Qt::Key_Space);
}

void ByKeyboard::answerUnseenOne() {
    press(Qt::Key_U);
    awaitDialog("unseenDialog");
    tabTo("yes");
    press(Qt::Key_Space);
}

void ByKeyboard::openTheSample() {
    press(Qt::Key_Return);
    ASSERT_TRUE(waitFor([this] { return window_->workplace()->pageName() == QStringLiteral("machine"); }));
    press(Qt::Key_1, Qt::ControlModifier);  // back to the round
    ASSERT_EQ(window_->workplace()->pageName(), "round");
}

// One key leads from one undecided machine to the next, whatever it asks for.
void ByKeyboard::decideAll() {
    for (int i = 0; i < 12; ++i) {
        press(Qt::Key_N);
        const std::string urgency = urgencyHere();
        if (urgency == "unseen")
            answerUnseenOne();
        else if (urgency == "leave")
            openTheSample();
        else
            decideOne();
        awaitDesk();
        const RoundProgress& p = round().progress;
        if (p.decided == p.listed && p.unseenDone == p.unseen && p.sampleOpened == p.sample) break;
    }
    press(Qt::Key_L);
    awaitDesk();
    EXPECT_THAT(round().progress.missing, testing::IsEmpty());
}

void ByKeyboard::closeTheRound() {
    press(Qt::Key_R, Qt::AltModifier);
    ASSERT_TRUE(waitFor([] { return QApplication::activePopupWidget() != nullptr; }));
    QTest::keyClick(QApplication::activePopupWidget(), Qt::Key_C);
    awaitDialog("closeRoundDialog");
    tabTo("yes");
    press(Qt::Key_Space);
    ASSERT_TRUE(waitFor([this] { return !round().open() && window_->settled(); }));
    awaitDesk();
}

void ByKeyboard::printSheets() {
    press(Qt::Key_F, Qt::ControlModifier | Qt::ShiftModifier);
    awaitDialog("sheetsDialog");
    tabTo("path");
    replaceBy(folder_ / "sheets.pdf");
    tabTo("make");
    press(Qt::Key_Space);
    ASSERT_TRUE(waitFor([this] { return std::filesystem::exists(folder_ / "sheets.pdf"); }));
    press(Qt::Key_Escape);
    awaitDesk();
}

void ByKeyboard::printReport() {
    press(Qt::Key_P, Qt::ControlModifier | Qt::ShiftModifier);
    auto* report = dialog<ReportDialog>("reportDialog");
    ASSERT_TRUE(waitFor([&] { return report->report() != nullptr; }));
    awaitDialog("reportDialog");
    press(Qt::Key_S, Qt::ControlModifier);
    ASSERT_TRUE(waitFor([&] { return report->findChild<QFileDialog*>("saveDialog") != nullptr; }));
    auto* where = report->findChild<QFileDialog*>("saveDialog");
    auto* name = where->findChild<QLineEdit*>("fileNameEdit");
    ASSERT_TRUE(waitFor([&] { return name->hasFocus(); }));
    replaceBy(folder_ / "round.pdf");
    press(Qt::Key_Return);
    ASSERT_TRUE(waitFor([this] { return std::filesystem::exists(folder_ / "round.pdf"); }));
}

TEST_F(ByKeyboard, ARoundFromOpeningToPrintedSheets) {
    openWindow();
    window_->activateWindow();
    press(Qt::Key_1, Qt::ControlModifier);
    openTheRound();
    decideAll();
    closeTheRound();
    printSheets();
    printReport();
    const auto kept = currentRound(*fleet_);
    ASSERT_TRUE(kept && *kept);
    EXPECT_TRUE((*kept)->entry.closedAt);
    EXPECT_EQ((*kept)->progress.decided, 2u);
    EXPECT_EQ((*kept)->progress.unseenDone, 2u);
    EXPECT_TRUE((*kept)->state.leaveAccepted);
    ASSERT_EQ((*kept)->state.decisions.size(), 2u);
    EXPECT_EQ((*kept)->state.decisions[1].reason, "stop in June");
    for (const char* made : {"sheets.pdf", "round.pdf"}) {
        const auto pdf = RealFileSystem().read(folder_ / made);
        ASSERT_TRUE(pdf) << made;
        EXPECT_EQ(pdf->substr(0, 5), "%PDF-") << made;
    }
}

}  // namespace
}  // namespace fettle::desk_test
