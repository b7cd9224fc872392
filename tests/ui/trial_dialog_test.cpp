// A trial as an engineer meets it: planned by typing, started with its cautions, told of the change, printed,
// closed. Truth: the small site (tests/fleet/small_site.h); figures of a mass: tests/workshop/trial_test.cpp.
#include "ui/dialogs/trial_dialog.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDateTimeEdit>
#include <QDialogButtonBox>
#include <QDoubleSpinBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QTableWidget>

#include "tests/ui/desk_fixture.h"
#include "ui/dialogs/trial_form.h"
#include "ui/dialogs/trial_sheet_dialog.h"
#include "ui/dialogs/trial_view.h"
#include "ui/sheet/trial_figures.h"

namespace fettle::desk_test {
namespace {

class TrialOnDesk : public Desk {
  protected:
    TrialDialog* open(const char* tag) {
        openWindow({QStringLiteral("machine"), QString::fromLatin1(tag), {}, {}, {}, {}});
        part<QAction>("machine.trial")->trigger();
        dialog_ = dialog<TrialDialog>("trialDialog");
        settle();
        return dialog_;
    }
    template <class T>
    T* in(const char* name) {
        T* found = dialog_->findChild<T*>(QString::fromLatin1(name));
        EXPECT_NE(found, nullptr) << name;
        return found;
    }
    void choose(const char* box, const char* key) {
        auto* combo = in<QComboBox>(box);
        const int at = combo->findData(QString::fromLatin1(key));
        ASSERT_GE(at, 0) << key;
        combo->setCurrentIndex(at);
    }
    void typeMass() {
        in<QLineEdit>("trialName")->setText(QStringLiteral("10 g at the rim"));
        choose("trialKind", "mass");
        choose("trialAt", "driver");
        in<QDoubleSpinBox>("trialMass")->setValue(10);
        in<QDoubleSpinBox>("trialRadius")->setValue(100);
        in<QDoubleSpinBox>("trialRotor")->setValue(60);
        in<QLineEdit>("trialStopAt")->setText(QStringLiteral("7.1 mm/s r.m.s."));
        in<QLineEdit>("trialResponsible")->setText(QStringLiteral("A. Fitter"));
    }
    void confirmAll() {
        for (QCheckBox* box : dialog_->findChildren<QCheckBox*>())
            box->setChecked(true);
    }
    void startOne() {
        typeMass();
        confirmAll();
        in<QPushButton>("trialStart")->click();
        settle();
    }
    QString text(const char* label) { return in<QLabel>(label)->text(); }

