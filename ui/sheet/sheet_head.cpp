#include <QFontMetricsF>
#include <algorithm>

#include "ui/model/words.h"
#include "ui/sheet/sheet_sections.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr int kMostDateLines = 8, kMostHeadLines = 6;
constexpr double kHeadDiscMm = 11, kWordMm = 15, kDiscColumnMm = 18, kHeadGapMm = 3;

QString joinedWords(std::initializer_list<std::string> parts) {
    QStringList words;
    for (const std::string& part : parts)
        if (!part.empty()) words << engineWords(part);
    return words.join(QStringLiteral(", "));
}

// "as of the round of ...; made on ..."
QString dayLabel(const SheetContent& sheet) {
    return tr("as of the %1; made on %2").arg(plainText(sheet.round), dateText(sheet.madeOn));
}

void setTopLine(Column& column, const SheetContent& sheet) {
    const TextStyle style{.pt = 7.5, .ink = Role::MutedInk, .mostLines = 1};
    TextStyle right = style;
    right.align = Qt::AlignRight;
    SheetPage& page = column.page();
    const double third = 0.36 * column.width();
    place(page, tr("Findings sheet, %1").arg(plainText(sheet.site)), {column.left(), column.y()}, third,
          style);
    place(page, dayLabel(sheet), {column.left() + third, column.y()}, column.width() - third, right);
    column.moveTo(column.y() + lineHeight(style.pt));
    column.gap(1);
    column.rule(0.4);
    column.gap(2);
}

// The largest size in which the first line takes no more than two lines.
TextStyle firstLineStyle(const QString& text, double width) {
    for (const double pt : {16.0, 14.5, 13.0, 12.0})
        if (textWidth(text, pt, true) < 1.85 * width) return {.pt = pt, .bold = true, .mostLines = 2};
    return {.pt = 12, .bold = true, .mostLines = 6};
}

// As large as it goes under the disc; other languages have longer words.
TextStyle wordStyle(const QString& word) {
    TextStyle style{.pt = 10, .bold = true, .align = Qt::AlignHCenter, .mostLines = 1};
    while (style.pt > kLeastPt && textWidth(word, style.pt, true) > kWordMm * kMm)
        style.pt -= 0.5;
    return style;
}

void setFirstLine(Column& column, const SheetContent& sheet) {
    SheetPage& page = column.page();
    const double top = column.y(), left = column.left() + kDiscColumnMm * kMm;
    const double width = column.width() - kDiscColumnMm * kMm;
    page.urgency = urgencyOf(sheet.urgency);
    page.disc = QRectF(column.left() + (kWordMm - kHeadDiscMm) / 2 * kMm, top + 0.5 * kMm, kHeadDiscMm * kMm,
                       kHeadDiscMm * kMm);
    const double wordTop = page.disc.bottom() + 0.6 * kMm;
    const QString word = urgencyWord(page.urgency);
    const double wordHeight = place(page, word, {column.left(), wordTop}, kWordMm * kMm, wordStyle(word));
    const QString text = plainText(sheet.firstLine);
    double y = top + place(page, text, {left, top}, width, firstLineStyle(text, width)) + 0.8 * kMm;
    y += place(page, engineWords(sheet.urgencyWords), {left, y}, width,
               {.pt = 9, .ink = Role::MutedInk, .mostLines = 3});
    y += place(page, plainText(sheet.ageNote), {left, y}, width, {.pt = 9, .bold = true, .mostLines = 3});
    column.moveTo(std::max(y, wordTop + wordHeight));
    column.gap(2);
}

struct Cell {
    QString label, lead, value;
    double share = 1;    // of the width
    bool blank = false;  // a box to fill in under the value
};

// Label over value, side by side over the whole width.
void setCells(Column& column, const std::vector<Cell>& cells, int mostLines) {
    double shares = 0, bottom = column.y(), left = column.left();
    for (const Cell& cell : cells)
        shares += cell.share;
    const double gap = kHeadGapMm * kMm;
    const double width = column.width() + gap;
    for (const Cell& cell : cells) {
        const double cellWidth = width * cell.share / shares - gap;
        double y = column.y();
        y += place(column.page(), cell.label, {left, y}, cellWidth,
                   {.pt = kLeastPt, .ink = Role::MutedInk, .mostLines = 1});
        TextStyle style{.pt = column.fit().pt, .mostLines = mostLines, .lead = cell.lead};
        y += place(column.page(), cell.value, {left, y}, cellWidth, style);
        if (cell.blank) {
            column.page().boxes.push_back({QRectF(left, y + 0.4 * kMm, cellWidth, 5 * kMm)});
            y += 5.4 * kMm;
        }
        bottom = std::max(bottom, y);
        left += cellWidth + gap;
    }
    column.moveTo(bottom);
}

