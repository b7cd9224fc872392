// Why: raw waveforms are most of a fleet file, and the only thing from which all else can be computed again:
// they are packed without loss, every double comes back with the same bits. Where the file held whole numbers
// (Channel::bits) or decimals of up to 6 places those are stored: 0th, 1st or 2nd differences, whichever
// are shortest, zigzag, as few bytes as they need, byte planes apart ("shuffled"), zstd. Whether that gives
// the same bits is tried at packing; else float32 times scale where every value is one, else float64, planes
// apart. Layout: byte 0 version (1), 1 kind (1 whole, 2 decimal, 3 float32, 4 float64), 2 differences, 3
// bytes a number, 4 bits or decimal places, 5-7 zero, 8-15 scale, 16-23 number of samples, then one zstd
// frame; little endian. Numbers on disk: never change them. Errors: the rule; unpacking damaged bytes gives
// an error, never a crash, and allocates no more than `samples` asks for. Thread: any.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace fettle {

std::string packWaveform(std::span<const double> samples, int bits, double scale);
// `samples`: how many there must be.
tl::expected<std::vector<double>, std::string> unpackWaveform(std::string_view packed, std::uint64_t samples);
// Over the samples' bits.
std::uint64_t digestOf(std::span<const double> samples);

}  // namespace fettle
