// Why: the two figures of the sheet are the window's own plots on paper: the spectrum with the numbered lines
// of the table, the trend with limits and events, in black and white whatever the window's colours. Plots are
// widgets that are never shown. Owns what it draws; the data are copied once. Thread: the window's.
#pragma once

#include <QRectF>
#include <memory>

#include "ui/sheet/sheet_data.h"

class QPainter;

namespace fettle {

class SheetFigures {
  public:
    explicit SheetFigures(const SheetData& sheet);
    ~SheetFigures();

    bool hasSpectrum() const;
    // `rect` in the painter's own units.
    void drawSpectrum(QPainter& painter, const QRectF& rect);
    void drawTrend(QPainter& painter, const QRectF& rect);

  private:
    struct Parts;
    std::unique_ptr<Parts> parts_;
};

}  // namespace fettle
