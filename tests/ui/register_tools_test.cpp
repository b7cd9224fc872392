// The register's tools in a real window: the train to pick from, the bearing finder, one value for several
// machines, CSV, what changed through time.
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QMessageBox>
#include <QTabWidget>
#include <QTableView>

#include "core/base/file_system.h"
#include "tests/ui/desk_fixture.h"
#include "ui/dialogs/alike_dialog.h"
#include "ui/dialogs/bearing_finder_dialog.h"
#include "ui/pages/register_page.h"
#include "ui/pages/register_tree.h"
#include "ui/panels/train_line.h"

namespace fettle::desk_test {
namespace {

using testing::HasSubstr;

// Driver, gear, belt and fan on three shafts.
const char* const kTrain =
    R"({ "tag": "T3", "mains_hz": 50, "coupling": "flexible", "driver": { "poles": 4, "rated_rpm": 1480, "power_kw": 75,
      "bearings": { "DE": { "designation": "6316" }, "NDE": { "designation": "6314" } } },
    "shafts": [ { "id": "S1", "of": "driver" }, { "id": "S2" }, { "id": "S3", "of": "driven" } ],
    "gears": [ { "id": "G1", "from": "S1", "to": "S2", "teeth": [21, 67] } ],
    "belts": [ { "id": "B1", "from": "S2", "to": "S3", "pulley_mm": [200, 315], "length_mm": 2500 } ],
    "intermediate": [ { "id": "G1 box", "shaft": "S2", "bearings": { "DE": { "designation": "6310" } } } ],
    "driven": { "kind": "fan", "blades": 12, "bearings": { "DE": { "designation": "22218" }, "NDE": { "designation": "22218" } } },
    "points": [ { "id": "M-DE", "at": "driver DE", "channels": [ { "name": "x" } ] },
                { "id": "G", "at": "G1", "channels": [ { "name": "x" } ] },
                { "id": "F-NDE", "at": "driven NDE", "channels": [ { "name": "x" } ] } ] })";

TEST(TrainParts, FollowTheShaftsFromDriverToDriven) {
    const auto machine = parseMachine(kTrain, "T3");
    ASSERT_TRUE(machine) << machine.error().sentence();
    QStringList keys, points;
    for (const TrainSlot& slot : trainSlots(machine->machine)) {
        keys << slot.key;
        for (const TrainPoint& point : slot.points)
            points << slot.key + ">" + point.id;
    }
    EXPECT_EQ(keys.join("|").toStdString(),
              "driver NDE|driver|driver DE|coupling|G1|G1 box DE|G1 box|B1|driven DE|"
              "driven|driven NDE");
    EXPECT_EQ(points.join("|").toStdString(), "driver DE>M-DE|G1>G|driven NDE>F-NDE");
}

TEST(TrainLineTest, FitsTheWindowAndIsWalkedByArrowKeys) {
    Theme theme(ThemeChoice::Light);
    TrainLine line(theme, nullptr);
    const auto machine = parseMachine(kTrain, "T3");
    ASSERT_TRUE(machine);
    line.setMachine(&machine->machine);
    line.resize(1000, line.sizeHint().height());
    line.show();
    EXPECT_LE(line.sizeHint().width(), 1000);
    QRect last;
    for (QAbstractButton* mark : line.findChildren<QAbstractButton*>()) {
        EXPECT_TRUE(line.rect().contains(mark->geometry())) << mark->objectName().toStdString();
        EXPECT_FALSE(mark->accessibleName().isEmpty());
        if (!mark->objectName().startsWith("train/")) continue;
        EXPECT_FALSE(mark->geometry().intersects(last)) << mark->objectName().toStdString();
        last = mark->geometry();
    }
    QString picked;
    QObject::connect(&line, &TrainLine::bearingPicked, [&](const QString& at) { picked = at; });
    QObject::connect(&line, &TrainLine::pointPicked, [&](const QString& id) { picked = id; });
    auto* first = line.findChild<QAbstractButton*>("train/driver NDE");
    QTest::keyClick(first, Qt::Key_Return);
    EXPECT_EQ(picked, "driver NDE");
    QTest::keyClick(first, Qt::Key_Right);  // motor
    QTest::keyClick(line.findChild<QAbstractButton*>("train/driver"), Qt::Key_Right);
    QTest::keyClick(line.findChild<QAbstractButton*>("train/driver DE"), Qt::Key_Right);
    auto* point = line.findChild<QAbstractButton*>("point/M-DE");
    QTest::keyClick(point, Qt::Key_Space);
    EXPECT_EQ(picked, "M-DE");
    line.setMachine(nullptr);
    EXPECT_TRUE(line.row().empty());
}

