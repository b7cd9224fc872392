// Times by the site's clock, and what stands about a trend without covering anything. Clocks: London goes
// forward on 29 March 2026 at 01:00 UTC, India is 5 h 30 min ahead all the year (IANA time zone database).
#include <gtest/gtest.h>
#include <qwt_plot.h>
#include <qwt_plot_item.h>
#include <qwt_scale_div.h>
#include <qwt_scale_draw.h>
#include <qwt_scale_map.h>
#include <qwt_text.h>

#include <QDateTime>
#include <QLabel>

#include "tests/ui/plot_support.h"
#include "ui/model/site_time.h"
#include "ui/plot/curve_room.h"
#include "ui/plot/trend_marks.h"
#include "ui/plot/trend_plot.h"

namespace fettle {

using namespace test;

namespace {

struct TimeStage {
    Theme theme{ThemeChoice::Light};
    Selection selection;
    TimeAxis axis{selection};
    TrendPlot trend{theme, axis, selection, nullptr};

    explicit TimeStage(const std::string& zone, QSize size = {900, 300}) {
        axis.setZone(siteZone(zone));
        trend.resize(size);
        trend.show();
        settle();
    }
    void show(const char* from, const char* until) {
        axis.setBounds({*parseUtc(from), *parseUtc(until)});
        settle();
    }
    QList<double> ticks() const {
        return trend.plot().axisScaleDiv(QwtPlot::xBottom).ticks(QwtScaleDiv::MajorTick);
    }
    QString label(double ms) const {
        return trend.plot().axisScaleDraw(QwtPlot::xBottom)->label(ms).text().section(u'\n', 0, 0);
    }
};

std::shared_ptr<TrendData> levels() {
    auto data = std::make_shared<TrendData>();
    data->quantity = "velocity r.m.s.";
    data->unit = "mm/s";
    for (int day = 0; day < 120; ++day)
        data->samples.push_back({kStartMs + day * kDayMs, 0.9 + 0.03 * day, day + 1, true});
    data->limits = {{"A/B", 1.4}, {"B/C", 2.8}, {"C/D", 4.5}};
    return data;
}

}  // namespace

TEST(SiteTime, AMomentSaysHowFarTheSitesClockIsFromUtc) {
    const QTimeZone london = siteZone("Europe/London");
    EXPECT_EQ(momentText(*parseUtc("2026-05-10T06:20:00Z"), london), "10 May 2026 07:20 UTC+1");
    EXPECT_EQ(momentText(*parseUtc("2026-01-10T06:20:00Z"), london), "10 January 2026 06:20 UTC");
    EXPECT_EQ(shortMomentText(*parseUtc("2026-05-10T20:20:00Z"), siteZone("Asia/Kolkata")),
              "2026-05-11 01:50 UTC+5:30");
    EXPECT_EQ(momentText(*parseUtc("2026-05-10T06:20:00Z"), siteZone("Nowhere/Atall")),
              "10 May 2026 06:20 UTC");
    EXPECT_TRUE(shortMomentText(*parseUtc("2026-01-10T06:20:00Z"), siteZone("America/St_Johns"))
                    .endsWith(QStringLiteral("UTC") + QChar(0x2212) + QStringLiteral("3:30")));
}

TEST(SiteTime, TicksStandAtTheSitesMidnight) {
    TimeStage stage("Asia/Kolkata");
    stage.show("2026-05-01T00:00:00Z", "2026-05-08T00:00:00Z");
    ASSERT_GE(stage.ticks().size(), 3);
    for (const double tick : stage.ticks()) {
        const QDateTime there = siteTime(toInstant(tick), siteZone("Asia/Kolkata"));
        EXPECT_EQ(there.time(), QTime(0, 0)) << there.toString().toStdString();
        EXPECT_EQ(stage.label(tick), there.toString("d MMM"));
    }
}

TEST(SiteTime, HoursOfTheDayOnWhichTheClockGoesForwardSayWhatItSays) {
    TimeStage stage("Europe/London");
    stage.show("2026-03-28T22:00:00Z", "2026-03-29T05:00:00Z");
    EXPECT_EQ(stage.label(toMs(*parseUtc("2026-03-29T00:00:00Z"))), "00:00");
    EXPECT_EQ(stage.label(toMs(*parseUtc("2026-03-29T01:00:00Z"))), "02:00");
    EXPECT_EQ(stage.axis.text(toMs(*parseUtc("2026-03-29T01:00:00Z"))), "2026-03-29 02:00 UTC+1");
}

TEST(SiteTime, AtRestTheTrendNamesTheZone) {
    TimeStage stage("Europe/London");
    EXPECT_EQ(stage.trend.readout(), "time of Europe/London");
    stage.axis.setZone(siteZone("UTC"));
    EXPECT_EQ(stage.trend.readout(), "time of UTC");
}

// The highest limit's name stood under the mark of an event at the left.
TEST(TrendMarks, NamesOfLimitsKeepOutOfTheRowOfEvents) {
    for (const int height : {110, 160, 300, 600}) {
        TimeStage stage("UTC", {700, height});
        stage.axis.setBounds({toInstant(kStartMs), toInstant(kStartMs + 120 * kDayMs)});
        stage.trend.setData(levels());
        stage.trend.setEvents({{kStartMs + 3 * kDayMs, "greasing", ""}});
        settle();
        const QRectF canvas = stage.trend.canvas()->contentsRect();
        const QFontMetricsF metrics(stage.trend.canvas()->font());
        const double row = canvas.top() + EventMarks::rowHeight(metrics);
        LimitLines limits(stage.theme);
        limits.setLimits(levels()->limits);
        limits.setBelowEvents(true);
        const auto named = limits.named(stage.trend.plot().canvasMap(QwtPlot::yLeft), canvas, metrics);
        ASSERT_EQ(named.size(), 3u);
        for (const auto& one : named) {
            EXPECT_GE(one.box.top(), row) << one.name.toStdString() << " at height " << height;
            EXPECT_GE(one.y, row) << one.name.toStdString() << " at height " << height;
        }
        for (std::size_t i = 1; i < named.size(); ++i)
            EXPECT_FALSE(named[i].box.intersects(named[i - 1].box)) << "at height " << height;
    }
}

// The machine's own past stands behind the curve: the band differs from the ground within its days and, more
// faintly, after them; the fan stands between the last day and the limit.
TEST(TrendPast, BandAndFanAreDrawnWhereTheyBelong) {
    TimeStage stage("UTC");
    auto data = levels();
    for (TrendSample& sample : data->samples)
        sample.value = 1;
    const auto day = [](int d) { return kStartMs + d * kDayMs; };
    data->baseline = TrendBaseline{day(0), day(42), 0.5, 1, 1.3};
    data->sinceMs = day(80);
    data->fan = TrendFan{day(119), 1, 2.8, day(130), day(140), day(150), "B/C about"};
    stage.trend.setData(data);
    stage.show("2026-01-05T00:00:00Z", "2026-06-10T00:00:00Z");
    const QImage image = stage.trend.canvas()->grab().toImage();
    const auto at = [&](double ms, double value) {
        const auto x = stage.trend.plot().canvasMap(QwtPlot::xBottom).transform(ms);
        const auto y = stage.trend.plot().canvasMap(QwtPlot::yLeft).transform(value);
        return image.pixelColor((QPointF(x, y) * image.devicePixelRatio()).toPoint());
    };
    const QColor ground = at(day(37), 2.3);
    const auto apart = [&](const QColor& c) { return std::abs(c.lightness() - ground.lightness()); };
    EXPECT_GT(apart(at(day(37), 0.7)), apart(at(day(107), 0.7)));
    EXPECT_GT(apart(at(day(107), 0.7)), 2);
    EXPECT_EQ(apart(at(day(107), 2.2)), 0);
    EXPECT_GT(apart(at(day(137), 2.5)), 2);  // inside the fan
}

// The curve ran through the names of its first weeks.
TEST(TrendMarks, ANameStandsWhereNoCurveCrossesIt) {
    QwtScaleMap xMap, yMap;
    xMap.setScaleInterval(0, 100);
    xMap.setPaintInterval(0, 600);
    yMap.setScaleInterval(0, 6);
    yMap.setPaintInterval(150, 0);
    auto curve = std::make_shared<Series>();
    curve->x = {0, 30, 40, 100};
    curve->y = {2, 2, 5, 5};
    const std::vector<SeriesPtr> curves{curve};
    const CurveRoom room{curves, xMap, yMap};
    const QRectF name(4, 92, 60, 15);  // about the value 2
    EXPECT_TRUE(room.crossed(name));
    const QRectF free = room.freed(name, 600, {});
    EXPECT_FALSE(room.crossed(free));
    EXPECT_EQ(free.top(), name.top());
    EXPECT_GT(free.left(), 600 * 0.3);
    EXPECT_FALSE(room.freed(name, 600, {free}).intersects(free));
    EXPECT_EQ(room.freed(name, 100, {}), name) << "nowhere is free";
    curve->endsHere = {true, false, false, false};
    EXPECT_FALSE(room.crossed({60, 92, 60, 15})) << "a gap crosses nothing";
}

TEST(TrendPast, LimitsOfItsOwnAreNamedInOrderSoThatNoNameCoversAnother) {
    const Theme theme(ThemeChoice::Light);
    LimitLines lines(theme);
    lines.setLimits({{"A/B", 1.4}, {"B/C", 2.8}, {"C/D", 4.5}, {"own", 4.3, true}});
    QwtScaleMap map;
    map.setScaleInterval(0, 6);
    map.setPaintInterval(150, 0);
    const auto named = lines.named(map, QRectF(0, 0, 600, 150), QFontMetricsF(QFont()));
    ASSERT_EQ(named.size(), 4u);
    for (std::size_t i = 0; i < named.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            EXPECT_FALSE(named[i].box.intersects(named[j].box)) << i << " " << j;
}

}  // namespace fettle
