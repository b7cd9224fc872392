#include "core/dsp/local_floor.h"

#include <algorithm>
#include <bit>
#include <cstdint>
#include <numbers>
#include <vector>

namespace fettle {

namespace {

// The upper 16 bits of a non-negative float order as the float does.
std::uint32_t bucketOf(float power) {
    return std::bit_cast<std::uint32_t>(power) >> 16;
}
float middleOf(std::uint32_t bucket) {
    return std::bit_cast<float>((bucket << 16) | 0x8000u);
}

// A multiset of buckets with its median kept at hand.
class RunningMedian {
  public:
    RunningMedian() : count_(1u << 15) {}

    void add(std::uint32_t bucket) {
        ++count_[bucket];
        ++size_;
        below_ += bucket < median_;
    }
    void remove(std::uint32_t bucket) {
        --count_[bucket];
        --size_;
        below_ -= bucket < median_;
    }
    float median() {
        const std::uint32_t half = size_ / 2;
        while (below_ > half)
            below_ -= count_[--median_];
        while (below_ + count_[median_] <= half)
            below_ += count_[median_++];
        return median_ == 0 && count_[0] > 0 ? 0.0f : middleOf(median_);
    }

  private:
    std::vector<std::uint32_t> count_;
    std::uint32_t size_ = 0, below_ = 0, median_ = 0;
};

}  // namespace

void overLocalFloor(std::span<const float> power, std::size_t width, std::span<float> out) {
    const std::size_t n = power.size(), half = std::max<std::size_t>(1, width / 2);
    constexpr float ln2 = std::numbers::ln2_v<float>;
    RunningMedian window;
    for (std::size_t k = 0; k < std::min(half, n); ++k)
        window.add(bucketOf(power[k]));
    for (std::size_t k = 0; k < n; ++k) {
        if (k + half < n) window.add(bucketOf(power[k + half]));
        if (k > half) window.remove(bucketOf(power[k - half - 1]));
        const float median = window.median();
        out[k] = median > 0 ? power[k] * ln2 / median : 0.0f;
    }
}

}  // namespace fettle
