#include "ui/sheet/sheet_painter.h"

#include <QPainter>
#include <QTextLayout>
#include <cmath>

#include "ui/sheet/sheet_layout.h"

namespace fettle {

namespace {

constexpr double kBoxLineMm = 0.18;
constexpr Qt::GlobalColor kBetweenPages = Qt::lightGray;

void paintRules(QPainter& painter, const SheetPage& page, const Theme& theme) {
    for (const PlacedRule& rule : page.rules) {
        painter.setPen(QPen(theme.colour(rule.ink), rule.widthMm * kMm,
                            rule.dashed ? Qt::DashLine : Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(rule.line);
    }
}

void paintBoxes(QPainter& painter, const SheetPage& page, const Theme& theme) {
    painter.setPen(
        QPen(theme.colour(Role::MutedInk), kBoxLineMm * kMm, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    for (const PlacedBox& box : page.boxes) {
        painter.setBrush(box.filled ? QBrush(theme.colour(Role::Ink)) : QBrush(Qt::NoBrush));
        painter.drawRect(box.rect);
    }
}

void paintTexts(QPainter& painter, const SheetPage& page, const Theme& theme) {
    for (const PlacedText& text : page.texts) {
        painter.setPen(theme.colour(text.ink));
        text.layout->draw(&painter, text.at);
    }
}

}  // namespace

SheetPainter::SheetPainter(const SheetData& sheet, PaperSize size)
    : figures_(sheet), size_(size), pages_(layOutSheet(sheet.content, figures_.hasSpectrum(), size)) {}

void SheetPainter::paint(QPainter& painter, std::size_t number, double scale) {
    const SheetPage& page = pages_[number];
    painter.save();
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    const double perUnit = scale * painter.device()->logicalDpiX() / kUnitsPerInch;
    painter.scale(perUnit, perUnit);
    paintRules(painter, page, paper_);
    paintBoxes(painter, page, paper_);
    if (!page.disc.isNull()) paintUrgencyDisc(painter, page.disc, page.urgency, paper_.colour(Role::Ink));
    paintTexts(painter, page, paper_);
    if (!page.spectrum.isNull()) figures_.drawSpectrum(painter, page.spectrum);
    if (!page.trend.isNull()) figures_.drawTrend(painter, page.trend);
    painter.restore();
}

QImage SheetPainter::picture(std::size_t page, double dotsPerInch) {
    const QSizeF inches = paperMm(size_) / 25.4;
    QImage image(int(std::lround(inches.width() * dotsPerInch)),
                 int(std::lround(inches.height() * dotsPerInch)), QImage::Format_RGB32);
    image.setDotsPerMeterX(int(std::lround(dotsPerInch / 0.0254)));
    image.setDotsPerMeterY(image.dotsPerMeterX());
    image.fill(paper_.colour(Role::Ground));
    QPainter painter(&image);
    paint(painter, page);
    return image;
}

QImage SheetPainter::picture(double dotsPerInch) {
    if (pages_.size() == 1) return picture(0, dotsPerInch);
    const int gap = int(std::lround(kBetweenPagesMm / 25.4 * dotsPerInch));
    QImage all;
    for (std::size_t i = 0; i < pages_.size(); ++i) {
        const QImage one = picture(i, dotsPerInch);
        if (all.isNull()) {
            all = QImage(one.width(), int(pages_.size()) * (one.height() + gap) - gap, one.format());
            all.fill(kBetweenPages);
        }
        QPainter(&all).drawImage(0, int(i) * (one.height() + gap), one);
    }
    return all;
}

}  // namespace fettle
