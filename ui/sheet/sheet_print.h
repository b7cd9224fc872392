// Why: laid-out pages on paper by the system's printers: sheets, the round's report, comparisons. The paper
// is the printer's: A4 and Letter are laid out for it, any other gets the page fitted in. Thread: the
// window's. Errors: Unwritable where the printer takes nothing.
#pragma once

#include <functional>

#include "ui/sheet/printed_pages.h"
#include "ui/sheet/sheet_data.h"

class QPrinter;
class QWidget;

namespace fettle {

// Lays out for a paper.
using PagesFor = std::function<std::unique_ptr<PrintedPages>(PaperSize)>;
PagesFor pagesOf(std::shared_ptr<const SheetData> sheet);

// Asks which printer, then prints; `done` is not called where the question was dropped.
void askAndPrint(QWidget* parent, const QString& name, PagesFor pages, PaperSize size,
                 std::function<void(Status)> done);
Status printPages(QPrinter& printer, const PagesFor& pages, PaperSize wanted);
Status printOn(QPrinter& printer, const SheetData& sheet, PaperSize wanted);

}  // namespace fettle