class RegisterTools : public Desk {
  protected:
    void openRegister(const QString& machine) {
        openWindow({"register", machine, {}, {}, {}, {}});
        page_ = window_->findChild<RegisterPage*>("registerPage");
        ASSERT_NE(page_, nullptr);
    }
    QAbstractItemModel& table(const char* name) {
        return *window_->findChild<QTableView*>(QString::fromLatin1(name))->model();
    }
    RegisterPage* page_ = nullptr;
};

TEST_F(RegisterTools, TheTrainIsOneStopOfTab) {
    ASSERT_TRUE(fleet_->machines().put(kTrain, "T3"));
    openRegister("T3");
    window_->activateWindow();
    ASSERT_TRUE(waitFor([&] { return window_->isActiveWindow(); }));
    auto* mark = page_->findChild<QAbstractButton*>("train/driver");
    auto* line = mark->parentWidget();
    mark->setFocus();
    QTest::keyClick(mark, Qt::Key_Tab);
    ASSERT_NE(window_->focusWidget(), nullptr);
    EXPECT_FALSE(line->isAncestorOf(window_->focusWidget()));
    mark->setFocus();
    QTest::keyClick(mark, Qt::Key_Tab, Qt::ShiftModifier);
    EXPECT_FALSE(line->isAncestorOf(window_->focusWidget()));
}

TEST_F(RegisterTools, TheTrainLeadsToTheFormsPart) {
    ASSERT_TRUE(fleet_->machines().put(kTrain, "T3"));
    openRegister("T3");
    auto* tabs = window_->findChild<QTabWidget*>("registerTabs");
    const auto pick = [&](const char* mark) { page_->findChild<QAbstractButton*>(mark)->click(); };
    pick("train/driven NDE");
    EXPECT_EQ(tabs->currentIndex(), 1);
    EXPECT_EQ(window_->findChild<QTableView*>("bearings.table")->currentIndex().row(), 4);
    pick("point/G");
    EXPECT_EQ(tabs->currentIndex(), 3);
    EXPECT_EQ(window_->findChild<QTableView*>("points.table")->currentIndex().row(), 1);
    pick("train/B1");
    EXPECT_EQ(tabs->currentIndex(), 2);
    pick("train/driver");
    EXPECT_EQ(tabs->currentIndex(), 0);
}

// 3.5848 is the published outer-race multiple of the CWRU rig's 6205.
TEST_F(RegisterTools, ABearingIsFoundByALineAndPutIntoTheForm) {
    openRegister("A-RACE");
    window_->workplace()->showDialog("bearings");
    auto* finder = dialog<BearingFinderDialog>("bearingFinder");
    finder->findChild<QLineEdit*>("finderPart")->setText("6205");
    finder->findChild<QDoubleSpinBox*>("finderSpeed")->setValue(1800);
    finder->findChild<QDoubleSpinBox*>("finderLine")->setValue(3.5848 * 30);
    EXPECT_NEAR(finder->findChild<QDoubleSpinBox*>("finderOrder")->value(), 3.5848, 1e-3);
    auto* results = finder->findChild<QTableView*>("finderResults");
    ASSERT_GT(results->model()->rowCount(), 0);
    EXPECT_EQ(results->model()->index(0, 0).data().toString(), "6205");
    EXPECT_THAT(results->model()->index(0, 4).data().toString().toStdString(), HasSubstr("outer race"));
    EXPECT_EQ(results->model()->index(0, 2).data().toString().toStdString(), "25 × 52 × 15");
    auto* bearings = window_->findChild<QTableView*>("bearings.table");
    bearings->setCurrentIndex(bearings->model()->index(0, 0));
    const std::string before = page_->document().json();
    finder->findChild<QAbstractButton*>("finderPut")->click();
    EXPECT_EQ(bearings->model()->index(0, 2).data().toString(), "6205");
    EXPECT_TRUE(page_->document().sound());
    page_->document().undo();  // all of it in one step
    EXPECT_EQ(page_->document().json(), before);
}

