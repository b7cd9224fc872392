// Weeks of spectra as numbers: every spectrum a row, every line a column, in SI and as it was recorded; what
// is shown or all; both pictures give the same. common practice, no source.
#include <gtest/gtest.h>

#include <QBuffer>
#include <QFile>
#include <QTemporaryDir>

#include "tests/ui/plot_support.h"
#include "ui/plot/cascade.h"
#include "ui/plot/waterfall.h"
#include "ui/plot/waterfall_table.h"

namespace fettle {

using namespace test;

namespace {

struct TableStage {
    Theme theme{ThemeChoice::Light};
    Selection selection;
    TimeAxis axis{selection};
    QWidget window;
    Waterfall* waterfall = new Waterfall(theme, axis, selection, &window);
    Cascade* cascade = new Cascade(theme, axis, selection, waterfall->look(), &window);

    void show(std::vector<WaterfallRow> rows, bool decibels = false) {
        axis.setBounds({toInstant(rows.front().ms), toInstant(rows.back().ms)});
        waterfall->setSubject("KL-ID-01 M-DE x");
        waterfall->setData(WaterfallData::make(
            std::move(rows), {false, decibels ? "dB over floor" : "mm/s r.m.s.", decibels}));
    }
};

QList<QStringList> rowsOf(const QString& text, QChar separator = u'\t') {
    QList<QStringList> rows;
    for (const QString& line : text.split(u'\n', Qt::SkipEmptyParts))
        if (!line.startsWith(u'#') && !line.startsWith(u'"')) rows << line.split(separator);
    return rows;
}

}  // namespace

TEST(WaterfallTable, HoldsEverySpectrumAndEveryLineWithUnits) {
    TableStage stage;
    auto rows = dailyRows(3, 4);
    rows[1].lines[2] = 1.25F;
    rows[1].shaftHz = 0;
    stage.show(rows);
    stage.selection.setUnits({true, true, true});  // what is read in other units is kept in SI
    const QString text = stage.waterfall->tableText(TableExtent::All);
    EXPECT_TRUE(text.startsWith("# Waterfall, KL-ID-01 M-DE x\n# all data\n")) << text.toStdString();
    EXPECT_TRUE(text.contains("mm/s r.m.s."));
    const auto table = rowsOf(text);
    ASSERT_EQ(table.size(), 1 + 3);
    EXPECT_EQ(table[0], QStringList({"time UTC", "shaft Hz", "125 Hz", "375 Hz", "625 Hz", "875 Hz"}));
    EXPECT_EQ(table[1], QStringList({"2026-01-05T00:00:00Z", "25", "0.01", "0.01", "0.01", "0.01"}));
    EXPECT_EQ(table[2], QStringList({"2026-01-06T00:00:00Z", "", "0.01", "0.01", "1.25", "0.01"}));
}

// 20 lg of an amplitude ratio, IEC 60027-3.
TEST(WaterfallTable, RatiosAreDecibelsAndGapsAreEmpty) {
    TableStage stage;
    auto rows = dailyRows(2, 4, 10);
    rows[0].topHz = 500;  // ends lower: nothing above
    stage.show(rows, true);
    const auto table = rowsOf(stage.waterfall->tableText(TableExtent::All));
    ASSERT_EQ(table.size(), 1 + 2);
    EXPECT_EQ(table[2].mid(2), QStringList({"20", "20", "20", "20"}));
    EXPECT_EQ(table[1].last(), "");
}

TEST(WaterfallTable, AsShownIsThePartOfBothAxes) {
    TableStage stage;
    stage.show(dailyRows(10, 100));
    stage.axis.show(kStartMs + 2.6 * kDayMs, kStartMs + 5.4 * kDayMs);
    const auto shown = rowsOf(stage.waterfall->tableText(TableExtent::AsShown));
    EXPECT_GE(shown.size(), 1 + 3);
    EXPECT_LT(shown.size(), 1 + 6);
    EXPECT_EQ(shown, rowsOf(stage.cascade->tableText(TableExtent::AsShown)));
    EXPECT_EQ(rowsOf(stage.cascade->tableText(TableExtent::All)).size(), 1 + 10);
}

TEST(WaterfallTable, WhatIsTooLongForAClipboardIsWrittenBesideTheWindow) {
    TableStage stage;
    stage.show(dailyRows(5000, 500));
    EXPECT_TRUE(stage.waterfall->hasTable());
    EXPECT_TRUE(stage.waterfall->tableText(TableExtent::All).isEmpty());
    QTemporaryDir folder;
    const QString path = folder.filePath("waterfall.csv");
    stage.waterfall->saveTo(path, TableExtent::All);
    EXPECT_TRUE(stage.waterfall->readout().contains("Saving")) << "the window waited for it";
    ASSERT_TRUE(QTest::qWaitFor([&] { return stage.waterfall->readout().contains("Saved"); }, 30000));
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const auto table = rowsOf(QString::fromUtf8(file.readAll()), u',');
    ASSERT_EQ(table.size(), 1 + 5000);
    EXPECT_EQ(table[5000].size(), 2 + 500);
    EXPECT_EQ(table[0][2], "1 Hz");
    stage.waterfall->saveTo(folder.filePath("no/such/folder.csv"), TableExtent::All);
    EXPECT_TRUE(QTest::qWaitFor([&] { return stage.waterfall->readout().contains("folder.csv"); }, 30000));
}

TEST(WaterfallTable, WithoutSpectraThereIsNone) {
    TableStage stage;
    EXPECT_FALSE(stage.waterfall->hasTable());
    EXPECT_FALSE(stage.waterfall->tableWriter(TableExtent::All));
    EXPECT_TRUE(stage.cascade->tableText(TableExtent::AsShown).isEmpty());
}

}  // namespace fettle
