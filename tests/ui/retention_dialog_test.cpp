// Retention from the window: what goes is listed before it can be thinned, by the days that stand there.
#include "ui/dialogs/retention_dialog.h"

#include <QLabel>
#include <QPushButton>
#include <QSpinBox>
#include <QTableView>

#include "tests/ui/desk_fixture.h"

namespace fettle::desk_test {
namespace {

using testing::HasSubstr;

class RetentionDialogTest : public Desk {
  protected:
    RetentionDialog& openDialog() {
        openWindow();
        window_->showDialog(QStringLiteral("retention"));
        auto* found = dialog<RetentionDialog>("retentionDialog");
        rest(*found);
        return *found;
    }
    static void rest(RetentionDialog& dialog) {
        ASSERT_TRUE(waitFor([&] { return !dialog.running(); }));
        QTest::qWait(0);
    }
    static std::string textOf(RetentionDialog& dialog, const char* label) {
        return dialog.findChild<QLabel*>(QString::fromLatin1(label))->text().toStdString();
    }
    static QPushButton& button(RetentionDialog& dialog, const char* name) {
        return *dialog.findChild<QPushButton*>(QString::fromLatin1(name));
    }
    static QSpinBox& days(RetentionDialog& dialog, const char* name) {
        return *dialog.findChild<QSpinBox*>(QString::fromLatin1(name));
    }
    // Two more of B-SOUND on its first day, weaker than what is there.
    void addWeaker() {
        const std::int64_t machine = fleet_->machines().byTag("B-SOUND")->id;
        const auto all = fleet_->recordings().list(machine, Instant::min(), Instant::max()).value();
        const RecordingEntry& entry = all.front();
        for (int hour = 1; hour <= 2; ++hour) {
            auto raw = std::make_shared<Recording>(*fleet_->recordings().recording(entry.id).value());
            raw->time = entry.time - std::chrono::hours(hour);
            NewRecording weaker;
            weaker.machine = machine;
            weaker.key = recordingKey("weaker", *raw);
            weaker.format = "WAV";
            weaker.running = "running";
            weaker.engine = entry.engine;
            weaker.examinationJson = fleet_->recordings().examinationJson(entry.id).value();
            weaker.recording = raw;
            ASSERT_TRUE(fleet_->recordings().put(weaker));
        }
    }
    std::size_t withWaveform() {
        std::size_t count = 0;
        const StillThere there = fleet_->retention().stillThere().value();
        for (const auto& [machine, kinds] : there.machines)
            count += kinds[std::size_t(KeptKind::Waveform)].size();
        return count;
    }
};

TEST_F(RetentionDialogTest, ShowsTheRulesOfTheFileAndWhatStaysWhy) {
    RetentionDialog& dialog = openDialog();
    EXPECT_EQ(days(dialog, "waveformsAll").value(), 2);
    EXPECT_EQ(days(dialog, "waveformsDaily").value(), 90);
    EXPECT_EQ(days(dialog, "waveformsWeekly").text().toStdString(), "for ever");
    EXPECT_FALSE(days(dialog, "spectraWeekly").isEnabled()) << "after one a day for ever nothing comes";
    EXPECT_THAT(textOf(dialog, "retentionWord"), HasSubstr("Nothing goes"));
    EXPECT_FALSE(button(dialog, "retentionThin").isEnabled());
    auto* rows = dialog.findChild<QTableView*>("retentionTable")->model();
    std::string all;
    for (int row = 0; row < rows->rowCount(); ++row)
        all += rows->index(row, 1).data().toString().toStdString() + "\n";
    EXPECT_THAT(all, HasSubstr("stays: not old enough yet"));
}

// Stopped before the rules of the file were read, the days cannot be typed: they would take the place of
// rules that nobody has seen. Listing again reads them first. Where the list was quicker, another one is
// tried.
TEST_F(RetentionDialogTest, StoppedAtTheBeginningItListsNothingAndKnowsNoRules) {
    RetentionRules rules;
    rules.rule(KeptKind::Waveform).allDays = 5;
    ASSERT_TRUE(fleet_->retention().setRules(rules));
    openWindow();
    bool stopped = false;
    for (int attempt = 0; attempt < 50 && !stopped; ++attempt) {
        window_->showDialog(QStringLiteral("retention"));
        auto& dialog = *this->dialog<RetentionDialog>("retentionDialog");
        button(dialog, "retentionStop").click();
        rest(dialog);
        stopped = textOf(dialog, "retentionWord") == "Stopped; nothing is listed.";
        if (stopped) {
            EXPECT_FALSE(days(dialog, "waveformsAll").isEnabled());
            EXPECT_FALSE(button(dialog, "retentionThin").isEnabled());
            button(dialog, "retentionLook").click();
            rest(dialog);
            EXPECT_EQ(days(dialog, "waveformsAll").value(), 5);
            EXPECT_TRUE(days(dialog, "waveformsAll").isEnabled());
        }
        dialog.close();
        QTest::qWait(0);
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    }
    EXPECT_TRUE(stopped);
}

TEST_F(RetentionDialogTest, ThinsOnlyWhatWasListed) {
    addWeaker();
    RetentionDialog& dialog = openDialog();
    const std::size_t before = withWaveform();
    days(dialog, "waveformsAll").setValue(1);
    days(dialog, "waveformsDaily").setValue(0);
    days(dialog, "waveformsWeekly").setValue(0);
    EXPECT_FALSE(button(dialog, "retentionThin").isEnabled()) << "not listed yet";
    EXPECT_THAT(textOf(dialog, "retentionWord"), HasSubstr("list what goes"));
    button(dialog, "retentionLook").click();
    rest(dialog);
    EXPECT_EQ(withWaveform(), before) << "listing takes nothing";
    ASSERT_TRUE(button(dialog, "retentionThin").isEnabled()) << textOf(dialog, "retentionWord");
    button(dialog, "retentionThin").click();
    auto* sure = this->dialog<QDialog>("retentionSure");
    ASSERT_NE(sure, nullptr);
    sure->findChild<QPushButton*>("retentionSureThin")->click();
    rest(dialog);
    EXPECT_THAT(textOf(dialog, "retentionWord"), HasSubstr("were taken away"));
    EXPECT_EQ(withWaveform(), before - 2);
    EXPECT_EQ(fleet_->retention().rules()->rule(KeptKind::Waveform).allDays, 1) << "the days are kept";
    EXPECT_TRUE(fleet_->check(true)->empty());
}

}  // namespace
}  // namespace fettle::desk_test
