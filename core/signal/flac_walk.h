// Why: FLAC states its rate, channels, bits and number of samples in one block at the front; this checks it,
// and that the description blocks are all there, before a decoder is let near the file, and says where the
// sound begins. Refused: an unknown number of samples (0), as an end that is not stated cannot be missed;
// sizes beyond the file's end. Errors: Damaged, Invalid or Unsupported with the place "byte N". Source: RFC
// 9639 (Free Lossless Audio Codec), sections 6 to 8.2.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/result.h"

namespace fettle {

struct FlacLayout {
    std::uint32_t sampleRateHz = 0;
    std::uint32_t channels = 0;
    std::uint32_t bits = 0;
    std::uint64_t frames = 0;     // samples in each channel
    std::string_view streamInfo;  // the 34 bytes of the first block
    std::size_t soundAt = 0;      // of the first byte after the description blocks
};

// The layout looks into `bytes`.
Result<FlacLayout> walkFlac(std::string_view bytes, const std::string& file);

}  // namespace fettle
