#include "core/signal/riff_walk.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/base/text.h"
#include "core/signal/recording_limits.h"
#include "core/signal/stored_number.h"

namespace fettle {

namespace {
constexpr std::uint32_t kNoSize = 0xffffffff;  // what a stream leaves where a size belongs
constexpr std::uint32_t kPcm = 1, kFloat = 3, kExtensible = 0xfffe;
constexpr std::string_view kSubformatTail("\0\0\0\0\x10\0\x80\0\0\xaa\0\x38\x9b\x71", 14);

struct Chunk {
    std::string_view id;
    std::size_t at = 0;    // of its first byte after the 8 byte head
    std::size_t size = 0;  // without the pad byte
};

class Walk {
  public:
    Walk(std::string_view bytes, const std::string& file) : bytes_(bytes), file_(file) {}
    Result<WavLayout> run();

  private:
    Status openRiff();
    Status checkKind() const;
    Status takeChunks();
    Result<Chunk> chunkAt(std::size_t at) const;
    Status take(const Chunk& chunk);
    Status takeFormat(const Chunk& chunk);
    Status takeShape(const Chunk& chunk);
    Result<std::uint32_t> sampleKind(const Chunk& chunk) const;
    Result<std::uint32_t> extendedKind(const Chunk& chunk) const;
    Status takeData(const Chunk& chunk);
    Status checkWhole() const;

    std::uint32_t number(std::size_t at, std::size_t count) const { return littleEndian(bytes_, at, count); }
    tl::unexpected<Error> no(ErrorKind kind, std::size_t at, std::string rule) const {
        return fail(kind, file_, fmt::format("byte {}", at), std::move(rule));
    }

