#include <algorithm>

#include "ui/sheet/line_table.h"
#include "ui/sheet/sheet_sections.h"
#include "ui/sheet/trend_events.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr double kBarMm = 11;  // of the bars, both sides of their zero line
constexpr double kFigureGapMm = 6;
constexpr int kMostCaptionLines = 6;
constexpr double kTablePt = 8;  // the columns of the table are made for it

// Each on its own, the lead before the first.
void addList(Blocks& blocks, const std::vector<std::string>& texts, const char* lead) {
    for (std::size_t i = 0; i < texts.size(); ++i)
        blocks.push_back([&texts, i, lead](Column& column) {
            column.paragraph(plainText(texts[i]), i == 0 ? tr(lead) : QStringLiteral("–"));
        });
}

void setBlind(Column& column, const SheetBlind& blind) {
    QString text = engineWords(blind.why);
    if (!blind.cure.empty()) text += tr("; cure: %1").arg(engineWords(blind.cure));
    column.paragraph(text, plainText(blind.what) + QLatin1Char(':'));
}

// Right edges of the number columns and where the bars stand; shares of the width.
struct Grid {
    double number, name, nameWidth, expected, found, floor, dban, zero, bar;

    explicit Grid(const Column& column) {
        const double left = column.left(), width = column.width();
        bar = kBarMm / 2 * kMm;
        zero = left + width - bar;
        number = left;
        name = left + 4 * kMm;
        dban = zero - bar - 1 * kMm;
        floor = dban - 12 * kMm;
        found = floor - 9 * kMm;
        expected = found - 12.5 * kMm;
        nameWidth = expected - 11 * kMm - name;
    }
};

void setCell(SheetPage& page, const QString& text, double right, double y, double width, TextStyle style) {
    style.align = Qt::AlignRight;
    style.mostLines = 1;
    if (!text.isEmpty()) place(page, text, {right - width, y}, width, style);
}

void setTableHead(Column& column, const Grid& grid) {
    SheetPage& page = column.page();
    const TextStyle style{.pt = kLeastPt, .ink = Role::MutedInk, .mostLines = 1};
    const double y = column.y();
    place(page, tr("line"), {grid.name, y}, grid.nameWidth, style);
    setCell(page, tr("expected"), grid.expected, y, 14 * kMm, style);
    setCell(page, tr("found Hz"), grid.found, y, 12 * kMm, style);
    setCell(page, tr("dB up"), grid.floor, y, 8.5 * kMm, style);
    setCell(page, tr("decibans"), grid.dban, y, 12 * kMm, style);
    column.moveTo(y + lineHeight(kLeastPt));
    column.gap(0.3);
    column.rule(0.1, Role::MutedInk);
    column.gap(0.4);
}

double largestOf(const PrintedTable& table) {
    double most = 1;
    for (const PrintedRow& row : table.rows)
        if (row.kind != ArithmeticRow::Kind::Weight) most = std::max(most, std::abs(row.printed));
    return most;
}

// For: filled, to the right of zero. Against: open, to the left.
void setBar(Column& column, const Grid& grid, double dban, double most, double height) {
    const double length = grid.bar * dban / most;
    if (std::abs(length) < 0.05 * kMm) return;
    const QRectF bar = QRectF(grid.zero, column.y() + 0.3 * height, length, 0.4 * height).normalized();
    column.page().boxes.push_back({bar, dban > 0});
}

void setTableRow(Column& column, const Grid& grid, const PrintedRow& row, double most) {
    SheetPage& page = column.page();
    TextStyle style{.pt = kTablePt, .mostLines = 1};
    style.bold = row.kind == ArithmeticRow::Kind::Weight;
    if (style.bold) {
        column.gap(0.3);
        column.rule(0.1, Role::MutedInk);
        column.gap(0.2);
    }
    const double y = column.y(), height = lineHeight(style.pt);
    if (row.number) place(page, QString::number(row.number), {grid.number, y}, 3.8 * kMm, style);
    const bool plain = row.expected.isEmpty();
    place(page, row.name, {grid.name, y}, plain ? grid.floor - grid.name : grid.nameWidth, style);
    setCell(page, row.expected, grid.expected, y, 11 * kMm, style);
    setCell(page, row.found, grid.found, y, 12.2 * kMm, style);
    setCell(page, row.overFloor, grid.floor, y, 8.5 * kMm, style);
    setCell(page, row.dban, grid.dban, y, 11 * kMm, style);
    if (!style.bold) setBar(column, grid, row.printed, most, height);
    column.moveTo(y + height);
}

// The zero line of the bars beside one row.
void setZero(Column& column, const Grid& grid, double top) {
    column.page().rules.push_back(
        {QLineF(grid.zero, top, grid.zero, column.y()), 0.1, Role::MutedInk, false});
}

void setTableNotes(Column& column, const SheetContent& sheet) {
    column.gap(0.5);
    column.muted(engineWords(sheet.rowsNote));
    column.muted(
        tr("The rows add up to the weight; search is the price of having looked in many places. "
           "dB up: over the floor about the line. Bars: to the right for it, to the left against it."));
}

}  // namespace

