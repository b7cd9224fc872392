// What files were taken for, in a real window: facts with their source, typed once, kept as a rule, and then
// taken in.
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QTableView>

#include "core/base/file_system.h"
#include "tests/ui/desk_fixture.h"
#include "ui/dialogs/import_dialog.h"
#include "ui/dialogs/preview_dialog.h"
#include "ui/dialogs/rules_dialog.h"

namespace fettle::desk_test {
namespace {

using testing::HasSubstr;

class ImportPreview : public Desk {
  protected:
    // Three files of a logger that says nothing but when, and one with its sidecar.
    void send() {
        RealFileSystem disk;
        ASSERT_TRUE(disk.makeFolders(folder_ / "more"));
        for (int day = 1; day <= 3; ++day)
            ASSERT_TRUE(disk.writeSafely(folder_ / "more/log_2026050" + std::to_string(day) + "T062000Z.wav",
                                         intake_test::noiseWav(std::uint64_t(day), 0.7, 0.1, 6400, 1)));
        intake_test::Said said;
        said.machine = "B-SOUND";
        said.time = "2026-05-08T06:20:00Z";
        said.channels = {"x"};
        intake_test::send(folder_ / "more", "told", intake_test::noiseWav(9, 0.7, 0.1, 6400, 1), said);
    }
    PreviewDialog* look() {
        auto* import = window_->findChild<ImportDialog*>("importDialog");
        emit import->lookWanted({QString::fromStdString(folder_ / "more")}, true);
        auto* found = dialog<PreviewDialog>("previewDialog");
        waitFor([found] { return !found->reading(); });
        return found;
    }
    static std::string fact(QTableView& table, const QString& what, int column) {
        for (int row = 0; row < table.model()->rowCount(); ++row)
            if (table.model()->index(row, 0).data().toString().trimmed() == what)
                return table.model()->index(row, column).data().toString().toStdString();
        return "absent";
    }
    static bool type(QTableView& table, const QString& what, const QString& text) {
        for (int row = 0; row < table.model()->rowCount(); ++row)
            if (table.model()->index(row, 0).data().toString().trimmed() == what)
                return table.model()->setData(table.model()->index(row, 1), text);
        return false;
    }
    std::string point() { return fleet_->machines().describedAt("B-SOUND").value()->points.at(0).id; }
};

TEST_F(ImportPreview, KindsOfFilesStandTogetherWithWhatKeepsThemOut) {
    send();
    openWindow();
    PreviewDialog* preview = look();
    auto* groups = preview->findChild<QTableView*>("previewGroups");
    ASSERT_EQ(groups->model()->rowCount(), 2);
    EXPECT_THAT(groups->model()->index(0, 0).data().toString().toStdString(), HasSubstr("2 like it"));
    EXPECT_THAT(groups->model()->index(0, 6).data().toString().toStdString(),
                HasSubstr("no machine is named"));
    EXPECT_THAT(preview->findChild<QLabel*>("previewWord")->text().toStdString(),
                HasSubstr("3 would be parked"));
    EXPECT_EQ(fleet_->recordings().count(), 12u);
    groups->setCurrentIndex(groups->model()->index(1, 0));
    auto* facts = preview->findChild<QTableView*>("previewFacts");
    EXPECT_EQ(fact(*facts, "Machine", 1), "B-SOUND");
    EXPECT_EQ(fact(*facts, "Machine", 2), "sidecar");
    EXPECT_EQ(fact(*facts, "unit", 1), "g");
    EXPECT_FALSE(type(*facts, "Machine", "A-RACE"));  // a sidecar always wins
    EXPECT_FALSE(preview->findChild<QAbstractButton*>("previewKeep")->isEnabled());
}

TEST_F(ImportPreview, WhatIsTypedIsKeptAsARuleAndTakesTheFilesIn) {
    send();
    openWindow();
    PreviewDialog* preview = look();
    auto* facts = preview->findChild<QTableView*>("previewFacts");
    ASSERT_TRUE(type(*facts, "Machine", "B-SOUND"));
    ASSERT_TRUE(type(*facts, "unit", "g"));
    ASSERT_TRUE(type(*facts, "Channel 1", "x"));
    auto* pattern = preview->findChild<QLineEdit*>("previewPattern");
    pattern->setText("more/log_{time_utc}.wav");
    EXPECT_THAT(preview->findChild<QLabel*>("previewMatches")->text().toStdString(), HasSubstr("3 of the 4"));
    preview->findChild<QAbstractButton*>("previewKeep")->click();
    settle();
    ASSERT_TRUE(waitFor([&] { return !preview->reading(); }));
    ASSERT_EQ(fleet_->readingRules().all()->size(), 1u);
    EXPECT_THAT(preview->findChild<QLabel*>("previewWord")->text().toStdString(), HasSubstr("4 ready"));
    preview->findChild<QAbstractButton*>("previewTake")->click();
    auto* import = window_->findChild<ImportDialog*>("importDialog");
    ASSERT_TRUE(waitFor([&] { return !import->running() && window_->settled(); }));
    EXPECT_EQ(fleet_->recordings().count(), 16u);
}

TEST_F(ImportPreview, ARuleThatASidecarWouldRefuseIsNotKept) {
    send();
    openWindow();
    PreviewDialog* preview = look();
    auto* facts = preview->findChild<QTableView*>("previewFacts");
    ASSERT_TRUE(type(*facts, "scale", "0"));
    preview->findChild<QAbstractButton*>("previewKeep")->click();
    settle();
    EXPECT_THAT(preview->findChild<QLabel*>("previewMatches")->text().toStdString(), HasSubstr("wipe out"));
    EXPECT_TRUE(fleet_->readingRules().all()->empty());
    preview->findChild<QLineEdit*>("previewPattern")->setText("{motor}.wav");
    EXPECT_FALSE(preview->findChild<QAbstractButton*>("previewKeep")->isEnabled());
}

TEST_F(ImportPreview, RefusedFilesCanBeLookedAtAndTriedAgain) {
    send();
    openWindow();
    window_->workplace()->importPaths({QString::fromStdString(folder_ / "more")});
    auto* import = window_->findChild<ImportDialog*>("importDialog");
    ASSERT_TRUE(waitFor([&] { return !import->running() && window_->settled(); }));
    auto* again = import->findChild<QAbstractButton*>("importAgain");
    ASSERT_TRUE(again->isVisible());
    import->findChild<QAbstractButton*>("importWhy")->click();
    auto* preview = dialog<PreviewDialog>("previewDialog");
    ASSERT_TRUE(waitFor([&] { return !preview->reading(); }));
    EXPECT_EQ(preview->findChild<QTableView*>("previewGroups")->model()->rowCount(), 1);
    preview->close();
    ASSERT_TRUE(fleet_->readingRules().put(
        {0,
         "log_{time_utc}.wav",
         R"({ "machine": "B-SOUND", "channels": [ { "name": "x", "unit": "g" } ] })",
         {},
         ""}));
    again->click();
    ASSERT_TRUE(waitFor([&] { return !import->running() && window_->settled(); }));
    EXPECT_THAT(import->findChild<QLabel*>("importCounts")->text().toStdString(), HasSubstr("3 taken"));
    EXPECT_FALSE(again->isVisible());
}

TEST_F(ImportPreview, RulesAreListedAndRemoved) {
    ASSERT_TRUE(fleet_->readingRules().put({0, "*.wav", R"({ "machine": "B-SOUND" })", {}, "tester"}));
    openWindow();
    window_->workplace()->showDialog("rules");
    auto* rules = dialog<RulesDialog>("rulesDialog");
    settle();
    auto* table = rules->findChild<QTableView*>("rules");
    ASSERT_EQ(table->model()->rowCount(), 1);
    EXPECT_EQ(table->model()->index(0, 0).data().toString(), "*.wav");
    rules->findChild<QAbstractButton*>("ruleRemove")->click();
    settle();
    EXPECT_EQ(table->model()->rowCount(), 0);
    EXPECT_TRUE(fleet_->readingRules().all()->empty());
}

}  // namespace
}  // namespace fettle::desk_test
