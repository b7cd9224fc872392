#include "ui/sheet/sheet_print.h"

#include <QPainter>
#include <QPrintDialog>
#include <QPrinter>
#include <algorithm>

#include "ui/sheet/sheet_painter.h"

namespace fettle {

namespace {

QPageSize::PageSizeId idOf(PaperSize size) {
    return size == PaperSize::A4 ? QPageSize::A4 : QPageSize::Letter;
}

// The layout for the paper that is in the printer.
PaperSize sizeOn(const QPrinter& printer, PaperSize wanted) {
    const auto id = printer.pageLayout().pageSize().id();
    if (id == QPageSize::A4) return PaperSize::A4;
    return id == QPageSize::Letter ? PaperSize::Letter : wanted;
}

}  // namespace

Status printOn(QPrinter& printer, const SheetData& sheet, PaperSize wanted) {
    printer.setFullPage(true);
    const PaperSize size = sizeOn(printer, wanted);
    const QSizeF paper = printer.pageLayout().fullRect(QPageLayout::Millimeter).size(), page = paperMm(size);
    const double fit = std::min(paper.width() / page.width(), paper.height() / page.height());
    SheetPainter sheetPainter(sheet, size);
    QPainter painter;
    if (!painter.begin(&printer))
        return fail(ErrorKind::Unwritable, printer.printerName().toStdString(), "",
                    "the printer takes nothing; see whether it is on and reachable");
    for (std::size_t number = 0; number < sheetPainter.pages().size(); ++number) {
        if (number > 0) printer.newPage();
        sheetPainter.paint(painter, number, fit);
    }
    painter.end();
    if (printer.printerState() == QPrinter::Error)
        return fail(ErrorKind::Unwritable, printer.printerName().toStdString(), "",
                    "the printer reports an error");
    return {};
}

void askAndPrint(QWidget* parent, std::shared_ptr<const SheetData> sheet, PaperSize size,
                 std::function<void(Status)> done) {
    auto printer = std::make_shared<QPrinter>(QPrinter::HighResolution);
    printer->setPageSize(QPageSize(idOf(size)));
    printer->setDocName(plainText(sheet->content.tag));
    auto* dialog = new QPrintDialog(printer.get(), parent);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setOptions(QAbstractPrintDialog::PrintToFile);
    QObject::connect(dialog, &QDialog::accepted, parent,
                     [printer, sheet, size, done] { done(printOn(*printer, *sheet, size)); });
    QObject::connect(dialog, &QDialog::finished, dialog, [printer] {});
    dialog->open();
}

}  // namespace fettle
