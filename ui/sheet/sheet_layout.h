// Why: one job, one page: everything of a SheetContent is set on exactly one A4 or Letter page. It is
// measured first: in the largest letters in which all of it fits; where even 7 pt are too large, lists and
// paragraphs are shortened and the page says so. Nothing overlaps and nothing is cut at an edge. Thread: the
// window's (fonts). Errors: none; whatever the content is, there is a page.
#pragma once

#include "core/fleet/sheet_content.h"
#include "ui/sheet/sheet_page.h"

namespace fettle {

// `spectrum`: whether there is one to be drawn.
SheetPage layOutSheet(const SheetContent& sheet, bool spectrum, PaperSize size);

}  // namespace fettle
