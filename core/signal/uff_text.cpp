#include "core/signal/uff_text.h"

#include <fmt/format.h>

#include "core/base/text.h"

namespace fettle {

namespace {

constexpr std::size_t kLongestNumber = 40;

bool isBlank(std::string_view text) {
    return text.find_first_not_of(" \t\r") == text.npos;
}

bool isSign(char c) {
    return c == '+' || c == '-';
}

// 1.5D+03 and 1.5+103 as 1.5E+03 and 1.5E+103.
std::string withE(std::string_view field) {
    std::string number;
    for (const char c : field) {
        const bool power =
            isSign(c) && !number.empty() && number.back() != 'E' && number.find('E') == number.npos;
        if (power) number += 'E';
        number += c == 'D' || c == 'd' || c == 'e' ? 'E' : c;
    }
    return number;
}

}  // namespace

std::string uffPlace(std::size_t line, std::size_t column) {
    return fmt::format("line {}, column {}", line, column);
}

UffLines::UffLines(std::string_view bytes) : rest_(bytes) {
    find();
}

void UffLines::find() {
    const std::size_t end = rest_.find('\n');
    ended_ = end != rest_.npos;
    line_ = rest_.substr(0, end);
    if (!line_.empty() && line_.back() == '\r') line_.remove_suffix(1);
}

void UffLines::next() {
    const std::size_t end = rest_.find('\n');
    rest_.remove_prefix(end == rest_.npos ? rest_.size() : end + 1);
    ++number_;
    find();
}

std::string_view UffLines::takeBytes(std::size_t count) {
    const std::string_view bytes = rest_.substr(0, count);
    rest_.remove_prefix(bytes.size());
    find();
    return bytes;
}

bool UffLines::isMark() const {
    return line_.starts_with("    -1") && isBlank(line_.substr(6));
}

std::string_view UffFields::take(std::size_t width) {
    const std::string_view field = line_.substr(std::min(at_, line_.size()), width);
    at_ += width;
    return field;
}

std::string UffFields::text(std::size_t width) {
    return std::string(trimmed(take(width)));
}

std::optional<long long> UffFields::integer(std::size_t width) {
    const std::string_view field = take(width);
    return isBlank(field) ? 0 : parseInteger(field);
}

std::optional<double> UffFields::number(std::size_t width) {
    const std::string_view field = take(width);
    return isBlank(field) ? 0 : fortranNumber(field);
}

bool UffFields::restIsBlank() const {
    return at_ >= line_.size() || isBlank(line_.substr(at_));
}

std::optional<double> fortranNumber(std::string_view field) {
    const std::string_view number = trimmed(field);
    if (number.empty() || number.size() > kLongestNumber) return std::nullopt;
    if (const auto plain = parseNumber(number)) return plain;
    return parseNumber(withE(number));
}

}  // namespace fettle
