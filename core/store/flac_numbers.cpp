#include "core/store/flac_numbers.h"

#include <algorithm>
#include <cmath>

#include "core/signal/flac_walk.h"
#include "core/signal/sound_file.h"

namespace fettle {

namespace {
constexpr int kRateHz = 48000;        // means nothing here: FLAC wants one
constexpr std::size_t kFewest = 256;  // numbers

int bitsFor(const std::vector<std::uint64_t>& numbers) {
    std::uint64_t all = 0;
    for (const std::uint64_t number : numbers)
        all |= number >> 63 ? ~number : number;
    return all < 1u << 15 ? 16 : all < 1u << 23 ? 24 : 0;
}
// Of the file only what says how to decode, and the sound: description blocks are left out.
constexpr std::size_t kStreamInfo = 34;  // bytes
std::string asFile(std::string_view bytes) {
    return "fLaC" + std::string("\x80\0\0\x22", 4).append(bytes);
}
}  // namespace

std::optional<FlacNumbers> toFlac(const std::vector<std::uint64_t>& numbers) {
    const int bits = bitsFor(numbers);
    if (numbers.size() < kFewest || bits == 0) return std::nullopt;
    std::vector<std::int32_t> channel(numbers.size());
    std::transform(numbers.begin(), numbers.end(), channel.begin(),
                   [](std::uint64_t number) { return std::int32_t(std::int64_t(number)); });
    const auto file = writeFlacNumbers(channel, bits, kRateHz);
    if (!file) return std::nullopt;
    const auto layout = walkFlac(*file, "");
    if (!layout || layout->streamInfo.size() != kStreamInfo) return std::nullopt;
    return FlacNumbers{bits, std::string(layout->streamInfo) + file->substr(layout->soundAt)};
}

tl::expected<std::vector<std::uint64_t>, std::string> fromFlac(std::string_view bytes, std::uint64_t count) {
    const std::string file = asFile(bytes);
    const auto layout = walkFlac(file, "");
    if (!layout) return tl::unexpected(layout.error().rule);
    if (layout->channels != 1 || layout->frames != count)
        return tl::unexpected<std::string>("does not hold the samples stated");
    const auto sound = readFlac(file, "");
    if (!sound) return tl::unexpected(sound.error().rule);
    std::vector<std::uint64_t> numbers;
    numbers.reserve(count);
    const double steps = std::ldexp(1.0, int(layout->bits) - 1);
    for (const double sample : sound->channels[0].samples)
        numbers.push_back(std::uint64_t(std::int64_t(sample * steps)));
    return numbers;
}

}  // namespace fettle
