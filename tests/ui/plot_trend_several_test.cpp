// Several quantities in one trend, and one against another. common practice, no source, where nothing else is
// said.
#include <gtest/gtest.h>
#include <qwt_plot.h>
#include <qwt_scale_div.h>
#include <qwt_scale_map.h>
#include <qwt_text.h>

#include "core/trend/charts.h"
#include "tests/ui/plot_support.h"
#include "ui/pages/control_lines.h"
#include "ui/plot/scatter_plot.h"
#include "ui/plot/trend_names.h"
#include "ui/plot/trend_plot.h"
#include "ui/plot/waterfall.h"

namespace fettle {

using namespace test;

namespace {

std::shared_ptr<TrendData> quantity(const QString& name, const QString& unit, double level) {
    auto data = std::make_shared<TrendData>();
    data->quantity = name;
    data->unit = unit;
    for (int day = 0; day < 100; ++day)
        data->samples.push_back({kStartMs + day * kDayMs, level * (1 + 0.1 * (day % 3)), day + 1, true});
    return data;
}

struct TrendStage {
    Theme theme{ThemeChoice::Light};
    Selection selection;
    TimeAxis axis{selection};
    QWidget window;
    Waterfall* waterfall = new Waterfall(theme, axis, selection, &window);
    TrendPlot* trend = new TrendPlot(theme, axis, selection, &window);
    ScatterPlot* scatter = new ScatterPlot(theme, axis, selection, &window);

    TrendStage() {
        window.resize(900, 900);
        waterfall->setGeometry(0, 0, 900, 300);
        trend->setGeometry(0, 300, 900, 300);
        scatter->setGeometry(0, 600, 900, 300);
        window.show();
        axis.setBounds({toInstant(kStartMs), toInstant(kStartMs + 99 * kDayMs)});
        settle();
    }
};

}  // namespace

TEST(TrendSeveral, ASecondUnitHasTheRightAxisAndAThirdIsLeftOut) {
    TrendStage stage;
    stage.trend->setAll({quantity("velocity", "mm/s", 2), quantity("frame", "°C", 50),
                         quantity("2x", "mm/s", 1), quantity("load", "%", 80)});
    settle();
    ASSERT_EQ(stage.trend->all().size(), 3u);
    EXPECT_TRUE(stage.trend->plot().isAxisVisible(QwtPlot::yRight));
    EXPECT_EQ(stage.trend->plot().axisTitle(QwtPlot::yRight).text(), "°C");
    EXPECT_GT(stage.trend->plot().axisScaleDiv(QwtPlot::yRight).upperBound(), 55);
    EXPECT_LT(stage.trend->plot().axisScaleDiv(QwtPlot::yLeft).upperBound(), 5);
    stage.trend->setData(quantity("velocity", "mm/s", 2));
    EXPECT_FALSE(stage.trend->plot().isAxisVisible(QwtPlot::yRight));
}

// Where a quantity was not known at standstill there is no circle to draw; Qt says so of one without a place.
TEST(TrendSeveral, AStandstillWithoutTheQuantityIsNotDrawn) {
    static QStringList said;
    said.clear();
    TrendStage stage;
    auto data = quantity("velocity", "mm/s", 2);
    data->samples.push_back({kStartMs + 50.5 * kDayMs, std::nan(""), 200, false});
    std::sort(data->samples.begin(), data->samples.end(),
              [](const TrendSample& a, const TrendSample& b) { return a.ms < b.ms; });
    stage.trend->setData(data);
    settle();
    const auto before = qInstallMessageHandler(
        [](QtMsgType, const QMessageLogContext&, const QString& text) { said << text; });
    stage.trend->grab();
    qInstallMessageHandler(before);
    EXPECT_TRUE(said.filter("NaN").isEmpty()) << said.join('\n').toStdString();
}

// The right axis takes room from the waterfall as well: the same moment stays over the same moment.
TEST(TrendSeveral, WithARightAxisWaterfallAndTrendStillStandOverEachOther) {
    TrendStage stage;
    stage.waterfall->setData(WaterfallData::make(dailyRows(100, 100), {}));
    for (const bool right : {true, false, true}) {
        stage.trend->setAll(
            {quantity("velocity", "mm/s", 2), right ? quantity("peak", "g", 12345) : nullptr});
        settle();
        const QwtScaleMap a = stage.waterfall->plot().canvasMap(QwtPlot::xBottom);
        const QwtScaleMap b = stage.trend->plot().canvasMap(QwtPlot::xBottom);
        EXPECT_EQ(stage.waterfall->canvas()->width(), stage.trend->canvas()->width());
        EXPECT_NEAR(a.transform(kStartMs + 50 * kDayMs), b.transform(kStartMs + 50 * kDayMs), 1e-6);
    }
}

TEST(TrendSeveral, EveryLineIsNamedAtItsEndAndNoNameCoversAnother) {
    const Theme theme(ThemeChoice::Light);
    LineNames names(theme);
    std::vector<LineNames::Named> all;
    for (int i = 0; i < 4; ++i) {
        auto series = std::make_shared<Series>();
        series->x = {0, 50, 100};
        series->y = {1, 1, 1.0F + 0.01F * float(i)};
        all.push_back({QStringLiteral("line %1").arg(i), series, Role::Curve, false});
    }
    names.setNames(all);
    QwtScaleMap x, y;
    x.setScaleInterval(0, 120);
    x.setPaintInterval(0, 600);
    y.setScaleInterval(0, 2);
    y.setPaintInterval(200, 0);
    const auto labels = names.labels(x, y, QRectF(0, 0, 600, 200), QFontMetricsF(QFont()));
    ASSERT_EQ(labels.size(), 4u);
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_TRUE(QRectF(0, 0, 600, 200).contains(labels[i].box));
        for (std::size_t j = 0; j < i; ++j)
            EXPECT_FALSE(labels[i].box.intersects(labels[j].box)) << i << " " << j;
    }
}

