#include <QCoreApplication>
#include <algorithm>

#include "ui/sheet/sheet_sections.h"

namespace fettle {

namespace {

constexpr double kBlankMm = 12, kBlankGapMm = 2, kTickMm = 2.4;
constexpr int kCautionLines = 3;  // a caution is not cut for want of room
constexpr const char* kCommonPractice = "common practice, no source";

QString tr(const char* text) {
    return QCoreApplication::translate("Sheet", text);
}

// Label and empty box in a row, then the next; a new row where the width is used up.
void setBlanks(Column& column, const std::vector<QString>& labels, double indentMm) {
    if (labels.empty()) return;
    SheetPage& page = column.page();
    const TextStyle style{.pt = kLeastPt, .ink = Role::MutedInk, .mostLines = 1};
    const double height = lineHeight(kLeastPt) + 1.0 * kMm, right = column.left() + column.width();
    const double start = column.left() + indentMm * kMm;
    double x = start, y = column.y();
    for (const QString& label : labels) {
        const double most = (right - start) - (kBlankMm + 1) * kMm;
        const double text = std::min(textWidth(label, kLeastPt) + 0.3 * kMm, most);
        if (x > start && x + text + (kBlankMm + 1) * kMm > right) {
            x = start;
            y += height + 0.5 * kMm;
        }
        place(page, label, {x, y + 0.5 * kMm}, text, style);
        page.boxes.push_back({QRectF(x + text + 0.8 * kMm, y, kBlankMm * kMm, height)});
        x += text + (kBlankMm + 0.8 + kBlankGapMm) * kMm;
    }
    column.moveTo(y + height);
    column.gap(1);
}

QString stepText(const SheetStep& step) {
    const QString text = plainText(step.text);
    return step.source.empty() || step.source == kCommonPractice
               ? text
               : tr("%1 (%2)").arg(text, plainText(step.source));
}

void setSteps(Column& column, const SheetContent& sheet) {
    const std::size_t count = std::min(sheet.steps.size(), column.fit().steps);
    for (std::size_t i = 0; i < count; ++i)
        column.marked(QString::number(i + 1) + QLatin1Char('.'), stepText(sheet.steps[i]), 4.5);
    column.more(sheet.steps.size() - count);
    const bool common = std::any_of(sheet.steps.begin(), sheet.steps.end(),
                                    [](const SheetStep& s) { return s.source == kCommonPractice; });
    if (common) column.muted(tr("Steps without a source in brackets are common practice."), 1);
}

bool sameNotes(const std::vector<SheetPart>& parts) {
    return std::all_of(parts.begin(), parts.end(),
                       [&](const SheetPart& part) { return part.note == parts.front().note; });
}

// "bearing 6316, motor DE"
void setPart(Column& column, const SheetPart& part, bool withNote) {
    SheetPage& page = column.page();
    const double tick = kTickMm * kMm, line = lineHeight(column.fit().pt);
    page.boxes.push_back({QRectF(column.left(), column.y() + (line - tick) / 2, tick, tick)});
    QString rest;
    if (!part.place.empty()) rest += QStringLiteral(", ") + plainText(part.place);
    if (withNote) rest += QStringLiteral("; ") + plainText(part.note);
    TextStyle style = column.body();
    style.lead = plainText(part.what);
    if (!part.designation.empty()) style.lead += QLatin1Char(' ') + plainText(part.designation);
    const double indent = 4 * kMm;
    column.moveTo(column.y() +
                  place(page, rest, {column.left() + indent, column.y()}, column.width() - indent, style));
    column.gap(0.3);
    std::vector<QString> labels;
    if (part.designation.empty() && part.blanks.empty()) labels.push_back(tr("designation"));
    for (const std::string& blank : part.blanks)
        if (labels.size() < column.fit().blanks) labels.push_back(plainText(blank));
    setBlanks(column, labels, 4);
}

void setParts(Column& column, const SheetContent& sheet) {
    if (sheet.parts.empty()) return;
    const bool once = sameNotes(sheet.parts);
    const QString note = once ? plainText(sheet.parts.front().note) : QString();
    column.paragraph(note.isEmpty() ? QString(QLatin1Char(' ')) : note,
                     note.isEmpty() ? tr("Parts") : tr("Parts:"));
    const std::size_t count = std::min(sheet.parts.size(), column.fit().parts);
    for (std::size_t i = 0; i < count; ++i)
        setPart(column, sheet.parts[i], !once && !sheet.parts[i].note.empty());
    if (!sheet.leadTime.empty()) column.muted(plainText(sheet.leadTime), 2);
    column.more(sheet.parts.size() - count);
}

}  // namespace

void setWork(Column& column, const SheetContent& sheet) {
    column.heading(tr("What to do"));
    column.paragraph(plainText(sheet.stopAtOnceIf), tr("Stop at once if"));
    column.paragraph(plainText(sheet.untilThen), tr("Until then:"));
    column.paragraph(plainText(sheet.ifLeft), tr("If left:"));
    column.paragraph(plainText(sheet.machineState), tr("Machine:"));
    column.paragraph(plainText(sheet.trades), tr("People:"));
    setSteps(column, sheet);
    setParts(column, sheet);
    if (!column.fit().afterUnderWhy) setAfter(column, sheet);
}

void setAfter(Column& column, const SheetContent& sheet) {
    column.paragraph(plainText(sheet.measureAfter), tr("Measure after the job:"));
    column.paragraph(plainText(sheet.cured), tr("Cured when"));
}

void setCautions(Column& column, const SheetContent& sheet) {
    column.heading(tr("Safety comes first"));
    SheetPage& page = column.page();
    const double top = column.y(), gap = 5 * kMm, width = (column.width() - gap) / 2;
    const std::size_t count = std::min(sheet.cautions.size(), column.fit().cautions);
    double bottom = top;
    for (int side = 0; side < 2; ++side) {
        const std::size_t half = (count + 1) / 2, first = side ? half : 0, last = side ? count : half;
        Column part(page, column.fit(), column.left() + side * (width + gap), width, top);
        if (column.fit().lines > 0) part.limitLines(std::max(column.fit().lines, kCautionLines));
        for (std::size_t i = first; i < last; ++i)
            part.marked(QStringLiteral("–"), plainText(sheet.cautions[i]), 3);
        bottom = std::max(bottom, part.y());
    }
    column.moveTo(bottom);
    column.more(sheet.cautions.size() - count);
    column.gap(0.8);
}

}  // namespace fettle
