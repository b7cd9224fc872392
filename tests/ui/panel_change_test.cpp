// The evidence panel beyond its table: bars of the list, running sum, units, copy, what would change the
// verdict, the chart that picks recordings. common practice, no source, where nothing else is said.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QCheckBox>
#include <QClipboard>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTest>

#include "tests/diagnosis/made_recordings.h"
#include "tests/ui/plot_support.h"
#include "ui/panels/change_words.h"
#include "ui/panels/evidence_model.h"
#include "ui/panels/evidence_panel.h"
#include "ui/panels/evidence_view.h"
#include "ui/panels/fault_list.h"
#include "ui/panels/fault_rows.h"

namespace fettle {

using namespace test;
using testing::HasSubstr;
using testing::Not;

namespace {

struct Desk {
    Theme theme{ThemeChoice::Light};
    Selection selection;
    EvidencePanel panel{theme, selection, nullptr};

    Desk() {
        auto content = std::make_shared<PanelContent>();
        content->examination = madeExamination();
        for (std::size_t i = 0; i < content->examination.recordings.size(); ++i) {
            content->times.push_back(instantOf(double(i)));
            content->recordings.push_back(std::int64_t(i) + 1);
        }
        content->machine = std::make_shared<const Machine>(made::motor());
        content->urgencies = UrgencyTable::load().value();
        content->reached = {{"bearing_outer_race", "driver DE", instantOf(-7), instantOf(2), 9}};
        content->basis = QStringLiteral("Week");
        selection.setFault("bearing_outer_race", "driver DE");
        panel.resize(640, 1400);
        panel.setContent(content);
        panel.show();
        settle();
    }
    static Instant instantOf(double day) {
        return Instant(std::chrono::milliseconds(std::int64_t(kStartMs + day * kDayMs)));
    }
    template <class T>
    T& part(const char* name) {
        return *panel.findChild<T*>(QString::fromLatin1(name));
    }
    std::string text(const char* name) { return part<QLabel>(name).text().toStdString(); }
    EvidenceView& view() { return part<EvidenceView>("evidenceTable"); }
    QString cell(int row, int column) { return view().model()->index(row, column).data().toString(); }
};

}  // namespace

TEST(EvidenceChange, WeightsOfTheListStandOnTheirSideOfTheZeroLine) {
    Desk desk;
    auto& list = desk.part<FaultList>("faultList");
    const QImage image = pictureOf(*list.viewport());
    const auto inked = [&](int item, Role role) {
        const QRect cell =
            list.visualRect(list.model()->index(item, FaultRows::Bar)).intersected(image.rect());
        int count = 0, sum = 0;
        for (int x = cell.left(); x <= cell.right(); ++x)
            if (image.pixel(x, cell.center().y()) == desk.theme.colour(role).rgb()) ++count, sum += x;
        return std::pair(count, count ? sum / count : 0);
    };
    const auto found = inked(0, Role::For), cage = inked(3, Role::Against);
    EXPECT_GT(found.first, 10);
    EXPECT_GT(cage.first, 2);
    EXPECT_LT(cage.second, found.second);
    EXPECT_EQ(inked(0, Role::Against).first, 0);
    const QString spoken = list.topLevelItem(0)->data(0, Qt::AccessibleTextRole).toString();
    EXPECT_THAT(spoken.toStdString(), HasSubstr("decibans"));
    EXPECT_THAT(spoken.toStdString(), HasSubstr("since"));
}

TEST(EvidenceChange, ArrowKeysGoThroughTheFaults) {
    Desk desk;
    auto& list = desk.part<FaultList>("faultList");
    list.setFocus();
    QTest::keyClick(&list, Qt::Key_Down);
    QTest::keyClick(&list, Qt::Key_Down);
    EXPECT_EQ(desk.selection.fault(), "bearing_inner_race");
    QTest::keyClick(&list, Qt::Key_Up);
    QTest::keyClick(&list, Qt::Key_Up);
    EXPECT_EQ(desk.selection.fault(), "bearing_outer_race");
}

TEST(EvidenceChange, TheRunningSumEndsAtTheWeight) {
    Desk desk;
    EXPECT_TRUE(desk.view().isColumnHidden(EvidenceModel::Sum));
    desk.part<QCheckBox>("runningSum").click();
    EXPECT_FALSE(desk.view().isColumnHidden(EvidenceModel::Sum));
    const int last = desk.view().model()->rowCount() - 1;
    long tenths = 0;
    for (int row = 0; row < last; ++row) {
        tenths += std::lround(desk.cell(row, EvidenceModel::Decibans).toDouble() * 10);
        EXPECT_EQ(std::lround(desk.cell(row, EvidenceModel::Sum).toDouble() * 10), tenths);
    }
    EXPECT_EQ(desk.cell(last, EvidenceModel::Sum), desk.cell(last, EvidenceModel::Decibans));
}

// 60 r/min are 1 Hz.
TEST(EvidenceChange, FrequenciesStandInTheUnitsPeopleReadIn) {
    Desk desk;
    const double hz = desk.cell(0, EvidenceModel::Expected).toDouble();
    Units units;
    units.perMinute = true;
    desk.selection.setUnits(units);
    EXPECT_NEAR(desk.cell(0, EvidenceModel::Expected).toDouble(), 60 * hz, 0.5);
    EXPECT_THAT(desk.view()
                    .model()
                    ->headerData(EvidenceModel::Found, Qt::Horizontal, Qt::DisplayRole)
                    .toString()
                    .toStdString(),
                HasSubstr("r/min"));
    desk.selection.setCursorHz(88.4);
    EXPECT_THAT(desk.text("claims"), HasSubstr("5304 r/min"));
}

TEST(EvidenceChange, TheCopiedTableHoldsEveryRowAndColumn) {
    Desk desk;
    desk.part<QPushButton>("copyEvidence").click();
    const QStringList lines = QApplication::clipboard()->text().trimmed().split('\n');
    ASSERT_EQ(lines.size(), desk.view().model()->rowCount() + 1);
    for (const QString& line : lines)
        EXPECT_EQ(line.count('\t'), EvidenceModel::Bar - 1);
    EXPECT_THAT(lines[0].toStdString(), HasSubstr("expected Hz"));
}

TEST(EvidenceChange, WhatWouldChangeTheVerdictIsComputedFromItsRows) {
    Desk desk;
    const Hypothesis& h = *desk.panel.chosen();
    const auto heaviest =
        std::max_element(h.best.rows.begin(), h.best.rows.end(), [](const LineRow& a, const LineRow& b) {
            return (a.state == LineState::Found ? a.weightDban : -99) <
                   (b.state == LineState::Found ? b.weightDban : -99);
        });
    const std::string words = desk.text("change");
    EXPECT_THAT(words, HasSubstr("Without " + heaviest->name));
    EXPECT_THAT(words,
                HasSubstr(QString::number(*h.weightDban - heaviest->weightDban, 'f', 1).toStdString()));
    EXPECT_THAT(words, Not(HasSubstr("of the round to")));
    RoundStanding standing{"2026-05-10", "evidence", "plan", 33, 41.5};
    desk.panel.setStanding(standing);
    EXPECT_THAT(desk.text("change"), HasSubstr("with 8.5 less"));
    standing.weightDban = 30;
    desk.panel.setStanding(standing);
    EXPECT_THAT(desk.text("change"), HasSubstr("3.0 were missing"));
}

TEST(EvidenceChange, LevelsOfAChangeStandInInchesWhereTheyAreRead) {
    WhatWouldChange change;
    change.levels = {{"C", "plan", 4.5, 3.9, "mm/s", true}};
    EXPECT_THAT(changeWords(change, {}, {}).join(' ').toStdString(), HasSubstr("Zone C (plan) above 4.5"));
    Units inches;
    inches.inches = true;
    EXPECT_THAT(changeWords(change, {}, inches).join(' ').toStdString(), HasSubstr("0.177 in/s"));
}

TEST(EvidenceChange, AStrokeOfTheChartIsARecordingAndWithCtrlAWeek) {
    Desk desk;
    auto& chart = desk.part<WeightChart>("weightChart");
    desk.panel.setWeights({{kStartMs, 12, 7}, {kStartMs + kDayMs, 25, 8}, {kStartMs + 2 * kDayMs, -3, 9}});
    const auto spot = [&](std::size_t i) {
        return QPoint(int(chart.xOf(chart.points()[i])), chart.height() / 2);
    };
    QTest::mouseClick(&chart, Qt::LeftButton, {}, spot(1));
    EXPECT_EQ(desk.selection.recording(), 8);
    QTest::keyClick(&chart, Qt::Key_Right);
    EXPECT_EQ(desk.selection.recording(), 9);
    QTest::keyClick(&chart, Qt::Key_Home);
    EXPECT_EQ(desk.selection.recording(), 7);
    EXPECT_THAT(chart.accessibleName().toStdString(), HasSubstr("12.0 decibans"));
    QTest::mouseClick(&chart, Qt::LeftButton, Qt::ControlModifier, spot(1));
    EXPECT_FALSE(desk.selection.recording());
    EXPECT_EQ(desk.selection.time(), Desk::instantOf(1));
}

}  // namespace fettle
