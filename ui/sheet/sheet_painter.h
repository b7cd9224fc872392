// Why: a sheet that is ready to be drawn, on anything: screen, PDF, printer all get the same page. Made once
// for a content and a paper size; black on white whatever the window's theme. Drawing lays out nothing anew.
// Pages count from 0.
// Ownership: keeps a copy of the data. Thread: the window's.
#pragma once

#include <QImage>
#include <memory>

#include "ui/sheet/sheet_data.h"
#include "ui/sheet/sheet_figures.h"
#include "ui/sheet/sheet_page.h"

namespace fettle {

inline constexpr double kBetweenPagesMm = 4;  // in the picture of all

class SheetPainter {
  public:
    SheetPainter(const SheetData& sheet, PaperSize size);

    const std::vector<SheetPage>& pages() const { return pages_; }
    // One whole paper from the painter's origin; `scale` 1: in its true size.
    void paint(QPainter& painter, std::size_t page, double scale = 1);
    QImage picture(std::size_t page, double dotsPerInch);
    QImage picture(double dotsPerInch);  // all of them, one under the other

  private:
    SheetFigures figures_;
    PaperSize size_;
    std::vector<SheetPage> pages_;
    Theme paper_{ThemeChoice::Paper};
};

}  // namespace fettle
