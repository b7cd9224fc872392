// Universal files, data sets 58 and 58b. Source of the layout: tests/signal/uff_bytes.h. What is assumed of
// units (data set 164), dates and rates is the program's own decision, stated in core/signal/uff_reader.h.
#include "core/signal/uff_reader.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/base/file_system_fake.h"
#include "core/signal/reader.h"
#include "tests/signal/sound_bytes.h"
#include "tests/signal/uff_bytes.h"

namespace fettle {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

// Letter by letter as the published layout has it, columns counted by hand.
const std::string kByHand =
    "    -1\n"
    "    58\n"
    "fan, drive end\n"
    "NONE\n"
    "04-MAY-26 06:20:00\n"
    "NONE\n"
    "NONE\n"
    "    1         0    0         0 M-DE               7  -3 NONE               0   0\n"
    "         2         7         1  0.00000E+00  1.00000E-03  0.00000E+00\n"
    "        17    0    0    0 Time                 s                   \n"
    "        12    1    0    0 Acceleration         m/s2                \n"
    "         0    0    0    0 NONE                 NONE                \n"
    "         0    0    0    0 NONE                 NONE                \n"
    "  1.00000E+00 -2.50000E+00  3.00000E-02 -4.00000E+03  5.00000E+00  6.00000E+00\n"
    "  7.12500E+00\n"
    "    -1\n";

TEST(Uff, ReadsADataSetWrittenByHand) {
    const auto read = readUff(kByHand, "a.uff");
    ASSERT_TRUE(read) << read.error().sentence();
    ASSERT_EQ(read->channels.size(), 1u);
    const Channel& channel = read->channels[0];
    EXPECT_THAT(channel.samples, ElementsAre(1, -2.5, 0.03, -4000, 5, 6, 7.125));
    EXPECT_EQ(channel.sampleRateHz, 1000);
    EXPECT_EQ(channel.unit, "m/s2");
    EXPECT_EQ(channel.name, "z");
    EXPECT_EQ(channel.pointHint, "M-DE");
    EXPECT_EQ(channel.point, "");
    EXPECT_FALSE(read->time) << "its date is in no zone";
    EXPECT_EQ(read->fileTime, parseUtc("2026-05-04T06:20:00Z"));
    EXPECT_THAT(read->warnings,
                Contains(HasSubstr("sample rate 1000 Hz taken from the increment 1.00000E-03")));
    EXPECT_THAT(read->warnings, Contains(HasSubstr("channel z is M-DE node 7 -Z, \"fan, drive end\"")));
    EXPECT_THAT(read->warnings, Contains(HasSubstr("in a zone it does not name")));
}

TEST(Uff, ReadsEveryFormOfRealNumbers) {
    const std::vector<double> values{0.125, -3, 1e-3, 4096.5, 7, -8, 9};
    bytes::Uff doubles, singles;
    singles.ordinate = 2;
    for (const std::string& one : {bytes::uff(doubles, values), bytes::uff(singles, values),
                                   bytes::uff58b(doubles, values), bytes::uff58b(doubles, values, true)}) {
        const auto read = readUff(one, "a.uff");
        ASSERT_TRUE(read) << read.error().sentence();
        EXPECT_EQ(read->channels[0].samples, values);
        EXPECT_EQ(read->channels[0].sampleRateHz, 12800);
    }
    const std::vector<double> exact{0.125, -3, 4096.5};  // of single precision
    for (const bool big : {false, true})
        EXPECT_EQ(readUff(bytes::uff58b(singles, exact, big), "a")->channels[0].samples, exact);
}

TEST(Uff, ReadsNumbersAsFortranWritesThem) {
    std::string text = kByHand;
    text.replace(text.find("  1.00000E+00 -2.5"), 13, " 0.100000D+01");
    text.replace(text.find("-4.00000E+03"), 12, "-4.0000+1003");
    EXPECT_THAT(readUff(text, "a").error().sentence(), HasSubstr("line 14, column 40"))
        << "beyond what is taken";
    text.replace(text.find("-4.0000+1003"), 12, " -4.0000+003");
    const auto read = readUff(text, "a");
    ASSERT_TRUE(read) << read.error().sentence();
    EXPECT_EQ(read->channels[0].samples[0], 1);
    EXPECT_EQ(read->channels[0].samples[3], -4000);
}

TEST(Uff, SeveralDataSetsAreChannelsOfOneCapture) {
    bytes::Uff x, y, flux;
    y.direction = -2;
    flux.direction = 0;
    flux.quantity = 0;
    flux.unit = "V";
    const auto read = readUff(
        bytes::uff(x, {1, 2}) + "\r\n" + bytes::uff58b(y, {3, 4}) + bytes::uff(flux, {5, 6}), "a.uff");
    ASSERT_TRUE(read) << read.error().sentence();
    ASSERT_EQ(read->channels.size(), 3u);
    EXPECT_EQ(read->channels[0].name, "x");
    EXPECT_EQ(read->channels[1].name, "y");
    EXPECT_EQ(read->channels[2].name, "3");
    EXPECT_EQ(read->channels[2].unit, "V");
    EXPECT_THAT(read->channels[1].samples, ElementsAre(3, 4));
}

TEST(Uff, DataSetsOfAnotherTimeBaseAreRefusedByName) {
    bytes::Uff a, slower, later;
    slower.step = 1e-3;
    later.least = 5;
    for (const std::string& other :
         {bytes::uff(slower, {3, 4}), bytes::uff(later, {3, 4}), bytes::uff(a, {3, 4, 5})}) {
        const auto read = readUff(bytes::uff(a, {1, 2}) + other, "a.uff");
        ASSERT_FALSE(read);
        EXPECT_THAT(read.error().sentence(),
                    HasSubstr("data set 58 of line 3 has 2 values every 7.8125e-05 s from 0 s"));
        EXPECT_THAT(read.error().sentence(), HasSubstr("data set 58 of line 18 has"));
    }
}

TEST(Uff, PassesOverWhatIsNoTimeRecordWithAWord) {
    bytes::Uff time, response, complex;
    response.type = 4;
    response.ordinate = 6;
    complex.ordinate = 5;
    const std::string nodes = "    -1\n    15\n         1         0         0        11\n    -1\n";
    const auto read = readUff(nodes + bytes::uff(response, {1, 2}) + bytes::uff(time, {1, 2}), "a.uff");
    ASSERT_TRUE(read) << read.error().sentence();
    EXPECT_THAT(read->warnings, Contains(HasSubstr("passed over: data set 15, frequency response")));
    const auto none = readUff(nodes + bytes::uff(response, {1, 2}), "a.uff");
    ASSERT_FALSE(none);
    EXPECT_THAT(none.error().sentence(),
                HasSubstr("no time record, only 1 x data set 15, 1 x frequency response"));
    EXPECT_THAT(readUff(bytes::uff(complex, {1, 2}), "a").error().sentence(),
                HasSubstr("a complex time record"));
}

TEST(Uff, UnevenSpacingIsTakenWhereStepsAreEven) {
    bytes::Uff pairs;
    pairs.ordinate = 2;
    pairs.spacing = 0;
    pairs.count = 4;
    const auto even = readUff(bytes::uff(pairs, {0, 1, 0.001, 2, 0.002, 3, 0.003, 4}), "a");
    ASSERT_TRUE(even) << even.error().sentence();
    EXPECT_THAT(even->channels[0].samples, ElementsAre(1, 2, 3, 4));
    EXPECT_EQ(even->channels[0].sampleRateHz, 1000);
    const auto odd = readUff(bytes::uff(pairs, {0, 1, 0.001, 2, 0.0025, 3, 0.003, 4}), "a");
    ASSERT_FALSE(odd);
    EXPECT_THAT(odd.error().sentence(), HasSubstr("unevenly spaced: step 2 is 0.0015, the mean is 0.001"));
}

// 1/51200 s with six digits is 1.95313E-05, 1/44100 s is 2.26757E-05, 1/65536 s 1.52588E-05: none of them is
// exact.
TEST(Uff, TheRateIsTheRoundNumberThatPrintsSo) {
    for (const double rate :
         {12800.0, 25600.0, 51200.0, 65536.0, 44100.0, 48000.0, 8192.0, 2560.0, 1000.0, 102400.0}) {
        const std::string printed = fmt::format("{:.5E}", 1 / rate);
        EXPECT_EQ(uffRateOf(std::stod(printed), printed), rate) << printed;
        const std::string shorter = fmt::format("{:.4E}", 1 / rate);  // 0.ddddd of an unscaled E13.5
        EXPECT_EQ(uffRateOf(std::stod(shorter), shorter), rate) << shorter;
    }
    EXPECT_NEAR(uffRateOf(0.30000, "3.00000E-01"), 1 / 0.3, 1e-9);
}

TEST(Uff, UnitsAreTakenFromLabelsElseFromAStatedSi) {
    bytes::Uff g, none;
    g.unit = "G'S";
    none.unit = "NONE";
    EXPECT_EQ(readUff(bytes::uff(g, {1, 2}), "a")->channels[0].unit, "g");
    const auto silent = readUff(bytes::uff(none, {1, 2}), "a");
    EXPECT_EQ(silent->channels[0].unit, "");
    EXPECT_THAT(silent->warnings, Contains(HasSubstr("no unit taken")));
    const std::string si =
        "    -1\n   164\n         1  SI: Meter (newton)         2\n  1.0  1.0  1.0\n  273.15\n    -1\n";
    const auto stated = readUff(si + bytes::uff(none, {1, 2}), "a");
    EXPECT_EQ(stated->channels[0].unit, "m/s2");
    EXPECT_THAT(stated->warnings, Contains(HasSubstr("as data set 164 says SI")));
}

TEST(Uff, ItsDateIsTheTimeWhereTheSidecarSaysUtc) {
    MemoryFileSystem files;
    files.put("a.uff", kByHand);
    files.put("a.json", R"({"machine": "T-1", "file_time": "utc"})");
    const auto read = readRecording(files, "a.uff");
    ASSERT_TRUE(read) << read.error().sentence();
    EXPECT_EQ((*read)->time, parseUtc("2026-05-04T06:20:00Z"));
    files.put("a.json", R"({"file_time": "local"})");
    EXPECT_EQ(readRecording(files, "a.uff").error().place, "/file_time");
}

TEST(Uff, ASidecarMayStateTheRateMoreClosely) {
    MemoryFileSystem files;
    files.put("a.uff", kByHand);
    files.put("a.json", R"({"sample_rate_hz": 1000.02})");
    EXPECT_EQ((*readRecording(files, "a.uff"))->channels[0].sampleRateHz, 1000.02);
    files.put("a.json", R"({"sample_rate_hz": 2000})");
    const auto twice = readRecording(files, "a.uff");
    ASSERT_FALSE(twice);
    EXPECT_EQ(twice.error().sentence(), "a.json: /sample_rate_hz: is 2000, the recording itself says 1000");
}

struct WrongUff {
    const char *from, *to, *says;
};

TEST(Uff, RefusesWithPlaceAndRule) {
    const WrongUff wrongs[] = {
        {"         2         7", "         3         7", "line 9, column 1: ordinate type 3"},
        {"         2         7", "         2         8",
         "line 15, column 1: data set 58 of line 9 states 8 values"},
        {"         2         7", "         2         6", "line 15, column 1"},
        {"         2         7", "         2 999999999", "states 999999999 samples"},
        {"         2         7", "         2  99999999", "states 99999999 values, fewer follow"},
        {"         2         7", "         2        -7", "line 9, column 11: states -7 values"},
        {"  1.00000E-03", "  0.00000E+00", "an increment of 0 s"},
        {"  1.00000E-03", " -1.00000E-03", "must be above 0"},
        {"  1.00000E-03", "          NaN", "line 9, column 44"},
        {"        17    0", "        18    0", "line 10, column 1: a time record against quantity 18"},
        {"  3.00000E-02", "     infinity", "line 14, column 27"},
        {"  3.00000E-02", "             ", "line 14, column 27"},
        {"    58\n", "   xyz\n", "line 2, column 1"},
        {"s                   \n", "min                 \n", "times in \"min\""},
    };
    for (const WrongUff& wrong : wrongs) {
        std::string text = kByHand;
        const std::size_t at = text.find(wrong.from);
        ASSERT_NE(at, text.npos) << wrong.from;
        text.replace(at, std::string(wrong.from).size(), wrong.to);
        const auto read = readUff(text, "a.uff");
        ASSERT_FALSE(read) << wrong.to;
        EXPECT_THAT(read.error().sentence(), HasSubstr(wrong.says)) << wrong.to;
    }
}

TEST(Uff, RefusesBinaryFormsItCannotRead) {
    std::string text = bytes::uff58b({}, {1, 2, 3});
    const std::size_t form = text.find("58b") + 3;
    const auto with = [&](std::size_t at, const std::string& field) {
        return bytes::with(text, form + at, field);
    };
    EXPECT_THAT(readUff(with(6, "     1"), "a").error().sentence(), HasSubstr("DEC numbers (1)"));
    EXPECT_THAT(readUff(with(6, "     3"), "a").error().sentence(), HasSubstr("IBM numbers (3)"));
    EXPECT_THAT(readUff(with(0, "     3"), "a").error().sentence(), HasSubstr("byte order 3"));
    EXPECT_THAT(readUff(with(12, "          12"), "a").error().sentence(), HasSubstr("states 12 lines"));
    EXPECT_THAT(readUff(with(24, "          23"), "a").error().sentence(),
                HasSubstr("states 3 values and 23 bytes"));
    EXPECT_THAT(readUff(with(24, "999999999999"), "a").error().sentence(), HasSubstr("states 3 values"));
    bytes::Uff nan;
    EXPECT_THAT(readUff(bytes::uff58b(nan, {1, std::nan("")}), "a").error().sentence(),
                HasSubstr("number 1, value 2"));
}

}  // namespace
}  // namespace fettle
