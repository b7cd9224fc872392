#include "core/signal/csv_time.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/signal/csv_text.h"
#include "core/signal/recording_limits.h"

namespace fettle {

namespace {
constexpr double kUneven = 0.01;        // of a step
constexpr double kMostRounding = 0.05;  // of a step, half the last digit printed

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

// Digits behind the decimal mark, less the power of ten: 1.25e-3 has 5.
int decimalsOf(std::string_view number) {
    const std::size_t power = number.find_first_of("eE");
    const std::string_view mantissa = number.substr(0, power);
    const std::size_t mark = mantissa.find_first_of(".,");
    const auto behind = mark == mantissa.npos ? 0 : static_cast<int>(mantissa.size() - mark - 1);
    const auto exponent = power == number.npos ? 0 : parseInteger(number.substr(power + 1)).value_or(0);
    return behind - static_cast<int>(exponent);
}

int digitsOf(std::string_view number) {
    const std::string_view mantissa = number.substr(0, number.find_first_of("eE"));
    const auto first =
        std::find_if(mantissa.begin(), mantissa.end(), [](char c) { return c >= '1' && c <= '9'; });
    return static_cast<int>(std::count_if(first, mantissa.end(), isDigit));
}
}  // namespace

void CsvTime::add(double value, std::string_view text) {
    const std::string_view number = trimmed(text);
    times_.push_back(value);
    decimals_ = std::max(decimals_, decimalsOf(number));
    digits_ = std::max(digits_, digitsOf(number));
}

double CsvTime::rounding(double value) const {
    const double fixed = std::pow(10.0, -decimals_);
    if (value == 0) return fixed / 2;
    return std::max(fixed, std::pow(10.0, std::floor(std::log10(std::abs(value))) + 1 - digits_)) / 2;
}

double CsvTime::tolerance(std::size_t i, double step) const {
    const double printed = rounding(times_[i]) + rounding(times_[i - 1]);
    return kUneven * step + (printed <= 2 * kMostRounding * step ? printed : 0);
}

Result<double> CsvTime::rateHz(double secondsPerUnit, const std::string& file, std::size_t line,
                               std::size_t column) const {
    if (times_.size() < 2)
        return fail(ErrorKind::Invalid, file, csvPlace(line, column), "one time alone tells no sample rate");
    const double whole = times_.back() - times_.front(), step = whole / double(times_.size() - 1);
    if (!(step > 0)) return fail(ErrorKind::Invalid, file, csvPlace(line, column), "the times do not grow");
    for (std::size_t i = 1; i < times_.size(); ++i)
        if (const double own = times_[i] - times_[i - 1]; std::abs(own - step) > tolerance(i, step))
            return fail(ErrorKind::Invalid, file, csvPlace(line + i, column),
                        fmt::format("a time step of {:.6g}, the mean is {:.6g}: steps must be even to {} %",
                                    own, step, 100 * kUneven));
    const double rate = 1 / (step * secondsPerUnit), nearest = std::round(rate);
    const double doubt = rate * (2 * rounding(times_.back()) / whole + 1e-9);
    const double told = std::abs(rate - nearest) <= doubt ? nearest : rate;
    if (auto good = checkRate(told, file, csvPlace(line, column)); !good) return fail(good.error());
    return told;
}

}  // namespace fettle
