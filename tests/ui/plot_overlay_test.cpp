// Cursors, readings, what is laid over a spectrum, figures of a waveform, orbit, and copies: driven in a
// window by object names. common practice, no source, where nothing else is said.
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <qwt_plot.h>
#include <qwt_scale_map.h>
#include <qwt_text.h>

#include <QAction>
#include <QClipboard>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QFile>
#include <QGuiApplication>
#include <QLabel>
#include <QMimeData>
#include <QTableWidget>
#include <QTemporaryDir>
#include <QToolButton>

#include "core/base/units.h"
#include "tests/ui/plot_support.h"
#include "ui/plot/orbit_plot.h"
#include "ui/plot/spectrum_plot.h"
#include "ui/plot/waveform_plot.h"

namespace fettle {

using namespace test;

namespace {

std::shared_ptr<SpectrumData> comb(double carrierHz, double dfHz = 0.5, float floor = 0.01F) {
    auto made = std::make_shared<SpectrumData>();
    made->unit = "mm/s r.m.s.";
    made->dfHz = dfHz;
    made->shaftHz = 25;
    made->bandwidthHz = 1.5 * dfHz;
    made->values.assign(4000, floor);
    for (int h = 1; h <= 5; ++h)
        made->values[std::size_t(std::lround(h * carrierHz / dfHz))] = 1.0F / float(h);
    return made;
}

struct OverlayStage {
    Theme theme{ThemeChoice::Light};
    Selection selection;
    SpectrumPlot plot{theme, selection, QStringLiteral("spectrum"), QStringLiteral("Spectrum"), nullptr};

