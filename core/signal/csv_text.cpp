#include "core/signal/csv_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "core/base/text.h"

namespace fettle {

std::string csvPlace(std::size_t line, std::size_t column) {
    return fmt::format("line {}, column {}", line, column);
}

namespace {
bool isControl(char c) {
    return (static_cast<unsigned char>(c) < 0x20 && c != '\t' && c != '\n' && c != '\r') || c == 0x7f;
}
}  // namespace

Status checkCsvText(std::string_view text, const std::string& file) {
    if (text.empty())
        return fail(ErrorKind::Damaged, file, "byte 0", "the file is empty, a CSV recording is expected");
    const auto control = std::find_if(text.begin(), text.end(), isControl);
    if (control != text.end())
        return fail(ErrorKind::Damaged, file, fmt::format("byte {}", control - text.begin()),
                    "is not text: a CSV recording is plain UTF-8 text");
    if (text.back() == '\n') return {};
    const auto line = static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n')) + 1;
    return fail(ErrorKind::Damaged, file, csvPlace(line, 1),
                "the last line has no line end and may have been cut: end every line with a line end");
}

CsvLines::CsvLines(std::string_view text) : rest_(text) {
    constexpr std::string_view byteOrderMark = "\xef\xbb\xbf";
    if (rest_.substr(0, 3) == byteOrderMark) rest_.remove_prefix(3);
    find();
}

void CsvLines::find() {
    line_ = rest_.substr(0, rest_.find('\n'));
    if (!line_.empty() && line_.back() == '\r') line_.remove_suffix(1);
}

void CsvLines::next() {
    const std::size_t end = rest_.find('\n');
    rest_.remove_prefix(end == std::string_view::npos ? rest_.size() : end + 1);
    ++number_;
    find();
}

// Takes a field that begins with a quote off the front, with two quotes in it standing for one.
std::optional<std::string_view> CsvFields::takeQuoted(std::string_view& rest) {
    std::string& field = unquoted_.emplace_back();
    for (std::size_t i = 1; i < rest.size(); ++i) {
        if (rest[i] == '"' && (i + 1 == rest.size() || rest[i + 1] != '"')) {
            rest.remove_prefix(i + 1);
            return field;
        }
        if (rest[i] == '"') ++i;
        field += rest[i];
    }
    return std::nullopt;
}

bool CsvFields::split(std::string_view line, char separator, std::size_t most) {
    fields_.clear();
    unquoted_.clear();
    while (fields_.size() < most) {
        const bool quoted = !line.empty() && line.front() == '"';
        fields_.push_back(line.substr(0, separator == kNone ? line.npos : line.find(separator)));
        if (quoted) {
            const auto field = takeQuoted(line);
            if (!field || (!line.empty() && line.front() != separator)) return false;
            fields_.back() = *field;
        } else {
            line.remove_prefix(fields_.back().size());
        }
        if (line.empty()) return true;
        line.remove_prefix(1);
    }
    return true;
}

std::size_t CsvFields::notUtf8() const {
    const auto found =
        std::find_if(fields_.begin(), fields_.end(), [](std::string_view field) { return !isUtf8(field); });
    return found == fields_.end() ? 0 : std::size_t(found - fields_.begin()) + 1;
}

char csvSeparatorOf(std::string_view header) {
    for (const char separator : {'\t', ';', ','}) {
        bool quoted = false;
        for (const char c : header) {
            if (c == '"') quoted = !quoted;
            if (c == separator && !quoted) return separator;
        }
    }
    return CsvFields::kNone;
}

std::optional<double> DecimalMark::parse(std::string_view field) {
    const std::size_t at = field.find_first_of(".,");
    if (at == field.npos) return parseNumber(field);
    if (mark_ != kUnknown && mark_ != field[at]) return std::nullopt;
    std::optional<double> number;
    if (field[at] == '.') {
        number = parseNumber(field);
    } else if (std::array<char, 64> pointed{};
               field.size() <= pointed.size() && field.find('.') == field.npos) {
        std::copy(field.begin(), field.end(), pointed.begin());
        pointed[at] = '.';
        number = parseNumber({pointed.data(), field.size()});
    }
    if (number) mark_ = field[at];
    return number;
}

std::string DecimalMark::complaint(std::string_view field) const {
    if (trimmed(field).empty()) return "is empty, a number is expected";
    const char other = mark_ == '.' ? ',' : '.';
    DecimalMark fresh;
    if (mark_ != kUnknown && field.find(other) != field.npos && fresh.parse(field))
        return fmt::format("\"{}\" has a decimal {}, the lines before it a decimal {}", oneLine(field, 40),
                           other == ',' ? "comma" : "point", other == ',' ? "point" : "comma");
    return fmt::format("\"{}\" is not a number", oneLine(field, 40));
}

}  // namespace fettle
