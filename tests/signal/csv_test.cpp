#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "core/signal/csv_reader.h"
#include "core/signal/recording_limits.h"
#include "tests/base/comma_locale.h"

namespace fettle {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::SizeIs;

const std::string kRate = "# sample_rate_hz: 12800\n";

struct Dialect {
    const char* what;
    std::string text;
    const char* said;
};

// One tiny recording in every dialect: x in g 0.5, -1, 2.25 and flux 1, 2, 3 at 1000 Hz.
const Dialect kDialects[] = {
    {"comma", "# sample_rate_hz: 1000\nx [g],flux [1]\n0.5,1\n-1,2\n2.25,3\n", "parted by ,, decimal point"},
    {"semicolon", "# sample_rate_hz: 1000\nx [g];flux [1]\n0.5;1\n-1;2\n2.25;3\n",
     "parted by ;, decimal point"},
    {"semicolon, decimal comma", "# sample_rate_hz: 1000\nx [g];flux [1]\n0,5;1\n-1;2\n2,25;3\n",
     "parted by ;, decimal comma"},
    {"tab", "# sample_rate_hz: 1000\nx [g]\tflux [1]\n0.5\t1\n-1\t2\n2.25\t3\n",
     "parted by tab, decimal point"},
    {"tab, decimal comma", "# sample_rate_hz: 1000\nx [g]\tflux [1]\n0,5\t1\n-1\t2\n2,25\t3\n",
     "parted by tab, decimal comma"},
    {"quotes", "# sample_rate_hz: 1000\n\"x [g]\",\"flux [1]\"\n\"0.5\",1\n-1,\"2\"\n\"2.25\",\"3\"\n",
     "parted by ,, decimal point"},
    {"quoted decimal commas", "# sample_rate_hz: 1000\n\"x [g]\",\"flux [1]\"\n\"0,5\",1\n-1,2\n\"2,25\",3\n",
     "parted by ,, decimal comma"},
    {"CR LF", "# sample_rate_hz: 1000\r\nx [g],flux [1]\r\n0.5,1\r\n-1,2\r\n2.25,3\r\n", "decimal point"},
    {"byte-order mark", "\xef\xbb\xbf# sample_rate_hz: 1000\nx [g],flux [1]\n0.5,1\n-1,2\n2.25,3\n",
     "decimal point"},
    {"byte-order mark and CR LF", "\xef\xbb\xbfx [g],time [ms],flux [1]\r\n0.5,0,1\r\n-1,1,2\r\n2.25,2,3\r\n",
     "decimal point"},
    {"time in s", "time [s],x [g],flux [1]\n0,0.5,1\n0.001,-1,2\n0.002,2.25,3\n", "decimal point"},
    {"time in ms, decimal comma", "t [ms];x [g];flux [1]\n5,0;0,5;1\n6,0;-1;2\n7,0;2,25;3\n",
     "decimal comma"},
    {"spaces and signs", "#sample_rate_hz :1000\n x [g] , flux [ 1 ]\n 0.5 , +1 \n-1.0e0,2\n 22.5E-1,3\n",
     "decimal point"},
    {"empty lines at the end", "# sample_rate_hz: 1000\n\nx [g],flux [1]\n0.5,1\n-1,2\n2.25,3\n\n\n",
     "decimal point"},
    {"lines filled up by a spreadsheet", "# sample_rate_hz: 1000,\n,\nx [g],flux [1]\n0.5,1\n-1,2\n2.25,3\n",
     "decimal point"},
};

TEST(ReadCsv, EveryDialectIsTheSameRecording) {
    for (const Dialect& dialect : kDialects) {
        SCOPED_TRACE(dialect.what);
        const auto read = readCsv(dialect.text, "a.csv");
        ASSERT_TRUE(read) << read.error().sentence();
        ASSERT_EQ(read->channels.size(), 2u);
        EXPECT_EQ(read->channels[0].name, "x");
        EXPECT_EQ(read->channels[0].unit, "g");
        EXPECT_EQ(read->channels[1].name, "flux");
        EXPECT_EQ(read->channels[1].unit, "1");
        EXPECT_THAT(read->channels[0].samples, ElementsAre(0.5, -1, 2.25));
        EXPECT_THAT(read->channels[1].samples, ElementsAre(1, 2, 3));
        EXPECT_EQ(read->channels[0].sampleRateHz, 1000);
        EXPECT_EQ(read->channels[1].sampleRateHz, 1000);
        EXPECT_EQ(read->channels[0].fullScale, 0);
        EXPECT_THAT(read->warnings, Contains(HasSubstr(dialect.said)));
    }
}

TEST(ReadCsv, IsTheSameUnderACommaLocale) {
    const CommaLocale comma;
    for (const Dialect& dialect : kDialects) {
        const auto read = readCsv(dialect.text, "a.csv");
        ASSERT_TRUE(read) << read.error().sentence();
        EXPECT_THAT(read->channels[0].samples, ElementsAre(0.5, -1, 2.25)) << dialect.what;
        EXPECT_EQ(read->channels[0].sampleRateHz, 1000) << dialect.what;
    }
}

TEST(ReadCsv, OneColumnMayHaveDecimalCommas) {
    const auto read = readCsv(kRate + "x [g]\n0,5\n1\n", "a.csv");
    ASSERT_TRUE(read) << read.error().sentence();
    EXPECT_THAT(read->channels[0].samples, ElementsAre(0.5, 1));
    EXPECT_THAT(read->warnings, Contains(HasSubstr("one field a line, decimal comma")));
}

TEST(ReadCsv, TakesWhatTheFirstLinesSay) {
    const auto read = readCsv(
        "# machine: KL-ID-01\n# Point: M-DE\n# time: 2026-05-04T06:20:00Z\n# received: "
        "2026-05-04T06:20:09.5Z\n"
        "# time_source: node\n# capture: 0417-99812\n# simultaneous: true\n# speed_rpm: 1483.2\n# output_hz: "
        "50\n"
        "# frame_temp_c: 61.5\n# ambient_temp_c: -4\n# load_pct: 80\n# sample_rate_hz: 12800\n# samples: 2\n"
        "x [m/s2],y\n1,2\n3,4\n",
        "a.csv");
    ASSERT_TRUE(read) << read.error().sentence();
    EXPECT_EQ(read->machine, "KL-ID-01");
    EXPECT_EQ(read->point, "M-DE");
    EXPECT_EQ(read->time, parseUtc("2026-05-04T06:20:00Z"));
    EXPECT_EQ(read->received, parseUtc("2026-05-04T06:20:09.500Z"));
    EXPECT_EQ(read->timeSource, "node");
    EXPECT_EQ(read->capture, "0417-99812");
    EXPECT_EQ(read->simultaneous, Simultaneous::Yes);
    EXPECT_EQ(read->speedRpm, 1483.2);
    EXPECT_EQ(read->outputHz, 50);
    EXPECT_EQ(read->frameTempC, 61.5);
    EXPECT_EQ(read->ambientTempC, -4);
    EXPECT_EQ(read->loadPct, 80);
    EXPECT_EQ(read->channels[1].unit, "");
    EXPECT_THAT(read->warnings, SizeIs(1));  // the dialect
}

TEST(ReadCsv, WarnsOfUnknownKeysAndNotes) {
    const auto read = readCsv(kRate + "# weather: rain\n# taken by hand\n#\nx\n1\n", "a.csv");
    ASSERT_TRUE(read) << read.error().sentence();
    EXPECT_THAT(read->warnings, Contains(HasSubstr("line 2, column 1: unknown key weather")));
    EXPECT_THAT(read->warnings, Contains(HasSubstr("line 3, column 1: a line without")));
    EXPECT_THAT(read->warnings, SizeIs(3));
}

TEST(ReadCsv, SaysTheRateItTookFromTheTimes) {
    const auto read = readCsv("time [s],x\n0,1\n0.00125,2\n0.0025,3\n", "a.csv");
    ASSERT_TRUE(read) << read.error().sentence();
    EXPECT_EQ(read->channels[0].sampleRateHz, 800);
    EXPECT_THAT(read->warnings, Contains(HasSubstr("sample rate 800 Hz taken from the time column")));
}

// `count` times at a rate, printed with a format, and zeros beside them.
std::string timed(double rate, int count, const char* form) {
    std::string text = "time [s],x\n";
    for (int i = 0; i < count; ++i) {
        char number[64];
        std::snprintf(number, sizeof number, form, i / rate);
        text += std::string(number) + ",0\n";
    }
    return text;
}

// At 12800 Hz a step is 78.125 us; six decimals print it as 78 or 79, which is 1.1 % off and yet even.
TEST(ReadCsv, LetsRoundedTimesPass) {
    for (const char* form : {"%.6f", "%.7f", "%.9f", "%.17g", "%.9e"}) {
        const auto read = readCsv(timed(12800, 6400, form), "a.csv");
        ASSERT_TRUE(read) << form << " " << read.error().sentence();
        EXPECT_EQ(read->channels[0].sampleRateHz, 12800) << form;
    }
    const auto odd = readCsv(timed(97656.25, 1000, "%.12f"), "a.csv");
    ASSERT_TRUE(odd) << odd.error().sentence();
    EXPECT_NEAR(odd->channels[0].sampleRateHz, 97656.25, 1e-4);
}

TEST(ReadCsv, RefusesTimesTooCoarseForTheirSteps) {
    EXPECT_FALSE(readCsv(timed(12800, 6400, "%.4f"), "a.csv"));
    EXPECT_FALSE(readCsv(timed(12800, 64000, "%.5g"), "a.csv"));
}

TEST(ReadCsv, TakesWholeMillisecondsThatAreEven) {
    const auto read = readCsv("t [ms],x\n0,1\n1,2\n2,3\n3,4\n", "a.csv");
    ASSERT_TRUE(read) << read.error().sentence();
    EXPECT_EQ(read->channels[0].sampleRateHz, 1000);
}

TEST(ReadCsv, HoldsTimesAgainstTheStatedRate) {
    const auto read = readCsv("# sample_rate_hz: 1003\ntime [s],x\n0,1\n0.001,2\n0.002,3\n", "a.csv");
    ASSERT_TRUE(read) << read.error().sentence();
    EXPECT_EQ(read->channels[0].sampleRateHz, 1003);
    const auto off = readCsv("# sample_rate_hz: 1020\ntime [s],x\n0,1\n0.001,2\n0.002,3\n", "a.csv");
    ASSERT_FALSE(off);
    EXPECT_EQ(off.error().place, "line 2, column 1");
}

// "T [degC]" is a temperature, not a time.
TEST(ReadCsv, TakesOnlySecondsAndMillisecondsForTime) {
    const auto read = readCsv(kRate + "T [degC],x\n20.5,1\n20.5,2\n", "a.csv");
    ASSERT_TRUE(read) << read.error().sentence();
    EXPECT_THAT(read->channels, SizeIs(2));
}

struct Wrong {
    std::string text;
    const char* place;
    const char* rulePart;
};

TEST(ReadCsv, NamesPlaceAndRuleOfEveryDamage) {
    std::string wide = "x0";
    for (std::size_t i = 1; i <= kMostChannels; ++i)
        wide += ",x" + std::to_string(i);
    const std::string head = kRate + "x [g],y [g]\n";
    const Wrong wrongs[] = {
        {"", "byte 0", "empty"},
        {std::string("x\0y\n", 4), "byte 1", "not text"},
        {std::string("\xff\xfex\0,\0", 6), "byte 3", "not text"},  // UTF-16
        {"# sample_rate_hz: 0\nx\n1\n", "line 1, column 2", "from 1 to"},
        {"# sample_rate_hz: fast\nx\n1\n", "line 1, column 2", "\"fast\""},
        {"# sample_rate_hz: 12800,5\nx\n1\n", "line 1, column 2", "sample_rate_hz"},
        {"# sample_rate_hz: nan\nx\n1\n", "line 1, column 2", "sample_rate_hz"},
        {"# sample_rate_hz:\nx\n1\n", "line 1, column 2", "sample_rate_hz"},
        {kRate + kRate + "x\n1\n", "line 2, column 1", "given twice"},
        {kRate + "# samples: 4294967295\nx\n1\n2\n", "line 2, column 2",
         "states 4294967295 samples, 2 follow"},
        {kRate + "# samples: 1\nx\n1\n2\n", "line 2, column 2", "states 1 samples, 2 follow"},
        {kRate + "# samples: 0\nx\n1\n", "line 2, column 2", "above 0"},
        {kRate + "# samples: 2.5\nx\n1\n", "line 2, column 2", "whole number"},
        {kRate + "# time: 2026-05-04 06:20\nx\n1\n", "line 2, column 2", "UTC"},
        {kRate + "# time: 1970-01-01T00:00:00Z\nx\n1\n", "line 2, column 2", "before 1980"},
        {kRate + "# speed_rpm: -1\nx\n1\n", "line 2, column 2", "from 0 to 200000"},
        {kRate + "# speed_rpm: inf\nx\n1\n", "line 2, column 2", "from 0 to 200000"},
        {kRate + "# simultaneous: perhaps\nx\n1\n", "line 2, column 2", "true, false"},
        {kRate + "# machine: \xe4\nx\n1\n", "line 2, column 2", "UTF-8"},
        {kRate, "line 2, column 1", "header of channel names"},
        {kRate + "1,2\n3,4\n", "line 2, column 1", "header of channel names"},
        {kRate + "x,\n1,2\n", "line 2, column 2", "no name"},
        {kRate + "x,x\n1,2\n", "line 2, column 2", "two columns"},
        {kRate + "x [\xb5m]\n1\n", "line 2, column 1", "UTF-8"},
        {kRate + "x,\"y\n1,2\n", "line 2, column 2", "quote"},
        {kRate + wide + "\n", "line 2, column 1", "257 channels"},
        {kRate + std::string(3000000, ',') + "\n", "line 3, column 1", "header of channel names"},
        {kRate + "x" + std::string(3000000, ',') + "\n", "line 2, column 2", "no name"},
        {"x,y\n1,2\n", "line 1, column 1", "no sample rate"},
        {"time,x\n0,1\n1,2\n", "line 1, column 1", "unit"},
        {"t [s],time [s],x\n0,0,1\n1,1,2\n", "line 1, column 2", "second time column"},
        {"t [s]\n0\n1\n", "line 1, column 1", "0 channels"},
        {"t [s],x\n0,1\n", "line 2, column 1", "no sample rate"},
        {"t [s],x\n0,1\n0,2\n", "line 2, column 1", "do not grow"},
        {"t [s],x\n3,1\n2,2\n1,3\n", "line 2, column 1", "do not grow"},
        {"x,t [s]\n0,0\n0,1\n0,2\n0,4\n0,5\n", "line 3, column 2", "even to 1 %"},
        {"t [s],x\n0,1\n10,2\n20,3\n", "line 2, column 1", "sample rate of 0.1 Hz"},
        {head, "line 3, column 1", "no samples"},
        {head + "1,2\n3,four\n", "line 4, column 2", "\"four\" is not a number"},
        {head + "1,2\n3,\n", "line 4, column 2", "is empty"},
        {head + "1,2\n3\n", "line 4, column 2", "missing"},
        {head + "1,2\n3,4,5\n", "line 4, column 3", "too many"},
        {head + "1,2\nnan,4\n", "line 4, column 1", "finite"},
        {head + "1,2\n3,-inf\n", "line 4, column 2", "finite"},
        {head + "1,2\n3,1e300\n", "line 4, column 2", "finite"},
        {head + "1,2\n3,1e999\n", "line 4, column 2", "not a number"},
        {head + "1,2\n\n3,4\n", "line 4, column 1", "empty line"},
        {head + "1,2\n# note\n3,4\n", "line 4, column 1", "not a number"},
        {head + "1,2\n\"3,4\n", "line 4, column 1", "quote"},
        {head + "1,2\n\"3\"x,4\n", "line 4, column 1", "quote"},
        {head + "0,5,1,5\n", "line 3, column 3", "too many"},
        {head + "1,2\n3,4", "line 4, column 1", "line end"},
        {head + "1,2\n3,4\r", "line 4, column 1", "line end"},
        {kRate + "x;y\n0.5;1\n0,5;1\n", "line 4, column 1", "decimal comma"},
        {kRate + "x;y\n0,5;1\n1;2.5\n", "line 4, column 2", "decimal point"},
        {kRate + "x;y\n1.234,5;1\n", "line 3, column 1", "not a number"},
        {kRate + "x;y\n1,234,567;1\n", "line 3, column 1", "not a number"},
    };
    for (const Wrong& wrong : wrongs) {
        SCOPED_TRACE(wrong.text.substr(0, 200));
        const auto read = readCsv(wrong.text, "a.csv");
        ASSERT_FALSE(read);
        EXPECT_EQ(read.error().file, "a.csv");
        EXPECT_EQ(read.error().place, wrong.place) << read.error().sentence();
        EXPECT_THAT(read.error().rule, HasSubstr(wrong.rulePart));
    }
}

}  // namespace
}  // namespace fettle
