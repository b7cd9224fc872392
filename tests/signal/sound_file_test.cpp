#include "core/signal/sound_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <bit>
#include <cmath>

#include "core/signal/recording_limits.h"
#include "tests/signal/sound_bytes.h"

namespace fettle {
namespace {

using bytes::chunk;
using bytes::little;
using bytes::Wav;
using testing::HasSubstr;

// Whole numbers over the whole range of so many bits, both ends among them, in another order for each
// channel.
std::vector<std::vector<int>> wholeNumbers(int channels, int count, int bits) {
    const std::int64_t least = -(std::int64_t(1) << (bits - 1)), most = -least - 1;
    std::vector<std::vector<int>> all(channels);
    for (int c = 0; c < channels; ++c)
        for (int i = 0; i < count; ++i) {
            const std::int64_t n = i, spread = (7919 * n * n + 104729 * n * (c + 1)) * 40503;
            all[c].push_back(static_cast<int>(i == c       ? least
                                              : i == c + 1 ? most
                                                           : least + spread % (most - least + 1)));
        }
    return all;
}

// Interleaved as WAV stores them: 8 bits unsigned about 128, the rest signed, least byte first.
std::string pcm(const std::vector<std::vector<int>>& channels, int bits) {
    std::string data;
    for (std::size_t i = 0; i < channels[0].size(); ++i)
        for (const auto& channel : channels)
            data += little(static_cast<std::uint64_t>(std::int64_t(channel[i]) + (bits == 8 ? 128 : 0)),
                           bits / 8);
    return data;
}

void expectExactly(const Result<Recording>& read, const std::vector<std::vector<int>>& numbers, int bits,
                   double rate) {
    ASSERT_TRUE(read) << read.error().sentence();
    ASSERT_EQ(read->channels.size(), numbers.size());
    for (std::size_t c = 0; c < numbers.size(); ++c) {
        const Channel& channel = read->channels[c];
        EXPECT_EQ(channel.name, std::to_string(c + 1));
        EXPECT_EQ(channel.sampleRateHz, rate);
        EXPECT_EQ(channel.fullScale, 1.0);
        ASSERT_EQ(channel.samples.size(), numbers[c].size());
        for (std::size_t i = 0; i < numbers[c].size(); ++i)
            ASSERT_EQ(channel.samples[i], std::ldexp(numbers[c][i], 1 - bits))
                << "channel " << c << " sample " << i;
    }
}

TEST(ReadWav, EveryIntegerDepthBitForBit) {
    for (const bool extensible : {false, true})
        for (const int bits : {8, 16, 24, 32})
            for (const int channels : {1, 2, 3, 8}) {
                SCOPED_TRACE(testing::Message()
                             << bits << " bits, " << channels << " channels, extensible " << extensible);
                const auto numbers = wholeNumbers(channels, 1001, bits);
                const Wav wav{1, channels, 25600, bits, extensible};
                expectExactly(readWav(bytes::wav(wav, pcm(numbers, bits)), "a.wav"), numbers, bits, 25600);
            }
}

TEST(ReadFlac, EveryDepthBitForBit) {
    for (const int bits : {8, 16, 24})
        for (const int channels : {1, 2, 3, 8}) {
            SCOPED_TRACE(testing::Message() << bits << " bits, " << channels << " channels");
            const auto numbers = wholeNumbers(channels, 1001, bits);
            expectExactly(readFlac(bytes::flac(numbers, bits, 25600), "a.flac"), numbers, bits, 25600);
        }
}

TEST(ReadWav, EveryFloatDepthBitForBit) {
    const std::vector<double> values = {0, -0.0, 1, -1, 1.5, -317.25, 1e-30, 0.1, 12345.678, -1e15};
    for (const bool extensible : {false, true})
        for (const int bits : {32, 64}) {
            std::string data;
            for (const double value : values)
                data += bits == 64 ? little(std::bit_cast<std::uint64_t>(value), 8)
                                   : little(std::bit_cast<std::uint32_t>(static_cast<float>(value)), 4);
            const auto read = readWav(bytes::wav({3, 2, 12800, bits, extensible}, data), "a.wav");
            ASSERT_TRUE(read) << read.error().sentence();
            ASSERT_EQ(read->channels.size(), 2u);
            for (std::size_t i = 0; i < values.size(); ++i) {
                const double value = bits == 64 ? values[i] : double(static_cast<float>(values[i]));
                EXPECT_EQ(read->channels[i % 2].samples.at(i / 2), value);
            }
            EXPECT_EQ(read->channels[1].fullScale, 0.0);
        }
}

TEST(ReadWav, TakesAsManyChannelsAsItSays) {
    const auto numbers = wholeNumbers(int(kMostChannels), 300, 16);
    const Wav wav{1, int(kMostChannels), 1000, 16, true};
    expectExactly(readWav(bytes::wav(wav, pcm(numbers, 16)), "a.wav"), numbers, 16, 1000);
    const Wav more{1, int(kMostChannels) + 1, 1000, 16, true};
    const auto refused = readWav(bytes::wav(more, std::string(2 * (kMostChannels + 1), '\0')), "a.wav");
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().place, "byte 22");
}

TEST(ReadWav, TakesRatesFromOneHertzToTenMegahertz) {
    for (const std::uint32_t rate : {1u, 44100u, 97656u, 10000000u}) {
        const auto read = readWav(bytes::wav({1, 1, rate, 16, false}, little(7, 2)), "a.wav");
        ASSERT_TRUE(read) << read.error().sentence();
        EXPECT_EQ(read->channels[0].sampleRateHz, rate);
    }
    for (const std::uint32_t rate : {0u, 10000001u, 4294967295u})
        EXPECT_EQ(readWav(bytes::wav({1, 1, rate, 16, false}, little(7, 2)), "a.wav").error().place,
                  "byte 24")
            << rate;
}

const std::string kFormat = chunk("fmt ", bytes::format({}));
const std::string kEight = pcm(wholeNumbers(1, 8, 16), 16);

Result<Recording> readChunks(const std::string& chunks) {
    return readWav(bytes::riff(chunks), "a.wav");
}

TEST(ReadWav, PassesOverOtherChunksBeforeAndAfter) {
    const std::string list = chunk("LIST", "INFOISFT\x05\0\0\0abcd\0");  // odd, padded
    for (const std::string& chunks : {list + kFormat + list + chunk("data", kEight),
                                      kFormat + chunk("data", kEight) + list + chunk("junk", "")}) {
        const auto read = readChunks(chunks);
        ASSERT_TRUE(read) << read.error().sentence();
        EXPECT_EQ(read->channels[0].samples.size(), 8u);
        EXPECT_TRUE(read->warnings.empty());
    }
}

TEST(ReadWav, LetsBytesBehindTheRiffChunkPass) {
    const auto read = readWav(bytes::wav({}, kEight) + bytes::nonsense(1, 333), "a.wav");
    ASSERT_TRUE(read) << read.error().sentence();
    EXPECT_EQ(read->channels[0].samples.size(), 8u);
}

TEST(ReadWav, LetsAMissingPadBytePass) {
    std::string odd = bytes::wav({1, 1, 1000, 8, false}, "abc");
    odd.pop_back();
    const auto read = readWav(odd, "a.wav");
    ASSERT_TRUE(read) << read.error().sentence();
    EXPECT_EQ(read->channels[0].samples,
              (std::vector<double>{('a' - 128) / 128.0, ('b' - 128) / 128.0, ('c' - 128) / 128.0}));
    odd.pop_back();
    EXPECT_FALSE(readWav(odd, "a.wav"));
}

TEST(ReadWav, SaysWhenTheByteRateContradictsTheSampleRate) {
    const auto read = readWav(bytes::with(bytes::wav({}, kEight), 28, little(1, 4)), "a.wav");
    ASSERT_TRUE(read);
    ASSERT_EQ(read->warnings.size(), 1u);
    EXPECT_THAT(read->warnings[0], HasSubstr("byte 28"));
}

struct Damage {
    const char* what;
    std::string bytes;
    ErrorKind kind;
    const char* place;
    const char* rulePart;
};

void expectEach(const std::vector<Damage>& damages,
                Result<Recording> (*read)(const std::string&, const std::string&)) {
    for (const Damage& damage : damages) {
        SCOPED_TRACE(damage.what);
        const auto result = read(damage.bytes, "a.bin");
        ASSERT_FALSE(result);
        EXPECT_EQ(result.error().kind, damage.kind) << result.error().sentence();
        EXPECT_EQ(result.error().file, "a.bin");
        EXPECT_EQ(result.error().place, damage.place) << result.error().sentence();
        EXPECT_THAT(result.error().rule, HasSubstr(damage.rulePart));
    }
}

std::string formatWith(std::size_t at, const std::string& part, bool extensible = false) {
    Wav wav;
    wav.extensible = extensible;
    return bytes::riff(chunk("fmt ", bytes::with(bytes::format(wav), at, part)) + chunk("data", kEight));
}

// Places: RIFF size at byte 4, fmt body at 20, data size at 40, samples at 44.
TEST(ReadWav, NamesPlaceAndRuleOfEveryDamage) {
    const std::string good = bytes::wav({}, kEight), data = chunk("data", kEight);
    const std::string dataHead = kFormat + "data", openEnd = bytes::riff(kFormat + data + chunk("junk", ""));
    const std::string eightBits = bytes::wav({1, 1, 1000, 8, false}, "abcd");
    const auto damaged = ErrorKind::Damaged, invalid = ErrorKind::Invalid,
               unsupported = ErrorKind::Unsupported;
    expectEach(
        {
            {"one sample short", good.substr(0, good.size() - 2), damaged, "byte 4", "ends after 58"},
            {"last byte of an empty last chunk missing", openEnd.substr(0, openEnd.size() - 1), damaged,
             "byte 4", "states 68 bytes, the file ends after 67"},
            {"data one byte over the RIFF chunk", bytes::with(eightBits, 40, little(5, 4)), damaged,
             "byte 40", "claims 5 bytes, 4"},
            {"RIFF size left open", bytes::with(good, 4, little(0xffffffff, 4)), damaged, "byte 4",
             "never closed"},
            {"RIFF size never written", bytes::with(good, 4, little(0, 4)), damaged, "byte 4",
             "never closed"},
            {"RIFF size of less than itself", bytes::with(good, 4, little(3, 4)), damaged, "byte 4",
             "less than"},
            {"data size left open", bytes::with(good, 40, little(0xffffffff, 4)), damaged, "byte 40",
             "never closed"},
            {"data size never written", bytes::with(good, 40, little(0, 4)), damaged, "byte 40",
             "never closed"},
            {"data beyond the RIFF chunk", bytes::with(good, 40, little(18, 4)), damaged, "byte 40",
             "claims 18 bytes, 16"},
            {"half a sample", bytes::with(good, 40, little(15, 4)), damaged, "byte 40",
             "whole number of frames"},
            {"no samples", bytes::riff(dataHead + little(0, 4)), invalid, "byte 40", "no samples"},
            {"no data chunk", bytes::riff(kFormat), damaged, "byte 36", "without a data chunk"},
            {"no fmt chunk", bytes::riff(chunk("junk", "ab")), damaged, "byte 22", "without a fmt chunk"},
            {"samples before fmt", bytes::riff(data + kFormat), damaged, "byte 20", "before the fmt chunk"},
            {"two fmt chunks", bytes::riff(kFormat + kFormat + data), damaged, "byte 36", "second"},
            {"two data chunks", bytes::riff(kFormat + data + data), damaged, "byte 60", "second"},
            {"short fmt", bytes::riff(chunk("fmt ", std::string(14, 1)) + data), damaged, "byte 20",
             "at least 16"},
            {"fmt of 4 GiB", bytes::with(good, 16, little(0xffffffff, 4)), damaged, "byte 16",
             "claims 4294967295"},
            {"no channels", formatWith(2, little(0, 2)), invalid, "byte 22", "0 channels"},
            {"65535 channels", formatWith(2, little(65535, 2)), invalid, "byte 22", "65535 channels"},
            {"0 Hz", formatWith(4, little(0, 4)), invalid, "byte 24", "0 Hz"},
            {"2^32 - 1 Hz", formatWith(4, little(0xffffffff, 4)), invalid, "byte 24", "sample rate"},
            {"frame size 0", formatWith(12, little(0, 2)), damaged, "byte 32", "0 bytes a frame"},
            {"frame size of two channels", formatWith(12, little(4, 2)), damaged, "byte 32",
             "4 bytes a frame"},
            {"0 bits", formatWith(14, little(0, 2)), unsupported, "byte 20", "0 bits"},
            {"12 bits", formatWith(14, little(12, 2)), unsupported, "byte 20", "12 bits"},
            {"mu-law", formatWith(0, little(7, 2)), unsupported, "byte 20", "format 7"},
            {"extensible cut to 16", formatWith(0, little(0xfffe, 2)), damaged, "byte 20", "40 are needed"},
            {"extensible with a short tail", formatWith(16, little(0, 2), true), damaged, "byte 20",
             "40 are needed"},
            {"17 of 16 bits", formatWith(18, little(17, 2), true), damaged, "byte 38", "17 valid of 16"},
            {"private format", formatWith(39, "\x72", true), unsupported, "byte 44", "private"},
            {"RF64", bytes::with(good, 0, "RF64"), unsupported, "byte 0", "RF64"},
            {"big-endian", bytes::with(good, 0, "RIFX"), unsupported, "byte 0", "RIFX"},
            {"a film", bytes::with(good, 8, "AVI "), unsupported, "byte 8", "WAVE"},
            {"no RIFF", bytes::with(good, 0, "MIFF"), damaged, "byte 0", "RIFF"},
            {"NaN", bytes::wav({3, 2, 1000, 32, false}, little(0, 12) + little(0x7fc00000, 4)), invalid,
             "channel 2, sample 2", "NaN"},
            {"infinity", bytes::wav({3, 1, 1000, 64, false}, little(0xfff0000000000000, 8)), invalid,
             "channel 1, sample 1", "infinite"},
            {"too large", bytes::wav({3, 1, 1000, 64, false}, little(std::bit_cast<std::uint64_t>(1e200), 8)),
             invalid, "channel 1, sample 1", "1e+200"},
        },
        readWav);
}

// Places: stream info at byte 8, its rate at 18, its number of samples at 21.
TEST(ReadFlac, NamesPlaceAndRuleOfEveryDamage) {
    const auto numbers = wholeNumbers(2, 100, 16);
    const std::string good = bytes::flac(numbers, 16, 12800);
    const auto info = [&](std::uint32_t rate, int bits, std::uint64_t samples) {
        return bytes::with(good, 8, bytes::flacInfo(rate, 2, bits, samples, 100));
    };
    const auto damaged = ErrorKind::Damaged, invalid = ErrorKind::Invalid,
               unsupported = ErrorKind::Unsupported;
    expectEach(
        {
            {"one frame stated too many", info(12800, 16, 101), damaged, "frame 100",
             "ends after 100 of 101 frames"},
            {"samples cut off", good.substr(0, good.size() - 1), damaged, "frame 0",
             "ends after 0 of 100 frames"},
            {"a sample changed", bytes::with(good, good.size() - 40, "#"), damaged, "frame 0",
             "ends after 0 of 100"},
            {"0 Hz", info(0, 16, 100), invalid, "byte 18", "0 Hz"},
            {"20 bits", info(12800, 20, 100), unsupported, "byte 20", "20 bits"},
            {"number of samples unknown", info(12800, 16, 0), damaged, "byte 21", "never closed"},
            {"2^36 - 1 samples", info(12800, 16, 0xfffffffff), unsupported, "byte 21", "68719476735 samples"},
            {"first block of another kind", bytes::with(good, 4, "\x84"), damaged, "byte 4", "first block"},
            {"first block of another size", bytes::with(good, 5, bytes::big(0xffffff, 3)), damaged, "byte 4",
             "34 bytes"},
            {"a block beyond the end", bytes::with(good, 4, std::string(1, '\0')), damaged, "byte 43",
             "claims"},
            {"ends before the last block", bytes::with(good.substr(0, 42), 4, std::string(1, '\0')), damaged,
             "byte 42", "description blocks"},
            {"no fLaC", bytes::with(good, 0, "OggS"), damaged, "byte 0", "fLaC"},
        },
        readFlac);
}

TEST(ReadFlac, PassesOverDescriptionBlocks) {
    const auto numbers = wholeNumbers(1, 100, 16);
    const std::string good = bytes::flac(numbers, 16, 12800);
    const std::string padding = std::string(1, '\x81') + bytes::big(1000, 3) + std::string(1000, 'x');
    const std::string padded =
        bytes::with(good.substr(0, 42), 4, std::string(1, '\0')) + padding + good.substr(42);
    expectExactly(readFlac(padded, "a.flac"), numbers, 16, 12800);
}

// A changed byte in the sound is caught by the frame's CRC-16 or leaves the samples as they were.
TEST(ReadFlac, NeverGivesOtherSamplesForAChangedByte) {
    const auto numbers = wholeNumbers(2, 200, 16);
    const std::string good = bytes::flac(numbers, 16, 12800);
    int refused = 0;
    for (std::size_t at = 42; at < good.size(); ++at) {
        const auto read = readFlac(bytes::with(good, at, std::string(1, char(good[at] ^ 0x10))), "a.flac");
        if (read) expectExactly(read, numbers, 16, 12800);
        refused += !read;
    }
    EXPECT_GT(refused, 800);
}

struct Written {
    SoundFormat format;
    int bits;  // 0: float
    Result<Recording> (*read)(const std::string&, const std::string&);
};
const Written kWritten[] = {{SoundFormat::WavPcm16, 16, readWav},
                            {SoundFormat::WavPcm24, 24, readWav},
                            {SoundFormat::WavFloat32, 0, readWav},
                            {SoundFormat::Flac16, 16, readFlac},
                            {SoundFormat::Flac24, 24, readFlac}};

std::vector<std::vector<double>> quantised(int channels, int count, int bits) {
    std::vector<std::vector<double>> all;
    for (const auto& numbers : wholeNumbers(channels, count, bits)) {
        auto& channel = all.emplace_back();
        for (const int number : numbers)
            channel.push_back(std::ldexp(number, 1 - bits));
    }
    return all;
}

TEST(WriteSoundFile, ComesBackBitForBit) {
    for (const Written& row : kWritten)
        for (const int channels : {1, 2, 3, 8})
            for (const int count : {1, 100, 70000}) {
                SCOPED_TRACE(testing::Message()
                             << row.bits << " bits, " << channels << " channels, " << count);
                const auto samples = quantised(channels, count, row.bits ? row.bits : 24);
                const auto written = writeSoundFile(samples, 25600, row.format);
                ASSERT_TRUE(written) << written.error().sentence();
                const auto read = row.read(*written, "a");
                ASSERT_TRUE(read) << read.error().sentence();
                ASSERT_EQ(read->channels.size(), samples.size());
                for (std::size_t c = 0; c < samples.size(); ++c)
                    EXPECT_EQ(read->channels[c].samples, samples[c]);
                EXPECT_EQ(read->channels[0].sampleRateHz, 25600);
                EXPECT_TRUE(read->warnings.empty());
            }
}

TEST(WriteSoundFile, GivesTheSameBytesForTheSameSamples) {
    for (const Written& row : kWritten) {
        const auto samples = quantised(3, 5000, 16);
        const std::string first = writeSoundFile(samples, 12800, row.format).value();
        EXPECT_EQ(writeSoundFile(samples, 12800, row.format).value(), first);
        EXPECT_EQ(first.find("PEAK"), std::string::npos);  // a PEAK chunk carries the time of writing
    }
}

TEST(WriteSoundFile, WritesTheWavTheLayoutAsksFor) {
    const auto numbers = wholeNumbers(2, 10, 16);
    EXPECT_EQ(writeSoundFile(quantised(2, 10, 16), 12800, SoundFormat::WavPcm16).value(),
              bytes::wav({1, 2, 12800, 16, false}, pcm(numbers, 16)));
}

TEST(WriteSoundFile, FullScaleBecomesTheLargestNumber) {
    const auto written = writeSoundFile({{1.0, -1.0}}, 1000, SoundFormat::WavPcm16);
    ASSERT_TRUE(written);
    EXPECT_EQ(readWav(*written, "a").value().channels[0].samples,
              (std::vector<double>{32767.0 / 32768, -1.0}));
}

TEST(WriteSoundFile, RoundsToTheNearest) {
    const double step = 1.0 / 32768;
    const auto written = writeSoundFile({{0.4 * step, 0.6 * step, -0.6 * step}}, 1000, SoundFormat::WavPcm16);
    ASSERT_TRUE(written);
    EXPECT_EQ(readWav(*written, "a").value().channels[0].samples, (std::vector<double>{0, step, -step}));
}

TEST(WriteSoundFile, RefusesWhatNoFileCanHold) {
    const auto refusal = [](const std::vector<std::vector<double>>& channels, double rate,
                            SoundFormat format) {
        const auto written = writeSoundFile(channels, rate, format, "out.wav");
        return written ? std::string("written") : written.error().place;
    };
    EXPECT_EQ(refusal({}, 1000, SoundFormat::WavPcm16), "channels");
    EXPECT_EQ(refusal({{}}, 1000, SoundFormat::WavPcm16), "channel 1");
    EXPECT_EQ(refusal({{0, 0}, {0}}, 1000, SoundFormat::WavPcm16), "channel 2");
    EXPECT_EQ(refusal({{0, 1.5}}, 1000, SoundFormat::WavPcm16), "channel 1, sample 2");
    EXPECT_EQ(refusal({{0}, {std::nan("")}}, 1000, SoundFormat::WavFloat32), "channel 2, sample 1");
    EXPECT_EQ(refusal({{0}}, 12800.5, SoundFormat::WavPcm16), "sample rate");
    EXPECT_EQ(refusal({{0}}, 0, SoundFormat::WavPcm16), "sample rate");
    EXPECT_EQ(refusal(std::vector<std::vector<double>>(9, {0.0}), 1000, SoundFormat::Flac16),
              "channels or sample rate");
    EXPECT_EQ(refusal({{1.5}}, 1000, SoundFormat::WavFloat32), "written");
}

}  // namespace
}  // namespace fettle
