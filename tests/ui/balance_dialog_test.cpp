// The balancing's window as a user meets it: typed step by step, results that follow, refusals beside their
// fields, kept, closed and opened again. Numbers: the grinding wheel of S. S. Rao, Mechanical Vibrations
// (inputs from memory): 10 @ 40, 4 at 65 gives 6 @ 110, hence 4.105 at 100.35 degrees.
#include "ui/dialogs/balance_dialog.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QMessageBox>
#include <QPushButton>

#include "tests/ui/desk_fixture.h"
#include "ui/dialogs/balance_lists.h"
#include "ui/plot/polar_drawing.h"
#include "ui/plot/rotor_drawing.h"
#include "ui/sheet/balance_record.h"

namespace fettle::desk_test {
namespace {

class BalanceOnDesk : public Desk {
  protected:
    BalanceDialog* open() {
        openWindow(
            {QStringLiteral("machine"), QStringLiteral("C-SHAKE"), {}, {}, {}, QStringLiteral("balance")});
        auto* found = dialog<BalanceDialog>("balanceDialog");
        settle();
        return found;
    }
    template <class T>
    static T* child(QWidget* dialog, const char* name) {
        T* found = dialog->findChild<T*>(QString::fromLatin1(name));
        EXPECT_NE(found, nullptr) << name;
        return found;
    }
    static void type(QWidget* dialog, const char* name, const char* text) {
        auto* edit = child<QLineEdit>(dialog, name);
        ASSERT_NE(edit, nullptr);
        edit->selectAll();
        QTest::keyClicks(edit, QString::fromLatin1(text));
    }
    static void typeWheel(BalanceDialog* dialog) {
        child<QCheckBox>(dialog, "cautionsRead")->click();
        dialog->goToStep(1);
        type(dialog, "balanceMass", "60");
        type(dialog, "balanceSpeed", "1500");
        type(dialog, "planeRadius1", "150");
        type(dialog, "planePlaces1", "8");
        dialog->goToStep(2);
        type(dialog, "run0sensor1amount1", "10");
        type(dialog, "run0sensor1phase1", "40");
        type(dialog, "run1mass", "4");
        type(dialog, "run1degrees", "65");
        type(dialog, "run1sensor1amount1", "6");
        type(dialog, "run1sensor1phase1", "110");
    }
    // For looking at: a picture of each step, where a folder is named.
    static void picture(BalanceDialog* dialog, const QString& name) {
        const QString folder = qEnvironmentVariable("FETTLE_DIALOG_PICTURES");
        if (!folder.isEmpty()) dialog->grab().save(folder + QChar('/') + name + QStringLiteral(".png"));
    }
};

TEST_F(BalanceOnDesk, ResultsFollowAsTyped) {
    BalanceDialog* balance = open();
    ASSERT_NE(balance, nullptr);
    picture(balance, QStringLiteral("0_cautions"));
    EXPECT_FALSE(child<QPushButton>(balance, "balanceNext")->isEnabled());
    typeWheel(balance);
    ASSERT_TRUE(balance->model().answer().solved);
    EXPECT_NEAR(balance->model().answer().planes[0].toFit.amount, 4.104829907, 1e-6);
    EXPECT_NEAR(balance->model().answer().planes[0].toFit.degrees, 100.35156, 1e-4);
    EXPECT_EQ(child<QLabel>(balance, "balanceShort")->text().toStdString(), "Fit 4.10 g at 100°.");
    picture(balance, QStringLiteral("2_runs"));
    balance->goToStep(1);
    picture(balance, QStringLiteral("1_rotor"));
    balance->goToStep(3);
    picture(balance, QStringLiteral("3_masses"));
    EXPECT_EQ(child<RotorDrawing>(balance, "rotorDrawing1")->picture().masses.size(), 2u);
    EXPECT_TRUE(child<QLabel>(balance, "balanceAnswer")->text().contains(QStringLiteral("4.10 g at 100°")));
    // Another mass of the trial, another answer, at once.
    type(balance, "run1mass", "8");
    EXPECT_NEAR(balance->model().answer().planes[0].toFit.amount, 2 * 4.104829907, 1e-6);
}

TEST_F(BalanceOnDesk, RefusalsStandBesideTheirField) {
    BalanceDialog* balance = open();
    ASSERT_NE(balance, nullptr);
    typeWheel(balance);
    type(balance, "run0sensor1amount2", "12");
    type(balance, "run0sensor1phase2", "41");
    auto* note = child<QLabel>(balance, "run0sensor1Note");
    EXPECT_TRUE(note->isVisible());
    EXPECT_TRUE(note->text().contains(QStringLiteral("scatter"))) << note->text().toStdString();
    EXPECT_FALSE(balance->model().answer().solved);
    type(balance, "run0sensor1amount2", "10.2");
    EXPECT_FALSE(note->isVisible()) << note->text().toStdString();
    EXPECT_TRUE(balance->model().answer().solved);
    balance->goToStep(1);
    type(balance, "planeRadius1", "abc");
    EXPECT_TRUE(child<QLabel>(balance, "planeRadius1Note")->isVisible());
    EXPECT_EQ(balance->model().job().planes[0].radiusMm, 150);
    type(balance, "planeTaken1", "3, x");
    EXPECT_TRUE(child<QLabel>(balance, "planeTakenNote1")->isVisible());
}

TEST_F(BalanceOnDesk, FourRunsNeedNoPhaseAndDrawTheirCircles) {
    BalanceDialog* balance = open();
    ASSERT_NE(balance, nullptr);
    balance->goToStep(1);
    child<QComboBox>(balance, "balanceMethod")->setCurrentIndex(2);
    balance->goToStep(2);
    settle();
    EXPECT_EQ(balance->findChild<QLineEdit*>(QStringLiteral("run0sensor1phase1")), nullptr);
    // |10 @ 40 + 2.436154536 @ 119.64844 x 4 at 0, 120, 240 degrees|
    const Phasor v0 = phasorOf({10, 40}), alpha = phasorOf({2.436154536, 119.64844});
    type(balance, "run0sensor1amount1", "10");
    type(balance, "run1mass", "4");
    type(balance, "run1degrees", "0");
    for (int run = 1; run <= 3; ++run) {
        const double amount = std::abs(v0 + alpha * phasorOf({4, 120.0 * (run - 1)}));
        type(balance, QStringLiteral("run%1sensor1amount1").arg(run).toUtf8(),
             QByteArray::number(amount, 'f', 4));
    }
    ASSERT_TRUE(balance->model().answer().solved);
    EXPECT_NEAR(balance->model().answer().planes[0].toFit.amount, 4.1048, 2e-3);
    EXPECT_NEAR(balance->model().answer().planes[0].toFit.degrees, 100.35, 0.1);
    EXPECT_EQ(child<PolarDrawing>(balance, "polarDrawing1")->picture().circles.size(), 4u);
    picture(balance, QStringLiteral("2_runs_four"));
    balance->goToStep(3);
    picture(balance, QStringLiteral("3_masses_four"));
}

TEST_F(BalanceOnDesk, KeptClosedAndOpenedAgain) {
    BalanceDialog* balance = open();
    ASSERT_NE(balance, nullptr);
    typeWheel(balance);
    child<QPushButton>(balance, "addCheck")->click();
    type(balance, "checksensor1amount1", "0.6");
    type(balance, "checksensor1phase1", "200");
    ASSERT_TRUE(balance->model().answer().withinGrade);
    balance->goToStep(3);
    picture(balance, QStringLiteral("3_masses_check"));
    balance->goToStep(4);
    picture(balance, QStringLiteral("4_record"));
    balance->keep(false);
    settle();
    EXPECT_FALSE(balance->model().changedSinceKept());
    child<QPushButton>(balance, "balanceClose")->click();
    auto* question = dialog<QMessageBox>("balanceCloseQuestion");
    ASSERT_NE(question, nullptr);
    question->button(QMessageBox::Yes)->click();
    ASSERT_TRUE(waitFor([&] { return balance->model().closed(); }));
    settle();
    balance->reject();
    auto entries = fleet_->workshop().list("C-SHAKE", "balance");
    ASSERT_TRUE(entries);
    ASSERT_EQ(entries->size(), 1u);
    EXPECT_TRUE((*entries)[0].closedAt);
    window_->workplace()->showDialog(QStringLiteral("balance"));
    auto* again = dialog<BalanceDialog>("balanceDialog");
    settle();
    // The closed one can be opened; a new one may use its coefficients instead of a trial run.
    EXPECT_EQ(again->model().job().trials.size(), 1u);
    again->goToStep(1);
    auto* saved = child<QComboBox>(again, "balanceSaved");
    ASSERT_EQ(saved->count(), 2);
    saved->setCurrentIndex(1);
    emit saved->activated(1);
    EXPECT_TRUE(again->model().job().trials.empty());
    again->goToStep(2);
    type(again, "run0sensor1amount1", "5");
    type(again, "run0sensor1phase1", "40");
    ASSERT_TRUE(again->model().answer().solved);
    EXPECT_TRUE(again->model().troubleAt("/saved"));
}

TEST_F(BalanceOnDesk, WhatIsNotKeptIsAskedAbout) {
    BalanceDialog* balance = open();
    ASSERT_NE(balance, nullptr);
    typeWheel(balance);
    balance->reject();
    auto* question = dialog<QMessageBox>("balanceLeaveQuestion");
    ASSERT_NE(question, nullptr);
    question->button(QMessageBox::Cancel)->click();
    EXPECT_TRUE(balance->isVisible());
}

TEST_F(BalanceOnDesk, TheRecordIsAPdf) {
    BalanceDialog* balance = open();
    ASSERT_NE(balance, nullptr);
    typeWheel(balance);
    balance->savePdf(QString::fromStdString(folder_ / "balance.pdf"));
    settle();
    const auto pdf = RealFileSystem().read(folder_ / "balance.pdf");
    ASSERT_TRUE(pdf);
    EXPECT_EQ(pdf->substr(0, 5), "%PDF-");
    const BalanceRecord record{balance->model().job(), balance->model().answer(), QStringLiteral("today")};
    for (const PaperSize size : {PaperSize::A4, PaperSize::Letter}) {
        BalanceRecordPages pages(record, size);
        EXPECT_EQ(pages.pages().size(), 1u);
        for (const SheetPage& page : pages.pages())
            for (const PlacedText& text : page.texts)
                EXPECT_TRUE(page.paper().contains(text.rect)) << text.text.toStdString();
    }
}

// A picture that is drawn the wrong way round doubles an unbalance.
TEST(RotorPictures, CountTheWayTheyAreTold) {
    RotorPicture rotor;
    rotor.clockwise = true;
    EXPECT_EQ(screenDegrees(rotor, 90), -90);  // against a clockwise rotation is to the left from the top
    rotor.withRotation = true;
    EXPECT_EQ(screenDegrees(rotor, 90), 90);
    rotor.clockwise = false;
    EXPECT_EQ(screenDegrees(rotor, 90), -90);
}

TEST(BalanceLists, AreReadBackAsTyped) {
    EXPECT_EQ(numbersText(*numbersIn(QStringLiteral("3, 4,7"))), QStringLiteral("3, 4, 7"));
    EXPECT_FALSE(numbersIn(QStringLiteral("3, x")));
    EXPECT_FALSE(numbersIn(QStringLiteral("0")));
    const auto masses = massesIn(QStringLiteral("12 @ 30; 5 @ 200 @ 390"), 150);
    ASSERT_TRUE(masses);
    EXPECT_EQ(massesText(*masses, 150), QStringLiteral("12 @ 30; 5 @ 200 @ 390"));
    EXPECT_FALSE(massesIn(QStringLiteral("12"), 150));
    EXPECT_TRUE(massesIn(QString(), 150)->empty());
}

}  // namespace
}  // namespace fettle::desk_test
