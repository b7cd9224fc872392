#include "core/signal/uff_function.h"

#include <fmt/format.h>

#include <array>
#include <cmath>

#include "core/base/text.h"

namespace fettle {

namespace {

using std::string_view;

tl::unexpected<Error> refusal(const std::string& file, std::size_t line, std::size_t column, std::string rule,
                              ErrorKind kind = ErrorKind::Invalid) {
    return fail(kind, file, uffPlace(line, column), std::move(rule));
}

bool isNone(const std::string& text) {
    return text.empty() || lowerAscii(text) == "none";
}

std::optional<int> monthOf(const std::string& name) {
    static constexpr std::array<const char*, 12> months = {"jan", "feb", "mar", "apr", "may", "jun",
                                                           "jul", "aug", "sep", "oct", "nov", "dec"};
    for (std::size_t m = 0; m < months.size(); ++m)
        if (lowerAscii(name) == months[m]) return int(m) + 1;
    return std::nullopt;
}

// "04-MAY-26 06:20:00"; two digits of a year are those from 1980 to 2079.
std::optional<Instant> dateOf(string_view line) {
    UffFields fields(line);
    const auto day = fields.integer(2);
    fields.take(1);
    const auto month = monthOf(fields.text(3));
    fields.take(1);
    const auto year = fields.integer(2);
    fields.take(1);
    const string_view clock = fields.take(8);
    if (!day || !month || !year || clock.size() != 8) return std::nullopt;
    return parseUtc(
        fmt::format("{:04}-{:02}-{:02}T{}Z", *year < 80 ? 2000 + *year : 1900 + *year, *month, *day, clock));
}

// Reads record after record; the first thing wrong stays.
class Head {
  public:
    Head(UffLines& lines, const std::string& file, UffFunction& function)
        : lines_(lines), file_(file), function_(function) {}

    Status read();

  private:
    Status record(std::size_t number, void (Head::*take)(UffFields&));
    void texts(UffFields& fields);
    void direction(UffFields& fields);
    void size(UffFields& fields);
    void abscissa(UffFields& fields) { axis(fields, function_.abscissa); }
    void ordinate(UffFields& fields) { axis(fields, function_.ordinate); }
    void other(UffFields&) {}
    void axis(UffFields& fields, UffAxis& axis);
    long long integer(UffFields& fields, std::size_t width);
    double number(UffFields& fields, std::size_t width);
    void broken(std::size_t column, std::string rule, ErrorKind kind = ErrorKind::Invalid) {
        if (!error_) error_ = Error{kind, file_, uffPlace(lines_.number(), column), std::move(rule)};
    }

