#include "core/signal/recording_limits.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace fettle {

Status checkRate(double hertz, const std::string& file, const std::string& place) {
    if (hertz >= kLeastRateHz && hertz <= kMostRateHz) return {};
    return fail(ErrorKind::Invalid, file, place,
                fmt::format("states a sample rate of {} Hz, must be from {} to {}", hertz, kLeastRateHz,
                            kMostRateHz));
}

Status checkChannelCount(std::uint64_t channels, const std::string& file, const std::string& place) {
    if (channels >= 1 && channels <= kMostChannels) return {};
    return fail(ErrorKind::Invalid, file, place,
                fmt::format("states {} channels, must be from 1 to {}", channels, kMostChannels));
}

Status checkSampleCount(std::uint64_t samples, std::uint64_t channels, const std::string& file,
                        const std::string& place) {
    if (samples == 0) return fail(ErrorKind::Invalid, file, place, "has no samples, at least one is needed");
    if (samples <= kMostSamples / std::max<std::uint64_t>(channels, 1)) return {};
    return fail(ErrorKind::Unsupported, file, place,
                fmt::format("states {} samples in each of {} channels, a recording holds at most {} in all",
                            samples, channels, kMostSamples));
}

namespace {
bool isTaken(double sample) {
    return std::abs(sample) <= kLargestSample;
}  // false for NaN

Error wrongSample(double sample, const std::string& file, std::size_t channel, std::size_t index) {
    const std::string rule =
        std::isfinite(sample)
            ? fmt::format("is {}, must be within +-{}", sample, kLargestSample)
            : fmt::format("is {}, must be a finite number", std::isnan(sample) ? "NaN" : "infinite");
    return Error{ErrorKind::Invalid, file, fmt::format("channel {}, sample {}", channel + 1, index + 1),
                 rule};
}
}  // namespace

Status checkSamples(const Recording& recording, const std::string& file) {
    for (std::size_t c = 0; c < recording.channels.size(); ++c) {
        const std::vector<double>& samples = recording.channels[c].samples;
        const auto wrong = std::find_if_not(samples.begin(), samples.end(), isTaken);
        if (wrong != samples.end())
            return fail(wrongSample(*wrong, file, c, static_cast<std::size_t>(wrong - samples.begin())));
    }
    return {};
}

}  // namespace fettle