Blocks whyBlocks(const SheetContent& sheet) {
    const auto add = [](Blocks& blocks, const std::string& text, const char* lead) {
        blocks.push_back([&text, lead](Column& column) {
            column.paragraph(engineWords(text), *lead ? tr(lead) : QString());
        });
    };
    Blocks blocks{[&sheet](Column& column) {
        column.heading(tr("Why we think so"));
        column.paragraph(plainText(sheet.verdict));
    }};
    add(blocks, sheet.howBad, QT_TRANSLATE_NOOP("fettle", "How bad:"));
    add(blocks, sheet.limitDate, "");
    add(blocks, sheet.howSure, QT_TRANSLATE_NOOP("fettle", "How sure:"));
    add(blocks, sheet.siteRecord, "");
    add(blocks, sheet.provedOn, QT_TRANSLATE_NOOP("fettle", "Proved on:"));
    addList(blocks, sheet.against, QT_TRANSLATE_NOOP("fettle", "Against it:"));
    addList(blocks, sheet.wouldSpeakAgainst, QT_TRANSLATE_NOOP("fettle", "Would speak against it:"));
    addList(blocks, sheet.rivals, QT_TRANSLATE_NOOP("fettle", "It could also be:"));
    addList(blocks, sheet.otherFindings, QT_TRANSLATE_NOOP("fettle", "Also found on this machine:"));
    return blocks;
}

Blocks lineBlocks(const SheetContent& sheet, std::size_t mostRows) {
    if (sheet.rows.empty())
        return {[&sheet](Column& column) {
            column.heading(tr("Lines"));
            column.paragraph(engineWords(sheet.rowsNote));
        }};
    const auto table = std::make_shared<const PrintedTable>(printedTable(sheet.rows, mostRows));
    Blocks blocks;
    for (std::size_t i = 0; i < table->rows.size(); ++i)
        blocks.push_back([table, i](Column& column) {
            if (table->cut > 0) column.page().shortened = true;
            const Grid grid(column);
            if (i == 0) {
                column.heading(tr("The lines it stands on"));
                setTableHead(column, grid);
            }
            const double top = column.y();
            setTableRow(column, grid, table->rows[i], largestOf(*table));
            setZero(column, grid, top);
        });
    blocks.push_back([&sheet](Column& column) { setTableNotes(column, sheet); });
    return blocks;
}

Blocks blindBlocks(const SheetContent& sheet, std::size_t most) {
    Blocks blocks;
    if (sheet.blind.empty() && sheet.blindNote.empty()) return blocks;
    blocks.push_back([&sheet](Column& column) {
        column.heading(tr("What this could not see"));
        if (!sheet.blind.empty()) setBlind(column, sheet.blind.front());
    });
    const std::size_t shown = std::min(sheet.blind.size(), most);
    for (std::size_t i = 1; i < shown; ++i)
        blocks.push_back([&sheet, i](Column& column) { setBlind(column, sheet.blind[i]); });
    blocks.push_back([&sheet, shown](Column& column) {
        if (shown == sheet.blind.size()) return column.muted(engineWords(sheet.blindNote));
        column.page().shortened = true;
        column.muted(tr("… and %1 more on the page of the machine.").arg(sheet.blind.size() - shown));
    });
    return blocks;
}

namespace {

QString trendCaption(const SheetTrend& trend) {
    const QString events = eventsCaption(trend), caption = plainText(trend.caption);
    return events.isEmpty() ? caption : tr("%1. Marked: %2").arg(caption, events);
}

// A figure of this size with its caption; where it stands goes into `where`.
double setFigure(Column& column, const QString& caption, const QRectF& rect, QRectF& where) {
    where = rect;
    TextStyle style = column.small();
    style.mostLines = kMostCaptionLines;
    const double under = rect.bottom() + 0.6 * kMm;
    return under + place(column.page(), caption, {rect.left(), under}, rect.width(), style) + 0.8 * kMm;
}

}  // namespace

void setFigures(Column& column, const SheetContent& sheet, bool spectrum, double heightMm, bool stacked) {
    SheetPage& page = column.page();
    const bool trend = sheet.trend.days.size() > 1;
    const double gap = kFigureGapMm * kMm, height = heightMm * kMm;
    const bool beside = spectrum && trend && !stacked;
    const double width = beside ? (column.width() - gap) / 2 : column.width();
    QRectF rect(column.left(), column.y(), width, height);
    double bottom = column.y();
    if (spectrum) bottom = setFigure(column, plainText(sheet.spectrum.caption), rect, page.spectrum);
    if (beside)
        rect.moveLeft(column.left() + width + gap);
    else
        rect.moveTop(bottom);
    if (trend) bottom = std::max(bottom, setFigure(column, trendCaption(sheet.trend), rect, page.trend));
    column.moveTo(bottom);
    if (!spectrum) column.muted(tr("No spectrum: %1").arg(plainText(sheet.spectrum.caption)));
    if (!trend) column.muted(tr("No trend: fewer than two days were measured."));
    column.gap(1);
}

}  // namespace fettle