    UffLines& lines_;
    const std::string& file_;
    UffFunction& function_;
    std::size_t record_ = 0;
    std::optional<Error> error_;
};

Status Head::read() {
    void (Head::*const takes[])(UffFields&) = {
        &Head::texts, &Head::texts,    &Head::texts,    &Head::texts, &Head::texts, &Head::direction,
        &Head::size,  &Head::abscissa, &Head::ordinate, &Head::other, &Head::other};
    for (std::size_t i = 0; i < std::size(takes); ++i)
        if (auto good = record(i + 1, takes[i]); !good) return good;
    return {};
}

Status Head::record(std::size_t number, void (Head::*take)(UffFields&)) {
    if (lines_.atEnd() || !lines_.ended())
        return refusal(file_, lines_.number(), 1,
                       fmt::format("breaks off in record {} of a data set 58", number), ErrorKind::Damaged);
    if (number > 5 && lines_.isMark())
        return refusal(file_, lines_.number(), 1, fmt::format("record {} of data set 58 is missing", number),
                       ErrorKind::Damaged);
    record_ = number;
    function_.at[number] = lines_.number();
    UffFields fields(lines_.line());
    (this->*take)(fields);
    if (error_) return fail(*error_);
    lines_.next();
    return {};
}

void Head::texts(UffFields& fields) {
    if (record_ == 1) function_.description = fields.text(80);
    if (record_ == 3) function_.date = dateOf(fields.take(80));
}

long long Head::integer(UffFields& fields, std::size_t width) {
    const std::size_t column = fields.column();
    const auto value = fields.integer(width);
    if (!value)
        broken(column, fmt::format("record {}: {} columns that hold refusal whole number", record_, width));
    return value.value_or(0);
}

double Head::number(UffFields& fields, std::size_t width) {
    const std::size_t column = fields.column();
    const auto value = fields.number(width);
    if (!value || !std::isfinite(*value))
        broken(column, fmt::format("record {}: {} columns that hold refusal finite number", record_, width));
    return value.value_or(0);
}

void Head::direction(UffFields& fields) {
    function_.type = int(integer(fields, 5));
    for (const std::size_t width : {10, 5, 10})
        integer(fields, width);
    fields.take(1);
    function_.entity = fields.text(10);
    if (isNone(function_.entity)) function_.entity.clear();
    function_.node = integer(fields, 10);
    function_.direction = int(integer(fields, 4));
}

void Head::size(UffFields& fields) {
    const auto form = integer(fields, 10);
    if (form != 2 && form != 4 && form != 5 && form != 6)
        broken(1, fmt::format("ordinate type {}, must be 2, 4, 5 or 6", form));
    function_.isDouble = form == 4 || form == 6;
    function_.isComplex = form == 5 || form == 6;
    const auto count = integer(fields, 10);
    if (count < 1) broken(11, fmt::format("states {} values, at least one is needed", count));
    function_.count = std::uint64_t(std::max(count, 0LL));
    const auto spacing = integer(fields, 10);
    if (spacing != 0 && spacing != 1) broken(21, fmt::format("spacing {}, must be 0 or 1", spacing));
    function_.isEven = spacing == 1;
    function_.least = number(fields, 13);
    UffFields printed = fields;
    function_.stepAsPrinted = printed.text(13);
    function_.step = number(fields, 13);
}

void Head::axis(UffFields& fields, UffAxis& axis) {
    axis.quantity = int(integer(fields, 10));
    for (int exponent = 0; exponent < 3; ++exponent)
        integer(fields, 5);
    fields.take(1);
    axis.label = fields.text(20);
    fields.take(1);
    axis.unit = fields.text(20);
    if (isNone(axis.label)) axis.label.clear();
    if (isNone(axis.unit)) axis.unit.clear();
}

constexpr long long kIeee = 2, kHeadLines = 11;

// The numbers behind "58b": byte order, float format, header lines, bytes.
Result<UffForm> binaryForm(UffFields& fields, std::size_t line, const std::string& file) {
    const std::size_t column = fields.column();
    const auto order = fields.integer(6), floats = fields.integer(6), headLines = fields.integer(12),
               bytes = fields.integer(12);
    if (!order || !floats || !headLines || !bytes || *bytes < 0)
        return refusal(file, line, column,
                       "58b is followed by whole numbers: byte order, float format, lines, bytes");
    if (*order != 1 && *order != 2)
        return refusal(file, line, column,
                       fmt::format("byte order {}, must be 1 (little) or 2 (big endian)", *order));
    if (*floats != kIeee)
        return refusal(file, line, column + 6,
                       fmt::format("floating point format {}: IEEE 754 (2) is read, {} are not", *floats,
                                   *floats == 1   ? "DEC numbers (1)"
                                   : *floats == 3 ? "IBM numbers (3)"
                                                  : "others"),
                       ErrorKind::Unsupported);
    if (*headLines != kHeadLines)
        return refusal(file, line, column + 12,
                       fmt::format("states {} lines before the values, must be 11", *headLines));
    return UffForm{true, *order == 2, std::uint64_t(*bytes)};
}

}  // namespace

Result<UffKind> readUffKind(const UffLines& lines, const std::string& file) {
    UffFields fields(lines.line());
    const auto number = fields.integer(6);
    if (lines.atEnd() || !lines.ended())
        return refusal(file, lines.number(), 1, "breaks off before the number of a data set",
                       ErrorKind::Damaged);
    if (!number || *number < 1)
        return refusal(file, lines.number(), 1, "a data set begins with its number in columns 1 to 6",
                       ErrorKind::Damaged);
    UffKind kind{int(std::min(*number, 999999LL)), {}};
    const std::string letter = lowerAscii(fields.take(1));
    if (kind.number != 58 || letter != "b") return kind;
    auto form = binaryForm(fields, lines.number(), file);
    if (!form) return fail(form.error());
    kind.form = *form;
    return kind;
}

Result<UffFunction> readUffFunction(UffLines& lines, const UffForm& form, const std::string& file) {
    UffFunction function{};
    function.form = form;
    if (auto read = Head(lines, file, function).read(); !read) return fail(read.error());
    return function;
}

const char* uffTypeName(int type) {
    static constexpr const char* names[] = {"general function",
                                            "time response",
                                            "auto spectrum",
                                            "cross spectrum",
                                            "frequency response",
                                            "transmissibility",
                                            "coherence",
                                            "auto-correlation",
                                            "cross-correlation",
                                            "power spectral density",
                                            "energy spectral density",
                                            "probability density",
                                            "spectrum"};
    return type >= 0 && type < int(std::size(names)) ? names[type] : "other function";
}

}  // namespace fettle
