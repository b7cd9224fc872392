// Why: the letters of a CSV file: lines, fields with and without quotes, and numbers with a decimal point or
// comma, read alike under every locale. What the fields mean is csv_head's and csv_reader's matter. Units:
// lines and columns are counted from 1; a column is a field of its line. Source: RFC 4180 for quotes; a
// quoted field ends on its own line here.
#pragma once

#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace fettle {

// The rule a table in another encoding breaks.
inline constexpr const char* kCsvNotUtf8 = "is not plain UTF-8 text: save the table as UTF-8";

// "line 7, column 2"
std::string csvPlace(std::size_t line, std::size_t column);

// Not empty, no control characters but tab and line ends, and every line ended: "byte N" or "line L, column
// 1".
Status checkCsvText(std::string_view text, const std::string& file);

// Lines one by one, without their ends (LF or CR LF). A byte-order mark of UTF-8 is passed over.
class CsvLines {
  public:
    explicit CsvLines(std::string_view text);
    bool atEnd() const { return rest_.empty(); }
    std::string_view line() const { return line_; }  // REQUIRES !atEnd()
    std::size_t number() const { return number_; }   // of line()
    void next();

  private:
    void find();

    std::string_view rest_;  // from the start of line_
    std::string_view line_;
    std::size_t number_ = 1;
};

// The fields of one line at a time; the views last until the next split and as long as the line.
class CsvFields {
  public:
    static constexpr char kNone = '\0';  // no separator: the line is one field

    // False where a quote is not closed or text follows one; `count` then tells the field. Stops after `most`
    // fields.
    bool split(std::string_view line, char separator, std::size_t most);
    std::size_t count() const { return fields_.size(); }
    std::string_view operator[](std::size_t i) const { return fields_[i]; }
    std::size_t notUtf8() const;  // the first field that is not UTF-8 text, from 1; 0: none

  private:
    std::optional<std::string_view> takeQuoted(std::string_view& rest);

    std::vector<std::string_view> fields_;
    std::deque<std::string> unquoted_;
};

// The separator a header line uses outside quotes: tab, then semicolon, then comma; kNone where it uses none.
char csvSeparatorOf(std::string_view header);

// Decimal point or comma: the first number with either decides, the rest must agree.
class DecimalMark {
  public:
    std::optional<double> parse(std::string_view field);
    // Why parse said no, for a field it was just given.
    std::string complaint(std::string_view field) const;
    char mark() const { return mark_; }  // '.', ',' or kUnknown where no number had one

    static constexpr char kUnknown = '\0';

  private:
    char mark_ = kUnknown;
};

}  // namespace fettle
