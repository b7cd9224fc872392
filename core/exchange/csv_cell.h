// Why: text of users goes into CSV that others open in a spreadsheet: quoted, on one line, and a cell that
// would start a formula (= + - @, their full-width forms, tab, line ends) begins with an apostrophe. Source:
// RFC 4180; the apostrophe common practice, no source. Thread: pure.
#pragma once

#include <string>

namespace fettle {

std::string csvCell(const std::string& text);

}  // namespace fettle
