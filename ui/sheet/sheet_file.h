// Why: the sheet as a file: vector PDF, letters as letters (searchable, fonts inside), title and
// creator in its data and no path of the machine it was made on. A file is there whole or not at all.
// Thread: the window's. Errors: Unwritable with the reason (a folder that takes no files, a full disk).
#pragma once

#include <QByteArray>

#include "core/base/file_system.h"
#include "ui/sheet/printed_pages.h"
#include "ui/sheet/sheet_data.h"

namespace fettle {

PdfTitle titleOf(const SheetContent& sheet);
Result<QByteArray> sheetPdf(const SheetData& sheet, PaperSize size);
Status writeSheet(const SheetData& sheet, const std::string& path, PaperSize size, FileSystem& files);

}  // namespace fettle