    OverlayStage() {
        plot.resize(900, 320);
        plot.show();
        settle();
    }
    template <class T>
    T& part(const char* name) {
        T* found = plot.findChild<T*>(QString::fromLatin1(name));
        EXPECT_NE(found, nullptr) << name;
        return *found;
    }
    QString axis(int which) const { return plot.plot().axisTitle(which).text(); }
};

}  // namespace

TEST(Cursors, TheTableHasOrderHertzAmplitudeAndHeightOverTheFloor) {
    OverlayStage stage;
    stage.plot.setData(comb(90));
    stage.selection.setCursorHz(90);
    stage.plot.setCursorKind(CursorKind::Harmonics);
    stage.plot.showTable(true);
    const auto rows = stage.plot.cursorLines();
    ASSERT_GE(rows.size(), 5u);
    EXPECT_DOUBLE_EQ(rows[1].hz, 180);
    EXPECT_DOUBLE_EQ(rows[1].order.value(), 7.2);
    EXPECT_NEAR(rows[1].value, 0.5, 1e-6);
    EXPECT_NEAR(rows[0].overFloorDb, 40, 1e-4);  // 1 over 0.01
    EXPECT_EQ(stage.part<QTableWidget>("spectrumLines").item(1, 2)->text(), QString("180.00"));
    auto& table = stage.part<QTableWidget>("spectrumLines");
    QTest::keyClick(&table, Qt::Key_C, Qt::ControlModifier);
    const QString copied = QGuiApplication::clipboard()->text();
    EXPECT_TRUE(copied.startsWith("line\torder\tHz\tmm/s r.m.s.\tdB over floor\n")) << copied.toStdString();
    EXPECT_TRUE(copied.contains("\n2\t7.200\t180.00\t0.5000\t34.0\n")) << copied.toStdString();
}

TEST(Cursors, TheCarrierMovesByATenthOfALineAndTheCombWithIt) {
    OverlayStage stage;
    stage.plot.setData(comb(90));
    stage.selection.setCursorHz(90);
    stage.plot.setCursorKind(CursorKind::Harmonics);
    QTest::keyClick(stage.plot.canvas(), Qt::Key_Right, Qt::AltModifier);
    EXPECT_NEAR(*stage.selection.cursorHz(), 90.05, 1e-9);
    EXPECT_NEAR(stage.plot.cursorPlacesHz().at(4), 450.25, 1e-9);
    const int before = stage.plot.cursor().harmonics;
    QTest::keyClick(stage.plot.canvas(), Qt::Key_Left, Qt::ControlModifier);
    EXPECT_EQ(stage.plot.cursor().harmonics, before - 1);
    auto& box = stage.part<QDoubleSpinBox>("spectrumCursorCarrier");
    EXPECT_TRUE(box.isVisible());
    box.setValue(91.5);
    EXPECT_NEAR(*stage.selection.cursorHz(), 91.5, 1e-9);
}

TEST(Cursors, TwoCursorsSayWhatLiesBetweenThem) {
    OverlayStage stage;
    stage.plot.setData(comb(90));
    stage.plot.setCursorKind(CursorKind::Two);
    stage.selection.setCursorHz(90);
    stage.plot.setSecondHz(180);
    const QString words = stage.part<QLabel>("spectrumCursorDifference").text();
    EXPECT_TRUE(words.contains("90.00 Hz, 3.600 x, 5400.0 r/min")) << words.toStdString();
    EXPECT_TRUE(words.contains("0.500 (-6.0 dB)")) << words.toStdString();
}

TEST(Cursors, SidebandsTakeASpacingOfTheMachine) {
    OverlayStage stage;
    stage.plot.setData(comb(90));
    stage.plot.setSpacings({{"cage", 9.9}});
    stage.selection.setCursorHz(90);
    stage.plot.setCursorKind(CursorKind::Sidebands);
    stage.part<QDoubleSpinBox>("spectrumCursorSpacing").setValue(9.9);
    EXPECT_NEAR(stage.plot.cursorPlacesHz().at(2), 99.9, 1e-9);
    QTest::keyClick(stage.plot.canvas(), Qt::Key_Right, Qt::ControlModifier);
    EXPECT_NEAR(stage.plot.cursor().spacingHz, 9.95, 1e-9);
}

// A sine of 1 mm/s r.m.s. has a peak of 1.414 and 2.828 peak to peak; 1 mm/s is 0 dB, 1 in/s is 25.4 mm/s.
TEST(Amplitude, TheAxisAlwaysSaysWhatItsNumbersAre) {
    OverlayStage stage;
    stage.plot.setData(comb(90));
    stage.selection.setCursorHz(90);
    const auto value = [&] { return stage.plot.cursorLines().at(0).value; };
    EXPECT_EQ(stage.axis(QwtPlot::yLeft), QString("mm/s r.m.s."));
    stage.plot.setAmplitude({LineReading::Peak, AmplitudeScale::Linear});
    EXPECT_EQ(stage.axis(QwtPlot::yLeft), QString("mm/s peak"));
    EXPECT_NEAR(value(), 1.41421, 1e-4);
    stage.plot.setAmplitude({LineReading::PeakToPeak, AmplitudeScale::Linear});
    EXPECT_NEAR(value(), 2.82843, 1e-4);
    stage.plot.setAmplitude({LineReading::Rms, AmplitudeScale::Decibels});
    EXPECT_EQ(stage.axis(QwtPlot::yLeft), QString("dB re 1 mm/s r.m.s."));
    EXPECT_NEAR(value(), 0, 1e-4);
    EXPECT_NEAR(stage.plot.cursorLines().at(0).overFloorDb, 40, 1e-3);  // however it is read
    stage.plot.setAmplitude({LineReading::Density, AmplitudeScale::Linear});
    EXPECT_EQ(stage.axis(QwtPlot::yLeft), QString("(mm/s)²/Hz"));
    EXPECT_NEAR(value(), 1 / 0.75, 1e-4);
    EXPECT_NEAR(stage.plot.cursorLines().at(0).overFloorDb, 40, 1e-3);
    stage.plot.setAmplitude({});
    Units units;
    units.inches = units.perMinute = true;
    stage.selection.setUnits(units);
    EXPECT_EQ(stage.axis(QwtPlot::yLeft), QString("in/s r.m.s."));
    EXPECT_EQ(stage.axis(QwtPlot::xBottom), QString("r/min"));
    EXPECT_NEAR(value(), 1 / 25.4, 1e-6);
    EXPECT_TRUE(stage.plot.tableText(TableExtent::All).contains("Hz\torder\tmm/s r.m.s.\n"));  // SI
}

// A reference at 24 Hz of a line at 3.6 x stands at 86.4 Hz; drawn at 25 Hz it stands at 90.
TEST(Overlay, AReferenceOfAnotherSpeedIsDrawnAtThisOne) {
    OverlayStage stage;
    stage.plot.setData(comb(90));
    auto other = comb(86.5);
    other->shaftHz = 24;
    for (float& v : other->values)
        v *= 1.5F;
    stage.plot.setReference(std::make_shared<SpectrumReference>(SpectrumReference{"5 May", other}));
    ASSERT_EQ(stage.plot.legend().size(), 1);
    EXPECT_TRUE(stage.plot.legend()[0].contains("5 May")) << stage.plot.legend()[0].toStdString();
    EXPECT_TRUE(stage.plot.legend()[0].contains("at this speed"));
    stage.plot.showHz(88, 92);
    settle();
    const QImage image = pictureOf(*stage.plot.canvas());
    const QwtScaleMap x = stage.plot.plot().canvasMap(QwtPlot::xBottom);
    const QwtScaleMap y = stage.plot.plot().canvasMap(QwtPlot::yLeft);
    const QColor ink = stage.theme.colour(Role::SecondCurve);
    int inked = 0;  // its peak of 1.5 above ours of 1, at 86.5 x 25 / 24 = 90.1 Hz
    for (int dx = -14; dx <= 14; ++dx) {
        const QColor c = QColor::fromRgb(image.pixel(int(x.transform(90.104)) + dx, int(y.transform(1.4))));
        inked += std::abs(c.red() - ink.red()) + std::abs(c.green() - ink.green()) +
                     std::abs(c.blue() - ink.blue()) <
                 120;
    }
    EXPECT_GT(inked, 0);
    stage.plot.setReference(nullptr);
    EXPECT_TRUE(stage.plot.legend().isEmpty());
}

TEST(Overlay, ABandOfAnotherUnitOrAsDensityIsNotDrawn) {
    OverlayStage stage;
    stage.plot.setData(comb(90));
    auto band = std::make_shared<SpectrumBandData>();
    band->name = "sound";
    band->unit = "mm/s r.m.s.";
    band->topHz = 1000;
    band->low.assign(800, 0.005F);
    band->middle.assign(800, 0.01F);
    band->high.assign(800, 0.02F);
    stage.plot.setBand(band);
    EXPECT_EQ(stage.plot.legend(), QStringList("sound"));
    stage.plot.setAmplitude({LineReading::Density, AmplitudeScale::Linear});
    EXPECT_TRUE(stage.plot.legend().isEmpty());
    stage.plot.setAmplitude({});
    auto other = std::make_shared<SpectrumBandData>(*band);
    other->unit = "g r.m.s.";
    stage.plot.setBand(other);
    EXPECT_TRUE(stage.plot.legend().isEmpty());
}

TEST(Overlay, ARangeIsSaidWhereThePointerStandsInIt) {
    OverlayStage stage;
    stage.plot.setData(comb(90));
    stage.plot.setRanges({{"BPFO", "likely 89 to 91 Hz", 87, 93, 89, 91, 1}}, "driver DE");
    settle();
    const int x = int(stage.plot.plot().canvasMap(QwtPlot::xBottom).transform(90));
    QTest::mouseMove(stage.plot.canvas(), QPoint(x, 100));
    settle();
    EXPECT_TRUE(stage.plot.readout().startsWith("BPFO: likely 89 to 91 Hz"))
        << stage.plot.readout().toStdString();
}

TEST(Waveform, FiguresAreThoseOfTheVisiblePartAndZoomGoesToTheMarks) {
    const Theme theme(ThemeChoice::Light);
    WaveformPlot plot(theme, nullptr);
    plot.resize(900, 260);
    plot.show();
    auto data = std::make_shared<WaveformData>();
    data->unit = "g";
    data->sampleRateHz = 1000;
    data->shaftHz = 25;
    for (int i = 0; i < 2000; ++i)  // the first second of peak 1, the second of peak 3, on gravity
        data->samples.push_back(float(1 + (i < 1000 ? 1 : 3) * std::sin(kTwoPi * 50 * i / 1000.0)));
    plot.setData(data);
    plot.setImpact({"BPFO", 1 / 88.3});
    settle();
    const QwtScaleMap map = plot.plot().canvasMap(QwtPlot::xBottom);
    QTest::mouseClick(plot.canvas(), Qt::LeftButton, {}, QPoint(int(map.transform(0.1)), 50));
    QTest::mouseClick(plot.canvas(), Qt::LeftButton, Qt::ShiftModifier, QPoint(int(map.transform(0.9)), 50));
    QTest::keyClick(plot.canvas(), Qt::Key_Z);
    auto& label = *plot.findChild<QLabel*>("waveformFigures");
    ASSERT_TRUE(QTest::qWaitFor([&] { return label.text().contains("0.707 g"); }, 5000))
        << label.text().toStdString();
    EXPECT_TRUE(label.text().contains("kurtosis 1.50")) << label.text().toStdString();  // of a sine: 3 / 2
    EXPECT_TRUE(plot.tableText(TableExtent::AsShown).contains("as shown"));
    EXPECT_EQ(plot.tableText(TableExtent::All).count('\n'), 2003);
}

TEST(OrbitView, ACircleIsACircleAndWhatItCannotSayIsSaid) {
    const Theme theme(ThemeChoice::Dark);
    OrbitPlot plot(theme, nullptr);
    plot.resize(700, 300);
    plot.show();
    auto data = std::make_shared<OrbitData>();
    data->across = "x";
    data->upright = "y";
    for (int i = 0; i <= 360; ++i) {
        data->x.push_back(float(10 * std::cos(i * kTwoPi / 360)));
        data->y.push_back(float(10 * std::sin(i * kTwoPi / 360)));
    }
    plot.setData(data);
    settle();
    const QwtScaleMap x = plot.plot().canvasMap(QwtPlot::xBottom), y = plot.plot().canvasMap(QwtPlot::yLeft);
    const double across = x.transform(10) - x.transform(-10), upright = y.transform(-10) - y.transform(10);
    EXPECT_NEAR(across / upright, 1, 0.03);
    EXPECT_TRUE(plot.limits().contains("No once-per-turn mark"));
    auto marked = std::make_shared<OrbitData>(*data);
    marked->mark = true;
    marked->turning = "The path runs from x towards y.";
    plot.setData(marked);
    EXPECT_FALSE(plot.limits().contains("No once-per-turn mark"));
    EXPECT_TRUE(plot.limits().contains("from x towards y"));
}

TEST(Copy, PictureAndTableGoToTheClipboardByKeyAndSayWhatTheyAre) {
    OverlayStage stage;
    stage.plot.setData(comb(90));
    stage.plot.setSubject("KL-ID-01 M-DE x");
    settle();
    stage.plot.activateWindow();
    stage.plot.canvas()->setFocus();
    QTest::keyClick(stage.plot.canvas(), Qt::Key_C, Qt::ControlModifier | Qt::ShiftModifier);
    const QString text = QGuiApplication::clipboard()->text();
    EXPECT_TRUE(
        text.startsWith("# Spectrum, KL-ID-01 M-DE x\n# as shown: lines 0 to 3999 of 4000\nHz\torder\t"))
        << text.left(120).toStdString();
    QTest::keyClick(stage.plot.canvas(), Qt::Key_C, Qt::ControlModifier);
    const QMimeData* data = QGuiApplication::clipboard()->mimeData();
    ASSERT_TRUE(data->hasImage());
    EXPECT_EQ(data->imageData().value<QImage>().width(), 2 * stage.plot.width());
    EXPECT_TRUE(data->data("image/svg+xml").contains("<svg"));
    stage.plot.showHz(80, 100);
    EXPECT_EQ(stage.plot.tableText(TableExtent::AsShown).count('\n'), 3 + 41);
}

TEST(Copy, EveryFormatIsWrittenWholeAndAnotherEndingOrFolderIsRefused) {
    OverlayStage stage;
    stage.plot.setData(comb(90));
    settle();
    const QTemporaryDir folder;
    const std::pair<const char*, const char*> kinds[] = {
        {"a.png", "\x89PNG"}, {"a.svg", "<?xml"}, {"a.pdf", "%PDF"}, {"a.csv", "# Spectrum"}};
    for (const auto& [name, begins] : kinds) {
        const QString path = folder.filePath(name);
        ASSERT_TRUE(savePlot(stage.plot, path, TableExtent::All)) << name;
        QFile file(path);
        ASSERT_TRUE(file.open(QIODevice::ReadOnly));
        EXPECT_TRUE(file.readAll().startsWith(begins)) << name;
    }
    EXPECT_FALSE(savePlot(stage.plot, folder.filePath("a.bmp"), TableExtent::All));
    const Status refused = savePlot(stage.plot, folder.filePath("no/such/a.png"), TableExtent::All);
    ASSERT_FALSE(refused);
    EXPECT_THAT(refused.error().sentence(), testing::HasSubstr("a.png"));
    EXPECT_EQ(asCsv("a,b\tc\n"), QString("\"a,b\",c\r\n"));
}

TEST(Head, WhatDoesNotFitGoesOnInTheNextRow) {
    OverlayStage stage;
    stage.plot.setData(comb(90));
    for (const int width : {900, 420, 300}) {
        stage.plot.resize(width, 320);
        settle();
        for (const char* name :
             {"spectrumAmplitude", "spectrumOrders", "spectrumCursorKind", "spectrumTable"}) {
            const QWidget& control = stage.part<QWidget>(name);
            EXPECT_LE(control.geometry().right(), width) << name << width;
            EXPECT_GE(control.width(), control.sizeHint().width() - 1) << name << width;
        }
        EXPECT_LT(stage.part<QWidget>("spectrumTable").geometry().bottom(),
                  stage.plot.canvas()->mapTo(&stage.plot, QPoint(0, 0)).y() + 2);
    }
}

}  // namespace fettle
