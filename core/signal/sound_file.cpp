#include "core/signal/sound_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <memory>

#include "core/signal/flac_walk.h"
#include "core/signal/recording_limits.h"
#include "core/signal/riff_walk.h"
#include "core/signal/sound_memory.h"
#include "core/signal/stored_number.h"

namespace fettle {

namespace {
constexpr std::size_t kBlockSamples = 65536;  // over all channels, read or written at once

struct Close {
    void operator()(SNDFILE* sound) const { sf_close(sound); }
};
using Sound = std::unique_ptr<SNDFILE, Close>;

// What the walks found, whatever the format.
struct Shape {
    std::size_t channels = 0;
    std::uint64_t frames = 0;
    double sampleRateHz = 0;
    double fullScale = 0;
    int bits = 0;  // of a whole number; 0: float
};

std::vector<Channel> emptyChannels(const Shape& shape) {
    std::vector<Channel> channels(shape.channels);
    for (std::size_t c = 0; c < channels.size(); ++c) {
        channels[c].name = std::to_string(c + 1);
        channels[c].sampleRateHz = shape.sampleRateHz;
        channels[c].fullScale = shape.fullScale;
        channels[c].bits = shape.bits;
    }
    return channels;
}

void append(std::vector<Channel>& channels, const std::vector<double>& block, std::size_t frames) {
    for (std::size_t c = 0; c < channels.size(); ++c)
        for (std::size_t i = 0; i < frames; ++i)
            channels[c].samples.push_back(block[i * channels.size() + c]);
}

// Frame by frame as they are decoded; memory grows with what has arrived.
std::uint64_t readFrames(SNDFILE* sound, const Shape& shape, std::vector<Channel>& channels) {
    const std::size_t most = std::max<std::size_t>(kBlockSamples / shape.channels, 1);
    std::vector<double> block(most * shape.channels);
    std::uint64_t read = 0;
    while (read < shape.frames) {
        const std::uint64_t wanted = std::min<std::uint64_t>(most, shape.frames - read);
        const sf_count_t got = sf_readf_double(sound, block.data(), static_cast<sf_count_t>(wanted));
        if (got <= 0 || sf_error(sound) != SF_ERR_NO_ERROR) return read;
        append(channels, block, static_cast<std::size_t>(got));
        read += static_cast<std::uint64_t>(got);
    }
    return read;
}

Result<Recording> decode(SoundSource source, const Shape& shape, const std::string& file) {
    SF_INFO info{};
    SF_VIRTUAL_IO calls = source.calls();
    const Sound sound(sf_open_virtual(&calls, SFM_READ, &info, &source));
    if (!sound)
        return fail(ErrorKind::Damaged, file, "byte 0",
                    "the sound library cannot read what its header states");
    if (info.channels != static_cast<int>(shape.channels))
        return fail(ErrorKind::Damaged, file, "byte 0",
                    "the sound does not have the channels its header states");
    Recording recording;
    recording.file = file;
    recording.channels = emptyChannels(shape);
    const std::uint64_t read = readFrames(sound.get(), shape, recording.channels);
    if (read < shape.frames)
        return fail(ErrorKind::Damaged, file, fmt::format("frame {}", read),
                    fmt::format("ends after {} of {} frames", read, shape.frames));
    for (Channel& channel : recording.channels)
        channel.samples.shrink_to_fit();
    if (auto good = checkSamples(recording, file); !good) return fail(good.error());
    return recording;
}

// The 44 bytes of a plain WAV file, which libsndfile reads without asking further.
std::string plainWavHead(const WavLayout& layout) {
    const std::uint64_t frame = layout.frameBytes(), pad = layout.dataBytes % 2;
    return "RIFF" + littleEndianBytes(36 + layout.dataBytes + pad, 4) + "WAVEfmt " +
           littleEndianBytes(16, 4) + littleEndianBytes(layout.isFloat ? 3 : 1, 2) +
           littleEndianBytes(layout.channels, 2) + littleEndianBytes(layout.sampleRateHz, 4) +
           littleEndianBytes(frame * layout.sampleRateHz, 4) + littleEndianBytes(frame, 2) +
           littleEndianBytes(layout.bits, 2) + "data" + littleEndianBytes(layout.dataBytes, 4);
}
}  // namespace

Result<Recording> readWav(const std::string& bytes, const std::string& file) {
    const auto layout = walkRiff(bytes, file);
    if (!layout) return fail(layout.error());
    const Shape shape{layout->channels, layout->frames(), double(layout->sampleRateHz),
                      layout->isFloat ? 0.0 : 1.0, layout->isFloat ? 0 : int(layout->bits)};
    const std::string_view body = std::string_view(bytes).substr(layout->dataAt, layout->dataBytes);
    auto recording = decode(SoundSource(plainWavHead(*layout), body), shape, file);
    if (recording) recording->warnings = layout->warnings;
    return recording;
}

Result<Recording> readFlac(const std::string& bytes, const std::string& file) {
    const auto layout = walkFlac(bytes, file);
    if (!layout) return fail(layout.error());
    const Shape shape{layout->channels, layout->frames, double(layout->sampleRateHz), 1.0, int(layout->bits)};
    constexpr char kOnlyBlock = char(0x80);
    const std::string head =
        std::string("fLaC") + kOnlyBlock + std::string("\0\0\x22", 3) + std::string(layout->streamInfo);
    return decode(SoundSource(head, std::string_view(bytes).substr(layout->soundAt)), shape, file);
}

namespace {
struct FormatRow {
    SoundFormat format;
    int library;  // libsndfile's number
    int bits;     // 0: float
};

constexpr FormatRow kFormats[] = {
    {SoundFormat::WavPcm16, SF_FORMAT_WAV | SF_FORMAT_PCM_16, 16},
    {SoundFormat::WavPcm24, SF_FORMAT_WAV | SF_FORMAT_PCM_24, 24},
    {SoundFormat::WavFloat32, SF_FORMAT_WAV | SF_FORMAT_FLOAT, 0},
    {SoundFormat::Flac16, SF_FORMAT_FLAC | SF_FORMAT_PCM_16, 16},
    {SoundFormat::Flac24, SF_FORMAT_FLAC | SF_FORMAT_PCM_24, 24},
};

const FormatRow& rowOf(SoundFormat format) {
    return *std::find_if(std::begin(kFormats), std::end(kFormats),
                         [&](const auto& row) { return row.format == format; });
}

Status checkToWrite(const std::vector<std::vector<double>>& channels, double rate, int bits,
                    const std::string& file) {
    if (auto good = checkChannelCount(channels.size(), file, "channels"); !good) return good;
    if (auto good = checkRate(rate, file, "sample rate"); !good) return good;
    if (rate != std::floor(rate))
        return fail(ErrorKind::Unsupported, file, "sample rate",
                    fmt::format("is {} Hz, must be whole", rate));
    if (auto good = checkSampleCount(channels[0].size(), channels.size(), file, "channel 1"); !good)
        return good;
    const double largest = bits ? 1.0 : kLargestSample;
    for (std::size_t c = 0; c < channels.size(); ++c) {
        if (channels[c].size() != channels[0].size())
            return fail(ErrorKind::Invalid, file, fmt::format("channel {}", c + 1),
                        "must be as long as channel 1");
        const auto wrong = std::find_if_not(channels[c].begin(), channels[c].end(),
                                            [&](double sample) { return std::abs(sample) <= largest; });
        if (wrong != channels[c].end())
            return fail(ErrorKind::Invalid, file,
                        fmt::format("channel {}, sample {}", c + 1, wrong - channels[c].begin() + 1),
                        fmt::format("is {}, must be within +-{}", *wrong, largest));
    }
    return {};
}

// The nearest number of so many bits, in the upper bits of 32 as libsndfile takes them.
class Quantiser {
  public:
    explicit Quantiser(int bits) : steps_(std::ldexp(1.0, bits - 1)), upper_(std::ldexp(1.0, 32 - bits)) {}
    int operator()(double sample) const {
        return static_cast<int>(std::min(std::nearbyint(sample * steps_), steps_ - 1) * upper_);
    }

