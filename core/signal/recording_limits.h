// Why: what a recording may be at most, in one place, so that every reader refuses the same things in the
// same words and a header that lies cannot make the program ask for memory. Each reader states its limits
// through these checks. Units: Hz; samples are counted over all channels. Places in samples: channel and
// sample are counted from 1. Errors: Invalid, or Unsupported for what is merely too large, with the place
// handed in or "channel 2, sample 17".
#pragma once

#include <cstdint>
#include <string>

#include "core/base/result.h"
#include "core/signal/recording.h"

namespace fettle {

inline constexpr std::uint64_t kMostRecordingBytes = std::uint64_t(1) << 31;  // of one file: 2 GiB
inline constexpr std::uint64_t kMostSidecarBytes = std::uint64_t(1) << 24;    // 16 MiB
inline constexpr std::uint64_t kMostChannels = 256;
inline constexpr std::uint64_t kMostSamples = std::uint64_t(1) << 28;  // over all channels: 2 GiB of doubles
inline constexpr double kLeastRateHz = 1;
inline constexpr double kMostRateHz = 1e7;
inline constexpr double kLargestSample = 1e15;  // so that squares and sums of samples stay finite

Status checkRate(double hertz, const std::string& file, const std::string& place);
Status checkChannelCount(std::uint64_t channels, const std::string& file, const std::string& place);
// `samples` in each of `channels`: at least one, and no more over all channels than a recording may hold.
Status checkSampleCount(std::uint64_t samples, std::uint64_t channels, const std::string& file,
                        const std::string& place);
// Every sample a finite number within kLargestSample.
Status checkSamples(const Recording& recording, const std::string& file);

}  // namespace fettle
