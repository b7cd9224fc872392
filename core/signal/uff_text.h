// Why: a universal file is lines in columns as a punched card had them, here and there with raw bytes between
// two lines. This walks it: lines, fields of stated widths, and a run of bytes where a data set says that one
// follows. Units: lines and columns are counted from 1; raw bytes count as no line. Numbers are read as
// Fortran reads them, by width and locale-free: a blank field is 0, D stands for E, and the E may be missing
// before a sign.
// Errors: none; a field that is no number is empty.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace fettle {

std::string uffPlace(std::size_t line, std::size_t column);  // "line 7, column 21"

class UffLines {
  public:
    explicit UffLines(std::string_view bytes);
    bool atEnd() const { return rest_.empty(); }
    std::string_view line() const { return line_; }  // without its end; REQUIRES !atEnd()
    bool ended() const { return ended_; }            // whether line() has its end
    std::size_t number() const { return number_; }   // of line()
    std::size_t left() const { return rest_.size(); }
    void next();
    // Raw bytes from the start of line(), as many as there are; the line after them is next.
    std::string_view takeBytes(std::size_t count);
    // "-1" in columns 5 and 6 and nothing else: where a data set begins and ends.
    bool isMark() const;

  private:
    void find();

    std::string_view rest_;  // from the start of line_
    std::string_view line_;
    bool ended_ = false;
    std::size_t number_ = 1;
};

// The fields of one line, from the left.
class UffFields {
  public:
    explicit UffFields(std::string_view line) : line_(line) {}
    std::size_t column() const { return at_ + 1; }  // of the next field
    std::string_view take(std::size_t width);
    std::string text(std::size_t width);  // without blanks around it
    std::optional<long long> integer(std::size_t width);
    std::optional<double> number(std::size_t width);
    bool restIsBlank() const;

  private:
    std::string_view line_;
    std::size_t at_ = 0;
};

std::optional<double> fortranNumber(std::string_view field);  // of a field that is not blank

}  // namespace fettle
