#include "core/signal/csv_head.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "core/base/text.h"
#include "core/signal/capture_facts.h"
#include "core/signal/recording_limits.h"

namespace fettle {

namespace {
tl::unexpected<Error> no(const std::string& file, std::size_t line, std::size_t column, std::string rule) {
    return fail(ErrorKind::Invalid, file, csvPlace(line, column), std::move(rule));
}

// The `# key: value` lines, one at a time.
class Preamble {
  public:
    Preamble(CsvHead& head, const std::string& file) : head_(head), file_(file) {}
    Status take(std::string_view line, std::size_t number);

  private:
    // The rule broken; empty where the value was taken.
    std::string takeValue(const std::string& key, const std::string& value);
    std::string takeText(const TextFact& fact, const std::string& value);
    std::string takeTime(const TimeFact& fact, const std::string& value);
    std::string takeNumber(const NumberFact& fact, const std::string& value);
    std::string takeRate(const std::string& value);
    std::string takeSamples(const std::string& value);
    std::string takeSimultaneous(const std::string& value);
    void warn(const std::string& what) {
        head_.facts.warnings.push_back(Error{ErrorKind::Invalid, file_, csvPlace(line_, 1), what}.sentence());
    }

    CsvHead& head_;
    const std::string& file_;
    std::size_t line_ = 0;
    std::set<std::string> seen_;
};

// Spreadsheets fill a line up to the table's width with separators.
std::string_view withoutFilling(std::string_view line) {
    const std::size_t last = line.find_last_not_of(",;\t \"");
    return last == line.npos ? std::string_view() : line.substr(0, last + 1);
}

Status Preamble::take(std::string_view line, std::size_t number) {
    line_ = number;
    line.remove_prefix(line.find('#') + 1);
    line = withoutFilling(line);
    const std::size_t colon = line.find(':');
    if (colon == line.npos) {
        if (!trimmed(line).empty()) warn("a line without `key: value`, not used");
        return {};
    }
    const std::string key = lowerAscii(trimmed(line.substr(0, colon)));
    const std::string value(trimmed(line.substr(colon + 1)));
    if (!isUtf8(value)) return no(file_, number, 2, "is not UTF-8 text");
    if (!seen_.insert(key).second)
        return no(file_, number, 1, fmt::format("{} is given twice", oneLine(key, 80)));
    if (std::string rule = takeValue(key, value); !rule.empty())
        return no(file_, number, 2, fmt::format("{} {}", key, rule));
    return {};
}

std::string Preamble::takeValue(const std::string& key, const std::string& value) {
    for (const TextFact& fact : textFacts())
        if (key == fact.key) return takeText(fact, value);
    for (const TimeFact& fact : timeFacts())
        if (key == fact.key) return takeTime(fact, value);
    for (const NumberFact& fact : numberFacts())
        if (key == fact.key) return takeNumber(fact, value);
    if (key == "sample_rate_hz") return takeRate(value);
    if (key == "samples") return takeSamples(value);
    if (key == "simultaneous") return takeSimultaneous(value);
    warn(fmt::format("unknown key {}, not used", oneLine(key, 80)));
    return "";
}

std::string Preamble::takeText(const TextFact& fact, const std::string& value) {
    head_.facts.*fact.member = value;
    return "";
}

std::string Preamble::takeTime(const TimeFact& fact, const std::string& value) {
    const auto time = parseCaptureTime(value);
    if (!time) return time.error();
    head_.facts.*fact.member = *time;
    return "";
}

std::string Preamble::takeNumber(const NumberFact& fact, const std::string& value) {
    const auto number = parseNumber(value);
    if (!number || !(*number >= fact.least && *number <= fact.most))
        return fmt::format("is \"{}\", must be a number from {} to {}", oneLine(value, 40), fact.least,
                           fact.most);
    head_.facts.*fact.member = *number;
    return "";
}

std::string Preamble::takeRate(const std::string& value) {
    head_.sampleRateHz = parseNumber(value);
    if (head_.sampleRateHz && checkRate(*head_.sampleRateHz, file_, "")) return "";
    return fmt::format("is \"{}\", must be a number from {} to {}", oneLine(value, 40), kLeastRateHz,
                       kMostRateHz);
}

std::string Preamble::takeSamples(const std::string& value) {
    const auto count = parseInteger(value);
    if (!count || *count < 1)
        return fmt::format("is \"{}\", must be a whole number above 0", oneLine(value, 40));
    head_.samples = static_cast<std::uint64_t>(*count);
    head_.samplesLine = line_;
    return "";
}

std::string Preamble::takeSimultaneous(const std::string& value) {
    if (value != "true" && value != "false" && value != "unknown") return "must be true, false or unknown";
    head_.facts.simultaneous = value == "true"    ? Simultaneous::Yes
                               : value == "false" ? Simultaneous::No
                                                  : Simultaneous::Unknown;
    return "";
}

// "x [g]" into x and g.
CsvColumn columnOf(std::string_view field) {
    field = trimmed(field);
    const std::size_t bracket = field.rfind('[');
    if (bracket == field.npos || field.back() != ']') return {std::string(field), "", 0};
    CsvColumn column;
    column.name = trimmed(field.substr(0, bracket));
    column.unit = trimmed(field.substr(bracket + 1, field.size() - bracket - 2));
    const std::string name = lowerAscii(column.name);
    if (name != "t" && name != "time") return column;
    column.secondsPerUnit = column.unit == "s" ? 1 : column.unit == "ms" ? 1e-3 : 0;
    return column;
}

// The rule a column breaks; empty where none.
std::string complaintAbout(const CsvColumn& column, const std::vector<CsvColumn>& before) {
    const std::string name = lowerAscii(column.name);
    if (!isUtf8(column.name) || !isUtf8(column.unit)) return "is not UTF-8 text";
    if (column.name.empty()) return "has no name";
    if ((name == "t" || name == "time") && column.unit.empty())
        return "a time column needs its unit, [s] or [ms]";
    for (const CsvColumn& other : before) {
        if (other.name == column.name) return fmt::format("two columns are named \"{}\"", oneLine(name, 80));
        if (other.isTime() && column.isTime()) return "a second time column";
    }
    return "";
}

Status takeColumns(const CsvFields& fields, CsvHead& head, const std::string& file) {
    bool allNumbers = true;
    for (std::size_t i = 0; i < fields.count(); ++i) {
        const CsvColumn column = columnOf(fields[i]);
        if (std::string rule = complaintAbout(column, head.columns); !rule.empty())
            return no(file, head.headerLine, i + 1, std::move(rule));
        allNumbers &= parseNumber(column.name).has_value();
        head.columns.push_back(column);
    }
    if (allNumbers)
        return no(file, head.headerLine, 1, "a header of channel names is expected before the numbers");
    return checkChannelCount(head.channelCount(), file, csvPlace(head.headerLine, 1));
}

Status readHeader(CsvLines& lines, CsvHead& head, const std::string& file) {
    head.headerLine = lines.number();
    if (lines.atEnd() || trimmed(lines.line()).empty())
        return no(file, head.headerLine, 1, "a header of channel names is expected here");
    head.separator = csvSeparatorOf(lines.line());
    CsvFields fields;
    if (!fields.split(lines.line(), head.separator, kMostChannels + 2))
        return no(file, head.headerLine, fields.count(),
                  "a quote that is not closed, or text behind a quote");
    if (auto taken = takeColumns(fields, head, file); !taken) return taken;
    lines.next();
    return {};
}
}  // namespace

std::optional<std::size_t> CsvHead::timeColumn() const {
    const auto found =
        std::find_if(columns.begin(), columns.end(), [](const CsvColumn& c) { return c.isTime(); });
    if (found == columns.end()) return std::nullopt;
    return static_cast<std::size_t>(found - columns.begin());
}

Result<CsvHead> readCsvHead(CsvLines& lines, const std::string& file) {
    CsvHead head;
    Preamble preamble(head, file);
    for (; !lines.atEnd(); lines.next()) {
        const std::string_view line = trimmed(lines.line());
        const bool note = line.substr(0, 1) == "#" || line.substr(0, 2) == "\"#";
        if (!note && !withoutFilling(line).empty()) break;
        if (!note) continue;
        if (auto taken = preamble.take(line, lines.number()); !taken) return fail(taken.error());
    }
    if (auto read = readHeader(lines, head, file); !read) return fail(read.error());
    return head;
}

}  // namespace fettle
