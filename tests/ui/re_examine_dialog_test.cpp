// Old verdicts beside new ones in the window. The old ones are made: another engine's name, other weights.
#include "ui/dialogs/re_examine_dialog.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QTableWidget>

#include "core/diagnosis/settings.h"
#include "core/store/packed_recording.h"
#include "tests/ui/desk_fixture.h"

namespace fettle::desk_test {
namespace {

using testing::HasSubstr;

class ReExamineDialogTest : public Desk {
  protected:
    // As if an engine of long ago had given the inner race of A-RACE no weight.
    void weighLongAgo() {
        const auto machine = fleet_->machines().byTag("A-RACE").value();
        const auto entries = fleet_->recordings()
                                 .list(machine.id, intake_test::at("2026-01-01T00:00:00Z"),
                                       intake_test::at("2026-12-31T00:00:00Z"))
                                 .value();
        for (const RecordingEntry& entry : entries) {
            std::string json = fleet_->recordings().examinationJson(entry.id).value();
            for (std::size_t at = 0; (at = json.find("bearing_inner_race", at)) != json.npos;)
                json.replace(at, 18, "bearing_cage");
            NewRecording old;
            old.machine = machine.id;
            old.running = "running";
            old.engine = "0.0.1 long ago";
            old.examinationJson = json;
            const auto replaced = fleet_->recordings().replaceExamination(entry.id, packComputed(old));
            ASSERT_TRUE(replaced) << replaced.error().sentence();
        }
    }
    ReExamineDialog& openDialog() {
        window_->showDialog(QStringLiteral("reexamine"));
        auto* found = dialog<ReExamineDialog>("reExamineDialog");
        EXPECT_TRUE(waitFor([&] { return window_->settled(); }));
        return *found;
    }
    static std::string textOf(const ReExamineDialog& dialog, const char* label) {
        return dialog.findChild<QLabel*>(QString::fromLatin1(label))->text().toStdString();
    }
    static std::string rowOf(const QTableWidget& table, int row) {
        std::string text;
        for (int column = 0; column < table.columnCount(); ++column)
            text += table.item(row, column)->text().toStdString() + "|";
        return text;
    }
};

TEST_F(ReExamineDialogTest, OldVerdictsBesideNewOnes) {
    weighLongAgo();
    openWindow();
    ReExamineDialog& dialog = openDialog();
    EXPECT_THAT(textOf(dialog, "reExamineRun"), HasSubstr("Nothing was weighed again"));
    dialog.findChild<QAbstractButton*>("reExamineStart")->click();
    ASSERT_TRUE(waitFor([&] { return !dialog.running() && dialog.difference() && window_->settled(); }));
    EXPECT_THAT(textOf(dialog, "reExamineWord"), HasSubstr("3 weighed again"));
    EXPECT_THAT(textOf(dialog, "reExamineRun"), HasSubstr("3 recordings weighed again"));
    auto* table = dialog.findChild<QTableWidget*>("reExamineTable");
    ASSERT_GE(table->rowCount(), 2);
    const std::string worst = rowOf(*table, 0);
    EXPECT_THAT(worst, HasSubstr("A-RACE|"));
    EXPECT_THAT(worst, HasSubstr("inner-race"));
    EXPECT_THAT(worst, HasSubstr("|appeared|not named|"));
    dialog.findChild<QComboBox*>("reExamineBy")->setCurrentIndex(2);
    ASSERT_EQ(table->rowCount(), 1) << "one machine alone was weighed differently";
    EXPECT_THAT(rowOf(*table, 0), HasSubstr("A-RACE|"));
}

TEST_F(ReExamineDialogTest, OneMachineEvenWhatIsCurrent) {
    PagePlace place;
    place.machine = QStringLiteral("C-SHAKE");
    openWindow(place);
    ReExamineDialog& dialog = openDialog();
    auto* scope = dialog.findChild<QComboBox*>("reExamineScope");
    scope->setCurrentIndex(scope->findData(QStringLiteral("C-SHAKE")));
    dialog.findChild<QCheckBox*>("reExamineAll")->setChecked(true);
    dialog.findChild<QAbstractButton*>("reExamineStart")->click();
    ASSERT_TRUE(waitFor([&] { return !dialog.running() && dialog.difference() && window_->settled(); }));
    EXPECT_THAT(textOf(dialog, "reExamineWord"), HasSubstr("3 weighed again"));
    EXPECT_TRUE(dialog.difference()->verdicts.empty()) << "nothing changed, so nothing came out differently";
}

}  // namespace
}  // namespace fettle::desk_test
