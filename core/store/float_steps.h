// Why: many converters write whole numbers of an instrument, times a factor nobody states, as float32. Those
// floats look like noise to a packer; the whole numbers behind them do not. Finds the factor ("step") from
// the values alone: every value must be the float32 nearest to a whole number of steps, bit for bit. Quick to
// say no: a stretch is asked first. Thread: any.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace fettle {

struct SteppedFloats {
    double step = 0;                           // value = float32(number x step)
    std::vector<std::int64_t> numbers;         // within 2^24 of zero
    std::vector<std::uint32_t> negativeZeros;  // places of those that are -0, rising
};
std::optional<SteppedFloats> steppedFloats(std::span<const float> values);

}  // namespace fettle
