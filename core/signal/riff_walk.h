// Why: a WAV file cut off in the middle must be refused, not read as a shorter recording, and its header must
// not be believed before the bytes behind it were seen. This walks the chunks of a WAV file and says where
// the samples lie; every size is held against the bytes that are really there. Taken: RIFF WAVE with PCM of
// 8, 16, 24, 32 bits or IEEE float of 32, 64 bits, plain or WAVE_FORMAT_EXTENSIBLE. A missing pad byte after
// an odd last chunk and bytes behind the RIFF chunk are let pass. Refused: sizes of 0 or 2^32 - 1 left behind
// by a stream or a recorder that lost power, RIFX, RF64, W64.
// Errors: Damaged, Invalid or Unsupported with the place "byte N".
// Source: Multimedia Programming Interface and Data Specifications 1.0 (IBM and Microsoft, 1991), "Waveform
// Audio File Format"; the 40 byte fmt chunk from Microsoft's published WAVEFORMATEXTENSIBLE. Both from
// memory.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace fettle {

struct WavLayout {
    bool isFloat = false;
    std::uint32_t channels = 0;
    std::uint32_t sampleRateHz = 0;
    std::uint32_t bits = 0;  // of one stored sample: 8, 16, 24, 32 or 64
    std::size_t dataAt = 0;  // of the first sample
    std::size_t dataBytes = 0;
    std::vector<std::string> warnings;  // sentences: contradictions that do no harm

    std::size_t frameBytes() const { return std::size_t(channels) * bits / 8; }
    std::uint64_t frames() const { return dataBytes / frameBytes(); }
};

Result<WavLayout> walkRiff(std::string_view bytes, const std::string& file);

}  // namespace fettle
