#include "core/exchange/csv_cell.h"

#include "core/base/text.h"

namespace fettle {

std::string csvCell(const std::string& text) {
    std::string out = "\"";
    if (!text.empty() && std::string("=+-@\t\r\n").find(text[0]) != std::string::npos) out += '\'';
    for (const char c : oneLine(text, std::string::npos))
        out += c == '"' ? std::string("\"\"") : std::string(1, c);
    return out + "\"";
}

}  // namespace fettle
