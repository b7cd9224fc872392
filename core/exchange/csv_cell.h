// Why: text of users goes into CSV that others open in a spreadsheet: quoted, on one line, and a cell that
// would start a formula (= + - @, their full-width forms, tab, line ends) begins with an apostrophe, which is
// taken off again where such a table is read. Every table written here ends its lines alike. Source: RFC 4180
// (commas, quotes, lines ended by CR LF); the apostrophe common practice, no source. Thread: pure.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace fettle {

inline constexpr const char* kCsvEnd = "\r\n";

// Whether a spreadsheet would compute it. A negative number is one as well: ask of texts only.
bool startsFormula(std::string_view text);
std::string csvCell(const std::string& text);
// A line of such cells, with its end.
std::string csvLine(const std::vector<std::string>& texts);
// A field, its quotes already off, without the apostrophe that csvCell put before it.
std::string_view withoutCsvMark(std::string_view field);

}  // namespace fettle
