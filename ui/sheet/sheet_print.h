// Why: the sheet on paper by the system's printers. The paper is the printer's: A4 and Letter are laid out
// for it, any other gets the page fitted in. Thread: the window's. Errors: Unwritable where the printer takes
// nothing.
#pragma once

#include <functional>

#include "ui/sheet/sheet_data.h"
#include "ui/sheet/sheet_page.h"

class QPrinter;
class QWidget;

namespace fettle {

// Asks which printer, then prints; `done` is not called where the question was dropped.
void askAndPrint(QWidget* parent, std::shared_ptr<const SheetData> sheet, PaperSize size,
                 std::function<void(Status)> done);
Status printOn(QPrinter& printer, const SheetData& sheet, PaperSize wanted);

}  // namespace fettle
