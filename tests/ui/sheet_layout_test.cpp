// One job, one leaf, whatever the register and the verdict hold: nothing outside the margins, nothing over
// something else, no sentence under 8.5 pt and no letter under 7.5, nothing left out. Sizes and margins:
// common practice, no source.
#include "ui/sheet/sheet_layout.h"

#include <gtest/gtest.h>

#include <QTextLayout>

#include "tests/ui/sheet_made.h"
#include "ui/sheet/line_table.h"
#include "ui/sheet/trend_events.h"

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
            for (SheetPage& page : layOutSheet(content, spectrum, size))
                all.push_back({name, std::move(page)});
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

TEST(SheetLayout, NoLetterIsUnderSevenAndAHalfPointsAndNoSentenceUnderEightAndAHalf) {
    for (const Case& c : cases()) {
        const SheetPage& page = c.page;
        EXPECT_GE(page.bodyPt, 8.5) << c.name;
        for (const PlacedText& text : page.texts)
            EXPECT_GE(text.pt, 7.5) << c.name << ": " << text.text.toStdString();
    }
    const SheetContent sheet = ordinary();
    for (const SheetPage& page : layOutSheet(sheet, true, PaperSize::A4))
        for (const PlacedText& text : page.texts)
            for (const std::string& said : {sheet.untilThen, sheet.stopAtOnceIf, sheet.cured, sheet.verdict,
                                            sheet.steps[0].text, sheet.cautions[0], sheet.blind[0].why})
                EXPECT_TRUE(!text.text.contains(QString::fromStdString(said)) || text.pt >= 8.5) << said;
}

TEST(SheetLayout, AnOrdinaryJobIsWholeOnOneLeaf) {
    for (const PaperSize size : {PaperSize::A4, PaperSize::Letter}) {
        const auto pages = layOutSheet(ordinary(), true, size);
        EXPECT_LE(pages.size(), 2U);
        for (const SheetPage& page : pages) {
            EXPECT_FALSE(page.shortened);
            for (const PlacedText& text : page.texts)
                EXPECT_FALSE(text.text.contains(QChar(0x2026))) << text.text.toStdString();
        }
        for (const char* said :
             {"order it by 28 May 2026.", "bearing 6316, motor DE", "replaces job 9", "stock number",
              "point of isolation", "made on 12 May 2026", "round of 4 May"})
            EXPECT_TRUE(says(pages, QString::fromLatin1(said))) << said;
        EXPECT_FALSE(says(pages, QStringLiteral("driver DE, "))) << "shop words";
        EXPECT_GE(pages.back().spectrum.height(), 40 * kMm);
    }
}

TEST(SheetLayout, TheJobStandsOnTheFirstPageAndTheReasonsOnTheLast) {
    const auto pages = layOutSheet(ordinary(), true, PaperSize::A4);
    ASSERT_EQ(pages.size(), 2U);
    for (const char* job : {"What to do", "What it takes", "Parts", "Safety comes first", "Stop at once if"})
        EXPECT_TRUE(says(pages[0], QString::fromLatin1(job))) << job;
    for (const char* why : {"Why we think so", "decibans", "What this could not see"})
        EXPECT_TRUE(says(pages[1], QString::fromLatin1(why))) << why;
    EXPECT_TRUE(pages[0].spectrum.isNull());
    EXPECT_TRUE(pages[1].disc.isNull());
}

TEST(SheetLayout, EveryPageTellsTheTagAndWhichItIs) {
    for (const SheetContent& content : {ordinary(), crowded()}) {
        const auto pages = layOutSheet(content, true, PaperSize::A4);
        for (std::size_t i = 0; i < pages.size(); ++i)
            EXPECT_TRUE(says(pages[i], QStringLiteral("%1 of %2").arg(i + 1).arg(pages.size())));
    }
    for (const SheetPage& page : layOutSheet(ordinary(), true, PaperSize::A4))
        EXPECT_TRUE(says(page, QStringLiteral("KL-ID-01   ")));
}