// The spelled date in bold before the rest of its words; all that tells that it has passed.
Cell dateCell(const SheetDate& date) {
    Cell cell{engineWords(date.label), {}, engineWords(date.words), 1, false};
    QString spelled = date.date.empty() ? QString() : dateText(date.date);
    if (date.overdue) spelled = cell.value.section(QLatin1Char(';'), 0, 0);
    if (!spelled.isEmpty() && cell.value.startsWith(spelled)) {
        cell.lead = spelled;
        cell.value = cell.value.mid(spelled.size());
    }
    cell.blank = date.date.empty() && date.label == "next planned stop";
    return cell;
}

void setDates(Column& column, const SheetContent& sheet) {
    std::vector<Cell> cells;
    for (const SheetDate& date : sheet.dates)
        cells.push_back(dateCell(date));
    cells.push_back({tr("priority of the site"), {}, plainText(sheet.priority), 1, false});
    column.rule();
    column.gap(0.8);
    setCells(column, cells, kMostDateLines);
    column.gap(1.2);
}

void setIdentity(Column& column, const SheetContent& sheet) {
    const QString finding = joinedWords({sheet.faultName, sheet.atWords});
    const QString which = sheet.ofFindings > 1
                              ? tr("finding, %1 of %2").arg(sheet.number).arg(sheet.ofFindings)
                              : tr("finding");
    const std::vector<Cell> cells = {
        {tr("machine"), plainText(sheet.tag), QStringLiteral("  ") + plainText(sheet.service), 1.5, false},
        {tr("asset number"), {}, plainText(sheet.asset), 0.7, sheet.asset.empty()},
        {tr("place"), {}, plainText(sheet.area.empty() ? sheet.site : sheet.area), 0.8, false},
        {which, {}, finding, 1.4, false},
        {tr("job"), {}, engineWords(sheet.job), 1, false}};
    column.rule();
    column.gap(0.8);
    setCells(column, cells, kMostHeadLines);
    column.gap(1.6);
}

}  // namespace

void setHead(Column& column, const SheetContent& sheet) {
    setTopLine(column, sheet);
    setFirstLine(column, sheet);
    setDates(column, sheet);
    setIdentity(column, sheet);
}

void setLaterHead(Column& column, const SheetContent& sheet) {
    SheetPage& page = column.page();
    TextStyle style{.pt = kLeastPt, .ink = Role::MutedInk, .mostLines = 1};
    column.moveTo(column.y() +
                  place(page, dayLabel(sheet), {column.left(), column.y()}, column.width(), style));
    style = {.pt = 10, .bold = true, .mostLines = 2};
    column.moveTo(column.y() + place(page, joinedWords({sheet.tag, sheet.service}),
                                     {column.left(), column.y()}, column.width(), style));
    style = {.pt = column.fit().pt, .mostLines = 2};
    column.moveTo(column.y() + place(page, plainText(sheet.firstLine), {column.left(), column.y()},
                                     column.width(), style));
    column.gap(1.5);
}

void setFooter(SheetPage& page, const SheetContent& sheet) {
    const QRectF area = page.area();
    const double height = lineHeight(kLeastPt), y = area.bottom() - height, right = 0.3 * area.width();
    TextStyle style{.pt = kLeastPt, .ink = Role::MutedInk, .mostLines = 1};
    QString text = page.shortened ? tr("Shortened (…): the whole is in the JSON twin. ") : QString();
    text += tr("Made on %1 by Fettle %2.").arg(dateText(sheet.madeOn), plainText(sheet.engine));
    place(page, text, {area.left(), y}, area.width() - right, style);
    style.align = Qt::AlignRight;
    const QString tag =
        QFontMetricsF(sheetFont(kLeastPt)).elidedText(plainText(sheet.tag), Qt::ElideRight, 0.6 * right);
    place(page, tr("%1   %2 of %3").arg(tag, QString::number(page.number), QString::number(page.of)),
          {area.right() - right, y}, right, style);
}

}  // namespace fettle
