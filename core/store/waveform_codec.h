// Why: raw waveforms are most of a fleet file, and the only thing from which all else can be computed again:
// they are packed without loss, every double comes back with the same bits. Stored are the whole numbers the
// file held (Channel::bits), or decimals of up to 6 places, or the numbers behind float32 that are whole
// numbers of one step (float_steps.h); whether that gives the same bits is tried at packing. Up to 24 bits
// they go through FLAC (flac_numbers.h); wider or very few ones as 0th, 1st or 2nd differences, whichever are
// shortest, zigzag, byte planes apart ("shuffled"), zstd. Else float32 times scale where every value is one,
// else float64, planes apart. Layout: byte 0 form (1; 2 for FLAC and kind 5), 1 kind (1 whole, 2 decimal, 3
// float32, 4 float64, 5 stepped float32), 2 differences, 3 bytes a number, 4 bits or decimal places, 5 coder
// (0 planes, 1 FLAC), 6-7 zero, 8-15 scale, 16-23 number of samples; in form 2 XXH3 64 of all other bytes; of
// kind 5 the step (float64), how many values are -0 and their places (32 bits each); then one zstd frame or
// FLAC stream; little endian. Numbers on disk: never change them. Errors: the rule; unpacking damaged bytes
// gives an error, never a crash, and allocates no more than `samples` asks for. Thread: any.
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
