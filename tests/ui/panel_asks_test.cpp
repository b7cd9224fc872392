// From what a verdict leaves open to the list of what is asked for, in the real window: asked on the panel,
// seen in the dialog, dropped there, written and laid out for the walk. common practice, no source.
#include <gmock/gmock.h>

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTableView>

#include "core/fleet/asks.h"
#include "tests/ui/desk_fixture.h"
#include "ui/dialogs/asks_dialog.h"
#include "ui/panels/evidence_panel.h"
#include "ui/panels/suggestion_list.h"
#include "ui/sheet/walk_sheet.h"

namespace fettle::desk_test {
namespace {

using testing::HasSubstr;

PagePlace raceOfA() {
    PagePlace place;
    place.page = QStringLiteral("machine");
    place.machine = QStringLiteral("A-RACE");
    return place;
}

TEST_F(Desk, WhatAVerdictLeavesOpenIsAskedForAndDropped) {
    openWindow(raceOfA());
    auto* list = part<SuggestionList>("suggestions");
    ASSERT_NE(list, nullptr);
    if (list->suggestions().empty()) {
        // The race is only watched there: another fault has what could be asked for.
        window_->workplace()->selection().setFault(QStringLiteral("misalignment"), QStringLiteral("driver"));
        settle();
    }
    ASSERT_FALSE(list->suggestions().empty());
    press("ask0");
    settle();
    EXPECT_FALSE(part<QPushButton>("ask0")->isEnabled());
    press("showAsks");
    auto* dialog = this->dialog<AsksDialog>("asksDialog");
    ASSERT_NE(dialog, nullptr);
    settle();
    auto* table = dialog->findChild<QTableView*>("asks");
    ASSERT_EQ(table->model()->rowCount(), 1);
    EXPECT_EQ(table->model()->index(0, AskModel::Machine).data().toString(), "A-RACE");
    dialog->findChild<QLineEdit*>("askNote")->setText(QStringLiteral("not reached"));
    dialog->findChild<QPushButton*>("askDropped")->click();
    settle();
    EXPECT_EQ(table->model()->rowCount(), 0);
    dialog->findChild<QAbstractButton*>("answeredToo")->click();
    settle();
    ASSERT_EQ(table->model()->rowCount(), 1);
    EXPECT_EQ(table->model()->index(0, AskModel::State).data().toString(), "dropped: not reached");
    dialog->save(QString::fromStdString(folder_ / "asks.csv"), "a,b\r\n");
    settle();
    EXPECT_TRUE(RealFileSystem().exists(folder_ / "asks.csv"));
}

TEST_F(Desk, WhoseLineAndFirstListedAreSaidInThePanel) {
    openWindow(raceOfA());
    window_->workplace()->selection().setCursorHz(24.7);
    press("whoseLine");
    settle();
    EXPECT_THAT(part<QLabel>("whoseLineSays")->text().toStdString(), HasSubstr("recordings"));
    press("firstListed");
    settle();
    EXPECT_THAT(part<QLabel>("firstListedSays")->text().toStdString(), HasSubstr("the rule would"));
}

TEST(WalkSheet, NamesEveryPlaceWithHowAndWhyAndTheCautions) {
    WalkSheet walk{"Test works", "2026-05-10", {}};
    for (int i = 0; i < 40; ++i) {
        Ask ask;
        ask.request.id = i + 1;
        ask.request.machine = "M-" + std::to_string(i);
        ask.request.byHand = i % 4 != 0;
        ask.request.point = "driver DE";
        ask.request.direction = "axial";
        ask.request.why = "phase across the coupling parts it from bent shaft";
        ask.spec.seconds = 8;
        ask.spec.topHz = 1000;
        walk.asks.push_back(ask);
    }
    for (const PaperSize size : {PaperSize::A4, PaperSize::Letter}) {
        const auto pages = layOutWalk(walk, size);
        EXPECT_GE(pages.size(), 2u);
        QString all;
        for (const SheetPage& page : pages) {
            for (const PlacedText& text : page.texts) {
                all += text.text + u'\n';
                EXPECT_TRUE(page.area().adjusted(-1, -1, 1, 1).contains(text.rect))
                    << text.text.toStdString();
            }
        }
        for (int i = 0; i < 40; ++i)
            EXPECT_EQ(all.count(QStringLiteral("M-%1").arg(i)) > 0, true) << i;
        EXPECT_THAT(all.toStdString(), HasSubstr("12800 lines"));
        EXPECT_THAT(all.toStdString(), HasSubstr("no permit to work"));
    }
    EXPECT_EQ(layOutWalk({"Test works", "2026-05-10", {}}, PaperSize::A4).size(), 1u);
}

}  // namespace
}  // namespace fettle::desk_test
