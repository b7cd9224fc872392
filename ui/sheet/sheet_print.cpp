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

Status printPages(QPrinter& printer, const PagesFor& pagesFor, PaperSize wanted) {
    printer.setFullPage(true);
    const PaperSize size = sizeOn(printer, wanted);
    const QSizeF paper = printer.pageLayout().fullRect(QPageLayout::Millimeter).size(), page = paperMm(size);
    const double fit = std::min(paper.width() / page.width(), paper.height() / page.height());
    const auto pages = pagesFor(size);
    QPainter painter;
    if (!painter.begin(&printer))
        return fail(ErrorKind::Unwritable, printer.printerName().toStdString(), "",
                    "the printer takes nothing; see whether it is on and reachable");
    for (std::size_t number = 0; number < pages->pages().size(); ++number) {
        if (number > 0) printer.newPage();
        pages->paint(painter, number, fit);
    }
    painter.end();
    if (printer.printerState() == QPrinter::Error)
        return fail(ErrorKind::Unwritable, printer.printerName().toStdString(), "",
                    "the printer reports an error");
    return {};
}

Status printOn(QPrinter& printer, const SheetData& sheet, PaperSize wanted) {
    return printPages(printer, pagesOf(std::make_shared<const SheetData>(sheet)), wanted);
}

PagesFor pagesOf(std::shared_ptr<const SheetData> sheet) {
    return
        [sheet = std::move(sheet)](PaperSize size) { return std::make_unique<SheetPainter>(*sheet, size); };
}

void askAndPrint(QWidget* parent, const QString& name, PagesFor pages, PaperSize size,
                 std::function<void(Status)> done) {
    auto printer = std::make_shared<QPrinter>(QPrinter::HighResolution);
    printer->setPageSize(QPageSize(idOf(size)));
    printer->setDocName(name);
    auto* dialog = new QPrintDialog(printer.get(), parent);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setOptions(QAbstractPrintDialog::PrintToFile);
    QObject::connect(dialog, &QDialog::accepted, parent,
                     [printer, pages, size, done] { done(printPages(*printer, pages, size)); });
    QObject::connect(dialog, &QDialog::finished, dialog, [printer] {});
    dialog->open();
}

}  // namespace fettle
