#include "ui/sheet/sheet_file.h"

#include <QCoreApplication>

#include "ui/sheet/sheet_painter.h"

namespace fettle {

PdfTitle titleOf(const SheetContent& sheet) {
    return {QCoreApplication::translate("Sheet", "Findings sheet %1: %2")
                .arg(plainText(sheet.tag), plainText(sheet.firstLine)),
            plainText(sheet.engine)};
}

Result<QByteArray> sheetPdf(const SheetData& sheet, PaperSize size) {
    SheetPainter pages(sheet, size);
    return pdfOf(pages, titleOf(sheet.content));
}

Status writeSheet(const SheetData& sheet, const std::string& path, PaperSize size, FileSystem& files) {
    const auto bytes = sheetPdf(sheet, size);
    if (!bytes) return fail(bytes.error());
    return files.writeSafely(path, bytes->toStdString());
}

}  // namespace fettle
