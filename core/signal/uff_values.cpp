#include "core/signal/uff_values.h"

#include <fmt/format.h>

#include <bit>
#include <cmath>

#include "core/base/text.h"
#include "core/signal/recording_limits.h"
#include "core/signal/stored_number.h"

namespace fettle {

namespace {

constexpr double kPrintedRounding = 5e-6, kSingleRounding = 6e-8, kDoubleRounding = 1e-15;

// Widths of a line's fields; where two alternate the first is an abscissa.
struct Layout {
    std::vector<std::size_t> widths;
    bool pairs = false;
};

Layout layoutOf(const UffFunction& f) {
    if (f.isEven)
        return f.isDouble ? Layout{{20, 20, 20, 20}, false} : Layout{{13, 13, 13, 13, 13, 13}, false};
    return f.isDouble ? Layout{{13, 20, 13, 20}, true} : Layout{{13, 13, 13, 13, 13, 13}, true};
}

Status tooFew(const UffFunction& f, std::size_t line, const std::string& file) {
    return fail(ErrorKind::Damaged, file, uffPlace(line, 1),
                fmt::format("data set 58 of line {} states {} values, fewer follow", f.at[7], f.count));
}

class TextValues {
  public:
    TextValues(const UffFunction& function, const std::string& file)
        : function_(function), file_(file), layout_(layoutOf(function)) {}

    Result<UffValues> read(UffLines& lines) {
        const std::size_t least = layout_.widths[0] * (layout_.pairs ? 2 : 1);
        if (function_.count > lines.left() / least + 1)
            return fail(tooFew(function_, lines.number(), file_).error());
        values_.rounding = kPrintedRounding;
        while (values_.ordinates.size() < function_.count) {
            if (lines.atEnd() || lines.isMark() || !lines.ended())
                return fail(tooFew(function_, lines.number(), file_).error());
            if (auto good = takeLine(lines); !good) return fail(good.error());
            lines.next();
        }
        return std::move(values_);
    }

  private:
    Status takeLine(const UffLines& lines) {
        UffFields fields(lines.line());
        for (std::size_t i = 0; i < layout_.widths.size() && values_.ordinates.size() < function_.count;
             ++i) {
            const std::size_t column = fields.column();
            if (fields.restIsBlank()) return tooFew(function_, lines.number(), file_);
            const auto value = fortranNumber(fields.take(layout_.widths[i]));
            if (!value || !(std::abs(*value) <= kLargestSample))
                return fail(ErrorKind::Invalid, file_, uffPlace(lines.number(), column),
                            fmt::format("{} columns that hold no finite number within +-{}",
                                        layout_.widths[i], kLargestSample));
            (layout_.pairs && i % 2 == 0 ? values_.abscissas : values_.ordinates).push_back(*value);
        }
        if (fields.restIsBlank()) return {};
        return fail(ErrorKind::Invalid, file_, uffPlace(lines.number(), fields.column()),
                    fmt::format("more than the {} values stated", function_.count));
    }

    const UffFunction& function_;
    const std::string& file_;
    Layout layout_;
    UffValues values_;
};

double floatAt(std::string_view bytes, std::size_t at, std::size_t size, bool big) {
    const std::uint64_t raw = big ? bigEndian(bytes, at, size)
                                  : std::uint64_t(littleEndian(bytes, at, 4)) |
                                        (size == 8 ? std::uint64_t(littleEndian(bytes, at + 4, 4)) << 32 : 0);
    return size == 8 ? std::bit_cast<double>(raw) : double(std::bit_cast<float>(std::uint32_t(raw)));
}

// Bytes of an abscissa (0: none) and of an ordinate; nothing where the stated bytes fit neither.
std::optional<std::pair<std::size_t, std::size_t>> sizesOf(const UffFunction& f) {
    const std::size_t value = f.isDouble ? 8 : 4;
    if (f.isEven)
        return f.form.bytes == f.count * value ? std::optional(std::pair(std::size_t(0), value))
                                               : std::nullopt;
    for (const std::size_t abscissa : {std::size_t(4), std::size_t(8)})
        if (f.form.bytes == f.count * (abscissa + value)) return std::pair(abscissa, value);
    return std::nullopt;
}

Result<UffValues> binaryValues(UffLines& lines, const UffFunction& f, const std::string& file) {
    const auto sizes = sizesOf(f);
    const std::size_t line = lines.number();
    if (!sizes || f.form.bytes > kMostRecordingBytes)
        return fail(ErrorKind::Damaged, file, uffPlace(f.at[7], 11),
                    fmt::format("states {} values and {} bytes of them", f.count, f.form.bytes));
    const std::string_view bytes = lines.takeBytes(std::size_t(f.form.bytes));
    if (bytes.size() < f.form.bytes) return fail(tooFew(f, line, file).error());
    UffValues values;
    values.rounding = sizes->first == 8 ? kDoubleRounding : kSingleRounding;
    const std::size_t each = sizes->first + sizes->second;
    for (std::size_t at = 0; at < bytes.size(); at += each) {
        if (sizes->first) values.abscissas.push_back(floatAt(bytes, at, sizes->first, f.form.bigEndian));
        values.ordinates.push_back(floatAt(bytes, at + sizes->first, sizes->second, f.form.bigEndian));
        if (!(std::abs(values.ordinates.back()) <= kLargestSample) ||
            (sizes->first && !(std::abs(values.abscissas.back()) <= kLargestSample)))
            return fail(ErrorKind::Invalid, file,
                        fmt::format("data set 58 number {}, value {}", f.set, at / each + 1),
                        fmt::format("must be a finite number within +-{}", kLargestSample));
    }
    return values;
}

Result<UffValues> passOver(UffLines& lines, const UffFunction& f, const std::string& file) {
    const std::size_t line = lines.number();
    if (!f.form.binary) {
        while (!lines.atEnd() && !lines.isMark())
            lines.next();
    } else if (f.form.bytes > lines.left() ||
               lines.takeBytes(std::size_t(f.form.bytes)).size() < f.form.bytes) {
        return fail(tooFew(f, line, file).error());
    }
    return UffValues{};
}

}  // namespace

Result<UffValues> readUffValues(UffLines& lines, const UffFunction& function, bool wanted,
                                const std::string& file) {
    if (!wanted) return passOver(lines, function, file);
    if (auto good = checkSampleCount(function.count, 1, file, uffPlace(function.at[7], 11)); !good)
        return fail(good.error());
    return function.form.binary ? binaryValues(lines, function, file)
                                : TextValues(function, file).read(lines);
}

}  // namespace fettle
