#include "core/base/text.h"

#include <algorithm>
#include <charconv>

namespace fettle {

namespace {
bool isSpace(char c) {
    return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}

unsigned byteAt(std::string_view text, std::size_t i) {
    return i < text.size() ? static_cast<unsigned char>(text[i]) : 0u;
}

// Bytes of the well-formed UTF-8 character at the start; 0 where there is none (RFC 3629, section 4).
std::size_t characterSize(std::string_view text) {
    const unsigned lead = byteAt(text, 0), second = byteAt(text, 1);
    if (lead < 0x80) return text.empty() ? 0 : 1;
    if (lead < 0xc2 || lead > 0xf4) return 0;
    if ((lead == 0xe0 && second < 0xa0) || (lead == 0xed && second > 0x9f)) return 0;
    if ((lead == 0xf0 && second < 0x90) || (lead == 0xf4 && second > 0x8f)) return 0;
    const std::size_t size = lead >= 0xf0 ? 4 : lead >= 0xe0 ? 3 : 2;
    for (std::size_t i = 1; i < size; ++i)
        if ((byteAt(text, i) & 0xc0) != 0x80) return 0;
    return size;
}

// Control characters of ASCII and of Latin-1, and the two line ends of Unicode.
bool breaksLine(std::string_view character) {
    const unsigned lead = byteAt(character, 0), second = byteAt(character, 1), third = byteAt(character, 2);
    if (character.size() == 1) return lead < 0x20 || lead == 0x7f;
    if (character.size() == 2) return lead == 0xc2 && second < 0xa0;
    return character.size() == 3 && lead == 0xe2 && second == 0x80 && (third == 0xa8 || third == 0xa9);
}

template <class Number>
std::optional<Number> parse(std::string_view text) {
    text = trimmed(text);
    if (text.size() > 1 && text.front() == '+' && text[1] != '-') text.remove_prefix(1);
    Number value{};
    const char* end = text.data() + text.size();
    const auto [stop, problem] = std::from_chars(text.data(), end, value);
    if (text.empty() || problem != std::errc() || stop != end) return std::nullopt;
    return value;
}
}  // namespace

std::optional<double> parseNumber(std::string_view text) {
    return parse<double>(text);
}
std::optional<long long> parseInteger(std::string_view text) {
    return parse<long long>(text);
}

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && isSpace(text.front()))
        text.remove_prefix(1);
    while (!text.empty() && isSpace(text.back()))
        text.remove_suffix(1);
    return text;
}

std::string lowerAscii(std::string_view text) {
    std::string lower(text);
    for (char& c : lower)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return lower;
}

std::vector<std::string_view> split(std::string_view text, char separator) {
    std::vector<std::string_view> parts;
    for (;;) {
        const std::size_t at = text.find(separator);
        parts.push_back(text.substr(0, at));
        if (at == std::string_view::npos) return parts;
        text.remove_prefix(at + 1);
    }
}

std::string joined(const std::vector<std::string>& parts, std::string_view separator) {
    std::string all;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (i > 0) all += separator;
        all += parts[i];
    }
    return all;
}

bool isUtf8(std::string_view text) {
    while (!text.empty()) {
        const std::size_t size = characterSize(text);
        if (size == 0) return false;
        text.remove_prefix(size);
    }
    return true;
}

std::string oneLine(std::string_view text, std::size_t most) {
    std::string line;
    for (std::size_t at = 0, size = 0; at < text.size(); at += size) {
        size = characterSize(text.substr(at));
        const bool shown = size > 0 && !breaksLine(text.substr(at, size));
        size = std::max<std::size_t>(size, 1);
        if (at + size > most) return line + "...";
        line += shown ? text.substr(at, size) : "?";
    }
    return line;
}

}  // namespace fettle
