#include "core/store/float_steps.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fettle {

namespace {

constexpr std::size_t kStretch = 4096;
constexpr double kMostSteps = 1 << 24;
constexpr std::size_t kFewZeros = 32;  // at most one value in so many is -0
constexpr int kMostParts = 3;          // the least distance seen may be so many steps

double ulpOf(float value) {
    const float size = std::abs(value);
    return double(std::nextafter(size, std::numeric_limits<float>::infinity())) - double(size);
}

// What the step may be, narrowed by each value.
class StepRange {
  public:
    StepRange(double middle, double error) : least_(middle - error), most_(middle + error) {}
    double step() const { return (least_ + most_) / 2; }
    bool narrow(float value) {
        const double number = std::round(std::abs(double(value)) / step());
        if (number == 0) return value == 0;
        if (number >= kMostSteps || number * (most_ - least_) > step() / 2) return false;
        const double half = ulpOf(value) / 2, size = std::abs(double(value));
        least_ = std::max(least_, (size - half) / number);
        most_ = std::min(most_, (size + half) / number);
        return least_ <= most_;
    }

  private:
    double least_, most_;
};

bool narrowAll(StepRange& range, std::span<const float> values) {
    return std::all_of(values.begin(), values.end(), [&](float value) { return range.narrow(value); });
}

// Sizes that occur in the stretch, each once, smallest first.
std::vector<float> sizesOf(std::span<const float> stretch) {
    std::vector<float> sizes;
    for (const float value : stretch) {
        if (!std::isfinite(value)) return {};  // has no place in an order
        sizes.push_back(std::abs(value));
    }
    std::sort(sizes.begin(), sizes.end());
    sizes.erase(std::unique(sizes.begin(), sizes.end()), sizes.end());
    return sizes;
}

std::optional<StepRange> rangeOf(const std::vector<float>& sizes) {
    if (sizes.size() < 2 || !(sizes.back() < std::numeric_limits<float>::max())) return std::nullopt;
    std::size_t nearest = 1;
    for (std::size_t i = 2; i < sizes.size(); ++i)
        if (double(sizes[i]) - double(sizes[i - 1]) < double(sizes[nearest]) - double(sizes[nearest - 1]))
            nearest = i;
    const double distance = double(sizes[nearest]) - double(sizes[nearest - 1]);
    for (int parts = 1; parts <= kMostParts; ++parts) {
        StepRange range(distance / parts, ulpOf(sizes[nearest]) / parts);
        if (narrowAll(range, sizes)) return range;
    }
    return std::nullopt;
}

}  // namespace

std::optional<SteppedFloats> steppedFloats(std::span<const float> values) {
    const std::size_t count = std::min(values.size(), kStretch);
    auto range = rangeOf(sizesOf(values.subspan((values.size() - count) / 2, count)));
    if (!range || !narrowAll(*range, values)) return std::nullopt;
    SteppedFloats found{range->step(), {}, {}};
    found.numbers.reserve(values.size());
    for (std::size_t i = 0; i < values.size(); ++i) {
        const double number = std::round(double(values[i]) / found.step);
        if (static_cast<float>(number * found.step) != values[i]) return std::nullopt;
        if (values[i] == 0 && std::signbit(values[i])) found.negativeZeros.push_back(std::uint32_t(i));
        found.numbers.push_back(std::int64_t(number));
    }
    if (found.negativeZeros.size() > values.size() / kFewZeros) return std::nullopt;
    return found;
}

}  // namespace fettle
