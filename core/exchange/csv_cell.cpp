#include "core/exchange/csv_cell.h"

#include "core/base/text.h"

namespace fettle {

// The last four are the signs' full-width forms, which some spreadsheets take for them.
bool startsFormula(std::string_view text) {
    for (const std::string_view sign : {"=", "+", "-", "@", "\t", "\r", "\n", "\xef\xbc\x9d", "\xef\xbc\x8b",
                                        "\xef\xbc\x8d", "\xef\xbc\xa0"})
        if (text.starts_with(sign)) return true;
    return false;
}

std::string csvCell(const std::string& text) {
    std::string out = "\"";
    if (startsFormula(text)) out += '\'';
    for (const char c : oneLine(text, std::string::npos))
        out += c == '"' ? std::string("\"\"") : std::string(1, c);
    return out + "\"";
}

std::string csvLine(const std::vector<std::string>& texts) {
    std::vector<std::string> cells;
    for (const std::string& text : texts)
        cells.push_back(csvCell(text));
    return joined(cells, ",") + kCsvEnd;
}

std::string_view withoutCsvMark(std::string_view field) {
    return field.starts_with('\'') && startsFormula(field.substr(1)) ? field.substr(1) : field;
}

}  // namespace fettle
