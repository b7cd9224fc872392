// Why: a CSV recording may give its sample rate only by a column of times. Steps must be even to 1 %, as a
// missing sample or a jump shifts every line of a spectrum; but a logger that prints 12800 Hz with six
// decimals writes steps of 78 and 79 us, so the last printed digit is let off where it is small against the
// step. Units: seconds once multiplied by the column's unit. Errors: Invalid "line L, column C" of the first
// time out of step.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace fettle {

class CsvTime {
  public:
    // `text` is the number as printed, from which its last digit is told.
    void add(double value, std::string_view text);

    // The rate in Hz, whole where the printed digits leave room for a whole number. `line` is that of the
    // first time.
    Result<double> rateHz(double secondsPerUnit, const std::string& file, std::size_t line,
                          std::size_t column) const;

  private:
    double rounding(double value) const;  // half the last digit printed, of a time of this size
    double tolerance(std::size_t i, double step) const;

    std::vector<double> times_;
    int decimals_ = 0;  // most seen behind the decimal mark
    int digits_ = 1;    // most seen from the first digit that is not 0
};

}  // namespace fettle
