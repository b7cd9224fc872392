#include "core/signal/flac_walk.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/signal/recording_limits.h"
#include "core/signal/stored_number.h"

namespace fettle {

namespace {
constexpr std::size_t kInfoBytes = 34, kInfoAt = 8;

tl::unexpected<Error> damaged(const std::string& file, std::size_t at, std::string rule) {
    return fail(ErrorKind::Damaged, file, fmt::format("byte {}", at), std::move(rule));
}

Status checkStart(std::string_view bytes, const std::string& file) {
    if (bytes.empty()) return damaged(file, 0, "the file is empty, a FLAC recording is expected");
    const std::string_view start = bytes.substr(0, 4);
    if (start != std::string_view("fLaC").substr(0, start.size()))
        return damaged(file, 0, "a FLAC file begins with fLaC, this one does not");
    if (bytes.size() < kInfoAt + kInfoBytes)
        return damaged(file, bytes.size(), "ends within the 42 bytes a FLAC file begins with");
    if ((bigEndian(bytes, 4, 1) & 0x7f) != 0 || bigEndian(bytes, 5, 3) != kInfoBytes)
        return damaged(file, 4, "the first block must describe the stream in 34 bytes");
    return {};
}

// Where the blocks end: each is a flag for the last, 7 bits of kind, 24 bits of size and its bytes.
Result<std::size_t> endOfBlocks(std::string_view bytes, const std::string& file) {
    std::size_t at = 4;
    for (bool last = false; !last;) {
        if (bytes.size() - at < 4) return damaged(file, bytes.size(), "ends within its description blocks");
        last = bigEndian(bytes, at, 1) & 0x80;
        const std::size_t size = bigEndian(bytes, at + 1, 3), left = bytes.size() - at - 4;
        if (size > left)
            return damaged(file, at + 1,
                           fmt::format("a description block claims {} bytes, {} are left", size, left));
        at += 4 + size;
    }
    return at;
}

Status checkInfo(const FlacLayout& layout, const std::string& file) {
    const std::string at = fmt::format("byte {}", kInfoAt + 10);
    if (auto good = checkRate(layout.sampleRateHz, file, at); !good) return good;
    if (layout.bits != 8 && layout.bits != 16 && layout.bits != 24)
        return fail(ErrorKind::Unsupported, file, fmt::format("byte {}", kInfoAt + 12),
                    fmt::format("samples of {} bits; read are 8, 16 and 24", layout.bits));
    const std::string countAt = fmt::format("byte {}", kInfoAt + 13);
    if (layout.frames == 0)
        return fail(
            ErrorKind::Damaged, file, countAt,
            "states no number of samples: streamed or never closed by its recorder, its end cannot be told");
    return checkSampleCount(layout.frames, layout.channels, file, countAt);
}
}  // namespace

Result<FlacLayout> walkFlac(std::string_view bytes, const std::string& file) {
    if (auto good = checkStart(bytes, file); !good) return fail(good.error());
    const auto end = endOfBlocks(bytes, file);
    if (!end) return fail(end.error());
    const std::uint64_t packed =
        bigEndian(bytes, kInfoAt + 10, 8);  // 20 bits rate, 3 channels, 5 bits, 36 samples
    FlacLayout layout;
    layout.sampleRateHz = static_cast<std::uint32_t>(packed >> 44);
    layout.channels = static_cast<std::uint32_t>(packed >> 41 & 7) + 1;
    layout.bits = static_cast<std::uint32_t>(packed >> 36 & 31) + 1;
    layout.frames = packed & 0xfffffffff;
    layout.streamInfo = bytes.substr(kInfoAt, kInfoBytes);
    layout.soundAt = *end;
    if (auto good = checkInfo(layout, file); !good) return fail(good.error());
    return layout;
}

}  // namespace fettle
