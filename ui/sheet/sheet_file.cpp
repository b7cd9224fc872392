#include "ui/sheet/sheet_file.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QPainter>
#include <QPdfWriter>

#include "ui/sheet/sheet_painter.h"

namespace fettle {

namespace {

constexpr int kDotsPerInch = 1200;

QPageSize pageSize(PaperSize size) {
    return QPageSize(size == PaperSize::A4 ? QPageSize::A4 : QPageSize::Letter);
}

QString titleOf(const SheetContent& sheet) {
    return QCoreApplication::translate("Sheet", "Findings sheet %1: %2")
        .arg(plainText(sheet.tag), plainText(sheet.firstLine));
}

}  // namespace

Result<QByteArray> sheetPdf(const SheetData& sheet, PaperSize size) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setResolution(kDotsPerInch);
        writer.setPageSize(pageSize(size));
        writer.setPageMargins(QMarginsF());
        writer.setTitle(titleOf(sheet.content));
        writer.setCreator(QStringLiteral("Fettle %1").arg(plainText(sheet.content.engine)));
        SheetPainter sheetPainter(sheet, size);
        QPainter painter(&writer);
        if (!painter.isActive()) return fail(ErrorKind::Unwritable, "", "", "the page could not be begun");
        for (std::size_t page = 0; page < sheetPainter.pages().size(); ++page) {
            if (page > 0 && !writer.newPage())
                return fail(ErrorKind::Unwritable, "", "", "the next page could not be begun");
            sheetPainter.paint(painter, page);
        }
    }
    return bytes;
}

Status writeSheet(const SheetData& sheet, const std::string& path, PaperSize size, FileSystem& files) {
    const auto bytes = sheetPdf(sheet, size);
    if (!bytes) return fail(bytes.error());
    return files.writeSafely(path, bytes->toStdString());
}

}  // namespace fettle
