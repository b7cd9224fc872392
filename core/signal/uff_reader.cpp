#include "core/signal/uff_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "core/base/text.h"
#include "core/signal/recording_limits.h"
#include "core/signal/uff_channel.h"
#include "core/signal/uff_function.h"
#include "core/signal/uff_values.h"

namespace fettle {

namespace {

constexpr int kFunctionSet = 58, kUnitsSet = 164;
constexpr double kUnevenTimes = 0.01;   // of a step
constexpr double kRoundedTimes = 0.05;  // of a step, half the last digit printed
constexpr double kSameStep = 1e-5;      // relative: a digit of six
constexpr int kFewestDigits = 5, kMostDigits = 12;
constexpr double kMostCandidates = 10000;

int digitsOf(const std::string& number) {
    const std::string mantissa = number.substr(0, number.find_first_of("eEdD"));
    const auto first =
        std::find_if(mantissa.begin(), mantissa.end(), [](char c) { return c >= '1' && c <= '9'; });
    return int(std::count_if(first, mantissa.end(), [](char c) { return c >= '0' && c <= '9'; }));
}

// The part of a whole number made of twos and fives.
double roundness(double whole) {
    double part = 1;
    for (const double factor : {2.0, 5.0})
        while (whole >= factor && std::fmod(whole, factor) == 0) {
            whole /= factor;
            part *= factor;
        }
    return part;
}

struct TimeRecord {
    UffFunction function;
    UffValues values;
    double step = 0, least = 0;  // seconds
    double rateHz = 0;
};

class UffFile {
  public:
    UffFile(const std::string& bytes, const std::string& file) : lines_(bytes), file_(file) {}
    Result<Recording> read();

  private:
    Status readSets();
    Status readSet();
    Status readFunction(const UffForm& form);
    Status readUnits();
    Status passOver();
    Status close(std::size_t openedAt);
    Result<double> secondsPerUnit(const UffFunction& function) const;
    Status setTime(TimeRecord& record) const;
    Status evenlySpaced(TimeRecord& record, double seconds) const;
    Status agree() const;
    Error noTimeRecord() const;
    std::string said(const TimeRecord& record) const;
    void tellPassedOver(std::vector<std::string>& warnings) const;
    tl::unexpected<Error> no(std::size_t line, std::string rule, ErrorKind kind = ErrorKind::Invalid) const {
        return fail(kind, file_, uffPlace(line, 1), std::move(rule));
    }

