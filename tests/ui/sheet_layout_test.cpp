// One job, one page, whatever the register and the verdict hold: nothing outside the margins, nothing over
// something else, nothing under 7 pt, and what had to go is said. 7 pt and the margins: common practice, no
// source.
#include "ui/sheet/sheet_layout.h"

#include <gtest/gtest.h>

#include "tests/ui/sheet_made.h"
#include "ui/sheet/line_table.h"

namespace fettle::sheet_test {
namespace {

struct Case {
    const char* name;
    SheetPage page;
};

SheetContent bare() {
    SheetContent s;
    s.tag = "T";
    return s;
}

SheetContent unbroken() {
    SheetContent s = ordinary();
    const std::string word(2000, 'W');
    for (std::string* text :
         {&s.firstLine, &s.service, &s.verdict, &s.untilThen, &s.cured, &s.asset, &s.faultName})
        *text = word;
    s.parts[0].what = s.parts[0].designation = s.steps[0].text = s.fields[0].label = word;
    s.rows[0].name = word;
    return s;
}

std::vector<Case> madeCases() {
    SheetContent rows = ordinary(), none = ordinary();
    rows.rows = rowsOf(40);
    none.rows.clear();
    none.trend.days.clear();
    none.rowsNote = "This finding has no weight.";
    std::vector<Case> all;
    for (const PaperSize size : {PaperSize::A4, PaperSize::Letter}) {
        const auto add = [&](const char* name, const SheetContent& content, bool spectrum) {
            all.push_back({name, layOutSheet(content, spectrum, size)});
        };
        add("ordinary", ordinary(), true);
        add("no spectrum", ordinary(), false);
        add("bare", bare(), false);
        add("crowded", crowded(), true);
        add("crowded, no spectrum", crowded(), false);
        add("one unbroken word", unbroken(), true);
        add("40 rows", rows, true);
        add("no rows, no figures", none, false);
    }
    return all;
}

const std::vector<Case>& cases() {
    static const std::vector<Case> all = madeCases();
    return all;
}

bool crossing(const QRectF& a, const QRectF& b) {
    const QRectF both = a.intersected(b);
    return both.width() > 2 && both.height() > 2;  // hundredths of a millimetre
}

void expectInside(const QRectF& outer, const QRectF& inner, const QString& what) {
    EXPECT_TRUE(outer.adjusted(-20, -1, 20, 1).contains(inner)) << what.left(60).toStdString();
}

TEST(SheetLayout, EverythingIsInsideTheMargins) {
    for (const Case& c : cases()) {
        SCOPED_TRACE(c.name);
        const SheetPage& page = c.page;
        for (const PlacedText& text : page.texts)
            expectInside(page.area(), text.rect, text.text);
        for (const PlacedBox& box : page.boxes)
            expectInside(page.area(), box.rect, "box");
        for (const QRectF& figure : {page.spectrum, page.trend, page.disc})
            if (!figure.isNull()) expectInside(page.area(), figure, "figure");
        EXPECT_LE(page.bottom, page.area().bottom());
    }
}

TEST(SheetLayout, NoTextStandsOverAnotherOrOverAFigure) {
    for (const Case& c : cases()) {
        SCOPED_TRACE(c.name);
        const SheetPage& page = c.page;
        for (std::size_t i = 0; i < page.texts.size(); ++i) {
            for (std::size_t k = i + 1; k < page.texts.size(); ++k)
                EXPECT_FALSE(crossing(page.texts[i].rect, page.texts[k].rect))
                    << page.texts[i].text.left(50).toStdString() << " / "
                    << page.texts[k].text.left(50).toStdString();
            for (const QRectF& figure : {page.spectrum, page.trend, page.disc})
                EXPECT_FALSE(crossing(page.texts[i].rect, figure))
                    << page.texts[i].text.left(50).toStdString();
        }
    }
}

TEST(SheetLayout, BoxesToWriteInAreApart) {
    for (const Case& c : cases()) {
        SCOPED_TRACE(c.name);
        const SheetPage& page = c.page;
        for (std::size_t i = 0; i < page.boxes.size(); ++i)
            for (std::size_t k = i + 1; k < page.boxes.size(); ++k)
                EXPECT_FALSE(crossing(page.boxes[i].rect, page.boxes[k].rect));
    }
}

TEST(SheetLayout, NoLetterIsUnderSevenPoints) {
    for (const Case& c : cases()) {
        const SheetPage& page = c.page;
        EXPECT_GE(page.bodyPt, 7) << c.name;
        for (const PlacedText& text : page.texts)
            EXPECT_GE(text.pt, 7) << c.name << ": " << text.text.toStdString();
    }
}

TEST(SheetLayout, AnOrdinaryJobIsWhole) {
    const SheetPage page = layOutSheet(ordinary(), true, PaperSize::A4);
    EXPECT_FALSE(page.shortened);
    EXPECT_GE(page.bodyPt, 8);
    EXPECT_FALSE(says(page, QStringLiteral("Shortened")));
    for (const PlacedText& text : page.texts)
        EXPECT_FALSE(text.text.contains(QChar(0x2026))) << text.text.toStdString();
    EXPECT_TRUE(says(page, QStringLiteral("order it by 28 May 2026.")));
    EXPECT_TRUE(says(page, QStringLiteral("bearing 6316, motor DE")));
    EXPECT_TRUE(says(page, QStringLiteral("replaces job 9")));
    EXPECT_GE(page.spectrum.height(), 40 * kMm);
}

TEST(SheetLayout, WhatHadToGoIsSaid) {
    const SheetPage page = layOutSheet(crowded(), true, PaperSize::A4);
    EXPECT_TRUE(page.shortened);
    EXPECT_TRUE(says(page, QStringLiteral("the whole is in the JSON twin")));
    EXPECT_TRUE(says(page, QStringLiteral("more, in the JSON twin")));
}

// A caution is the last thing to be dropped: all that every sheet carries are there on the fullest page.
TEST(SheetLayout, EveryCautionOfAnOrdinarySheetStands) {
    SheetContent full = crowded();
    full.cautions = cautions();
    const SheetPage page = layOutSheet(full, true, PaperSize::Letter);
    for (const std::string& caution : full.cautions)
        EXPECT_TRUE(says(page, QString::fromStdString(caution.substr(0, 25)))) << caution;
}

TEST(SheetLayout, MarkupIsShownAsText) {
    SheetContent s = ordinary();
    s.service = "<b>fan</b> & <img src=x onerror=1>";
    s.untilThen = "watch\n\n<script>it</script>\x07\t%1 %2";
    const SheetPage page = layOutSheet(s, true, PaperSize::A4);
    EXPECT_TRUE(says(page, QStringLiteral("<b>fan</b> & <img src=x onerror=1>")));
    EXPECT_TRUE(says(page, QStringLiteral("watch <script>it</script> %1 %2")));
}

// U+202E turns what follows around: "gnp.exe" would read as "exe.png".
TEST(SheetLayout, DirectionSignsAreTakenOut) {
    EXPECT_EQ(plainText("a\xE2\x80\xAE"
                        "b"),
              QStringLiteral("a b"));
    EXPECT_EQ(plainText(std::string("a\0b", 3)), QStringLiteral("a b"));
}

TEST(SheetLayout, AMissingDesignationIsABoxNotAGuess) {
    const SheetPage page = layOutSheet(ordinary(), false, PaperSize::A4);
    EXPECT_TRUE(says(page, QStringLiteral("confirm on the plate before ordering")));
    EXPECT_TRUE(says(page, QStringLiteral("designation")));
}

TEST(LineTable, ACutTableStillAddsUp) {
    for (const std::size_t most : {1, 4, 10, 39, 40, 100}) {
        const auto rows = rowsOf(40);
        const PrintedTable table = printedTable(rows, most);
        double sum = 0;
        for (const PrintedRow& row : table.rows)
            if (row.kind != ArithmeticRow::Kind::Weight) sum += row.dban.toDouble();
        EXPECT_NEAR(sum, rows.back().printed, 1e-9) << most;
        EXPECT_EQ(table.rows.back().dban.toDouble(), std::round(rows.back().printed * 10) / 10);
    }
}

TEST(LineTable, WhatAddsMostIsKeptUnderItsOwnNumber) {
    auto rows = rowsOf(10);
    rows[7].printed = rows[7].dban = -33.3;
    const PrintedTable table = printedTable(rows, 3);
    ASSERT_EQ(table.rows.size(), 6U);
    EXPECT_EQ(table.cut, 7);
    EXPECT_EQ(table.rows[0].number, 1);
    EXPECT_EQ(table.rows[1].number, 2);
    EXPECT_EQ(table.rows[2].number, 8);
    EXPECT_EQ(table.rows[2].dban, QStringLiteral("-33.3"));
    EXPECT_EQ(lineNumber(rows, "8 x BPFO"), 8);
    EXPECT_EQ(lineNumber(rows, "weight"), 0);
}

TEST(LineTable, NoMinusZero) {
    EXPECT_EQ(dbanText(-0.04), QStringLiteral("0.0"));
    EXPECT_EQ(dbanText(-0.06), QStringLiteral("-0.1"));
}

}  // namespace
}  // namespace fettle::sheet_test
