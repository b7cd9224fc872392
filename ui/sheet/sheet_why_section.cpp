#include <QCoreApplication>
#include <algorithm>

#include "ui/sheet/line_table.h"
#include "ui/sheet/sheet_sections.h"

namespace fettle {

namespace {

constexpr double kBarMm = 11;  // of the bars, both sides of their zero line
constexpr double kFigureGapMm = 6;
constexpr double kMostTablePt = 7.5;  // the columns of the table are made for it

QString tr(const char* text) {
    return QCoreApplication::translate("Sheet", text);
}

QString joinedTexts(const std::vector<std::string>& texts, std::size_t most) {
    QStringList words;
    for (std::size_t i = 0; i < std::min(texts.size(), most); ++i)
        words << plainText(texts[i]);
    return words.join(QStringLiteral("; "));
}

void setList(Column& column, const std::vector<std::string>& texts, const QString& lead, std::size_t most) {
    column.paragraph(joinedTexts(texts, most), lead);
    column.more(texts.size() - std::min(texts.size(), most));
}

void setBlind(Column& column, const SheetContent& sheet, std::size_t most) {
    if (sheet.blind.empty() && sheet.blindNote.empty()) return;
    column.gap(0.6);
    column.heading(tr("What this could not see"));
    const std::size_t count = std::min(sheet.blind.size(), most);
    for (std::size_t i = 0; i < count; ++i) {
        const SheetBlind& blind = sheet.blind[i];
        QString text = plainText(blind.why);
        if (!blind.cure.empty()) text += tr("; cure: %1").arg(plainText(blind.cure));
        column.paragraph(text, plainText(blind.what) + QLatin1Char(':'));
    }
    QString note = plainText(sheet.blindNote);
    if (count < sheet.blind.size()) {
        column.page().shortened = true;
        note = tr("%1 more, in the JSON twin. %2").arg(sheet.blind.size() - count).arg(note);
    }
    column.muted(note, 2);
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
    TextStyle style{.pt = std::clamp(column.fit().pt - 0.5, kLeastPt, kMostTablePt), .mostLines = 1};
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

void setLineTable(Column& column, const SheetContent& sheet, std::size_t mostRows) {
    if (sheet.rows.empty()) return column.muted(plainText(sheet.rowsNote), 3);
    const PrintedTable table = printedTable(sheet.rows, mostRows);
    if (table.cut > 0) column.page().shortened = true;
    const Grid grid(column);
    setTableHead(column, grid);
    const double top = column.y(), most = largestOf(table);
    for (const PrintedRow& row : table.rows)
        setTableRow(column, grid, row, most);
    column.page().rules.push_back(
        {QLineF(grid.zero, top, grid.zero, column.y()), 0.1, Role::MutedInk, false});
    column.gap(0.5);
    column.muted(plainText(sheet.rowsNote), 2);
    column.muted(
        tr("The rows add up to the weight; search is the price of having looked in many places. "
           "dB up: over the floor about the line. Bars: to the right for it, to the left against it."),
        3);
}

}  // namespace

void setWhy(Column& column, const SheetContent& sheet, const WhyFit& fit) {
    if (column.fit().afterUnderWhy) {
        column.heading(tr("After the job"));
        setAfter(column, sheet);
    }
    if (fit.lines > 0) column.limitLines(fit.lines);
    column.heading(tr("Why we think so"));
    column.paragraph(plainText(sheet.verdict));
    column.paragraph(plainText(sheet.howBad), tr("How bad:"));
    column.paragraph(plainText(sheet.limitDate));
    column.paragraph(plainText(sheet.howSure), tr("How sure:"));
    column.paragraph(plainText(sheet.siteRecord));
    column.paragraph(plainText(sheet.provedOn), tr("Proved on:"));
    setLineTable(column, sheet, fit.rows);
    setList(column, sheet.against, tr("Against it:"), fit.few);
    setList(column, sheet.rivals, tr("It could also be:"), fit.few);
    setList(column, sheet.otherFindings, tr("Also found on this machine:"), fit.few);
    setBlind(column, sheet, fit.few);
}

void setFigures(Column& column, const SheetContent& sheet, bool spectrum, double heightMm) {
    SheetPage& page = column.page();
    const bool trend = sheet.trend.days.size() > 1;
    const double top = column.y(), gap = kFigureGapMm * kMm, height = heightMm * kMm;
    const double width = spectrum && trend ? (column.width() - gap) / 2 : column.width();
    double left = column.left(), bottom = top;
    const auto caption = [&](const std::string& text, bool figure, QRectF& place_) {
        const double at = top + (figure ? height + 0.5 * kMm : 0);
        const double wide = figure || (!spectrum && !trend) ? width : column.width();
        if (figure) place_ = QRectF(left, top, width, height);
        bottom = std::max(bottom, at + place(page, plainText(text), {left, at}, wide,
                                             {.pt = kLeastPt, .ink = Role::MutedInk, .mostLines = 2}));
        left += figure ? width + gap : 0;
    };
    if (spectrum) caption(sheet.spectrum.caption, true, page.spectrum);
    if (trend) caption(sheet.trend.caption, true, page.trend);
    column.moveTo(bottom);
    if (!spectrum) column.muted(tr("No spectrum: %1").arg(plainText(sheet.spectrum.caption)), 1);
    if (!trend) column.muted(tr("No trend: fewer than two days were measured."), 1);
    column.gap(1.2);
}

}  // namespace fettle