    UffLines lines_;
    const std::string& file_;
    std::vector<TimeRecord> records_;
    std::map<std::string, std::size_t> passedOver_;
    std::size_t functions_ = 0;
    std::uint64_t samples_ = 0;
    bool si_ = false;
};

bool isTime(const UffFunction& f) {
    return f.type == kUffTimeResponse || (f.type == kUffGeneral && f.abscissa.quantity == kUffTime);
}

Status UffFile::readSets() {
    while (!lines_.atEnd()) {
        if (trimmed(lines_.line()).empty() && lines_.ended()) {
            lines_.next();
            continue;
        }
        if (!lines_.isMark())
            return no(lines_.number(), "a data set begins with a line of -1 in columns 5 and 6",
                      ErrorKind::Damaged);
        if (auto good = readSet(); !good) return good;
    }
    return {};
}

Status UffFile::readSet() {
    const std::size_t openedAt = lines_.number();
    lines_.next();
    const auto kind = readUffKind(lines_, file_);
    if (!kind) return fail(kind.error());
    lines_.next();
    Status done;
    if (kind->number == kFunctionSet) {
        done = readFunction(kind->form);
    } else if (kind->number == kUnitsSet) {
        done = readUnits();
    } else {
        ++passedOver_[fmt::format("data set {}", kind->number)];
        done = passOver();
    }
    return done ? close(openedAt) : done;
}

Status UffFile::close(std::size_t openedAt) {
    while (!lines_.atEnd() && lines_.ended() && trimmed(lines_.line()).empty())
        lines_.next();
    if (lines_.atEnd() || !lines_.isMark())
        return no(lines_.number(), fmt::format("the data set of line {} does not end here with -1", openedAt),
                  ErrorKind::Damaged);
    lines_.next();
    return {};
}

Status UffFile::passOver() {
    while (!lines_.atEnd() && !lines_.isMark())
        lines_.next();
    return {};
}

Status UffFile::readUnits() {
    if (!lines_.atEnd() && !lines_.isMark()) si_ = UffFields(lines_.line()).integer(10) == 1;
    return passOver();
}

Status UffFile::readFunction(const UffForm& form) {
    auto function = readUffFunction(lines_, form, file_);
    if (!function) return fail(function.error());
    function->set = ++functions_;
    const bool wanted = isTime(*function);
    if (wanted && function->isComplex)
        return no(function->at[7], "a complex time record: only real ones can be weighed",
                  ErrorKind::Unsupported);
    if (!wanted) ++passedOver_[uffTypeName(function->type)];
    auto values = readUffValues(lines_, *function, wanted, file_);
    if (!values) return fail(values.error());
    if (!wanted) return {};
    samples_ += function->count;
    if (auto good = checkChannelCount(records_.size() + 1, file_, uffPlace(function->at[1], 1)); !good)
        return good;
    if (samples_ > kMostSamples) return checkSampleCount(samples_, 1, file_, uffPlace(function->at[7], 11));
    TimeRecord record{std::move(*function), std::move(*values), 0, 0, 0};
    if (auto good = setTime(record); !good) return good;
    records_.push_back(std::move(record));
    return {};
}

Result<double> UffFile::secondsPerUnit(const UffFunction& f) const {
    const UffAxis& axis = f.abscissa;
    if (axis.quantity > 1 && axis.quantity != kUffTime)
        return no(f.at[8],
                  fmt::format("a time record against quantity {}, must be time (17)", axis.quantity));
    const std::string unit = lowerAscii(axis.unit);
    if (unit.empty() || unit == "s" || unit == "sec" || unit == "second" || unit == "seconds") return 1;
    if (unit == "ms" || unit == "msec") return 1e-3;
    return no(f.at[8], fmt::format("times in \"{}\", read are s and ms", oneLine(axis.unit)),
              ErrorKind::Unsupported);
}

Status UffFile::setTime(TimeRecord& record) const {
    const auto seconds = secondsPerUnit(record.function);
    if (!seconds) return fail(seconds.error());
    if (!record.function.isEven) return evenlySpaced(record, *seconds);
    record.step = record.function.step * *seconds;
    record.least = record.function.least * *seconds;
    const std::string place = uffPlace(record.function.at[7], 44);
    if (!(record.step > 0))
        return fail(ErrorKind::Invalid, file_, place,
                    fmt::format("an increment of {} s, must be above 0", record.step));
    record.rateHz = *seconds == 1 ? uffRateOf(record.step, record.function.stepAsPrinted) : 1 / record.step;
    return checkRate(record.rateHz, file_, place);
}

Status UffFile::evenlySpaced(TimeRecord& record, double seconds) const {
    const std::vector<double>& times = record.values.abscissas;
    const std::size_t line = record.function.at[7];
    if (times.size() < 2) return no(line, "one value alone tells no sample rate");
    const double step = (times.back() - times.front()) / double(times.size() - 1);
    if (!(step > 0)) return no(line, "the times of the unevenly spaced values do not grow");
    for (std::size_t i = 1; i < times.size(); ++i) {
        const double rounding = record.values.rounding * (std::abs(times[i]) + std::abs(times[i - 1]));
        const double let = kUnevenTimes * step + (rounding <= 2 * kRoundedTimes * step ? rounding : 0);
        if (const double own = times[i] - times[i - 1]; std::abs(own - step) > let)
            return no(
                line,
                fmt::format("unevenly spaced: step {} is {:.6g}, the mean is {:.6g}; read are steps even to "
                            "{} %",
                            i, own, step, 100 * kUnevenTimes));
    }
    record.step = step * seconds;
    record.least = times.front() * seconds;
    const double rate = 1 / record.step, nearest = std::round(rate);
    const double doubt =
        rate * (record.values.rounding * 2 * std::abs(times.back()) / (times.back() - times.front()) + 1e-9);
    record.rateHz = std::abs(rate - nearest) <= doubt ? nearest : rate;
    return checkRate(record.rateHz, file_, uffPlace(line, 1));
}

std::string UffFile::said(const TimeRecord& record) const {
    return fmt::format("data set 58 of line {} has {} values every {:.6g} s from {:.6g} s",
                       record.function.at[1], record.values.ordinates.size(), record.step, record.least);
}

Status UffFile::agree() const {
    const TimeRecord& first = records_.front();
    std::vector<std::string> others;
    for (const TimeRecord& record : records_)
        if (record.values.ordinates.size() != first.values.ordinates.size() ||
            std::abs(record.step / first.step - 1) > kSameStep ||
            std::abs(record.least - first.least) > first.step / 2)
            others.push_back(said(record));
    if (others.empty()) return {};
    if (others.size() > 5) others.resize(5), others.push_back("and more");
    return no(first.function.at[1], fmt::format("{}, but {}: the channels of one file are of one capture",
                                                said(first), joined(others, ", ")));
}

Error UffFile::noTimeRecord() const {
    std::vector<std::string> others;
    for (const auto& [what, count] : passedOver_)
        others.push_back(fmt::format("{} x {}", count, what));
    return {ErrorKind::Unsupported, file_, uffPlace(1, 1),
            others.empty() ? "no data set 58 or 58b with a time record"
                           : "no time record, only " + joined(others, ", ")};
}

void UffFile::tellPassedOver(std::vector<std::string>& warnings) const {
    std::vector<std::string> others;
    for (const auto& [what, count] : passedOver_)
        others.push_back(count > 1 ? fmt::format("{} of {}", what, count) : what);
    if (!others.empty())
        warnings.push_back(fmt::format("{}: passed over: {}", oneLine(file_), joined(others, ", ")));
}

Result<Recording> UffFile::read() {
    if (auto good = readSets(); !good) return fail(good.error());
    if (records_.empty()) return fail(noTimeRecord());
    if (auto good = agree(); !good) return fail(good.error());
    Recording recording;
    recording.file = file_;
    std::vector<const UffFunction*> functions;
    for (const TimeRecord& record : records_)
        functions.push_back(&record.function);
    recording.channels = uffChannels(functions, si_, recording.warnings, file_);
    for (std::size_t c = 0; c < records_.size(); ++c) {
        recording.channels[c].sampleRateHz = records_.front().rateHz;
        recording.channels[c].samples = std::move(records_[c].values.ordinates);
    }
    const TimeRecord& first = records_.front();
    recording.fileTime = first.function.date;
    recording.warnings.push_back(
        fmt::format("{}: sample rate {} Hz taken from {}", oneLine(file_), first.rateHz,
                    first.function.isEven ? "the increment " + oneLine(first.function.stepAsPrinted)
                                          : std::string("the times of its values")));
    if (recording.fileTime)
        recording.warnings.push_back(
            fmt::format("{}: dated {} in a zone it does not name: not used unless file_time says utc",
                        oneLine(file_), formatUtc(*recording.fileTime).substr(0, 19)));
    tellPassedOver(recording.warnings);
    return recording;
}

}  // namespace

double uffRateOf(double step, const std::string& asPrinted) {
    const int digits = std::clamp(digitsOf(asPrinted), kFewestDigits, kMostDigits);
    const double half = std::pow(10.0, std::floor(std::log10(step)) + 1 - digits) / 2;
    const double exact = 1 / step, least = std::ceil(1 / (step + half)), most = std::floor(1 / (step - half));
    double best = exact, bestRoundness = 0;
    if (!(most - least <= kMostCandidates)) return exact;
    for (double whole = least; whole <= most; ++whole) {
        const double round = roundness(whole);
        if (round < bestRoundness ||
            (round == bestRoundness && std::abs(whole - exact) >= std::abs(best - exact)))
            continue;
        best = whole;
        bestRoundness = round;
    }
    return best;
}

Result<Recording> readUff(const std::string& bytes, const std::string& file) {
    if (bytes.empty()) return fail(ErrorKind::Damaged, file, "byte 0", "the file is empty");
    return UffFile(bytes, file).read();
}

}  // namespace fettle
