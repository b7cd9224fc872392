// The waterfall loses nothing at any zoom, shows gaps as gaps, and stands over the trend to the pixel.
// common practice, no source, where nothing else is said.
#include <gtest/gtest.h>
#include <qwt_plot.h>
#include <qwt_scale_div.h>
#include <qwt_scale_map.h>

#include <random>

#include "tests/ui/plot_support.h"
#include "ui/plot/trend_plot.h"
#include "ui/plot/waterfall.h"

namespace fettle {

using namespace test;

namespace {

struct WaterfallStage {
    Theme theme{ThemeChoice::Light};
    Selection selection;
    TimeAxis axis{selection};
    QWidget window;
    Waterfall* waterfall = new Waterfall(theme, axis, selection, &window);
    TrendPlot* trend = new TrendPlot(theme, axis, selection, &window);

    explicit WaterfallStage(QSize size = {900, 700}) {
        window.resize(size);
        waterfall->setGeometry(0, 0, size.width(), size.height() / 2);
        trend->setGeometry(0, size.height() / 2, size.width(), size.height() / 2);
        window.show();
        settle();
    }
    void show(std::vector<WaterfallRow> rows) {
        if (!rows.empty()) axis.setBounds({toInstant(rows.front().ms), toInstant(rows.back().ms)});
        waterfall->setData(WaterfallData::make(std::move(rows), {false, "mm/s r.m.s.", false}));
        waterfall->setRange(ColourRange{0.01, 1});
        settle();
    }
    QRgb strongest() const { return blueToYellow().back(); }
};

// Where a cell's middle is painted.
QPoint pixelOf(const Waterfall& waterfall, std::size_t row, std::size_t line) {
    const WaterfallData& data = *waterfall.data();
    const double up = (double(line) + 0.5) * data.top() / double(data.lines());
    return {int(std::floor(waterfall.plot().canvasMap(QwtPlot::xBottom).transform(data.ms(row)))),
            int(std::floor(waterfall.plot().canvasMap(QwtPlot::yLeft).transform(up)))};
}

bool strongAround(const QImage& image, QPoint at, QRgb colour) {
    for (int dy = -1; dy <= 1; ++dy)
        for (int dx = -1; dx <= 1; ++dx)
            if (image.rect().contains(at + QPoint(dx, dy)) && image.pixel(at + QPoint(dx, dy)) == colour)
                return true;
    return false;
}

}  // namespace

// 5,000 rows and 800 lines on a canvas of about 800 x 300: some 20 cells a pixel.
TEST(Waterfall, EverySingleCellPeakIsSeenWhenAllIsShown) {
    auto rows = dailyRows(5000, 800);
    std::mt19937 random(7);
    std::vector<std::pair<std::size_t, std::size_t>> peaks;
    for (int i = 0; i < 60; ++i) {
        peaks.emplace_back(random() % 5000, random() % 800);
        rows[peaks.back().first].lines[peaks.back().second] = 1;
    }
    WaterfallStage stage;
    stage.show(rows);
    const QImage image = pictureOf(*stage.waterfall->canvas());
    int seen = 0;
    for (const auto& [row, line] : peaks)
        seen += strongAround(image, pixelOf(*stage.waterfall, row, line), stage.strongest());
    EXPECT_EQ(seen, 60);
}

TEST(Waterfall, EveryLineOneBinWideRunsThroughWhenAllIsShown) {
    auto rows = dailyRows(2000, 3200);
    std::vector<std::size_t> lines;
    for (std::size_t line = 5; line < 3200; line += 97)
        lines.push_back(line);
    for (WaterfallRow& row : rows)
        for (const std::size_t line : lines)
            row.lines[line] = 1;
    WaterfallStage stage;
    stage.show(rows);
    const QImage image = pictureOf(*stage.waterfall->canvas());
    int whole = 0;
    for (const std::size_t line : lines) {
        int columns = 0;
        for (std::size_t row = 0; row < 2000; row += 100)
            columns += strongAround(image, pixelOf(*stage.waterfall, row, line), stage.strongest());
        whole += columns == 20;
    }
    EXPECT_EQ(whole, int(lines.size()));
}

// The pyramid is exact: any part of rows and lines gives what looking at every cell gives.
TEST(WaterfallData, TheLargestOfAnyPartIsTheLargestOfItsCells) {
    auto rows = dailyRows(333, 40);
    std::mt19937 random(5);
    for (WaterfallRow& row : rows)
        for (float& cell : row.lines)
            cell = float(random() % 10000);
    const auto data = WaterfallData::make(rows, {});
    for (int trial = 0; trial < 2000; ++trial) {
        std::size_t a = random() % 334, b = random() % 334;
        if (a > b) std::swap(a, b);
        std::vector<float> most(17, -5);
        data->maxOver({a, b}, {11, 28}, most.data());
        for (std::size_t line = 11; line < 28; ++line) {
            float expected = WaterfallData::kGap;
            for (std::size_t row = a; row < b; ++row)
                expected = std::max(expected, rows[row].lines[line]);
            ASSERT_EQ(most[line - 11], expected) << a << " " << b << " " << line;
        }
    }
}

TEST(WaterfallData, ASpectrumCoversHalfTheWayButAtMostThreeQuartersOfTheUsualInterval) {
    const std::vector<double> days = {0, 1, 2, 3, 4, 14, 15, 16, 17, 18};
    const std::vector<Cover> covers = coversOf(days);
    EXPECT_DOUBLE_EQ(covers[1].from, 0.5);
    EXPECT_DOUBLE_EQ(covers[1].until, 1.5);
    EXPECT_DOUBLE_EQ(covers[4].until, 4.75);
    EXPECT_DOUBLE_EQ(covers[5].from, 13.25);
    EXPECT_FALSE(gapAfter(covers, 1));
    const std::vector<Cover> inMs = coversOf({0, kDayMs, 2 * kDayMs, 9 * kDayMs, 10 * kDayMs});
    EXPECT_TRUE(gapAfter(inMs, 2));
    EXPECT_FALSE(gapAfter(inMs, 0));
}

// A fleet is denser in some weeks: the sparse ones must not fall apart into gaps.
TEST(WaterfallData, DenseWeeksDoNotMakeGapsOfSparseOnes) {
    std::vector<double> times;
    for (int day = 0; day < 30; ++day)
        times.push_back(day * kDayMs);
    for (int i = 0; i < 500; ++i)
        times.push_back(30 * kDayMs + i * kDayMs / 72);
    for (int day = 40; day < 70; ++day)
        times.push_back(day * kDayMs);
    const std::vector<Cover> covers = coversOf(times);
    for (std::size_t i = 5; i < 25; ++i)
        EXPECT_FALSE(gapAfter(covers, i)) << i;
    for (std::size_t i = 540; i < 555; ++i)
        EXPECT_FALSE(gapAfter(covers, i)) << i;
}

TEST(Waterfall, AMonthWithoutRecordingsIsPaintedAsGap) {
    auto rows = dailyRows(120, 100, 0.5F);
    rows.erase(rows.begin() + 40, rows.begin() + 70);
    WaterfallStage stage;
    stage.show(rows);
    const QImage image = pictureOf(*stage.waterfall->canvas());
    const auto at = [&](double day) {
        const double x =
            stage.waterfall->plot().canvasMap(QwtPlot::xBottom).transform(kStartMs + day * kDayMs);
        return image.pixel(int(x), image.height() / 2);
    };
    EXPECT_EQ(at(55), stage.theme.colour(Role::Gap).rgb());
    EXPECT_NE(at(20), stage.theme.colour(Role::Gap).rgb());
    EXPECT_NE(at(90), stage.theme.colour(Role::Gap).rgb());
}

TEST(WaterfallData, AChannelThatEndsLowerLeavesAGapAbove) {
    auto rows = dailyRows(10, 100, 0.5F);
    rows[4].topHz = 500;
    rows[4].lines.assign(50, 0.25F);
    const auto data = WaterfallData::make(rows, {});
    EXPECT_FLOAT_EQ(data->cell(4, 10), 0.25F);
    EXPECT_FLOAT_EQ(data->cell(4, 80), WaterfallData::kGap);
    EXPECT_FLOAT_EQ(data->cell(5, 80), 0.5F);
}

// 2x of shafts at 20 and at 25 Hz is one order line.
TEST(WaterfallData, InOrdersALineStandsStillWhenTheSpeedChanges) {
    auto rows = dailyRows(20, 1000);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        rows[i].shaftHz = i < 10 ? 20 : 25;
        rows[i].lines[std::size_t(2 * rows[i].shaftHz)] = 1;
    }
    rows[3].shaftHz = 0;
    const auto data = WaterfallData::make(rows, {true, "g", false});
    const double step = data->top() / double(data->lines());
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const auto peak = data->peakWithin({i, i + 1}, {0, data->lines()});
        if (i == 3) {
            EXPECT_FALSE(peak) << "a row without speed has no place in orders";
            continue;
        }
        ASSERT_TRUE(peak);
        EXPECT_NEAR((double(peak->line) + 0.5) * step, 2, 2 * step) << i;
    }
}