    std::string_view bytes_;
    const std::string& file_;
    std::size_t end_ = 0;  // of the RIFF chunk, within the bytes
    bool padMissing_ = false;
    bool haveFormat_ = false, haveData_ = false;
    WavLayout layout_;
};

Result<WavLayout> Walk::run() {
    if (auto opened = openRiff(); !opened) return fail(opened.error());
    if (auto taken = takeChunks(); !taken) return fail(taken.error());
    if (auto whole = checkWhole(); !whole) return fail(whole.error());
    return layout_;
}

Status Walk::checkKind() const {
    if (bytes_.empty()) return no(ErrorKind::Damaged, 0, "the file is empty, a WAV recording is expected");
    const std::string_view kind = bytes_.substr(0, 4);
    if (kind == "RIFX" || kind == "RF64" || kind == "riff")
        return no(ErrorKind::Unsupported, 0,
                  fmt::format("is a WAV file of kind {}, only RIFF is read", kind));
    if (kind != std::string_view("RIFF").substr(0, kind.size()))
        return no(ErrorKind::Damaged, 0, "a WAV file begins with RIFF, this one does not");
    if (bytes_.size() < 12)
        return no(ErrorKind::Damaged, bytes_.size(), "ends within the 12 bytes a WAV file begins with");
    if (bytes_.substr(8, 4) != "WAVE")
        return no(ErrorKind::Unsupported, 8, "is a RIFF file but not of kind WAVE");
    return {};
}

Status Walk::openRiff() {
    if (auto kind = checkKind(); !kind) return kind;
    const std::uint32_t stated = number(4, 4);
    if (stated == kNoSize || stated == 0)
        return no(ErrorKind::Damaged, 4,
                  "states no size: streamed or never closed by its recorder, its end cannot be told");
    const std::uint64_t end = std::uint64_t(stated) + 8;
    if (end < 12)
        return no(ErrorKind::Damaged, 4, fmt::format("states a size of {}, less than its own head", stated));
    if (end > bytes_.size() + 1)
        return no(ErrorKind::Damaged, 4,
                  fmt::format("states {} bytes, the file ends after {}", end, bytes_.size()));
    padMissing_ = end == bytes_.size() + 1;
    end_ = std::min<std::size_t>(end, bytes_.size());
    return {};
}

Result<Chunk> Walk::chunkAt(std::size_t at) const {
    const Chunk chunk{bytes_.substr(at, 4), at + 8, number(at + 4, 4)};
    const std::size_t left = end_ - chunk.at;
    if (chunk.id == "data" && (chunk.size == kNoSize || (chunk.size == 0 && chunk.at < bytes_.size())))
        return no(ErrorKind::Damaged, at + 4,
                  fmt::format(
                      "the data chunk states no length and {} bytes follow: streamed or never closed by its "
                      "recorder, its end cannot be told",
                      bytes_.size() - chunk.at));
    if (chunk.size > left)
        return no(
            ErrorKind::Damaged, at + 4,
            fmt::format("chunk \"{}\" claims {} bytes, {} are left", oneLine(chunk.id), chunk.size, left));
    return chunk;
}

Status Walk::takeChunks() {
    std::size_t at = 12;
    while (at + 8 <= end_) {
        const auto chunk = chunkAt(at);
        if (!chunk) return fail(chunk.error());
        if (auto taken = take(*chunk); !taken) return taken;
        at = chunk->at + chunk->size + chunk->size % 2;
    }
    if (padMissing_ && at != end_ + 1)
        return no(ErrorKind::Damaged, 4,
                  fmt::format("states {} bytes, the file ends after {}", end_ + 1, bytes_.size()));
    return {};
}

Status Walk::take(const Chunk& chunk) {
    const bool isFormat = chunk.id == "fmt ", isData = chunk.id == "data";
    if ((isFormat && haveFormat_) || (isData && haveData_))
        return no(ErrorKind::Damaged, chunk.at - 8,
                  fmt::format("a second \"{}\" chunk, one is expected", chunk.id));
    haveFormat_ |= isFormat;
    haveData_ |= isData;
    if (isFormat) return takeFormat(chunk);
    if (isData) return takeData(chunk);
    return {};
}

Status Walk::takeFormat(const Chunk& chunk) {
    if (chunk.size < 16)
        return no(ErrorKind::Damaged, chunk.at,
                  fmt::format("fmt chunk of {} bytes, at least 16 are needed", chunk.size));
    const auto kind = sampleKind(chunk);
    if (!kind) return fail(kind.error());
    layout_.isFloat = *kind == kFloat;
    return takeShape(chunk);
}

Result<std::uint32_t> Walk::sampleKind(const Chunk& chunk) const {
    std::uint32_t tag = number(chunk.at, 2);
    if (tag == kExtensible) {
        auto extended = extendedKind(chunk);
        if (!extended) return extended;
        tag = *extended;
    }
    const std::uint32_t bits = number(chunk.at + 14, 2);
    const bool whole = tag == kPcm && (bits == 8 || bits == 16 || bits == 24 || bits == 32);
    const bool floating = tag == kFloat && (bits == 32 || bits == 64);
    if (whole || floating) return tag;
    return no(ErrorKind::Unsupported, chunk.at,
              fmt::format(
                  "samples of format {} with {} bits; read are format 1 (PCM) with 8, 16, 24 or 32 bits and "
                  "format 3 (IEEE float) with 32 or 64",
                  tag, bits));
}

Result<std::uint32_t> Walk::extendedKind(const Chunk& chunk) const {
    if (chunk.size < 40 || number(chunk.at + 16, 2) < 22)
        return no(ErrorKind::Damaged, chunk.at,
                  fmt::format("extensible fmt chunk of {} bytes, 40 are needed", chunk.size));
    const std::uint32_t bits = number(chunk.at + 14, 2), valid = number(chunk.at + 18, 2);
    if (valid > bits)
        return no(ErrorKind::Damaged, chunk.at + 18, fmt::format("states {} valid of {} bits", valid, bits));
    if (bytes_.substr(chunk.at + 26, 14) != kSubformatTail)
        return no(ErrorKind::Unsupported, chunk.at + 24,
                  "samples of a format known by a private number only");
    return number(chunk.at + 24, 2);
}

Status Walk::takeShape(const Chunk& chunk) {
    layout_.channels = number(chunk.at + 2, 2);
    layout_.sampleRateHz = number(chunk.at + 4, 4);
    layout_.bits = number(chunk.at + 14, 2);
    const std::string channelsAt = fmt::format("byte {}", chunk.at + 2),
                      rateAt = fmt::format("byte {}", chunk.at + 4);
    if (auto good = checkChannelCount(layout_.channels, file_, channelsAt); !good) return good;
    if (auto good = checkRate(layout_.sampleRateHz, file_, rateAt); !good) return good;
    const std::uint64_t frame = number(chunk.at + 12, 2), perSecond = number(chunk.at + 8, 4);
    if (frame != layout_.frameBytes())
        return no(ErrorKind::Damaged, chunk.at + 12,
                  fmt::format("states {} bytes a frame, {} channels of {} bits take {}", frame,
                              layout_.channels, layout_.bits, layout_.frameBytes()));
    if (perSecond != frame * layout_.sampleRateHz)
        layout_.warnings.push_back(fmt::format(
            "{}: byte {}: states {} bytes a second, {} Hz take {}; the sample rate is taken as stated",
            oneLine(file_), chunk.at + 8, perSecond, layout_.sampleRateHz, frame * layout_.sampleRateHz));
    return {};
}

Status Walk::takeData(const Chunk& chunk) {
    if (!haveFormat_)
        return no(ErrorKind::Damaged, chunk.at, "samples before the fmt chunk that describes them");
    layout_.dataAt = chunk.at;
    layout_.dataBytes = chunk.size;
    if (chunk.size % layout_.frameBytes() != 0)
        return no(ErrorKind::Damaged, chunk.at - 4,
                  fmt::format("{} bytes of samples are not a whole number of frames of {} bytes", chunk.size,
                              layout_.frameBytes()));
    return checkSampleCount(layout_.frames(), layout_.channels, file_, fmt::format("byte {}", chunk.at - 4));
}

Status Walk::checkWhole() const {
    if (!haveFormat_) return no(ErrorKind::Damaged, end_, "ends without a fmt chunk");
    if (!haveData_) return no(ErrorKind::Damaged, end_, "ends without a data chunk");
    return {};
}
}  // namespace

Result<WavLayout> walkRiff(std::string_view bytes, const std::string& file) {
    return Walk(bytes, file).run();
}

}  // namespace fettle
