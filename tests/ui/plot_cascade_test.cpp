// The waterfall's other picture: no peak is lost in the traces, a click chooses what is seen, both pictures
// show one range in one unit. common practice, no source, where nothing else is said.
#include <gtest/gtest.h>
#include <qwt_plot.h>
#include <qwt_scale_div.h>
#include <qwt_scale_map.h>

#include <QDoubleSpinBox>
#include <algorithm>

#include "tests/ui/plot_support.h"
#include "ui/plot/cascade.h"
#include "ui/plot/cascade_item.h"
#include "ui/plot/colour_legend.h"
#include "ui/plot/waterfall.h"

namespace fettle {

using namespace test;

namespace {

struct CascadeStage {
    Theme theme{ThemeChoice::Light};
    Selection selection;
    TimeAxis axis{selection};
    QWidget window;
    Waterfall* waterfall = new Waterfall(theme, axis, selection, &window);
    Cascade* cascade = new Cascade(theme, axis, selection, waterfall->look(), &window);

    CascadeStage() {
        window.resize(800, 700);
        waterfall->setGeometry(0, 0, 800, 300);
        cascade->setGeometry(0, 300, 800, 400);
        window.show();
        settle();
    }
    void show(std::vector<WaterfallRow> rows) {
        axis.setBounds({toInstant(rows.front().ms), toInstant(rows.back().ms)});
        waterfall->setData(WaterfallData::make(std::move(rows), {false, "mm/s r.m.s.", false}));
        waterfall->setRange(ColourRange{0.01, 1});
        settle();
    }
    QwtScaleMap x() const { return cascade->plot().canvasMap(QwtPlot::xBottom); }
    QwtScaleMap y() const { return cascade->plot().canvasMap(QwtPlot::yLeft); }
    // Where a strength of a trace is drawn.
    QPointF placeOf(const CascadeItem::Trace& trace, double hz, double share) const {
        const double full = std::abs(y().p2() - y().p1()) * CascadeItem::kRise / (1 + CascadeItem::kRise);
        return {x().transform(hz), y().transform(trace.ms) - share * full};
    }
    bool inkAt(const QImage& image, QPointF at, Role role) const {
        const QColor ink = theme.colour(role), ground = theme.colour(Role::Ground);
        for (int dy = -2; dy <= 2; ++dy)
            for (int dx = -2; dx <= 2; ++dx) {
                const QPoint pixel = at.toPoint() + QPoint(dx, dy);
                if (!image.rect().contains(pixel)) continue;
                const QColor c = image.pixelColor(pixel);
                if (std::abs(c.lightness() - ink.lightness()) < std::abs(c.lightness() - ground.lightness()))
                    return true;
            }
        return false;
    }
};

}  // namespace

// 3,000 spectra in some sixty traces: each peak of one cell rises to its height in the trace of its time.
TEST(Cascade, APeakInOneSpectrumOfManyRisesInItsTrace) {
    auto rows = dailyRows(3000, 800);
    CascadeStage without;
    without.show(rows);
    const QImage flat = pictureOf(*without.cascade->canvas());
    const std::size_t peaks[][2] = {{40, 100}, {1111, 333}, {2222, 640}, {2990, 720}};
    for (const auto& peak : peaks)
        rows[peak[0]].lines[peak[1]] = 1;
    CascadeStage stage;
    stage.show(rows);
    const QImage image = pictureOf(*stage.cascade->canvas());
    const auto traces = stage.cascade->item().traces(stage.y());
    EXPECT_GT(traces.size(), 30u);
    EXPECT_EQ(traces.back().rows.last, 3000u);
    for (const auto& peak : peaks)
        for (const auto& trace : traces)
            if (peak[0] >= trace.rows.first && peak[0] < trace.rows.last) {
                const double hz = (double(peak[1]) + 0.5) * 1000 / 800;
                EXPECT_TRUE(stage.inkAt(image, stage.placeOf(trace, hz, 1), Role::Curve)) << peak[0];
                const QPoint middle = stage.placeOf(trace, hz, 0.5).toPoint(),
                             beside = middle + QPoint(40, 0);
                EXPECT_NE(image.copy(QRect(middle - QPoint(2, 8), QSize(5, 17))),
                          flat.copy(QRect(middle - QPoint(2, 8), QSize(5, 17))));
                EXPECT_EQ(image.copy(QRect(beside - QPoint(2, 8), QSize(5, 17))),
                          flat.copy(QRect(beside - QPoint(2, 8), QSize(5, 17))));
            }
}

// Nothing shines through what stands in front: behind a high trace the lower ones are not drawn.
TEST(Cascade, WhatStandsInFrontHidesWhatIsBehind) {
    auto rows = dailyRows(40, 800, 0.02F);
    rows[10].lines.assign(800, 1);
    CascadeStage stage;
    stage.show(rows);
    const QImage image = pictureOf(*stage.cascade->canvas());
    const auto traces = stage.cascade->item().traces(stage.y());
    const auto traceOf = [&](std::size_t row) {
        return *std::find_if(traces.begin(), traces.end(), [&](const auto& trace) {
            return row >= trace.rows.first && row < trace.rows.last;
        });
    };
    const double low = std::log(2.0) / std::log(100.0);  // 0.02 between 0.01 and 1
    EXPECT_TRUE(stage.inkAt(image, stage.placeOf(traceOf(10), 500, 1), Role::Curve));
    EXPECT_TRUE(stage.inkAt(image, stage.placeOf(traceOf(3), 500, low), Role::Curve));
    EXPECT_TRUE(stage.inkAt(image, stage.placeOf(traceOf(38), 500, low), Role::Curve));
    EXPECT_FALSE(stage.inkAt(image, stage.placeOf(traceOf(14), 500, low), Role::Curve));
}

TEST(Cascade, AClickChoosesTheRecordingAndTheLineOfTheTraceUnderThePointer) {
    auto rows = dailyRows(40, 800);
    rows[25].lines[400] = 1;
    CascadeStage stage;
    stage.show(rows);
    for (const auto& trace : stage.cascade->item().traces(stage.y()))
        if (trace.rows.first <= 25 && 25 < trace.rows.last)
            QTest::mouseClick(stage.cascade->canvas(), Qt::LeftButton, {},
                              stage.placeOf(trace, 500.625, 1).toPoint());
    ASSERT_TRUE(stage.selection.recording());
    EXPECT_EQ(*stage.selection.recording(), 26);
    EXPECT_NEAR(stage.selection.cursorHz().value_or(0), 500.625, 1e-6);
}

TEST(WaterfallLook, ADecibelIsTwentyLogarithmsAndLinearIsTheUnit) {
    CascadeStage stage;
    stage.show(dailyRows(10, 100));
    WaterfallLook& look = stage.waterfall->look();
    EXPECT_NEAR(look.shown(0.1), -20, 1e-9);
    EXPECT_NEAR(look.stored(-20), 0.1, 1e-9);
    EXPECT_TRUE(look.unit().contains("dB re 1 mm/s"));
    look.setLinear(true);
    EXPECT_NEAR(look.shown(0.1), 0.1, 1e-12);
    EXPECT_EQ(look.unit(), "mm/s r.m.s.");
    EXPECT_NEAR(look.range().share(0.505), 0.5, 1e-9);
}

// 25.4 mm an inch; 60 r/min a hertz.
TEST(WaterfallLook, UnitsOfTheReaderAreShownAndTheDataStayAsTheyAre) {
    CascadeStage stage;
    stage.show(dailyRows(10, 100));
    WaterfallLook& look = stage.waterfall->look();
    look.setLinear(true);
    stage.selection.setUnits({true, true, false});
    EXPECT_NEAR(look.shown(25.4), 1, 1e-12);
    EXPECT_EQ(look.unit(), "in/s r.m.s.");
    EXPECT_EQ(look.uprightUnit(), "r/min");
    settle();
    EXPECT_NEAR(stage.waterfall->plot().axisScaleDiv(QwtPlot::yLeft).upperBound(), 60000, 1e-6);
    EXPECT_NEAR(stage.cascade->plot().axisScaleDiv(QwtPlot::xBottom).upperBound(), 60000, 1e-6);
    EXPECT_FLOAT_EQ(stage.waterfall->data()->cell(0, 0), 0.01F);
    EXPECT_EQ(stage.waterfall->range().high, 1);
}

TEST(WaterfallLook, PercentilesOfTheCellsAreTheEnds) {
    std::vector<WaterfallRow> rows = dailyRows(10, 100);
    for (std::size_t i = 0; i < 10; ++i)
        for (std::size_t k = 0; k < 100; ++k)
            rows[i].lines[k] = float(i * 100 + k + 1);  // 1 to 1000
    CascadeStage stage;
    stage.show(rows);
    stage.waterfall->look().setShares(0.05, 0.9);
    EXPECT_NEAR(stage.waterfall->range().low, 51, 1.5);
    EXPECT_NEAR(stage.waterfall->range().high, 900, 1.5);
}

TEST(ColourLegend, DraggedTheNearerEndFollowsAndKeysMoveBoth) {
    CascadeStage stage;
    stage.show(dailyRows(10, 100));
    ColourLegend& legend = stage.waterfall->legend();
    const QRectF bar = legend.barRect();
    const QPoint from(int(bar.right()) - 3, int(bar.center().y()));
    QTest::mousePress(&legend, Qt::LeftButton, {}, from);
    QTest::mouseMove(&legend, from - QPoint(int(bar.width() / 4), 0));
    QTest::mouseMove(&legend, from - QPoint(int(bar.width() / 2), 0));
    QTest::mouseRelease(&legend, Qt::LeftButton, {}, from - QPoint(int(bar.width() / 2), 0));
    // Half of two decades down.
    EXPECT_NEAR(std::log10(stage.waterfall->range().high), -1, 0.1);
    EXPECT_DOUBLE_EQ(stage.waterfall->range().low, 0.01);
    EXPECT_TRUE(legend.findChild<QWidget*>("colourMenu") == nullptr) << "a drag is no click";
    legend.setFocus();
    QTest::keyClick(&legend, Qt::Key_Right);
    EXPECT_GT(stage.waterfall->range().low, 0.01);
}

TEST(ColourLegend, PressedItTakesTwoNumbersAndNothingBlocks) {
    CascadeStage stage;
    stage.show(dailyRows(10, 100));
    stage.waterfall->legend().click();
    auto* high = stage.waterfall->legend().findChild<QDoubleSpinBox*>("colourHigh");
    ASSERT_TRUE(high);
    high->setValue(-6);
    EXPECT_NEAR(20 * std::log10(stage.waterfall->range().high), -6, 1e-6);
    EXPECT_TRUE(stage.waterfall->look().byHand());
}

}  // namespace fettle
