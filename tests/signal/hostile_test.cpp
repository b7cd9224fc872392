// Every reader of the registry against every kind of damage. A new reader needs one row in samples() and is
// tested.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <bit>
#include <cmath>
#include <map>

#include "core/base/file_system_fake.h"
#include "core/signal/reader.h"
#include "tests/signal/memory_meter.h"
#include "tests/signal/sound_bytes.h"
#include "tests/signal/uff_bytes.h"
#include "tests/signal/variable_bytes.h"

namespace fettle {
namespace {

constexpr std::size_t kMostMemory = std::size_t(64) << 20;

struct Sample {
    std::string good;                           // some 20 KB
    std::map<std::string, std::string> absurd;  // what is wrong with it, and the bytes
};

std::vector<std::vector<int>> noise(std::size_t channels, std::size_t samples) {
    const std::string random = bytes::nonsense(7, channels * samples);
    std::vector<std::vector<int>> all(channels);
    for (std::size_t i = 0; i < random.size(); ++i)
        all[i % channels].push_back(random[i] * 100);
    return all;
}

Sample wavSample() {
    std::string data;
    for (const auto& channel : noise(2, 5000))
        for (const int number : channel)
            data += bytes::little(static_cast<std::uint64_t>(number), 2);
    Sample sample{bytes::wav({1, 2, 12800, 16, false}, data), {}};
    const std::string& good = sample.good;
    sample.absurd["RIFF of 2^32 - 1 bytes"] = bytes::with(good, 4, bytes::little(0xffffffff, 4));
    sample.absurd["RIFF of 2^32 - 2 bytes"] = bytes::with(good, 4, bytes::little(0xfffffffe, 4));
    sample.absurd["fmt of 2^32 - 1 bytes"] = bytes::with(good, 16, bytes::little(0xffffffff, 4));
    sample.absurd["data of 2^32 - 1 bytes"] = bytes::with(good, 40, bytes::little(0xffffffff, 4));
    sample.absurd["data of 2^31 bytes"] = bytes::with(good, 40, bytes::little(0x80000000, 4));
    sample.absurd["0 channels"] = bytes::with(good, 22, bytes::little(0, 2));
    sample.absurd["65535 channels"] = bytes::with(good, 22, bytes::little(65535, 2));
    sample.absurd["2^31 channels and Hz"] = bytes::with(good, 22, bytes::little(0x80000000, 4));
    sample.absurd["0 Hz"] = bytes::with(good, 24, bytes::little(0, 4));
    sample.absurd["2^32 - 1 Hz"] = bytes::with(good, 24, bytes::little(0xffffffff, 4));
    sample.absurd["NaN"] = bytes::wav({3, 1, 12800, 32, false}, bytes::little(0xffffffff, 4));
    sample.absurd["infinity"] = bytes::wav({3, 1, 12800, 32, false}, bytes::little(0x7f800000, 4));
    return sample;
}

Sample flacSample() {
    Sample sample{bytes::flac(noise(2, 5000), 16, 12800), {}};
    const auto info = [&](std::uint32_t rate, int channels, std::uint64_t samples, std::uint32_t block) {
        return bytes::with(sample.good, 8, bytes::flacInfo(rate, channels, 16, samples, block));
    };
    sample.absurd["0 Hz"] = info(0, 2, 5000, 5000);
    sample.absurd["8 channels"] = info(12800, 8, 5000, 5000);
    sample.absurd["2^36 - 1 samples"] = info(12800, 2, 0xfffffffff, 5000);
    sample.absurd["2^32 - 1 samples"] = info(12800, 2, 0xffffffff, 5000);
    sample.absurd["100 million samples"] = info(12800, 2, 100000000, 5000);
    sample.absurd["block of 2^24 - 1 bytes"] =
        bytes::with(bytes::with(sample.good, 4, std::string(1, '\0')), 42, "\x84\xff\xff\xff");
    return sample;
}

Sample csvSample() {
    const std::string rate = "# sample_rate_hz: 12800\n", header = "x [g],y [g]\n", numbers = "0.125,-3\n";
    std::string table;
    for (int i = 0; i < 2500; ++i)
        table += numbers;
    Sample sample{rate + "# samples: 2500\n" + header + table, {}};
    sample.absurd["0 Hz"] = "# sample_rate_hz: 0\n" + header + numbers;
    sample.absurd["2^32 - 1 samples"] = rate + "# samples: 4294967295\n" + header + numbers;
    sample.absurd["more samples than can be counted"] =
        rate + "# samples: 99999999999999999999\n" + header + numbers;
    sample.absurd["a million channels"] = rate + "x" + std::string(1000000, ';') + "\n" + numbers;
    sample.absurd["NaN"] = rate + header + "0.125,NaN\n";
    sample.absurd["text in a number column"] = rate + header + "0.125,overload\n";
    sample.absurd["one line without end"] = rate + header + std::string(1000000, '1');
    sample.absurd["one number of a million digits"] = rate + header + std::string(1000000, '1') + ",2\n";
    return sample;
}

// Not ended by a line end, which is none of its bytes that count.
Sample uffSample() {
    std::vector<double> x, y;
    for (int i = 0; i < 2100; ++i)
        x.push_back(0.125 * (i % 50) - 3), y.push_back(1 + 0.001 * i);
    bytes::Uff first, second;
    second.direction = 2;
    first.ordinate = second.ordinate = 2;
    const std::string two = bytes::uff(first, x) + bytes::uff58b(second, y);
    Sample sample{two.substr(0, two.size() - 1), {}};
    const auto with = [&](const std::string& from, const std::string& to) {
        return bytes::with(sample.good, sample.good.find(from), to);
    };
    const std::string count = "         2      2100";
    sample.absurd["2^31 - 1 values"] = with(count, "         22147483647");
    sample.absurd["ten digits of values"] = with(count, "         29999999999");
    sample.absurd["no values"] = with(count, "         2         0");
    sample.absurd["fewer values"] = with(count, "         2      2099");
    sample.absurd["2^40 bytes"] = with("        8400     0", "1099511627776     0");
    sample.absurd["0 bytes"] = with("        8400     0", "           0     0");
    sample.absurd["0 s"] = with("  7.81250E-05", "  0.00000E+00");
    sample.absurd["a microsecond's thousandth"] = with("  7.81250E-05", "  1.00000E-09");
    sample.absurd["NaN"] = with(" -3.00000E+00", "          NaN");
    sample.absurd["one line without end"] = bytes::kUffMark + "    58\n" + std::string(1000000, '1');
    sample.absurd["marks without end"] = bytes::kUffMark + bytes::kUffMark + bytes::kUffMark;
    return sample;
}

std::vector<double> numbers(int count) {
    std::vector<double> all;
    for (const auto& channel : noise(1, std::size_t(count)))
        for (const int number : channel)
            all.push_back(number);
    return all;
}

Sample matSample() {
    Sample sample{bytes::mat({{"x", numbers(5000), {2500, 2}}, {"fs", {12800}}}), {}};
    sample.absurd["element of 2^32 - 1 bytes"] = bytes::with(sample.good, 132, bytes::little(0xffffffff, 4));
    sample.absurd["2^31 - 1 rows"] = bytes::with(sample.good, 160, bytes::little(0x7fffffff, 4));
    sample.absurd["-1 rows"] = bytes::with(sample.good, 160, bytes::little(0xffffffff, 4));
    sample.absurd["0 Hz"] = bytes::mat({{"x", numbers(2500)}, {"fs", {0}}});
    sample.absurd["NaN"] = bytes::mat({{"x", std::vector<double>(2500, std::nan(""))}, {"fs", {12800}}});
    return sample;
}

Sample hdf5Sample() {
    Sample sample{bytes::hdf5({{{"x", numbers(5000), {}, {}, {2500, 2}}}, {}, {{"fs", 12800}}}), {}};
    sample.absurd["0 Hz"] = bytes::hdf5({{{"x", numbers(2500)}}, {}, {{"fs", 0}}});
    sample.absurd["NaN"] =
        bytes::hdf5({{{"x", std::vector<double>(2500, std::nan(""))}}, {}, {{"fs", 12800}}});
    sample.absurd["an end far behind the file's"] =
        bytes::with(sample.good, 40, bytes::little(~std::uint64_t(0) >> 2, 8));
    return sample;
}

Sample sampleOf(const std::string& format) {
    if (format == "WAV") return wavSample();
    if (format == "FLAC") return flacSample();
    if (format == "CSV") return csvSample();
    if (format == "UFF") return uffSample();
    if (format == "MAT") return matSample();
    if (format == "HDF5") return hdf5Sample();
    ADD_FAILURE() << "no sample for " << format;
    return {};
}

// A program is started for each file of such a format.
std::size_t coarser(const ReaderRow& row) {
    return row.readAs ? 11 : 1;
}

void expectError(const Error& error, const std::string& file) {
    EXPECT_EQ(error.file, file);
    EXPECT_FALSE(error.place.empty()) << error.sentence();
    EXPECT_FALSE(error.rule.empty()) << error.sentence();
    EXPECT_EQ(error.sentence().find('\n'), std::string::npos);
}

// By the reader's row and by the one door for all; both must refuse, and ask for little memory.
void expectRefused(const ReaderRow& row, const std::string& bytes, const std::string& what) {
    SCOPED_TRACE(row.name + ", " + what);
    const std::string file = "hostile." + row.extensions[0];
    const MemoryMeter meter;
    const auto read = row.read(bytes, file);
    EXPECT_LT(meter.peakBytes(), kMostMemory);
    ASSERT_FALSE(read);
    expectError(read.error(), file);
    MemoryFileSystem files;
    files.put(file, bytes);
    const auto whole = readRecording(files, file);
    ASSERT_FALSE(whole);
    expectError(whole.error(), file);
}

TEST(EveryReader, ReadsItsGoodSample) {
    for (const ReaderRow& row : readerRegistry()) {
        const Sample sample = sampleOf(row.name);
        EXPECT_TRUE(row.recognises(sample.good)) << row.name;
        EXPECT_GT(sample.good.size(), 18000u);
        const auto read = row.read(sample.good, "good");
        ASSERT_TRUE(read) << read.error().sentence();
        EXPECT_EQ(read->channels.size(), 2u);
        EXPECT_EQ(read->channels[0].sampleRateHz, 12800);
        EXPECT_GT(read->channels[0].samples.size(), 2000u);
    }
}

TEST(EveryReader, RefusesTheEmptyFileAndSingleBytes) {
    for (const ReaderRow& row : readerRegistry()) {
        expectRefused(row, "", "empty");
        for (int byte = 0; byte < 256; ++byte)
            expectRefused(row, std::string(1, char(byte)), "byte " + std::to_string(byte));
    }
}

TEST(EveryReader, RefusesNonsense) {
    for (const ReaderRow& row : readerRegistry())
        for (std::uint32_t start = 1; start <= 20; ++start)
            expectRefused(row, bytes::nonsense(start, 20000), "nonsense " + std::to_string(start));
}

// The right first bytes, nonsense after them.
TEST(EveryReader, RefusesNonsenseBehindAGoodStart) {
    for (const ReaderRow& row : readerRegistry()) {
        const std::string good = sampleOf(row.name).good;
        for (std::uint32_t start = 1; start <= 20 / coarser(row); ++start)
            for (const std::size_t kept : {4u, 12u, 20u, 36u})
                expectRefused(row, good.substr(0, kept) + bytes::nonsense(start, 20000),
                              "nonsense " + std::to_string(start) + " behind byte " + std::to_string(kept));
    }
}

TEST(EveryReader, RefusesEveryTruncation) {
    for (const ReaderRow& row : readerRegistry()) {
        const std::string good = sampleOf(row.name).good;
        for (std::size_t length = 1; length < good.size(); length += length < 100 ? 1 : 100 * coarser(row))
            expectRefused(row, good.substr(0, length), "cut at " + std::to_string(length));
        for (std::size_t length = 0; length < good.size(); length += 1024 * coarser(row))
            expectRefused(row, good.substr(0, length), "cut at " + std::to_string(length));
        expectRefused(row, good.substr(0, good.size() - 1), "last byte missing");
    }
}

TEST(EveryReader, RefusesAbsurdHeaders) {
    for (const ReaderRow& row : readerRegistry())
        for (const auto& [what, bytes] : sampleOf(row.name).absurd)
            expectRefused(row, bytes, what);
}

// A changed bit may go unseen where nothing guards it, but what comes out is then a recording in full order.
TEST(EveryReader, GivesAWholeRecordingOrAnErrorForEveryChangedByte) {
    for (const ReaderRow& row : readerRegistry()) {
        const std::string good = sampleOf(row.name).good;
        for (std::size_t at = 0; at < good.size(); at += at < 100 ? coarser(row) : 97 * coarser(row))
            for (const int flip : {1, 16, 128}) {
                const MemoryMeter meter;
                const auto read =
                    row.read(bytes::with(good, at, std::string(1, char(good[at] ^ flip))), "flipped");
                EXPECT_LT(meter.peakBytes(), kMostMemory);
                if (!read) {
                    expectError(read.error(), "flipped");
                    continue;
                }
                ASSERT_FALSE(read->channels.empty());
                for (const Channel& channel : read->channels) {
                    EXPECT_EQ(channel.samples.size(), read->channels[0].samples.size());
                    EXPECT_TRUE(channel.sampleRateHz >= 1 && channel.sampleRateHz <= 1e7);
                    for (const double sample : channel.samples)
                        ASSERT_TRUE(std::isfinite(sample));
                }
            }
    }
}

}  // namespace
}  // namespace fettle
