#include <QCoreApplication>
#include <algorithm>

#include "ui/sheet/sheet_sections.h"

namespace fettle {

namespace {

constexpr int kAcross = 3;
constexpr double kGapMm = 3, kTickMm = 2.4;

QString tr(const char* text) {
    return QCoreApplication::translate("Sheet", text);
}

// A box to write in, its label over it.
void setFree(Column& column, const SheetField& field, int at) {
    const double gap = kGapMm * kMm, width = (column.width() + gap) / kAcross - gap;
    const double left = column.left() + at * (width + gap), label = lineHeight(kLeastPt);
    place(column.page(), plainText(field.label), {left, column.y()}, width,
          {.pt = kLeastPt, .ink = Role::MutedInk, .mostLines = 1});
    column.page().boxes.push_back({QRectF(left, column.y() + label, width, column.fit().boxMm * kMm)});
}

// Label, then a small box before each choice; returns where the next may begin.
void setChoices(Column& column, const SheetField& field, double& x) {
    SheetPage& page = column.page();
    const double pt = std::max(kLeastPt, column.fit().pt - 0.5), line = lineHeight(pt), tick = kTickMm * kMm;
    const double right = column.left() + column.width();
    const auto wrap = [&](double width) {
        if (x > column.left() && x + width > right) {
            x = column.left();
            column.moveTo(column.y() + line + 0.6 * kMm);
        }
    };
    const QString label = plainText(field.label) + QLatin1Char(':');
    double whole = textWidth(label, pt, true) + 2 * kMm;
    for (const std::string& choice : field.choices)
        whole += textWidth(plainText(choice), pt) + tick + 4 * kMm;
    wrap(whole);
    const double labelWidth = std::min(textWidth(label, pt, true) + 0.3 * kMm, column.width() / 2);
    place(page, label, {x, column.y()}, labelWidth, {.pt = pt, .bold = true, .mostLines = 1});
    x += labelWidth + 1.7 * kMm;
    for (const std::string& choice : field.choices) {
        const QString text = plainText(choice);
        const double width = std::min(textWidth(text, pt) + 0.3 * kMm, column.width() - tick - kMm);
        wrap(tick + kMm + width);
        page.boxes.push_back({QRectF(x, column.y() + (line - tick) / 2, tick, tick)});
        place(page, text, {x + tick + kMm, column.y()}, width, {.pt = pt, .mostLines = 1});
        x += tick + width + 4 * kMm;
    }
    x += 3 * kMm;
}

}  // namespace

void setReturn(Column& column, const SheetContent& sheet) {
    column.rule(0.25, Role::Ink, true);
    column.gap(0.8);
    column.moveTo(column.y() + place(column.page(), tr("Send back after the job, as found"),
                                     {column.left(), column.y()}, column.width(),
                                     {.pt = column.fit().pt + 0.5, .bold = true, .mostLines = 1}));
    column.gap(0.4);
    const std::size_t count = std::min(sheet.fields.size(), column.fit().fields);
    const double choiceLine = lineHeight(std::max(kLeastPt, column.fit().pt - 0.5)) + 0.8 * kMm;
    const double freeRow = lineHeight(kLeastPt) + (column.fit().boxMm + 0.8) * kMm;
    int free = 0;
    double x = column.left();
    bool choosing = false;
    for (std::size_t i = 0; i < count; ++i) {
        const SheetField& field = sheet.fields[i];
        if (field.choices.empty()) {
            if (choosing) column.moveTo(column.y() + choiceLine);
            if (!choosing && free == kAcross) column.moveTo(column.y() + freeRow);
            if (choosing || free == kAcross) free = 0;
            choosing = false;
            setFree(column, field, free++);
        } else {
            if (free > 0) column.moveTo(column.y() + freeRow);
            if (!choosing) x = column.left();
            free = 0;
            choosing = true;
            setChoices(column, field, x);
        }
    }
    column.moveTo(column.y() + (choosing ? choiceLine : free > 0 ? freeRow : 0));
    column.more(sheet.fields.size() - count);
}

}  // namespace fettle
