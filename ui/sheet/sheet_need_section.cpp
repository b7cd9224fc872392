#include <algorithm>

#include "ui/sheet/sheet_sections.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr double kBlankMm = 11, kBlankGapMm = 1.5, kTickMm = 2.6, kIsolationMm = 5;

QString joinedTexts(const std::vector<std::string>& texts) {
    QStringList words;
    for (const std::string& text : texts)
        words << plainText(text);
    return words.join(QStringLiteral("; "));
}

QString hoursText(const SheetNeed& need) {
    if (!need.hoursLow || !need.hoursHigh) return {};
    return tr("%1 to %2, the work itself").arg(*need.hoursLow).arg(*need.hoursHigh);
}

void setPeople(Column& column, const SheetNeed& need) {
    QString who = plainText(need.trades);
    if (need.heads) who = tr("%1 (%2)").arg(*need.heads).arg(who);
    column.paragraph(who, tr("People:"));
    const QString hours = hoursText(need);
    column.paragraph(hours, tr("Hours:"));
    std::vector<QString> unknown;
    if (!need.heads) unknown.push_back(tr("number of people"));
    if (hours.isEmpty()) unknown.push_back(tr("hours"));
    setBlanks(column, unknown, 0);
}

// A small box before each: the site ticks what holds.
void setPermits(Column& column, const std::vector<std::string>& permits) {
    if (permits.empty()) return;
    column.paragraph(tr("the site decides"), tr("Likely permits:"));
    const double indent = 4 * kMm, line = lineHeight(column.fit().pt), tick = kTickMm * kMm;
    const double right = column.left() + column.width();
    double x = column.left(), y = column.y(), bottom = y;
    for (const std::string& permit : permits) {
        const QString text = engineWords(permit);
        const double width = indent + textWidth(text, column.fit().pt) + 1 * kMm;
        if (x > column.left() && x + width > right) x = column.left(), y = bottom;
        column.page().boxes.push_back({QRectF(x, y + (line - tick) / 2, tick, tick)});
        bottom = std::max(bottom, y + 0.3 * kMm +
                                      place(column.page(), text, {x + indent, y},
                                            std::min(width, right - x) - indent, column.body()));
        x += width + 2 * kMm;
    }
    column.moveTo(bottom);
    column.gap(0.6);
}

void setIsolation(Column& column, const SheetIsolation& isolation) {
    if (isolation.rows <= 0 || isolation.columns.empty()) return;
    const double gap = 1 * kMm, height = kIsolationMm * kMm, top = column.y();
    const auto count = double(isolation.columns.size());
    const double width = (column.width() - gap * (count - 1)) / count;
    double left = column.left();
    for (const std::string& name : isolation.columns) {
        place(column.page(), engineWords(name), {left, top}, width,
              {.pt = kLeastPt, .ink = Role::MutedInk, .mostLines = 1});
        double y = top + lineHeight(kLeastPt) + 0.3 * kMm;
        for (int row = 0; row < isolation.rows; ++row, y += height + 0.6 * kMm)
            column.page().boxes.push_back({QRectF(left, y, width, height)});
        left += width + gap;
    }
    column.moveTo(top + lineHeight(kLeastPt) + 0.3 * kMm + isolation.rows * (height + 0.6 * kMm));
    column.gap(0.4);
    column.muted(engineWords(isolation.note));
}

}  // namespace

void setBlanks(Column& column, const std::vector<QString>& labels, double indentMm) {
    if (labels.empty()) return;
    SheetPage& page = column.page();
    const TextStyle style{.pt = kLeastPt, .ink = Role::MutedInk, .mostLines = 1};
    const double height = lineHeight(kLeastPt) + 1.4 * kMm, right = column.left() + column.width();
    const double start = column.left() + indentMm * kMm;
    double x = start, y = column.y();
    for (const QString& label : labels) {
        const double most = (right - start) - (kBlankMm + 1) * kMm;
        const double text = std::min(textWidth(label, kLeastPt) + 0.3 * kMm, most);
        if (x > start && x + text + (kBlankMm + 1) * kMm > right) {
            x = start;
            y += height + 0.6 * kMm;
        }
        place(page, label, {x, y + 0.7 * kMm}, text, style);
        page.boxes.push_back({QRectF(x + text + 0.8 * kMm, y, kBlankMm * kMm, height)});
        x += text + (kBlankMm + 0.8 + kBlankGapMm) * kMm;
    }
    column.moveTo(y + height);
    column.gap(0.8);
}

Blocks needBlocks(const SheetContent& sheet) {
    const SheetNeed& need = sheet.need;
    return {[&need](Column& column) {
                column.heading(tr("What it takes"));
                column.paragraph(plainText(need.machineState), tr("Machine:"));
            },
            [&need](Column& column) { setPeople(column, need); },
            [&need](Column& column) {
                column.paragraph(joinedTexts(need.tools), tr("Tools:"));
                column.paragraph(plainText(need.lifting), tr("Lifting:"));
                column.paragraph(plainText(need.access), tr("Access:"));
            },
            [&need](Column& column) {
                setPermits(column, need.permits);
                column.muted(engineWords(need.note));
            },
            [&sheet](Column& column) { setIsolation(column, sheet.isolation); }};
}

}  // namespace fettle
