#include "ui/sheet/sheet_painter.h"

#include "ui/sheet/sheet_layout.h"
#include "ui/sheet/sheet_units.h"

namespace fettle {

SheetPainter::SheetPainter(const SheetData& sheet, PaperSize size)
    : SheetPainter(sheet, size, std::make_unique<SheetFigures>(sheet)) {}

SheetPainter::SheetPainter(const SheetData& sheet, PaperSize size, std::unique_ptr<SheetFigures> figures)
    : PrintedPages(layOutSheet(withUnitsBeside(sheet.content, sheet.units), figures->hasSpectrum(), size),
                   size),
      figures_(std::move(figures)) {}

void SheetPainter::paintFigures(QPainter& painter, const SheetPage& page) {
    if (!page.spectrum.isNull()) figures_->drawSpectrum(painter, page.spectrum);
    if (!page.trend.isNull()) figures_->drawTrend(painter, page.trend);
}

}  // namespace fettle