    TrialDialog* dialog_ = nullptr;
};

TEST_F(TrialOnDesk, WhatAMassDoesIsSaidWhileItIsTyped) {
    ASSERT_NE(open("C-SHAKE"), nullptr);
    typeMass();
    EXPECT_TRUE(text("trialFigures").contains(QStringLiteral("1000 g mm")))
        << text("trialFigures").toStdString();
    EXPECT_TRUE(text("trialPromise").contains(QStringLiteral("20 decibans in 3 of 5")));
    in<QDoubleSpinBox>("trialMass")->setValue(20);
    EXPECT_TRUE(text("trialFigures").contains(QStringLiteral("2000 g mm")));
    EXPECT_TRUE(
        text("trialWarnings").contains(QStringLiteral("3 running recordings are in the span before")));
    in<QDoubleSpinBox>("trialMass")->setValue(0);
    EXPECT_TRUE(text("trialPromise").contains(QStringLiteral("Nothing can be promised yet")));
}

TEST_F(TrialOnDesk, FieldsFollowTheKindOfChange) {
    ASSERT_NE(open("C-SHAKE"), nullptr);
    EXPECT_TRUE(in<QDoubleSpinBox>("trialMass")->isVisible());
    EXPECT_FALSE(in<QComboBox>("trialElement")->isVisible());
    choose("trialKind", "bearing");
    choose("trialAt", "driver DE");
    EXPECT_FALSE(in<QDoubleSpinBox>("trialMass")->isVisible());
    EXPECT_TRUE(in<QComboBox>("trialElement")->isVisible());
    EXPECT_TRUE(text("trialFigures").contains(QStringLiteral("BPFO"))) << text("trialFigures").toStdString();
    choose("trialKind", "bolt");
    EXPECT_TRUE(text("trialFigures").contains(QStringLiteral("0.5 x")));
}

TEST_F(TrialOnDesk, IsNotStartedBeforeEveryCautionIsConfirmed) {
    ASSERT_NE(open("C-SHAKE"), nullptr);
    typeMass();
    EXPECT_FALSE(in<QPushButton>("trialStart")->isEnabled());
    EXPECT_TRUE(text("trialLacks").contains(QStringLiteral("0 of 5 cautions")));
    confirmAll();
    EXPECT_TRUE(in<QPushButton>("trialStart")->isEnabled()) << text("trialLacks").toStdString();
    in<QLineEdit>("trialStopAt")->clear();
    EXPECT_FALSE(in<QPushButton>("trialStart")->isEnabled());
}

TEST_F(TrialOnDesk, APlanIsKeptAndWhatIsTypedOutlivesAChangeOfTheFile) {
    ASSERT_NE(open("C-SHAKE"), nullptr);
    typeMass();
    window_->workplace()->work().noteChange();
    settle();
    EXPECT_EQ(in<QLineEdit>("trialName")->text(), QStringLiteral("10 g at the rim"));
    in<QPushButton>("trialKeep")->click();
    settle();
    ASSERT_EQ(dialog_->trials().size(), 1u);
    EXPECT_EQ(in<QListWidget>("trialList")->count(), 1);
    EXPECT_FALSE(dialog_->trials()[0].trial.started());
    in<QPushButton>("trialNew")->click();
    EXPECT_TRUE(in<QLineEdit>("trialName")->text().isEmpty());
    in<QListWidget>("trialList")->setCurrentRow(0);
    settle();
    EXPECT_EQ(in<QLineEdit>("trialName")->text(), QStringLiteral("10 g at the rim"));
    EXPECT_EQ(in<QDoubleSpinBox>("trialRadius")->value(), 100);
}

TEST_F(TrialOnDesk, FromPromiseToClosing) {
    ASSERT_NE(open("C-SHAKE"), nullptr);
    startOne();
    ASSERT_EQ(dialog_->trials().size(), 1u);
    EXPECT_TRUE(dialog_->trials()[0].trial.started());
    EXPECT_TRUE(dialog_->view().isVisible());
    EXPECT_TRUE(text("trialFrozen").contains(QStringLiteral("promise frozen")));
    EXPECT_EQ(dialog_->view().result().before, 3u);
    EXPECT_FALSE(in<QPushButton>("trialClose")->isEnabled());

    in<QPushButton>("trialChange")->click();
    auto* change = dialog<QDialog>("trialChangeDialog");
    ASSERT_NE(change, nullptr);
    change->findChild<QPushButton*>(QStringLiteral("yes"))->click();
    settle();
    ASSERT_TRUE(dialog_->trials()[0].trial.changed());
    EXPECT_EQ(in<QTableWidget>("trialChecks")->rowCount(), int(dialog_->view().result().checks.size()));
    EXPECT_EQ(dialog_->view().result().outcome, "not comparable");  // 3 recordings before

    in<QPushButton>("trialClose")->click();
    auto* close = dialog<QDialog>("trialCloseDialog");
    ASSERT_NE(close, nullptr);
    close->findChild<QPlainTextEdit*>(QStringLiteral("trialRemarks"))
        ->setPlainText(QStringLiteral("taken out"));
    auto* end = close->findChild<QDateTimeEdit*>(QStringLiteral("trialEnd"));
    end->setDateTime(end->dateTime().addYears(30));  // the change is noted by the clock of today
    close->findChild<QPushButton*>(QStringLiteral("yes"))->click();
    settle();
    ASSERT_TRUE(dialog_->trials()[0].closedAt) << text("trouble").toStdString();
    EXPECT_EQ(dialog_->trials()[0].trial.remarks, "taken out");
    EXPECT_FALSE(in<QPushButton>("trialChange")->isEnabled());
    EXPECT_FALSE(in<QPushButton>("trialClose")->isEnabled());
    EXPECT_TRUE(in<QPushButton>("trialSheet")->isEnabled());
}

TEST_F(TrialOnDesk, TheSheetIsSeenAndSaved) {
    ASSERT_NE(open("C-SHAKE"), nullptr);
    startOne();
    in<QPushButton>("trialSheet")->click();
    auto* sheet = dialog<TrialSheetDialog>("trialSheetDialog");
    ASSERT_NE(sheet, nullptr);
    settle();
    ASSERT_NE(sheet->sheet(), nullptr);
    EXPECT_EQ(sheet->sheet()->entry.trial.machine, "C-SHAKE");
    QSignalSpy saved(sheet, &TrialSheetDialog::saved);
    sheet->savePdf(QString::fromStdString(folder_ / "trial.pdf"));
    ASSERT_TRUE(waitFor([&] { return saved.count() == 1; }));
    EXPECT_EQ(RealFileSystem().read(folder_ / "trial.pdf")->substr(0, 5), "%PDF-");
}

TEST_F(TrialOnDesk, OpensByItsNameToo) {
    openWindow({QStringLiteral("machine"), QStringLiteral("A-RACE"), {}, {}, {}, {}});
    window_->workplace()->showDialog(QStringLiteral("trial"));
    EXPECT_NE(dialog<TrialDialog>("trialDialog"), nullptr);
    settle();
}

TEST(TrialFigures, PutPromiseChangeAndDetectionOntoTheCurve) {
    Trial trial;
    trial.promise.leastDban = 25;
    trial.changeUntil = parseUtc("2026-05-04T09:00:00Z");
    TrialResult result;
    result.recordings = {{1, *parseUtc("2026-05-03T09:00:00Z"), false, -3, 1.0, {}, ""},
                         {2, *parseUtc("2026-05-05T09:00:00Z"), true, 31, {}, {}, ""}};
    result.toldAt = parseUtc("2026-05-05T09:00:00Z");
    const auto curves = trialCurves(trial, result);
    ASSERT_EQ(curves.size(), 2u);
    EXPECT_EQ(curves[0]->samples.size(), 2u);
    EXPECT_EQ(curves[0]->limits[0].value, 25);
    EXPECT_EQ(curves[1]->samples.size(), 1u);
    const auto moments = trialMoments(trial, result);
    ASSERT_EQ(moments.size(), 2u);
    EXPECT_EQ(moments[0].ms, toMs(*trial.changeUntil));
    EXPECT_EQ(moments[1].ms, toMs(*result.toldAt));
    const TimeSpan span = trialTimes(trial, result);
    EXPECT_LT(span.from, result.recordings[0].time);
    EXPECT_GT(span.until, result.recordings[1].time);
}

}  // namespace
}  // namespace fettle::desk_test
