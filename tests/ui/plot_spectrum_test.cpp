// Spectrum, waveform and trend: no peak is lost, the cursor goes both ways, marks differ by shape.
// common practice, no source, where nothing else is said.
#include <gtest/gtest.h>
#include <qwt_plot.h>
#include <qwt_scale_map.h>

#include <QPainter>

#include <random>

#include "tests/ui/plot_support.h"
#include "ui/plot/readout.h"
#include "ui/plot/spectrum_plot.h"
#include "ui/plot/time_axis.h"
#include "ui/plot/trend_plot.h"
#include "ui/plot/waveform_plot.h"

namespace fettle {

using namespace test;

namespace {

std::shared_ptr<SpectrumData> spectrum(std::size_t lines, double dfHz = 0.5) {
    auto made = std::make_shared<SpectrumData>();
    made->unit = "mm/s r.m.s.";
    made->dfHz = dfHz;
    made->shaftHz = 25;
    made->values.assign(lines, 0.01F);
    return made;
}

struct SpectrumStage {
    Theme theme{ThemeChoice::Light};
    Selection selection;
    SpectrumPlot plot{theme, selection, QStringLiteral("spectrum"), QStringLiteral("Spectrum"), nullptr};

    SpectrumStage() {
        plot.resize(900, 320);
        plot.show();
        settle();
    }
    QPoint pixelOf(double hz) const {
        return {int(plot.plot().canvasMap(QwtPlot::xBottom).transform(hz)), plot.canvas()->height() / 2};
    }
};

std::vector<QPointF> pointsOf(const std::vector<QPolygonF>& pieces) {
    std::vector<QPointF> points;
    for (const QPolygonF& piece : pieces)
        points.insert(points.end(), piece.begin(), piece.end());
    return points;
}

}  // namespace

TEST(Series, DecimationKeepsEveryExtremeOfAMillionPoints) {
    Series series;
    std::mt19937 random(3);
    series.dx = 1;
    for (int i = 0; i < 1'000'000; ++i)
        series.y.push_back(float(random() % 1000) / 1000.0F);
    std::vector<std::size_t> spikes;
    for (int i = 0; i < 300; ++i) {
        spikes.push_back(random() % series.y.size());
        series.y[spikes.back()] = i % 2 ? 5.0F : -5.0F;
    }
    const auto points = pointsOf(decimated(
        series, 0, series.size(), [](double x) { return x / 1000; }, [](double y) { return y; }));
    EXPECT_LE(points.size(), 4u * 1001);
    for (const std::size_t spike : spikes) {
        const bool there = std::any_of(points.begin(), points.end(), [&](const QPointF& p) {
            return p.y() == double(series.y[spike]) && std::floor(p.x()) == std::floor(double(spike) / 1000);
        });
        EXPECT_TRUE(there) << spike;
    }
    for (std::size_t i = 1; i < points.size(); ++i)
        ASSERT_LE(std::floor(points[i - 1].x()), points[i].x());
}

// A wholly positive signal must not show a least of 0: the fold starts from the first sample.
TEST(Series, AnOffsetSignalKeepsItsOffset) {
    Series series;
    series.y.assign(10'000, 7.0F);
    for (const QPointF& p : pointsOf(decimated(
             series, 0, series.size(), [](double x) { return x / 100; }, [](double y) { return y; })))
        EXPECT_EQ(p.y(), 7);
}

TEST(Series, BreaksAtGapsAndAtWhatIsNoNumber) {
    Series series;
    series.y = {1, 2, NAN, 3, 4, 5};
    series.endsHere = {false, false, false, true, false, false};
    const auto pieces = decimated(
        series, 0, series.size(), [](double x) { return x * 10; }, [](double y) { return y; });
    ASSERT_EQ(pieces.size(), 3u);
    EXPECT_EQ(pieces[0].size(), 2);
    EXPECT_EQ(pieces[1].size(), 1);
    EXPECT_EQ(pieces[2].size(), 2);
}

TEST(Spectrum, APeakOfOneLineIsInkedWhenAllIsShown) {
    SpectrumStage stage;
    auto data = spectrum(200'000);
    data->values[123'457] = 5;
    stage.plot.setData(data);
    settle();
    const QImage image = pictureOf(*stage.plot.canvas());
    const double top = stage.plot.plot().canvasMap(QwtPlot::yLeft).transform(4.0);
    int inked = 0;
    for (int dx = -2; dx <= 2; ++dx) {
        const QColor c = QColor::fromRgb(image.pixel(stage.pixelOf(123'457 * 0.5).x() + dx, int(top)));
        inked += c.lightness() < stage.theme.colour(Role::Ground).lightness() - 40;
    }
    EXPECT_GT(inked, 0);
}

TEST(Spectrum, AClickCatchesTheHighestPeakNearbyAndTheReadoutSaysItInAllUnits) {
    SpectrumStage stage;
    auto data = spectrum(4000);
    data->values[200] = 2.5F;  // 100 Hz, 4 x, 6000 r/min
    stage.plot.setData(data);
    settle();
    QTest::mouseClick(stage.plot.canvas(), Qt::LeftButton, {}, stage.pixelOf(100) + QPoint(3, 0));
    ASSERT_TRUE(stage.selection.cursorHz());
    EXPECT_DOUBLE_EQ(*stage.selection.cursorHz(), 100);
    EXPECT_EQ(stage.plot.readout(), QString("100.00 Hz, 4.000 x, 6000.0 r/min, 2.50 mm/s r.m.s."));
}

TEST(Spectrum, ACursorSetElsewhereIsDrawnHereWithItsHarmonicsAndSidebands) {
    SpectrumStage stage;
    stage.plot.setData(spectrum(4000));
    stage.selection.setCursorHz(90);
    EXPECT_EQ(stage.plot.cursorPlacesHz(), std::vector<double>{90});
    stage.plot.setCursorKind(CursorKind::Harmonics);
    EXPECT_DOUBLE_EQ(stage.plot.cursorPlacesHz().at(2), 270);
    stage.plot.setCursorKind(CursorKind::Sidebands);
    const auto places = stage.plot.cursorPlacesHz();  // about 90 Hz by the shaft's 25
    EXPECT_TRUE(std::find(places.begin(), places.end(), 65.0) != places.end());
    EXPECT_TRUE(std::find(places.begin(), places.end(), 115.0) != places.end());
    stage.plot.setSidebandHz(10);
    EXPECT_DOUBLE_EQ(stage.plot.cursorPlacesHz().at(1), 80);
}

TEST(Spectrum, ArrowsStepByALineAndWithShiftToTheNextPeak) {
    SpectrumStage stage;
    auto data = spectrum(4000);
    data->values[300] = 1;
    stage.plot.setData(data);
    stage.selection.setCursorHz(100);
    QTest::keyClick(stage.plot.canvas(), Qt::Key_Right);
    EXPECT_DOUBLE_EQ(*stage.selection.cursorHz(), 100.5);
    QTest::keyClick(stage.plot.canvas(), Qt::Key_Right, Qt::ShiftModifier);
    EXPECT_DOUBLE_EQ(*stage.selection.cursorHz(), 150);
}

TEST(Spectrum, InOrdersThePlacesStayTheSame) {
    SpectrumStage stage;
    auto data = spectrum(4000);
    data->values[200] = 2;
    stage.plot.setData(data);
    stage.plot.setOrders(true);
    settle();
    QTest::mouseClick(stage.plot.canvas(), Qt::LeftButton, {}, stage.pixelOf(4.0));
    ASSERT_TRUE(stage.selection.cursorHz());
    EXPECT_DOUBLE_EQ(*stage.selection.cursorHz(), 100);
}

// Shape, not colour: the same ink for all, and still three different pictures.
TEST(Spectrum, FoundAbsentAndLeftOutDifferInBlackAndWhite) {
    const Theme paper(ThemeChoice::Paper);
    QList<QImage> pictures;
    for (const MarkKind kind : {MarkKind::Found, MarkKind::Absent, MarkKind::LeftOut, MarkKind::Ordinary}) {
        QImage image(20, 20, QImage::Format_RGB32);
        image.fill(Qt::white);
        QPainter painter(&image);
        paintMark(painter, paper, kind, QPointF(10, 16), 12);
        painter.end();
        pictures << image.convertToFormat(QImage::Format_Mono, Qt::ThresholdDither);
    }
    for (int i = 0; i < pictures.size(); ++i)
        for (int j = 0; j < i; ++j)
            EXPECT_NE(pictures[i], pictures[j]) << i << " " << j;
}

TEST(Spectrum, NoneOneAndSevenValuesDoNotCrash) {
    for (const std::size_t count : {0, 1, 7}) {
        SpectrumStage stage;
        stage.plot.setData(spectrum(count));
        stage.plot.setMarks({{10, "BPFO", "", MarkKind::Found, 1}});
        stage.plot.setLogarithmic(true);
        stage.plot.setOrders(true);
        const QPoint middle = stage.plot.canvas()->rect().center();
        QTest::mouseMove(stage.plot.canvas(), middle);
        QTest::mouseClick(stage.plot.canvas(), Qt::LeftButton, {}, middle);
        for (const int key : {Qt::Key_Left, Qt::Key_Right, Qt::Key_Plus, Qt::Key_Home})
            QTest::keyClick(stage.plot.canvas(), Qt::Key(key), Qt::ShiftModifier);
        EXPECT_FALSE(pictureOf(stage.plot).isNull());
        stage.plot.setData(nullptr);
        EXPECT_FALSE(pictureOf(stage.plot).isNull());
    }
}

TEST(Waveform, NoneOneAndSevenSamplesDoNotCrashAndTwoMarksGiveARate) {
    const Theme theme(ThemeChoice::Dark);
    WaveformPlot plot(theme, nullptr);
    plot.resize(800, 250);
    plot.show();
    for (const std::size_t count : {0, 1, 7, 10'000}) {
        auto data = std::make_shared<WaveformData>();
        data->unit = "g";
        data->sampleRateHz = 10'000;
        data->shaftHz = 25;
        data->samples.assign(count, 1.0F);
        plot.setData(data);
        settle();
        QTest::mouseClick(plot.canvas(), Qt::LeftButton, {}, plot.canvas()->rect().center());
        EXPECT_FALSE(pictureOf(plot).isNull());
    }
    const QwtScaleMap map = plot.plot().canvasMap(QwtPlot::xBottom);
    QTest::mouseClick(plot.canvas(), Qt::LeftButton, {}, QPoint(int(map.transform(0.2)), 50));
    QTest::mouseClick(plot.canvas(), Qt::LeftButton, Qt::ShiftModifier, QPoint(int(map.transform(0.7)), 50));
    EXPECT_TRUE(plot.readout().contains(" x, ")) << plot.readout().toStdString();
    EXPECT_TRUE(plot.readout().startsWith("0.")) << plot.readout().toStdString();
}

TEST(Trend, AStoppedRecordingIsNotJoinedAndAGapIsAGap) {
    const Theme theme(ThemeChoice::Light);
    Selection selection;
    TimeAxis axis(selection);
    TrendPlot plot(theme, axis, selection, nullptr);
    auto data = std::make_shared<TrendData>();
    data->unit = "mm/s";
    for (int day = 0; day < 40; ++day)
        if (day < 20 || day >= 30) data->samples.push_back({kStartMs + day * kDayMs, 1, day + 1, day != 10});
    axis.setBounds({toInstant(kStartMs), toInstant(kStartMs + 40 * kDayMs)});
    plot.setData(data);
    EXPECT_EQ(plot.series()->size(), 29u);
    const auto pieces = decimated(
        *plot.series(), 0, plot.series()->size(), [](double x) { return x / kDayMs * 20; },
        [](double y) { return y; });
    EXPECT_EQ(pieces.size(), 3u);  // to the stop, to the gap, after it
}

TEST(Trend, AClickOnAPointChoosesItsRecording) {
    const Theme theme(ThemeChoice::Light);
    Selection selection;
    TimeAxis axis(selection);
    TrendPlot plot(theme, axis, selection, nullptr);
    plot.resize(900, 250);
    plot.show();
    auto data = std::make_shared<TrendData>();
    for (int day = 0; day < 40; ++day)
        data->samples.push_back({kStartMs + day * kDayMs, 1, 100 + day, true});
    axis.setBounds({toInstant(kStartMs), toInstant(kStartMs + 40 * kDayMs)});
    plot.setData(data);
    settle();
    const double x = plot.plot().canvasMap(QwtPlot::xBottom).transform(kStartMs + 12 * kDayMs);
    QTest::mouseClick(plot.canvas(), Qt::LeftButton, {}, QPoint(int(x), 30));
    ASSERT_TRUE(selection.recording());
    EXPECT_EQ(*selection.recording(), 112);
    QTest::keyClick(plot.canvas(), Qt::Key_Right);
    EXPECT_EQ(*selection.recording(), 113);
}

TEST(Readout, HasNoGroupingAndNoExponent) {
    EXPECT_EQ(significant(0.00123456), QString("0.00123"));
    EXPECT_EQ(significant(12345.6), QString("12346"));
    EXPECT_EQ(significant(0), QString("0"));
    EXPECT_EQ(frequencyText(24.73, 0), QString("24.73 Hz, 1483.8 r/min"));
    EXPECT_EQ(valueText(10, "dB over floor", true), QString("20.0 dB over floor"));
}

}  // namespace fettle
