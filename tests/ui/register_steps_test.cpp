// Undo and redo in the register: every value, what was typed as one step a field, back to what was saved.
#include <QLineEdit>
#include <QTableView>
#include <QToolButton>

#include "tests/ui/desk_fixture.h"
#include "ui/model/json_table_model.h"
#include "ui/pages/register_page.h"

namespace fettle::desk_test {
namespace {

const char* const kMachine =
    R"({ "tag": "M", "mains_hz": 50, "unknown": { "z": 1, "a": 2 }, "driver": { "poles": 4, "bearings": { "DE": { "designation": "6316" } } },
         "points": [ { "id": "P", "at": "driver", "channels": [ { "name": "x" }, { "name": "y" } ] },
                     { "id": "Q", "at": "driver", "channels": [ { "name": "x" } ] } ] })";

class Steps : public testing::Test {
  protected:
    void SetUp() override {
        ASSERT_TRUE(document_.load(kMachine, "M"));
        before_ = document_.json();
    }
    void type(const char* pointer, const std::vector<const char*>& texts, FieldKind kind = FieldKind::Text) {
        for (const char* text : texts)
            document_.setText(pointer, text, kind);
    }
    MachineDocument document_;
    std::string before_;
};

TEST_F(Steps, WhatIsTypedIntoAFieldIsOneStep) {
    type("/service", {"f", "fa", "fan"});
    type("/driver/power_kw", {"7", "75"}, FieldKind::Number);
    EXPECT_EQ(document_.steps().count(), 2);
    document_.undo();
    EXPECT_EQ(document_.text("/driver/power_kw"), "");
    EXPECT_EQ(document_.text("/service"), "fan");
    document_.undo();
    EXPECT_EQ(document_.json(), before_);
    EXPECT_FALSE(document_.changed());
    document_.redo();
    document_.redo();
    EXPECT_EQ(document_.text("/driver/power_kw"), "75");
    EXPECT_TRUE(document_.changed());
}

TEST_F(Steps, AFieldLeftAndTypedIntoAgainIsAnotherStep) {
    type("/service", {"fan"});
    document_.endTyping();
    type("/service", {"fan 2"});
    EXPECT_EQ(document_.steps().count(), 2);
    document_.undo();
    EXPECT_EQ(document_.text("/service"), "fan");
}

// Clearing the last order takes the whole object away; typing one makes it: both meet at the bearing.
TEST_F(Steps, StepsThatMakeOrTakeAwayWhatStandsAboveThemCanBeUndone) {
    type("/driver/bearings/DE/orders/bpfo", {"3", "3.1", ""}, FieldKind::Number);
    EXPECT_EQ(document_.find("/driver/bearings/DE/orders"), nullptr);
    document_.undo();
    EXPECT_EQ(document_.json(), before_);
    document_.endTyping();
    type("/driver/bearings/DE/orders/bpfo", {"3.1"}, FieldKind::Number);
    document_.endTyping();
    type("/driver/bearings/DE/orders/bpfo", {"3.", ""}, FieldKind::Number);
    document_.undo();
    EXPECT_EQ(document_.text("/driver/bearings/DE/orders/bpfo"), "3.1");
    document_.undo();
    EXPECT_EQ(document_.json(), before_);
}

TEST_F(Steps, RowsComeAndGoAndMoveAsOneStep) {
    JsonTableModel channels(document_, pointRows("channels", {{"name", "x"}}),
                            {{"@point", "Point", {}, FieldKind::Choice}, {"/name", "Channel", {}}});
    ASSERT_TRUE(channels.setData(channels.index(1, 0), "Q", Qt::EditRole));
    EXPECT_EQ(document_.find("/points/1/channels")->size(), 2u);
    channels.remove(0);
    channels.add(-1);
    document_.undo();
    document_.undo();
    EXPECT_EQ(document_.find("/points/1/channels")->size(), 2u);
    document_.undo();
    EXPECT_EQ(document_.json(), before_);
    EXPECT_EQ(channels.rowCount(), 3);
}

TEST_F(Steps, SavedIsTheStateWithoutChangesAndStepsAreKeptOverIt) {
    type("/service", {"fan"});
    const std::string saved = document_.json();
    document_.setSaved();
    ASSERT_TRUE(document_.load(saved, "M"));  // as the page reads it again
    EXPECT_FALSE(document_.changed());
    EXPECT_TRUE(document_.steps().canUndo());
    document_.undo();
    EXPECT_TRUE(document_.changed());
    document_.redo();
    EXPECT_FALSE(document_.changed());
    ASSERT_TRUE(document_.load(kMachine, "M"));
    EXPECT_FALSE(document_.steps().canUndo());
}

TEST_F(Steps, ANewMachineIsChangedFromTheStart) {
    document_.startNew("S", "A", 50);
    EXPECT_TRUE(document_.changed());
    EXPECT_FALSE(document_.steps().canUndo());
}

class StepKeys : public Desk {};

TEST_F(StepKeys, CtrlZAndCtrlShiftZInsideAField) {
    openWindow({"register", "A-RACE", {}, {}, {}, {}});
    window_->activateWindow();
    auto* service = window_->findChild<QLineEdit*>("field/service");
    auto* area = window_->findChild<QLineEdit*>("field/area");
    const QString was = service->text(), wasArea = area->text();
    ASSERT_TRUE(waitFor([&] { return window_->isActiveWindow(); }));
    service->setFocus();
    service->selectAll();
    QTest::keyClicks(service, "other");
    area->setFocus();
    area->selectAll();
    QTest::keyClicks(area, "there");
    QTest::keyClick(area, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(area->text(), wasArea);
    EXPECT_EQ(service->text(), "other");
    QTest::keyClick(area, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(service->text(), was);
    EXPECT_FALSE(part<QAbstractButton>("registerSave")->isEnabled());
    QTest::keyClick(area, Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(service->text(), "other");
    QTest::keyClick(area, Qt::Key_Y, Qt::ControlModifier);
    EXPECT_EQ(area->text(), "there");
}

}  // namespace
}  // namespace fettle::desk_test
