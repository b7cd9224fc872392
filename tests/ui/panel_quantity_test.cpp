// A quantity is found by words and ticked; at most four stand at once. common practice, no source.
#include <gtest/gtest.h>

#include <QLineEdit>
#include <QListWidget>
#include <QSignalSpy>

#include "tests/ui/plot_support.h"
#include "ui/panels/quantity_picker.h"

namespace fettle {

using namespace test;

namespace {

struct QuantityStage {
    QWidget window;
    QuantityPicker* picker = new QuantityPicker(&window);
    QListWidget* list = nullptr;
    QLineEdit* find = nullptr;

    QuantityStage() {
        picker->setQuantities({{"level:v", "velocity r.m.s.", "Levels"},
                               {"level:a", "acceleration r.m.s.", "Levels"},
                               {"rise", "temperature rise over ambient", "Levels"},
                               {"m:1", "mesh 1-3 x, gear G1", "Measures of faults"},
                               {"m:2", "belt 1x, belt B1", "Measures of faults"},
                               {"w:1", "weight: outer-race defect", "Weights"}});
        window.show();
        settle();
    }
    void open() {
        picker->click();
        settle();
        list = picker->findChild<QListWidget*>("quantityList");
        find = picker->findChild<QLineEdit*>("quantityFind");
    }
    QListWidgetItem* row(const QString& text) {
        const auto found = list->findItems(text, Qt::MatchContains);
        return found.isEmpty() ? nullptr : found.front();
    }
};

}  // namespace

TEST(QuantityPicker, WordsFindInNameAndGroupAndReturnTakesTheFirst) {
    QuantityStage stage;
    EXPECT_EQ(stage.picker->chosen(), QStringList{"level:v"});
    stage.open();
    ASSERT_NE(stage.list, nullptr);
    QTest::keyClicks(stage.find, "measures gear");
    EXPECT_NE(stage.row("mesh"), nullptr);
    EXPECT_EQ(stage.row("belt"), nullptr);
    QSignalSpy changed(stage.picker, &QuantityPicker::chosenChanged);
    QTest::keyClick(stage.find, Qt::Key_Return);
    EXPECT_EQ(stage.picker->chosen(), QStringList{"m:1"});
    EXPECT_EQ(changed.size(), 1);
}

TEST(QuantityPicker, FourAreTheMostAndOneIsTheLeast) {
    QuantityStage stage;
    stage.open();
    for (const char* text : {"acceleration", "rise", "mesh", "belt", "weight"})
        stage.row(QString::fromLatin1(text))->setCheckState(Qt::Checked);
    EXPECT_EQ(stage.picker->chosen(), (QStringList{"level:v", "level:a", "rise", "m:1"}));
    EXPECT_EQ(stage.row("belt")->checkState(), Qt::Unchecked);
    for (const char* text : {"velocity", "acceleration", "rise", "mesh"})
        stage.row(QString::fromLatin1(text))->setCheckState(Qt::Unchecked);
    EXPECT_EQ(stage.picker->chosen(), QStringList{"m:1"});
    EXPECT_EQ(stage.row("mesh")->checkState(), Qt::Checked);
}

// A machine that lacks a quantity does not make the choice forgotten.
TEST(QuantityPicker, AChoiceComesBackWithTheMachineThatHasIt) {
    QuantityStage stage;
    stage.picker->choose({"m:1", "level:a"});
    stage.picker->setQuantities({{"level:v", "velocity r.m.s.", "Levels"}});
    EXPECT_EQ(stage.picker->chosen(), QStringList{"level:v"});
    stage.picker->setQuantities({{"level:v", "velocity r.m.s.", "Levels"}, {"m:1", "mesh", "Measures"}});
    EXPECT_EQ(stage.picker->chosen(), QStringList{"m:1"});
}

}  // namespace fettle
