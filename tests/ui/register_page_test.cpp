// A machine taken into the register by hand, changed, copied, removed, and the whole register out and in
// again; what was typed is read back from the fleet file.
#include "ui/pages/register_page.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDateEdit>
#include <QLabel>
#include <QLineEdit>
#include <QMessageBox>
#include <QTabWidget>
#include <QTableView>

#include "core/base/file_system.h"
#include "tests/ui/desk_fixture.h"
#include "ui/pages/register_tree.h"

namespace fettle::desk_test {
namespace {

using testing::HasSubstr;

class RegisterPageTest : public Desk {
  protected:
    void openRegister(const QString& machine = {}) {
        openWindow({"register", machine, {}, {}, {}, {}});
        page_ = window_->findChild<RegisterPage*>("registerPage");
        ASSERT_NE(page_, nullptr);
    }
    void type(const char* field, const QString& text) {
        auto* line = window_->findChild<QLineEdit*>(QString::fromLatin1(field));
        ASSERT_NE(line, nullptr) << field;
        line->setFocus();
        line->selectAll();
        QTest::keyClicks(line, text);
    }
    void pick(const char* field, const QString& word) {
        auto* box = window_->findChild<QComboBox*>(QString::fromLatin1(field));
        ASSERT_NE(box, nullptr) << field;
        if (box->isEditable()) return box->setEditText(word);
        box->setCurrentIndex(box->findText(word));
        emit box->textActivated(word);
    }
    QAbstractItemModel& table(const char* name) {
        return *window_->findChild<QTableView*>(QString::fromLatin1(name))->model();
    }
    void fill(const char* name, int row, int column, const QString& text) {
        QAbstractItemModel& model = table(name);
        EXPECT_TRUE(model.setData(model.index(row, column), text)) << name << " " << column;
    }
    std::string trouble(const char* field) {
        auto* label = window_->findChild<QLabel*>(QString::fromLatin1(field));
        return label->isHidden() ? "" : label->text().toStdString();
    }
    // The same machine with other words.
    static std::string changed(const std::string& tag) {
        std::string text = fleet_test::description(tag);
        return text.replace(text.find("test motor"), 10, "other work");
    }
    QAbstractButton* save() { return part<QAbstractButton>("registerSave"); }
    std::shared_ptr<const Machine> described(const std::string& tag) {
        const auto machine = fleet_->machines().describedAt(tag);
        return machine ? *machine : nullptr;
    }

