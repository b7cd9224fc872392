// Why: numbers and short texts that look the same under every locale, and user text that cannot break a line.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace fettle {

// A number with '.' as decimal mark and nothing else around it but spaces; "nan" and "inf" are numbers here,
// the caller decides whether to take them. Locale-free.
std::optional<double> parseNumber(std::string_view text);
std::optional<long long> parseInteger(std::string_view text);

std::string_view trimmed(std::string_view text);
std::string lowerAscii(std::string_view text);
std::vector<std::string_view> split(std::string_view text, char separator);
std::string joined(const std::vector<std::string>& parts, std::string_view separator);

bool isUtf8(std::string_view text);

// User text on one line, always UTF-8: control characters and bytes that are no UTF-8 become '?', what is
// longer than `most` bytes is cut between characters and ends in "...".
std::string oneLine(std::string_view text, std::size_t most = 2000);

}  // namespace fettle
