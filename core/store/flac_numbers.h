// Why: of all ways tried (fettle-bench --codecs) FLAC leaves the fewest bytes of a machine's vibration: it
// predicts a tone, differences do not. Whole numbers of up to 24 bits, one channel; encoder and decoder are
// core/signal's. Kept are the 34 bytes of STREAMINFO and the frames. Errors: the rule; no more is unpacked
// than `count`. Thread: any. Source: RFC 9639.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace fettle {

struct FlacNumbers {
    int bits = 0;  // 16 or 24
    std::string bytes;
};
// Numbers in two's complement; nothing where they are larger than 24 bits or too few to be worth a head.
std::optional<FlacNumbers> toFlac(const std::vector<std::uint64_t>& numbers);
tl::expected<std::vector<std::uint64_t>, std::string> fromFlac(std::string_view bytes, std::uint64_t count);

}  // namespace fettle
