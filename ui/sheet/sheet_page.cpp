#include "ui/sheet/sheet_page.h"

#include <QFontDatabase>
#include <QFontMetricsF>
#include <QTextLayout>
#include <algorithm>
#include <cmath>

#include "ui/model/engine_words.h"

namespace fettle {

namespace {

constexpr qsizetype kMostLetters = 4000;
constexpr double kNoLigatures =
    0.05;  // units; spaced letters are not joined, so that a search finds "fitter"

// Narrow faces with equal digits first: one page has to hold a job.
QString sheetFamily() {
    static const QString family = [] {
        for (const char* name : {"DejaVu Sans Condensed", "Noto Sans", "Liberation Sans"})
            if (QFontDatabase::hasFamily(QString::fromLatin1(name))) return QString::fromLatin1(name);
        return withTabularFigures(QFont()).family();
    }();
    return family;
}

bool isHarmful(QChar c) {
    switch (c.category()) {
        case QChar::Other_Control:
        case QChar::Other_Format:
        case QChar::Other_PrivateUse:
        case QChar::Separator_Line:
        case QChar::Separator_Paragraph:
            return true;
        default:
            return false;
    }
}

QList<QTextLayout::FormatRange> leadFormat(const TextStyle& style) {
    if (style.lead.isEmpty()) return {};
    QTextLayout::FormatRange range;
    range.start = 0;
    range.length = int(style.lead.size());
    range.format.setFontWeight(QFont::Bold);
    return {range};
}

// "mm/s" and "A/B" stay whole: a line that would end in a stroke ends before their word.
void keepStrokes(QTextLine& line, const QString& text, double width) {
    const qsizetype end = line.textStart() + line.textLength();
    if (end >= text.size() || text[end - 1] != QLatin1Char('/')) return;
    const qsizetype space = text.lastIndexOf(QLatin1Char(' '), end - 1);
    if (space > line.textStart()) line.setNumColumns(int(space + 1 - line.textStart()), width);
}

void breakLines(QTextLayout& layout, const TextStyle& style, double width) {
    QTextOption option(style.align);
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    option.setUseDesignMetrics(true);
    layout.setTextOption(option);
    layout.setFormats(leadFormat(style));
    layout.beginLayout();
    double y = 0;
    for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
        line.setLineWidth(width);
        keepStrokes(line, layout.text(), width);
        line.setPosition({0, y});
        y += lineHeight(style.pt);
    }
    layout.endLayout();
}

std::shared_ptr<QTextLayout> laidOut(const QString& text, const TextStyle& style, double width) {
    auto layout = std::make_shared<QTextLayout>(text, sheetFont(style.pt, style.bold));
    breakLines(*layout, style, width);
    return layout;
}

// The text up to the last line allowed, which ends in an ellipsis.
QString cutToLines(const QTextLayout& layout, const TextStyle& style, double width) {
    const QTextLine last = layout.lineAt(style.mostLines - 1);
    const bool bold = style.bold || last.textStart() < style.lead.size();
    const QFontMetricsF metrics(sheetFont(style.pt, bold));
    const QString rest = layout.text().mid(last.textStart());
    return layout.text().left(last.textStart()) + metrics.elidedText(rest, Qt::ElideRight, 0.97 * width);
}

QRectF coveredBy(const QTextLayout& layout, const QPointF& at, double pt) {
    QRectF covered;
    for (int i = 0; i < layout.lineCount(); ++i) {
        const QTextLine line = layout.lineAt(i);
        const QRectF natural = line.naturalTextRect();
        covered |= QRectF(natural.left(), line.y(), natural.width(), lineHeight(pt));
    }
    return covered.translated(at);
}

}  // namespace

QSizeF paperMm(PaperSize size) {
    return size == PaperSize::A4 ? QSizeF(210, 297) : QSizeF(215.9, 279.4);
}

QRectF SheetPage::paper() const {
    return {QPointF(0, 0), paperMm(size) * kMm};
}

QRectF SheetPage::area() const {
    const double margin = kMarginMm * kMm;
    return paper().adjusted(margin, margin, -margin, -margin);
}

QFont sheetFont(double pt, bool bold) {
    QFont font(sheetFamily());
    font.setPixelSize(int(std::lround(std::max(pt, kLeastPt) * kUnitsPerInch / 72)));
    font.setBold(bold);
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setLetterSpacing(QFont::AbsoluteSpacing, kNoLigatures);
    return font;
}

double lineHeight(double pt) {
    return std::max(pt, kLeastPt) * kUnitsPerInch / 72 * 1.2;
}

double textWidth(const QString& text, double pt, bool bold) {
    return QFontMetricsF(sheetFont(pt, bold)).horizontalAdvance(text);
}

QString plainText(const std::string& text) {
    QString plain = QString::fromStdString(text).left(kMostLetters);
    for (QChar& c : plain)
        if (isHarmful(c)) c = QLatin1Char(' ');
    return plain.simplified();
}

QString engineWords(const std::string& text) {
    return plainText(engineText(text).toStdString());
}

double place(SheetPage& page, const QString& text, const QPointF& at, double width, const TextStyle& style) {
    const QString whole = style.lead + text;
    if (whole.isEmpty()) return 0;
    auto layout = laidOut(whole, style, width);
    if (style.mostLines > 0 && layout->lineCount() > style.mostLines) {
        page.shortened = true;
        layout = laidOut(cutToLines(*layout, style, width), style, width);
    }
    const double height = layout->lineCount() * lineHeight(style.pt);
    page.texts.push_back({layout, at, coveredBy(*layout, at, style.pt), layout->text(), style.pt, style.ink});
    return height;
}

}  // namespace fettle
