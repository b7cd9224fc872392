// Universal files out of recordings and in again. Truth: the recordings made here; 13 digits of text are
// those of the format (4E20.12), bit for bit is IEEE 754.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <bit>
#include <cmath>

#include "core/exchange/recording_export.h"
#include "core/exchange/uff_writer.h"
#include "core/signal/reader.h"
#include "core/signal/uff_reader.h"

namespace fettle {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

Recording odd(double rateHz) {
    Recording recording;
    recording.machine = "KL-ID-01";
    recording.point = "M-DE";
    recording.time = parseUtc("2026-05-04T06:20:09Z");
    recording.speedRpm = 1483.25;
    for (const char* name : {"x", "z"}) {
        Channel channel;
        channel.name = name;
        channel.point = "M-DE";
        channel.unit = "g";
        channel.sampleRateHz = rateHz;
        for (int i = 0; i < 5003; ++i)
            channel.samples.push_back(std::sin(0.37 * i) * std::pow(10.0, i % 9 - 4) / 3);
        channel.samples[7] = -0.0;
        channel.samples[8] = 5e-324;
        channel.samples[9] = 1e-300;
        channel.samples[10] = -9.87654321e14;
        recording.channels.push_back(channel);
    }
    return recording;
}

std::vector<std::uint64_t> bitsOf(const std::vector<double>& samples) {
    std::vector<std::uint64_t> bits;
    for (const double sample : samples)
        bits.push_back(std::bit_cast<std::uint64_t>(sample));
    return bits;
}

Recording again(const ExportedRecording& out) {
    auto read = readUff(out.bytes, "a.uff");
    EXPECT_TRUE(read) << read.error().sentence();
    EXPECT_TRUE(applySidecar(*read, out.sidecar, "a.json"));
    return *read;
}

TEST(UffExport, BinaryIsTheSameBitForBit) {
    for (const double rate : {12800.0, 51200.0, 44100.0, 12799.7, 1.5, 3.0}) {
        const Recording recording = odd(rate);
        const auto out = exportRecording(recording, "", "a", ExportForm::Uff58b);
        ASSERT_TRUE(out) << out.error().sentence();
        EXPECT_EQ(out->extension, ".uff");
        const Recording read = again(*out);
        ASSERT_EQ(read.channels.size(), 2u);
        for (std::size_t c = 0; c < 2; ++c) {
            EXPECT_EQ(bitsOf(read.channels[c].samples), bitsOf(recording.channels[c].samples));
            EXPECT_EQ(read.channels[c].sampleRateHz, rate);
            EXPECT_EQ(read.channels[c].name, recording.channels[c].name);
            EXPECT_EQ(read.channels[c].unit, "g");
            EXPECT_EQ(read.channels[c].point, "M-DE");
        }
        EXPECT_EQ(read.time, recording.time);
        EXPECT_EQ(read.machine, recording.machine);
        EXPECT_EQ(read.speedRpm, recording.speedRpm);
    }
}

TEST(UffExport, TextIsTheSameToThirteenDigits) {
    const Recording recording = odd(12800);
    const auto out = exportRecording(recording, "", "a", ExportForm::Uff);
    ASSERT_TRUE(out) << out.error().sentence();
    const Recording read = again(*out);
    for (std::size_t i = 0; i < recording.channels[0].samples.size(); ++i) {
        const double was = recording.channels[0].samples[i], is = read.channels[0].samples[i];
        ASSERT_LE(std::abs(is - was), 5.1e-13 * std::abs(was) + 1e-320) << i;
    }
}

// Without its sidecar: name by direction, rate, unit, place and date stand in the file itself.
TEST(UffExport, TheFileAloneSaysMostOfIt) {
    const auto out = exportRecording(odd(51200), "", "a", ExportForm::Uff58b);
    const auto read = readUff(out->bytes, "a.uff");
    ASSERT_TRUE(read) << read.error().sentence();
    EXPECT_EQ(read->channels[0].name, "x");
    EXPECT_EQ(read->channels[1].name, "z");
    EXPECT_EQ(read->channels[1].pointHint, "M-DE");
    EXPECT_EQ(read->channels[0].sampleRateHz, 51200);
    EXPECT_EQ(read->channels[0].unit, "g");
    EXPECT_EQ(read->fileTime, parseUtc("2026-05-04T06:20:09Z"));
}

TEST(UffExport, LinesStandInTheColumnsOfTheFormat) {
    std::string text;
    Recording recording = odd(12800);
    recording.channels.resize(1);
    recording.channels[0].samples = {1, -0.5, 3, 4, 5};
    ASSERT_TRUE(writeUff(recording, UffText::Columns, [&](std::string_view piece) -> Status {
        text += piece;
        return {};
    }));
    EXPECT_EQ(text,
              "    -1\n"
              "    58\n"
              "KL-ID-01 M-DE x\n"
              "NONE\n"
              "04-MAY-26 06:20:09\n"
              "NONE\n"
              "NONE\n"
              "    1         1    1         0 M-DE               1   1 NONE               0   0\n"
              "         4         5         1  0.00000E+00  7.81250E-05  0.00000E+00\n"
              "        17    0    0    0 Time                 s                   \n"
              "        12    1    0    0 Acceleration         g                   \n"
              "         0    0    0    0 NONE                 NONE                \n"
              "         0    0    0    0 NONE                 NONE                \n"
              "  1.000000000000E+00 -5.000000000000E-01  3.000000000000E+00  4.000000000000E+00\n"
              "  5.000000000000E+00\n"
              "    -1\n");
}

TEST(UffExport, TextOfUsersCannotBreakTheFile) {
    Recording recording = odd(12800);
    recording.machine = "    -1\n    58\n\xff=1+1";
    recording.point = "\n    -1\n";
    for (Channel& channel : recording.channels)
        channel.point = recording.point, channel.unit = "    -1\n    -1\nlonger than twenty letters";
    for (const ExportForm form : {ExportForm::Uff, ExportForm::Uff58b}) {
        const auto out = exportRecording(recording, "", "a", form);
        if (!out) continue;  // what is no UTF-8 does not come back the same, and is refused
        EXPECT_EQ(readUff(out->bytes, "a")->channels.size(), 2u);
    }
    recording.machine = "    -1\n    58\n=1+1";
    ASSERT_TRUE(exportRecording(recording, "", "a", ExportForm::Uff58b));
}

TEST(UffExport, WavOnDemandIsRefusedWhereItWouldLose) {
    const auto out = exportRecording(odd(12799.7), "", "a", ExportForm::Wav);
    ASSERT_FALSE(out);
    EXPECT_THAT(out.error().rule, HasSubstr("without loss"));
}

}  // namespace
}  // namespace fettle