// "mm/s" is not cut at its stroke, whatever the width.
TEST(SheetPage, AUnitIsNotBrokenAtItsStroke) {
    const QString text = QStringLiteral(
        "It shakes at 5.6 mm/s; a machine is tripped at 5.6 mm/s at most (1.25 x the C/D limit).");
    for (int width = 300; width < 3000; width += 37) {
        SheetPage page;
        place(page, text, {0, 0}, width, {.pt = 9});
        const auto& layout = *page.texts.front().layout;
        for (int i = 0; i + 1 < layout.lineCount(); ++i) {
            const QTextLine line = layout.lineAt(i);
            const QString shown = text.mid(line.textStart(), line.textLength());
            EXPECT_FALSE(shown.endsWith(u'/') && shown.contains(u' ')) << width << shown.toStdString();
        }
    }
}

// Two marks cannot stand over each other's names: numbers, and a caption that tells them.
TEST(SheetEvents, AreNumberedByDayAndToldInTheCaption) {
    SheetTrend trend;
    const auto at = [](const char* time) { return *parseUtc(time); };
    trend.events = {{at("2026-04-03T07:30:00Z"), "repair"},
                    {at("2026-01-20T07:50:00Z"), "greasing"},
                    {at("2026-04-03T09:30:00Z"), "moved node"}};
    EXPECT_EQ(eventsCaption(trend).toStdString(),
              "1 greasing, 20 January 2026; 2 repair, node moved, 3 April 2026");
    EXPECT_EQ(paperEvents(trend).size(), 2u);
    EXPECT_TRUE(eventsCaption({}).isEmpty());
}

// A look that somebody asks for has no lines and no figures.
TEST(SheetLayout, WhatFitsOnOnePageTakesOne) {
    SheetContent s = ordinary();
    s.rows.clear();
    s.rowsNote = "Nothing measured is claimed here.";
    s.trend.days.clear();
    s.parts.clear();
    EXPECT_EQ(layOutSheet(s, false, PaperSize::A4).size(), 1U);
}

// More pages, but nothing is left out: each of 40 steps, 20 parts, 20 permits, 40 blind spots stands.
TEST(SheetLayout, TheFullestSheetIsStillWhole) {
    SheetContent full = crowded();
    for (std::size_t i = 0; i < full.steps.size(); ++i)
        full.steps[i].text = fmt::format("step-{}. ", i) + full.steps[i].text;
    for (std::size_t i = 0; i < full.blind.size(); ++i)
        full.blind[i].why = fmt::format("why-{}. ", i) + full.blind[i].why;
    for (std::size_t i = 0; i < full.parts.size(); ++i)
        full.parts[i].what = fmt::format("part-{}. ", i);
    full.cautions = cautions();
    const auto pages = layOutSheet(full, true, PaperSize::Letter);
    for (std::size_t i = 0; i < full.steps.size(); ++i)
        EXPECT_TRUE(says(pages, QStringLiteral("step-%1. ").arg(i))) << i;
    for (std::size_t i = 0; i < full.blind.size(); ++i)
        EXPECT_TRUE(says(pages, QStringLiteral("why-%1. ").arg(i))) << i;
    for (std::size_t i = 0; i < full.parts.size(); ++i)
        EXPECT_TRUE(says(pages, QStringLiteral("part-%1.").arg(i))) << i;
    for (const std::string& caution : full.cautions)
        EXPECT_TRUE(says(pages, QString::fromStdString(caution))) << caution;
}

TEST(SheetLayout, MarkupIsShownAsText) {
    SheetContent s = ordinary();
    s.service = "<b>fan</b> & <img src=x onerror=1>";
    s.untilThen = "watch\n\n<script>it</script>\x07\t%1 %2";
    const auto page = layOutSheet(s, true, PaperSize::A4);
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
    const auto page = layOutSheet(ordinary(), false, PaperSize::A4);
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