TEST(Waterfall, CanvasAndTimeScaleStandOverTheTrendsToThePixel) {
    WaterfallStage stage;
    auto trend = std::make_shared<TrendData>();
    trend->unit = "mm/s";
    for (const double high : {1.0, 12345.0, 0.00012}) {
        trend = std::make_shared<TrendData>(*trend);
        trend->samples.clear();
        for (int day = 0; day < 100; ++day)
            trend->samples.push_back({kStartMs + day * kDayMs, high * (1 + day % 3), day + 1, true});
        stage.show(dailyRows(100, 800));
        stage.trend->setData(trend);
        for (int zoom = 0; zoom < 4; ++zoom) {
            settle();
            const QWidget &above = *stage.waterfall->canvas(), &below = *stage.trend->canvas();
            EXPECT_EQ(above.mapTo(&stage.window, QPoint()).x(), below.mapTo(&stage.window, QPoint()).x());
            EXPECT_EQ(above.width(), below.width());
            const QwtScaleMap a = stage.waterfall->plot().canvasMap(QwtPlot::xBottom);
            const QwtScaleMap b = stage.trend->plot().canvasMap(QwtPlot::xBottom);
            for (int day = 0; day < 100; day += 7)
                EXPECT_NEAR(a.transform(kStartMs + day * kDayMs), b.transform(kStartMs + day * kDayMs), 1e-6);
            stage.axis.zoom(0.4, kStartMs + 30 * kDayMs);
        }
        stage.axis.showAll();
    }
}