// F = 1.8 C + 32; a difference has no offset; 25.4 mm an inch.
TEST(TrendSeveral, ValuesAndLimitsAreInTheReadersUnitAndTheTableInStoredOnes) {
    TrendStage stage;
    auto velocity = quantity("velocity", "mm/s", 25.4);
    velocity->limits = {{"B/C", 50.8}};
    stage.trend->setAll({velocity, quantity("rise", "K", 10)});
    stage.selection.setUnits({true, false, true});
    settle();
    EXPECT_NEAR(double(stage.trend->series()->y.front()), 1, 1e-6);
    EXPECT_EQ(stage.trend->plot().axisTitle(QwtPlot::yLeft).text(), "in/s");
    EXPECT_NEAR(stage.trend->plot().axisScaleDiv(QwtPlot::yLeft).upperBound(), 2.36, 0.3);
    EXPECT_NEAR(stage.trend->plot().axisScaleDiv(QwtPlot::yRight).upperBound(), 21.6 * 1.18, 3);
    EXPECT_TRUE(stage.trend->tableText(TableExtent::All).contains("25.4\tmm/s"));
}

TEST(Scatter, AClickChoosesTheRecordingAndTheChosenOneIsRinged) {
    TrendStage stage;
    auto data = std::make_shared<ScatterData>();
    data->xName = "speed";
    data->xUnit = "r/min";
    data->yUnit = "mm/s";
    for (int day = 0; day < 50; ++day)
        data->points.push_back({kStartMs + day * kDayMs, 1400.0 + day, 1 + 0.05 * day, day + 1});
    stage.scatter->setData(data);
    settle();
    QTest::mouseClick(stage.scatter->canvas(), Qt::LeftButton, {},
                      stage.scatter->placeOf(data->points[20]).toPoint());
    ASSERT_TRUE(stage.selection.recording());
    EXPECT_EQ(*stage.selection.recording(), 21);
    const QImage before = pictureOf(*stage.scatter->canvas());
    stage.selection.setRecording(41, toInstant(kStartMs + 40 * kDayMs));
    settle();
    const QImage after = pictureOf(*stage.scatter->canvas());
    const QPointF ring = stage.scatter->placeOf(data->points[40]) + QPointF(7, 0);
    EXPECT_NE(before.pixel(ring.toPoint()), after.pixel(ring.toPoint()));
}

// What lies outside the shown span of time is not there, nor chosen.
TEST(Scatter, FollowsTheSpanOfTime) {
    TrendStage stage;
    auto data = std::make_shared<ScatterData>();
    for (int day = 0; day < 50; ++day)
        data->points.push_back({kStartMs + day * kDayMs, double(day), 1.0 + day, day + 1});
    stage.scatter->setData(data);
    stage.axis.show(kStartMs + 10 * kDayMs - 1, kStartMs + 20 * kDayMs + 1);
    settle();
    const auto div = stage.scatter->plot().axisScaleDiv(QwtPlot::xBottom);
    EXPECT_NEAR(div.lowerBound(), 10, 1);
    EXPECT_NEAR(div.upperBound(), 20, 1);
}