TEST_F(RegisterTools, NothingIsPutIntoAnOldDescription) {
    const std::string text = fleet_test::description("A-RACE");
    std::string other = text;
    other.replace(other.find("test motor"), 10, "other work");
    ASSERT_TRUE(fleet_->machines().put(other, "x", "2026-05-08", "again"));
    openRegister("A-RACE");
    auto* history = window_->findChild<QTableView*>("descriptionHistory");
    emit history->activated(history->model()->index(0, 0));
    page_->putBearing({"6316", "deep_groove", {}, {}, {}, {}}, false);
    dialog<QMessageBox>("message")->button(QMessageBox::Ok)->click();
    EXPECT_FALSE(page_->document().changed());
}

TEST_F(RegisterTools, OneValueForSeveralMachinesKeepsWhatHeldBefore) {
    openRegister("A-RACE");
    window_->workplace()->showDialog("alike");
    auto* alike = dialog<AlikeDialog>("alikeDialog");
    auto* field = alike->findChild<QComboBox*>("alikeField");
    field->setCurrentIndex(field->findText("Area"));
    alike->findChild<QComboBox*>("alikeValue")->setEditText("new hall");
    alike->findChild<QLineEdit*>("alikeFilter")->setText("-S");  // B-SOUND, C-SHAKE
    alike->findChild<QAbstractButton*>("alikeTick")->click();
    alike->findChild<QAbstractButton*>("alikeFromDay")->click();
    alike->findChild<QAbstractButton*>("alikeSet")->click();
    settle();
    EXPECT_EQ(fleet_->machines().byTag("B-SOUND")->area, "new hall");
    EXPECT_EQ(fleet_->machines().byTag("C-SHAKE")->area, "new hall");
    EXPECT_NE(fleet_->machines().byTag("A-RACE")->area, "new hall");
    EXPECT_EQ(fleet_->machines().history("B-SOUND")->size(), 2u);
}

TEST_F(RegisterTools, TheTableGoesOutAndComesInUnchanged) {
    ASSERT_TRUE(fleet_->machines().put(kTrain, "T3"));
    openRegister("A-RACE");
    const std::string file = folder_ / "register.csv";
    page_->exportTo(QString::fromStdString(file));
    settle();
    const auto taken = takeRegister(*fleet_, *RealFileSystem().read(file), file);
    ASSERT_TRUE(taken) << taken.error().sentence();
    EXPECT_EQ(taken->unchanged, 6);
    EXPECT_EQ(taken->added + taken->changed, 0);
    EXPECT_TRUE(taken->refused.empty());
    std::string text = *RealFileSystem().read(file);
    text += "BAD,nonsense\r\n";
    const auto again = takeRegister(*fleet_, text, file);
    ASSERT_TRUE(again);
    EXPECT_EQ(again->unchanged, 6);
    EXPECT_EQ(again->refused.size(), 1u);
}

TEST_F(RegisterTools, TheHistoryGoesOutAndComesInUnchanged) {
    std::string other = fleet_test::description("A-RACE");
    other.replace(other.find("test motor"), 10, "other work");
    ASSERT_TRUE(fleet_->machines().put(other, "x", "2026-05-08", "again"));
    const auto text = registerAsJson(*fleet_);
    ASSERT_TRUE(text);
    const auto taken = takeRegister(*fleet_, *text, "register.json");
    ASSERT_TRUE(taken) << taken.error().sentence();
    EXPECT_EQ(taken->unchanged, 6);
    EXPECT_EQ(taken->added + taken->changed, 0);
    EXPECT_EQ(fleet_->machines().byTag("A-RACE")->service, "other work");
}

TEST_F(RegisterTools, WhatChangedStandsByItsDay) {
    std::string other = fleet_test::description("A-RACE");
    other.replace(other.find("test motor"), 10, "other work");
    ASSERT_TRUE(fleet_->machines().put(other, "x", "2026-05-08", "again"));
    openRegister("A-RACE");
    auto& changes = table("descriptionChanges");
    ASSERT_EQ(changes.rowCount(), 1);
    EXPECT_EQ(changes.index(0, 1).data().toString(), "service");
    EXPECT_THAT(changes.index(0, 2).data().toString().toStdString(), HasSubstr("test motor"));
    EXPECT_THAT(changes.index(0, 3).data().toString().toStdString(), HasSubstr("other work"));
}

}  // namespace
}  // namespace fettle::desk_test