TEST(Waterfall, NoneOneAndSevenRowsAndSamplesDoNotCrash) {
    for (const std::size_t count : {0, 1, 7}) {
        WaterfallStage stage({300, 200});
        stage.show(dailyRows(count, count ? 800 : 0));
        auto trend = std::make_shared<TrendData>();
        for (std::size_t i = 0; i < count; ++i)
            trend->samples.push_back({kStartMs + double(i) * kDayMs, 1, std::int64_t(i) + 1, i != 3});
        stage.trend->setData(trend);
        for (QWidget* canvas : {stage.waterfall->canvas(), stage.trend->canvas()}) {
            const QPoint middle = canvas->rect().center();
            QTest::mouseMove(canvas, middle);
            QTest::mouseClick(canvas, Qt::LeftButton, {}, middle);
            for (const int key : {Qt::Key_Left, Qt::Key_Right, Qt::Key_Plus, Qt::Key_Minus, Qt::Key_Home})
                QTest::keyClick(canvas, Qt::Key(key));
            EXPECT_FALSE(pictureOf(*canvas).isNull());
        }
        EXPECT_EQ(stage.selection.recording().has_value(), count > 0);
    }
}

// The pointer stands on the canvas while its window goes: a leave event comes in the middle of it.
TEST(Waterfall, GoesWhileThePointerIsOverItInAnyOrder) {
    const Theme theme(ThemeChoice::Light);
    Selection selection;
    for (const bool axisFirst : {true, false}) {
        auto axis = std::make_unique<TimeAxis>(selection);
        auto window = std::make_unique<QWidget>();
        window->resize(400, 300);
        auto* waterfall = new Waterfall(theme, *axis, selection, window.get());
        waterfall->setGeometry(0, 0, 400, 300);
        waterfall->setData(WaterfallData::make(dailyRows(20, 50), {}));
        window->show();
        settle();
        QTest::mouseMove(waterfall->canvas(), waterfall->canvas()->rect().center());
        settle();
        if (axisFirst) axis.reset();
        window.reset();
        if (axis) axis->showAll();
        selection.setSpan({toInstant(kStartMs), toInstant(kStartMs + kDayMs)});
    }
    SUCCEED();
}