    RegisterPage* page_ = nullptr;
};

TEST_F(RegisterPageTest, AMachineIsTakenInWithoutTouchingJson) {
    openRegister();
    press("register.add.button");
    EXPECT_NE(trouble("trouble/tag"), "");
    type("field/tag", "KL-FN-09");
    type("field/service", "kiln seal fan");
    type("field/area", "kiln");
    type("field/driver/power_kw", "15");
    type("field/driver/poles", "4");
    type("field/driver/rated_rpm", "1465");
    pick("field/driven/kind", "fan");
    type("field/driven/blades", "9");
    press("bearings.add");
    fill("bearings.table", 0, 2, "6309");
    press("bearings.add");
    fill("bearings.table", 1, 2, "6209");
    fill("bearings.table", 0, 5, "8");
    fill("bearings.table", 0, 6, "17.46");
    fill("bearings.table", 0, 7, "72.5");
    fill("points.table", 0, 2, "end_shield");
    press("channels.add");
    ASSERT_TRUE(save()->isEnabled()) << window_->findChild<QLabel*>("registerTroubles")->text().toStdString();
    save()->click();
    settle();
    const auto machine = described("KL-FN-09");
    ASSERT_NE(machine, nullptr);
    EXPECT_EQ(machine->service, "kiln seal fan");
    EXPECT_EQ(machine->driver.poles, 4);
    EXPECT_EQ(machine->driven.blades, 9);
    ASSERT_EQ(machine->bearings.size(), 2u);
    EXPECT_EQ(machine->bearings[0].at, "driver DE");
    EXPECT_EQ(machine->bearings[1].at, "driver NDE");
    // Textbook kinematics: 8/2 (1 - 17.46/72.5) = 3.0367
    EXPECT_NEAR(machine->bearings[0].bearing.variants.at(0).orders.bpfo, 3.0367, 1e-3);
    ASSERT_EQ(machine->points.size(), 1u);
    EXPECT_EQ(machine->points[0].mount, "end_shield");
    EXPECT_EQ(machine->points[0].channels.size(), 2u);
    EXPECT_EQ(window_->findChild<RegisterTree*>()->machines(), 6);
}

TEST_F(RegisterPageTest, EachFieldsTroubleStandsBesideItWhileOneTypes) {
    openRegister("A-RACE");
    type("field/mains_hz", "500");
    EXPECT_THAT(trouble("trouble/mains_hz"), HasSubstr("40"));
    type("field/driver/poles", "three");
    EXPECT_NE(trouble("trouble/driver/poles"), "");
    EXPECT_FALSE(save()->isEnabled());
    EXPECT_THAT(window_->findChild<QTabWidget*>("registerTabs")->tabText(0).toStdString(),
                HasSubstr("to mend"));
    type("field/mains_hz", "50");
    type("field/driver/poles", "4");
    EXPECT_EQ(trouble("trouble/mains_hz"), "");
    EXPECT_EQ(window_->findChild<QTabWidget*>("registerTabs")->tabText(0), "Nameplate");
}

TEST_F(RegisterPageTest, AChangeFromADayOnKeepsWhatHeldBefore) {
    openRegister("A-RACE");
    type("field/service", "changed fan");
    window_->findChild<QCheckBox*>("registerFromDay")->setChecked(true);
    window_->findChild<QDateEdit*>("registerFrom")->setDate(QDate(2026, 5, 8));
    window_->findChild<QLineEdit*>("registerNote")->setText("new bearing");
    save()->click();
    settle();
    const auto history = fleet_->machines().history("A-RACE");
    ASSERT_TRUE(history);
    ASSERT_EQ(history->size(), 2u);
    EXPECT_EQ(history->back().from, "2026-05-08");
    EXPECT_EQ(history->back().note, "new bearing");
    EXPECT_NE(fleet_->machines().describedOn("A-RACE", "2026-05-07").value()->service, "changed fan");
    EXPECT_EQ(table("descriptionHistory").rowCount(), 2);
    EXPECT_TRUE(page_->document().sound());
}

TEST_F(RegisterPageTest, AnOlderDescriptionIsShownAndNotEdited) {
    ASSERT_TRUE(fleet_->machines().put(changed("A-RACE"), "x", "2026-05-08", "again"));
    openRegister("A-RACE");
    auto* history = window_->findChild<QTableView*>("descriptionHistory");
    ASSERT_EQ(history->model()->rowCount(), 2);
    emit history->activated(history->model()->index(0, 0));
    EXPECT_TRUE(window_->findChild<QLineEdit*>("field/service")->isReadOnly());
    EXPECT_FALSE(window_->findChild<QLabel*>("registerOlder")->isHidden());
    EXPECT_FALSE(save()->isEnabled());
    emit history->activated(history->model()->index(1, 0));
    EXPECT_FALSE(window_->findChild<QLineEdit*>("field/service")->isReadOnly());
    EXPECT_TRUE(window_->findChild<QLineEdit*>("field/tag")->isReadOnly());
}

TEST_F(RegisterPageTest, ACopyNeedsATagOfItsOwn) {
    openRegister("A-RACE");
    press("register.copy.button");
    EXPECT_NE(trouble("trouble/tag"), "");
    type("field/tag", "B-SOUND");
    save()->click();
    dialog<QMessageBox>("message")->button(QMessageBox::Ok)->click();
    type("field/tag", "A-RACE-2");
    save()->click();
    settle();
    EXPECT_NE(described("A-RACE-2"), nullptr);
    EXPECT_EQ(described("A-RACE-2")->bearings.size(), described("A-RACE")->bearings.size());
}

TEST_F(RegisterPageTest, ARemovedMachineIsOutOfServiceAndItsPastIsKept) {
    openRegister("D-MUTE");
    press("register.remove.button");
    dialog<QMessageBox>("removeBox")->findChild<QAbstractButton*>("removeYes")->click();
    settle();
    EXPECT_NE(fleet_->machines().byTag("D-MUTE")->removedOn, "");
    EXPECT_EQ(window_->findChild<RegisterTree*>()->machines(), 4);
    EXPECT_NE(described("D-MUTE"), nullptr);
}

TEST_F(RegisterPageTest, UnsavedChangesAreNotLostWithoutAWord) {
    openRegister("A-RACE");
    type("field/service", "half typed");
    emit window_->findChild<RegisterTree*>()->machineChosen("B-SOUND");
    auto* box = dialog<QMessageBox>("unsavedBox");
    box->findChild<QAbstractButton*>("stayHere")->click();
    EXPECT_EQ(page_->document().text("/service"), "half typed");
    emit window_->findChild<RegisterTree*>()->machineChosen("B-SOUND");
    ASSERT_TRUE(waitFor([this] {
        auto boxes = window_->findChildren<QMessageBox*>("unsavedBox");
        return !boxes.isEmpty() && boxes.last()->isVisible();
    }));
    window_->findChildren<QMessageBox*>("unsavedBox")
        .last()
        ->findChild<QAbstractButton*>("dropChanges")
        ->click();
    settle();
    EXPECT_EQ(page_->document().text("/tag"), "B-SOUND");
}

TEST_F(RegisterPageTest, BlindSpotsOfTheNewestWeekAreListed) {
    openRegister("A-RACE");
    EXPECT_GT(table("blindSpots").rowCount(), 0);
    window_->workplace()->selection().setMachine("D-MUTE");
    settle();
    EXPECT_EQ(table("blindSpots").rowCount(), 0);
    EXPECT_THAT(window_->findChild<QLabel*>("blindWord")->text().toStdString(), HasSubstr("recorded"));
}

// Weighing a week takes seconds on a machine with many recordings: not for a page nobody looks at.
TEST_F(RegisterPageTest, TheHiddenPageFollowsTheMachineWithoutReadingItsWeek) {
    openWindow({"round", {}, {}, {}, {}, {}});
    page_ = window_->findChild<RegisterPage*>("registerPage");
    window_->workplace()->selection().setMachine("A-RACE");
    settle();
    EXPECT_EQ(page_->document().text("/tag"), "A-RACE");
    EXPECT_EQ(table("blindSpots").rowCount(), 0);
    window_->workplace()->go({"register", {}, {}, {}, {}, {}});
    settle();
    EXPECT_GT(table("blindSpots").rowCount(), 0);
}

TEST_F(RegisterPageTest, TheWholeRegisterGoesOutAndComesInAgainUnchanged) {
    ASSERT_TRUE(fleet_->machines().put(changed("A-RACE"), "x", "2026-05-08", "again"));
    openRegister();
    const std::string file = folder_ / "register.json";
    page_->exportTo(QString::fromStdString(file));
    settle();
    const auto text = RealFileSystem().read(file);
    ASSERT_TRUE(text);
    EXPECT_EQ(parseJson(*text, file)->size(), 6u);
    const std::string other = folder_ / "other.fettle";
    ASSERT_TRUE(FleetFile::create(other, {"Other", "UTC", 0.1}));
    window_->openFleet(QString::fromStdString(other), {"register", {}, {}, {}, {}, {}});
    ASSERT_TRUE(waitFor([&] {
        return window_->workplace() && window_->workplace()->work().path() == other && window_->settled();
    }));
    window_->findChild<RegisterPage*>("registerPage")->importFile(QString::fromStdString(file));
    settle();
    auto again = FleetFile::open(other);
    ASSERT_TRUE(again);
    EXPECT_EQ((*again)->machines().all()->size(), 5u);
    EXPECT_EQ((*again)->machines().history("A-RACE")->size(), 2u);
    EXPECT_EQ(parseJson((*again)->machines().history("A-RACE")->back().json, "").value(),
              parseJson(fleet_->machines().history("A-RACE")->back().json, "").value());
}

TEST_F(RegisterPageTest, AFileThatIsNoRegisterIsRefusedWithAWord) {
    const std::string file = folder_ / "nonsense.json";
    ASSERT_TRUE(RealFileSystem().writeSafely(file, "{ nonsense"));
    openRegister();
    page_->importFile(QString::fromStdString(file));
    auto* box = dialog<QMessageBox>("message");
    EXPECT_THAT(box->text().toStdString(), HasSubstr("nonsense.json"));
    box->button(QMessageBox::Ok)->click();
    EXPECT_EQ(fleet_->machines().all()->size(), 5u);
}

}  // namespace
}  // namespace fettle::desk_test
