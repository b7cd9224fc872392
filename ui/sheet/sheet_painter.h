// Why: a sheet that is ready to be drawn, on anything: screen, PDF, printer all get the same page. Made once
// for a content and a paper size; black on white whatever the window's theme. Drawing lays out nothing anew.
// Ownership: keeps a copy of the data. Thread: the window's.
#pragma once

#include <QImage>
#include <memory>

#include "ui/sheet/sheet_data.h"
#include "ui/sheet/sheet_figures.h"
#include "ui/sheet/sheet_page.h"

namespace fettle {

class SheetPainter {
  public:
    SheetPainter(const SheetData& sheet, PaperSize size);

    const SheetPage& page() const { return page_; }
    // The whole paper from the painter's origin; `scale` 1: in its true size.
    void paint(QPainter& painter, double scale = 1);
    QImage picture(double dotsPerInch);

  private:
    SheetFigures figures_;
    SheetPage page_;
    Theme paper_{ThemeChoice::Paper};
};

}  // namespace fettle
