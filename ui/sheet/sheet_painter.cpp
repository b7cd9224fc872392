#include "ui/sheet/sheet_painter.h"

#include <QPainter>
#include <QTextLayout>
#include <cmath>

#include "ui/sheet/sheet_layout.h"

namespace fettle {

namespace {

constexpr double kBoxLineMm = 0.18;

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
    : figures_(sheet), page_(layOutSheet(sheet.content, figures_.hasSpectrum(), size)) {}

void SheetPainter::paint(QPainter& painter, double scale) {
    painter.save();
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    const double perUnit = scale * painter.device()->logicalDpiX() / kUnitsPerInch;
    painter.scale(perUnit, perUnit);
    paintRules(painter, page_, paper_);
    paintBoxes(painter, page_, paper_);
    paintUrgencyDisc(painter, page_.disc, page_.urgency, paper_.colour(Role::Ink));
    paintTexts(painter, page_, paper_);
    if (!page_.spectrum.isNull()) figures_.drawSpectrum(painter, page_.spectrum);
    if (!page_.trend.isNull()) figures_.drawTrend(painter, page_.trend);
    painter.restore();
}

QImage SheetPainter::picture(double dotsPerInch) {
    const QSizeF inches = paperMm(page_.size) / 25.4;
    QImage image(int(std::lround(inches.width() * dotsPerInch)),
                 int(std::lround(inches.height() * dotsPerInch)), QImage::Format_RGB32);
    image.setDotsPerMeterX(int(std::lround(dotsPerInch / 0.0254)));
    image.setDotsPerMeterY(image.dotsPerMeterX());
    image.fill(paper_.colour(Role::Ground));
    QPainter painter(&image);
    paint(painter);
    return image;
}

}  // namespace fettle
