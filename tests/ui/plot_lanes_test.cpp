// Twins below each other: one axis across, one scale upright or each its own, and in orders the lines of
// machines at slightly different speeds stand above each other. common practice, no source.
#include "ui/plot/lanes_plot.h"

#include <gtest/gtest.h>
#include <qwt_plot.h>
#include <qwt_scale_map.h>

#include <QToolButton>

#include "tests/ui/plot_support.h"

namespace fettle {

using namespace test;

namespace {

SpectrumPtr lineAt(double shaftHz, float high, double dfHz = 0.5) {
    auto data = std::make_shared<SpectrumData>();
    data->unit = "mm/s r.m.s.";
    data->dfHz = dfHz;
    data->values.assign(std::size_t(100 / dfHz), 0.01F);
    data->values[std::size_t(std::lround(shaftHz / dfHz))] = high;
    data->shaftHz = shaftHz;
    return data;
}

struct LanesStage {
    Theme theme{ThemeChoice::Light};
    Selection selection;
    LanesPlot plot{theme, selection, nullptr};

    LanesStage() {
        plot.resize(800, 400);
        plot.setLanes({{"A", lineAt(25, 4)}, {"B", lineAt(24.5, 1)}, {"C", lineAt(24, 2)}});
        plot.show();
        settle();
    }
    QPointF on(std::size_t lane, double hz) {
        return {plot.plot().canvasMap(QwtPlot::xBottom).transform(hz),
                plot.plot().canvasMap(QwtPlot::yLeft).transform(plot.placeOf(lane, 0.05))};
    }
    void move(QPointF to) {
        QTest::mouseMove(plot.canvas(), to.toPoint() + QPoint(6, 3));
        QTest::mouseMove(plot.canvas(), to.toPoint());
        settle();
    }
};

}  // namespace

TEST(Lanes, ShareOneScaleUntilEachHasItsOwn) {
    LanesStage stage;
    EXPECT_GT(stage.plot.placeOf(0, 0), stage.plot.placeOf(1, 4));  // the first is on top
    const auto rise = [&](std::size_t lane, double value) {
        return stage.plot.placeOf(lane, value) - stage.plot.placeOf(lane, 0);
    };
    EXPECT_NEAR(rise(0, 4) / rise(1, 1), 4, 1e-6);
    stage.plot.findChild<QToolButton*>("lanesOwn")->click();
    EXPECT_NEAR(rise(0, 4), rise(1, 1), 1e-6);
}

TEST(Lanes, TheReadoutNamesTheLaneUnderThePointerAndAClickSetsTheCursor) {
    LanesStage stage;
    stage.move(stage.on(1, 24.5));
    EXPECT_TRUE(stage.plot.readout().startsWith("B: 24.5")) << stage.plot.readout().toStdString();
    EXPECT_TRUE(stage.plot.readout().contains("1.00 mm/s")) << stage.plot.readout().toStdString();
    QTest::mouseClick(stage.plot.canvas(), Qt::LeftButton, {}, stage.on(2, 24).toPoint());
    ASSERT_TRUE(stage.selection.cursorHz());
    EXPECT_NEAR(*stage.selection.cursorHz(), 24, 0.26);
}

// An order is a multiple of the own shaft's speed: the first order of the third machine is that of the first.
TEST(Lanes, InOrdersTheFirstOrderOfEachStandsAtOne) {
    LanesStage stage;
    stage.plot.findChild<QToolButton*>("lanesOrders")->click();
    stage.move(stage.on(2, 1.0));
    EXPECT_TRUE(stage.plot.readout().contains("24.0")) << stage.plot.readout().toStdString();
    QTest::mouseClick(stage.plot.canvas(), Qt::LeftButton, {}, stage.on(2, 1.0).toPoint());
    EXPECT_NEAR(stage.selection.cursorHz().value_or(0), 25, 0.3);  // of the machine shown
}

TEST(Lanes, ShowThePartThatIsAskedForInHertz) {
    LanesStage stage;
    stage.plot.showHz(20, 30);
    EXPECT_DOUBLE_EQ(stage.plot.across().from, 20);
    EXPECT_DOUBLE_EQ(stage.plot.across().until, 30);
    stage.selection.setUnits({false, true, false});
    stage.plot.showHz(20, 30);
    EXPECT_DOUBLE_EQ(stage.plot.across().until, 1800);  // r/min
}

TEST(Lanes, WithoutASpeedThereAreNoOrders) {
    LanesStage stage;
    stage.plot.setOrders(true);
    stage.plot.setLanes({{"A", lineAt(25, 4)}, {"B", lineAt(24, 1)}, {"none", nullptr}});
    EXPECT_EQ(stage.plot.lanes().size(), 2u);
    EXPECT_TRUE(stage.plot.orders());
    auto unknown = std::make_shared<SpectrumData>(*lineAt(25, 4));
    unknown->shaftHz = 0;
    stage.plot.setLanes({{"A", lineAt(25, 4)}, {"B", unknown}});
    EXPECT_FALSE(stage.plot.orders());
    EXPECT_FALSE(stage.plot.findChild<QToolButton*>("lanesOrders")->isEnabled());
}

TEST(Lanes, TheTableHoldsEveryLineOfEveryLaneInSi) {
    LanesStage stage;
    stage.selection.setUnits({true, true, false});
    const QString table = stage.plot.tableText(TableExtent::All);
    EXPECT_EQ(table.count(u'\n'), 2 + 1 + 3 * 200);
    EXPECT_TRUE(table.contains("place\tHz\torder\tmm/s r.m.s.\n"));
    EXPECT_TRUE(table.contains("B\t24.5\t1\t1\n"));
}

}  // namespace fettle