  private:
    double steps_, upper_;
};

bool writeBlock(SNDFILE* sound, const std::vector<std::vector<double>>& channels, std::size_t from,
                std::size_t frames, int bits) {
    const Quantiser quantised(bits ? bits : 1);
    std::vector<int> whole;
    std::vector<float> floating;
    for (std::size_t i = from; i < from + frames; ++i)
        for (const auto& channel : channels)
            bits ? whole.push_back(quantised(channel[i]))
                 : floating.push_back(static_cast<float>(channel[i]));
    const auto count = static_cast<sf_count_t>(frames);
    return (bits ? sf_writef_int(sound, whole.data(), count)
                 : sf_writef_float(sound, floating.data(), count)) == count;
}

bool writeAll(SNDFILE* sound, const std::vector<std::vector<double>>& channels, int bits) {
    const std::size_t frames = channels[0].size(),
                      most = std::max<std::size_t>(kBlockSamples / channels.size(), 1);
    for (std::size_t at = 0; at < frames; at += most)
        if (!writeBlock(sound, channels, at, std::min(most, frames - at), bits)) return false;
    return true;
}
// Opens, has `write` called, closes.
template <class Write>
Result<std::string> encoded(int channels, int rate, const FormatRow& row, const std::string& file,
                            Write write) {
    SF_INFO info{};
    info.samplerate = rate;
    info.channels = channels;
    info.format = row.library;
    SoundSink sink;
    SF_VIRTUAL_IO calls = sink.calls();
    Sound sound(sf_open_virtual(&calls, SFM_WRITE, &info, &sink));
    if (!sound)
        return fail(ErrorKind::Unsupported, file, "channels or sample rate",
                    fmt::format("the format does not take {} channels at {} Hz", channels, rate));
    sf_command(sound.get(), SFC_SET_ADD_PEAK_CHUNK, nullptr, SF_FALSE);
    const bool written = write(sound.get());
    if (sf_close(sound.release()) != SF_ERR_NO_ERROR || !written)
        return fail(ErrorKind::Unwritable, file, "", "the sound library could not write the samples");
    return sink.take();
}
}  // namespace

Result<std::string> writeSoundFile(const std::vector<std::vector<double>>& channels, double sampleRateHz,
                                   SoundFormat format, const std::string& file) {
    const FormatRow& row = rowOf(format);
    if (auto good = checkToWrite(channels, sampleRateHz, row.bits, file); !good) return fail(good.error());
    return encoded(int(channels.size()), int(sampleRateHz), row, file,
                   [&](SNDFILE* sound) { return writeAll(sound, channels, row.bits); });
}

Result<std::string> writeFlacNumbers(std::span<const std::int32_t> numbers, int bits, int sampleRateHz) {
    std::vector<int> upper(numbers.size());  // of 32 bits, as libsndfile takes them
    std::transform(numbers.begin(), numbers.end(), upper.begin(),
                   [&](std::int32_t number) { return int(std::uint32_t(number) << (32 - bits)); });
    const FormatRow& row = rowOf(bits == 16 ? SoundFormat::Flac16 : SoundFormat::Flac24);
    return encoded(1, sampleRateHz, row, "", [&](SNDFILE* sound) {
        const auto count = static_cast<sf_count_t>(upper.size());
        return sf_writef_int(sound, upper.data(), count) == count;
    });
}

}  // namespace fettle