TEST(Waterfall, AClickChoosesTheRecordingAndTheStrongestLineUnderThePointer) {
    auto rows = dailyRows(60, 800);
    for (WaterfallRow& row : rows)
        row.lines[400] = 1;  // 500 to 501.25 Hz
    WaterfallStage stage;
    stage.show(rows);
    QTest::mouseClick(stage.waterfall->canvas(), Qt::LeftButton, {}, pixelOf(*stage.waterfall, 33, 401));
    ASSERT_TRUE(stage.selection.recording());
    EXPECT_EQ(*stage.selection.recording(), 34);
    ASSERT_TRUE(stage.selection.cursorHz());
    EXPECT_NEAR(*stage.selection.cursorHz(), 500.625, 1e-6);
}

TEST(Waterfall, WheelDragAndKeysMoveTheSelectionsSpanForBoth) {
    WaterfallStage stage;
    stage.show(dailyRows(100, 100));
    QWidget* canvas = stage.trend->canvas();
    QTest::keyClick(canvas, Qt::Key_Plus);
    const TimeSpan zoomed = stage.selection.span();
    EXPECT_GT(toMs(zoomed.until) - toMs(zoomed.from), 70 * kDayMs);
    EXPECT_LT(toMs(zoomed.until) - toMs(zoomed.from), 85 * kDayMs);
    const double before = stage.waterfall->plot().axisScaleDiv(QwtPlot::xBottom).lowerBound();
    QTest::mousePress(canvas, Qt::LeftButton, {}, QPoint(300, 50));
    QTest::mouseMove(canvas, QPoint(330, 50));
    QTest::mouseMove(canvas, QPoint(360, 50));
    QTest::mouseRelease(canvas, Qt::LeftButton, {}, QPoint(360, 50));
    EXPECT_LT(stage.waterfall->plot().axisScaleDiv(QwtPlot::xBottom).lowerBound(), before);
    QTest::keyClick(canvas, Qt::Key_Home);
    EXPECT_EQ(stage.selection.span(), TimeSpan{});
}

TEST(Waterfall, TheLegendAlwaysSaysTheUnitAndARangeByHandHolds) {
    WaterfallStage stage;
    stage.show(dailyRows(30, 100));
    const auto* legend = stage.waterfall->findChild<QWidget*>("colourLegend");
    ASSERT_NE(legend, nullptr);
    EXPECT_TRUE(legend->accessibleName().contains("mm/s r.m.s.")) << legend->accessibleName().toStdString();
    EXPECT_TRUE(legend->isVisible());
    stage.show(dailyRows(31, 100));
    EXPECT_EQ(stage.waterfall->range(), (ColourRange{0.01, 1}));
    stage.waterfall->setRange({});
    EXPECT_FALSE(stage.waterfall->range() == (ColourRange{0.01, 1}));
}

TEST(Waterfall, AnotherThemeRepaintsAndPaperIsGrey) {
    auto rows = dailyRows(40, 100, 0.1F);
    WaterfallStage stage;
    stage.show(rows);
    const QImage light = pictureOf(*stage.waterfall->canvas());
    stage.theme.choose(ThemeChoice::Paper);
    settle();
    const QImage paper = pictureOf(*stage.waterfall->canvas());
    EXPECT_NE(light, paper);
    const QRgb middle = paper.pixel(paper.rect().center());
    EXPECT_EQ(qRed(middle), qBlue(middle));
}

}  // namespace fettle
