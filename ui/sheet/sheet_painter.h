// Why: a findings sheet that is ready to be drawn: its pages with the two figures. Made once for a content
// and a paper size. Ownership: keeps a copy of the data. Thread: the window's.
#pragma once

#include "ui/sheet/printed_pages.h"
#include "ui/sheet/sheet_data.h"
#include "ui/sheet/sheet_figures.h"

namespace fettle {

class SheetPainter : public PrintedPages {
  public:
    SheetPainter(const SheetData& sheet, PaperSize size);

  protected:
    void paintFigures(QPainter& painter, const SheetPage& page) override;

  private:
    SheetPainter(const SheetData& sheet, PaperSize size, std::unique_ptr<SheetFigures> figures);
    std::unique_ptr<SheetFigures> figures_;
};

}  // namespace fettle