// A step of three spreads: CUSUM with k 0.5, h 5 signals within a few days, and its run length is said.
TEST(ControlLines, AStepLeavesTheChartAndTheWordsSayThePriceOfAFalseAlarm) {
    TrendData data;
    data.quantity = "velocity";
    data.unit = "mm/s";
    for (int day = 0; day < 100; ++day)
        data.samples.push_back(
            {kStartMs + (day + 0.5) * kDayMs, day < 60 ? 1.0 : std::pow(10, 3.0 / 20), 1, true});
    TrendPast past;
    const int first = int(kStartMs / kDayMs);
    past.baseline =
        BaselineBand{first, first + 42, 42, std::pow(10, -2.0 / 20), 1, std::pow(10, 2.0 / 20), ""};
    const ControlLines cusum = controlLines(data, past, ControlChart::Cusum);
    ASSERT_EQ(cusum.lines.size(), 2u);
    const auto& up = *cusum.lines[0];
    ASSERT_EQ(up.samples.size(), 100u);
    EXPECT_NEAR(up.samples[59].value, 0, 1e-9);
    EXPECT_NEAR(up.samples[61].value, 5, 1e-6);  // two days of 3 - 0.5 spreads: sigma is 1 dB here
    EXPECT_GT(up.samples[62].value, up.limits.front().value);
    EXPECT_TRUE(cusum.words.contains(QString::number(cusumRunLength({}, 0), 'f', 0)));
    const ControlLines ewma = controlLines(data, past, ControlChart::Ewma);
    ASSERT_EQ(ewma.lines.size(), 1u);
    EXPECT_EQ(ewma.lines[0]->unit, "mm/s");
    EXPECT_GT(ewma.lines[0]->samples.back().value, ewma.lines[0]->limits.back().value);
}

// Without a baseline the chart stands on the median of its own days, says so and says what is missing: a jump
// of 12 spreads on the last days still leaves it.
TEST(ControlLines, WithoutABaselineTheyStandOnTheirOwnMedianAndSaySo) {
    TrendData data;
    data.quantity = "velocity";
    data.unit = "mm/s";
    for (int day = 0; day < 24; ++day) {
        const double swing = day % 2 == 0 ? 0.5 : -0.5;  // dB
        data.samples.push_back(
            {kStartMs + (day + 0.5) * kDayMs, std::pow(10, (day < 20 ? swing : 12 * 0.74) / 20), 1, true});
    }
    TrendPast none;
    none.why = "no baseline: 5 of 14 days";
    const ControlLines own = controlLines(data, none, ControlChart::Ewma);
    ASSERT_EQ(own.lines.size(), 1u);
    EXPECT_LT(own.lines[0]->samples[18].value, own.lines[0]->limits.back().value);
    EXPECT_GT(own.lines[0]->samples.back().value, own.lines[0]->limits.back().value);
    EXPECT_TRUE(own.words.contains("5 of 14 days")) << own.words.toStdString();
    EXPECT_TRUE(own.words.contains("median of all 24 days"));
    EXPECT_TRUE(own.note.contains("no baseline"));
    data.samples.resize(4);
    const ControlLines few = controlLines(data, none, ControlChart::Cusum);
    EXPECT_TRUE(few.lines.empty());
    EXPECT_TRUE(few.words.contains("there are 4")) << few.words.toStdString();
}

// Kelvins are no ratio: a fall below freezing has no decibels.
TEST(ControlLines, ATemperatureIsChartedAsItIs) {
    TrendData data;
    data.quantity = "ambient temperature";
    data.unit = QStringLiteral("°C");
    for (int day = 0; day < 12; ++day)
        data.samples.push_back({kStartMs + (day + 0.5) * kDayMs, day % 3 - 2.0, 1, true});
    const ControlLines own = controlLines(data, {}, ControlChart::Ewma);
    ASSERT_EQ(own.lines.size(), 1u);
    EXPECT_EQ(own.lines[0]->samples.size(), 12u);
    EXPECT_NEAR(own.lines[0]->limits.front().value + own.lines[0]->limits.back().value, 2 * -1.0, 1e-6);
    EXPECT_TRUE(own.words.contains("ambient temperature"));
}

}  // namespace fettle
