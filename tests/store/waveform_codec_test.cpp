#include "core/store/waveform_codec.h"

#include <gmock/gmock.h>
#include <cstring>

#include <algorithm>
#include <bit>
#include <cmath>
#include <limits>

#include "core/base/text.h"
#include "core/signal/reader.h"
#include "core/signal/recording_limits.h"
#include "core/signal/sidecar.h"
#include "core/signal/sound_file.h"
#include "core/store/packing.h"
#include "tests/store/store_fixture.h"

namespace fettle {
namespace {

using testing::HasSubstr;
using Samples = std::vector<double>;

constexpr std::size_t kKind = 1, kDifferences = 2, kWidth = 3, kDetail = 4, kCount = 16, kFrame = 24;
enum { Whole = 1, Decimal, Float32, Float64, Stepped };

int kindOf(const std::string& packed) {
    return packed[kKind];
}

void expectBack(const Samples& samples, const std::string& packed) {
    const auto back = unpackWaveform(packed, samples.size());
    ASSERT_TRUE(back) << back.error();
    ASSERT_EQ(back->size(), samples.size());
    EXPECT_TRUE(std::equal(samples.begin(), samples.end(), back->begin(), [](double a, double b) {
        return std::bit_cast<std::uint64_t>(a) == std::bit_cast<std::uint64_t>(b);
    }));
    EXPECT_EQ(digestOf(*back), digestOf(samples));
}

Samples wholeNoise(int bits, double scale, std::size_t count, std::uint64_t seed = 1) {
    Nonsense noise(seed);
    Samples samples;
    for (std::size_t i = 0; i < count; ++i)
        samples.push_back(std::ldexp(double(std::int64_t(noise.bits()) >> (64 - bits)), 1 - bits) * scale);
    return samples;
}

TEST(WaveformCodec, WholeNumbersOfEveryWidthAndScale) {
    for (const int bits : {8, 12, 16, 20, 24, 32})
        for (const double scale : {1.0, 16.0, 9.80665, -0.1, 1e-9, 1e12})
            for (const std::size_t count : {0, 1, 2, 7, 1000}) {
                SCOPED_TRACE(testing::Message() << bits << " bits, scale " << scale << ", " << count);
                const Samples samples = wholeNoise(bits, scale, count);
                const std::string packed = packWaveform(samples, bits, scale);
                EXPECT_EQ(kindOf(packed), Whole);
                expectBack(samples, packed);
            }
}

TEST(WaveformCodec, TheEndsOfTheScale) {
    for (const int bits : {8, 16, 24, 32}) {
        const double top = 1 - std::ldexp(1.0, 1 - bits);
        const Samples samples = {-1, top, -1, top, top, top, -1, -1, 0, -1, top};
        const std::string packed = packWaveform(samples, bits, 1);
        EXPECT_EQ(kindOf(packed), Whole);
        expectBack(samples, packed);
    }
}

// Constant samples take next to nothing; a rising line does after one difference, a parabola after two.
TEST(WaveformCodec, TheDifferencesThatPackBest) {
    Samples constant(5000, 0.25), rising, parabola;
    for (int i = 0; i < 5000; ++i) {
        rising.push_back(std::ldexp(i - 2500, -15));
        parabola.push_back(std::ldexp((i - 2500) * (i - 2500), -23));
    }
    const std::string a = packWaveform(constant, 32, 1), b = packWaveform(rising, 32, 1),
                      c = packWaveform(parabola, 32, 1);
    EXPECT_GE(b[kDifferences], 1);
    EXPECT_EQ(c[kDifferences], 2);
    for (const std::string* packed : {&a, &b, &c})
        EXPECT_LT(packed->size(), 120u);
    expectBack(constant, a);
    expectBack(rising, b);
    expectBack(parabola, c);
}

TEST(WaveformCodec, DecimalsOfATextFile) {
    Nonsense noise(3);
    Samples samples;
    for (int i = 0; i < 1000; ++i)
        samples.push_back(parseNumber(std::to_string(noise.below(20000) - 10000) + "e-4").value());
    const std::string packed = packWaveform(samples, 0, 1);
    EXPECT_EQ(kindOf(packed), Decimal);
    EXPECT_LT(packed.size(), 2100u);  // 15 bits each
    expectBack(samples, packed);
}

TEST(WaveformCodec, FloatsAreFloatsAndTheRestIsDouble) {
    Nonsense noise(4);
    Samples singles, doubles, scaled;
    for (int i = 0; i < 1000; ++i) {
        const double number = double(noise.bits() >> 12) / 3e12;
        singles.push_back(double(static_cast<float>(number)));
        scaled.push_back(double(static_cast<float>(number)) * 9.80665);
        doubles.push_back(number);
    }
    const std::string a = packWaveform(singles, 0, 1), b = packWaveform(doubles, 0, 1),
                      c = packWaveform(scaled, 0, 9.80665);
    EXPECT_EQ(kindOf(a), Float32);
    EXPECT_EQ(kindOf(b), Float64);
    EXPECT_EQ(kindOf(c), Float32);
    expectBack(singles, a);
    expectBack(doubles, b);
    expectBack(scaled, c);
}

// Where a channel says it held whole numbers and did not, nothing is lost.
TEST(WaveformCodec, ASayingThatDoesNotHoldLosesNothing) {
    Samples samples = wholeNoise(16, 9.80665, 1000);
    samples[500] = std::nextafter(samples[500], 1e9);
    const std::string packed = packWaveform(samples, 16, 9.80665);
    EXPECT_EQ(kindOf(packed), Float64);
    expectBack(samples, packed);
    for (const double scale : {0.0, std::numeric_limits<double>::quiet_NaN(), 1e-320})
        expectBack(samples, packWaveform(samples, 16, scale));
    for (const int bits : {-1, 0, 33, 1000})
        expectBack(samples, packWaveform(samples, bits, 1));
}

TEST(WaveformCodec, AnyBitsAtAllComeBack) {
    Nonsense noise(5);
    Samples samples = {0.0,
                       -0.0,
                       kLargestSample,
                       -kLargestSample,
                       std::numeric_limits<double>::denorm_min(),
                       std::numeric_limits<double>::max(),
                       std::numeric_limits<double>::infinity()};
    expectBack(samples, packWaveform(samples, 16, 1));
    expectBack({-0.0}, packWaveform(Samples{-0.0}, 16, 1));
    expectBack({-0.0, 0.5}, packWaveform(Samples{-0.0, 0.5}, 16, -1));
    for (int i = 0; i < 5000; ++i)
        samples.push_back(std::bit_cast<double>(noise.bits() ^ noise.bits() << 32));
    for (const int bits : {0, 16, 32})
        expectBack(samples, packWaveform(samples, bits, 3));
}

// From the file on: what the reader and the sidecar made of 16, 24 and 8 bits is stored as those.
TEST(WaveformCodec, WhatTheReadersGiveIsStoredAsTheFileHeldIt) {
    const std::vector<std::vector<double>> sound = {wholeNoise(8, 1, 500)};
    for (const SoundFormat format : {SoundFormat::WavPcm16, SoundFormat::WavPcm24, SoundFormat::WavFloat32,
                                     SoundFormat::Flac16, SoundFormat::Flac24}) {
        const std::string bytes = writeSoundFile(sound, 12800, format).value();
        const bool flac = format == SoundFormat::Flac16 || format == SoundFormat::Flac24;
        Recording recording = (flac ? readFlac(bytes, "a") : readWav(bytes, "a")).value();
        ASSERT_TRUE(applySidecar(recording, R"({"channels": [{"name": "x", "scale": 0.0123}]})", "a.json"));
        const Channel& channel = recording.channels[0];
        const std::string packed = packWaveform(channel.samples, channel.bits, channel.scale);
        EXPECT_EQ(kindOf(packed), format == SoundFormat::WavFloat32 ? Stepped : Whole);
        expectBack(channel.samples, packed);
    }
}

// Vibration is predicted better than by differences, and comes back through the same door.
TEST(WaveformCodec, NumbersOfUpTo24BitsGoThroughFlac) {
    Samples samples;
    for (int i = 0; i < 20000; ++i)
        samples.push_back(std::round(9000 * std::sin(0.3 * i) + 4000 * std::sin(1.1 * i)) / 32768);
    const std::string packed = packWaveform(samples, 16, 1);
    EXPECT_EQ(packed[0], 2);
    EXPECT_EQ(kindOf(packed), Whole);
    EXPECT_LT(packed.size(), 20000u);  // whole numbers of 16 bits are 40,000 bytes
    expectBack(samples, packed);
    for (const int bits : {17, 24, 25})
        for (const std::size_t count : {255, 256, 4096, 4097}) {
            const Samples noise = wholeNoise(bits, 9.80665, count);
            expectBack(noise, packWaveform(noise, bits, 9.80665));
        }
}

// A converter's whole numbers times a factor it does not state, as float32; -0 among them.
TEST(WaveformCodec, FloatsThatAreStepsAreStoredAsTheirNumbers) {
    Nonsense noise(9);
    Samples samples;
    for (int i = 0; i < 8000; ++i)
        samples.push_back(double(float((noise.below(4001) - 2000) * 0.000208616)) * 9.80665);
    samples[17] = samples[7999] = -0.0 * 9.80665;
    const std::string packed = packWaveform(samples, 0, 9.80665);
    EXPECT_EQ(kindOf(packed), Stepped);
    EXPECT_LT(packed.size(), 13000u);  // 12 bits each
    expectBack(samples, packed);
    const Samples few(samples.begin(), samples.begin() + 100);  // too few for FLAC
    EXPECT_EQ(kindOf(packWaveform(few, 0, 9.80665)), Stepped);
    expectBack(few, packWaveform(few, 0, 9.80665));
    samples[4000] = std::nextafter(float(samples[4000] / 9.80665), 9.0f) * 9.80665;
    EXPECT_EQ(kindOf(packWaveform(samples, 0, 9.80665)), Float32);
    expectBack(samples, packWaveform(samples, 0, 9.80665));
}

std::string fromHex(std::string_view hex) {
    std::string bytes;
    for (std::size_t i = 0; i < hex.size(); i += 2)
        bytes += char(std::stoi(std::string(hex.substr(i, 2)), nullptr, 16));
    return bytes;
}

// What programs wrote before there was a second form.
TEST(WaveformCodec, TheFirstFormIsReadForEver) {
    Samples whole, floats;
    for (int i = 0; i < 300; ++i) {
        whole.push_back((i * i % 77 - 30) / 32768.0 * 16);
        floats.push_back(double(float(i % 9 * 0.001)));
    }
    expectBack(whole,
               fromHex("010102011000000000000000000030402c0100000000000028b52ffd642c009d0100703b3e04959e959e"
                       "959e0404049e950f00312850000622354452089c2200178a2a4029046020a80b5232ea8681cbbb863130"
                       "04af45f6d0"));
    expectBack(floats,
               fromHex("0103000400000000000000000000f03f2c0100000000000028b52ffd64b003950100f8006f6fa66f0aa6"
                       "426f0012129b12d79b60120083034483a3c4e503003a3b3c0500202c4ae0840102d40302d40342b51c01"
                       "a39d5722"));
}

class DamagedWaveform : public testing::Test {
  protected:
    const Samples samples_ = wholeNoise(32, 1, 3000);
    const std::string good_ = packWaveform(samples_, 32, 1);
};

// The digest sees all there is, before a decoder does.
TEST(DamagedSecondForm, EveryFlippedByteAndEveryCutIsRefused) {
    const Samples samples = wholeNoise(16, 1, 1000);
    const std::string good = packWaveform(samples, 16, 1);
    ASSERT_EQ(good[0], 2);
    for (std::size_t i = 0; i < good.size(); ++i) {
        std::string bad = good;
        bad[i] = char(bad[i] ^ 0x41);
        EXPECT_FALSE(unpackWaveform(bad, samples.size())) << i;
        EXPECT_FALSE(unpackWaveform(good.substr(0, i), samples.size())) << i;
    }
    EXPECT_FALSE(unpackWaveform(good + "x", samples.size()));
}

// Anyone can compute a digest: what is said of the numbers is held against what there is all the same.
TEST(DamagedSecondForm, ACraftedHeadIsRefused) {
    Samples steps;
    for (int i = 0; i < 100; ++i)
        steps.push_back(double(float((i * i % 401 - 200) * 0.000208616)));
    std::string bad = packWaveform(steps, 0, 1);
    ASSERT_EQ(kindOf(bad), Stepped);
    constexpr std::size_t kHead = 24, kDigest = 8;
    bad[kDetail] = char(200);
    const std::uint64_t digest = digest64(bad.substr(0, kHead) + bad.substr(kHead + kDigest));
    std::memcpy(bad.data() + kHead, &digest, kDigest);
    const auto back = unpackWaveform(bad, steps.size());
    ASSERT_FALSE(back);
    EXPECT_THAT(back.error(), HasSubstr("wrong size"));
}

// Beyond the head the checksum sees it. Within it bytes 1 to 15 say how to read: what then comes out is other
// samples, which the digest kept beside the waveform tells.
TEST_F(DamagedWaveform, EveryFlippedByteIsSeen) {
    for (std::size_t i = 0; i < good_.size(); ++i)
        for (const int mask : {0x01, 0x80, 0xff}) {
            std::string bad = good_;
            bad[i] = char(bad[i] ^ mask);
            const auto back = unpackWaveform(bad, samples_.size());
            if (!back) continue;
            EXPECT_TRUE(*back == samples_ || (i < 16 && digestOf(*back) != digestOf(samples_))) << i;
        }
}

TEST_F(DamagedWaveform, EveryCutIsRefused) {
    for (std::size_t length = 0; length < good_.size(); ++length)
        EXPECT_FALSE(unpackWaveform(good_.substr(0, length), samples_.size())) << length;
    EXPECT_FALSE(unpackWaveform(good_ + "x", samples_.size()));
}

TEST_F(DamagedWaveform, AHeadThatLiesIsRefusedWithItsRule) {
    const auto refused = [&](std::size_t where, int value) {
        std::string bad = good_;
        bad[where] = char(value);
        const auto back = unpackWaveform(bad, samples_.size());
        return back ? "taken" : back.error();
    };
    EXPECT_THAT(refused(0, 3), HasSubstr("form 3"));
    EXPECT_THAT(refused(0, 2), HasSubstr("not what was packed"));
    EXPECT_THAT(refused(5, 1), HasSubstr("in a way"));
    EXPECT_THAT(refused(kKind, 9), HasSubstr("kind"));
    EXPECT_THAT(refused(kWidth, 0), HasSubstr("width"));
    EXPECT_THAT(refused(kWidth, 9), HasSubstr("width"));
    EXPECT_THAT(refused(kDetail, 0), HasSubstr("size"));
    EXPECT_THAT(refused(kDetail, 33), HasSubstr("size"));
    EXPECT_THAT(refused(kCount + 5, 1), HasSubstr("samples"));
    EXPECT_THAT(unpackWaveform(good_, samples_.size() + 1).error(), HasSubstr("3000 samples, 3001"));
}

// A frame of zeros unpacks to a hundred times its bound: stopped at the bound.
TEST_F(DamagedWaveform, MoreThanStatedIsNotUnpacked) {
    const std::string bomb = good_.substr(0, kFrame) + pack(std::string(600000, '\0'));
    EXPECT_THAT(unpackWaveform(bomb, samples_.size()).error(), HasSubstr("more than the 12000 bytes"));
    EXPECT_THAT(unpackWaveform(good_, kMostSamples + 1).error(), HasSubstr("are stated"));
}

TEST_F(DamagedWaveform, NonsenseIsRefused) {
    Nonsense noise(6);
    for (int round = 0; round < 2000; ++round) {
        std::string bad = good_.substr(0, round % 2 ? kFrame : 0);
        for (int i = noise.below(200); i > 0; --i)
            bad += char(noise.below(256));
        EXPECT_FALSE(unpackWaveform(bad, samples_.size()));
    }
}

TEST(Packing, TextsComeBackAndDamageIsSeen) {
    for (const std::string& text : {std::string(), std::string("x"), std::string(300000, 'a')})
        EXPECT_EQ(unpack(pack(text), kMostPackedText).value(), text);
    EXPECT_THAT(unpack(pack(std::string(1000, 'a')), 999).error(), HasSubstr("more than the 999 bytes"));
    EXPECT_EQ(unpack(pack(std::string(1000, 'a')), 1000)->size(), 1000u);
    std::string packed = pack("{\"schema\": 1}");
    packed.back() = char(packed.back() ^ 1);  // the checksum over the content
    EXPECT_FALSE(unpack(packed, kMostPackedText));
    EXPECT_FALSE(unpack("", kMostPackedText));
}

TEST(Packing, ADigestKnowsWhereItsPiecesEnd) {
    EXPECT_EQ(digest128({"ab", "c"}), digest128({"ab", "c"}));
    EXPECT_NE(digest128({"ab", "c"}), digest128({"a", "bc"}));
    EXPECT_NE(digest128({"abc"}), digest128({"abc", ""}));
    // XXH3 64 of the empty input, seed 0: from the test vectors of xxHash's specification.
    EXPECT_EQ(digest64(""), 0x2d06800538d394c2u);
}

}  // namespace
}  // namespace fettle
