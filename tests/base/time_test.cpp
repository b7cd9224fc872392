#include "core/base/time.h"

#include <gtest/gtest.h>

namespace fettle {
namespace {

long long secondsOf(const char* text) {
    return std::chrono::floor<std::chrono::seconds>(parseUtc(text).value()).time_since_epoch().count();
}

// Seconds since 1970-01-01 as POSIX.1 (IEEE Std 1003.1, section 4.16 "Seconds Since the Epoch") counts them.
long long posixSeconds(long long year, long long dayOfYear, long long hour, long long minute,
                       long long second) {
    const long long y = year - 1900;
    return second + minute * 60 + hour * 3600 + dayOfYear * 86400 + (y - 70) * 31536000 +
           ((y - 69) / 4) * 86400 - ((y - 1) / 100) * 86400 + ((y + 299) / 400) * 86400;
}

TEST(ParseUtc, CountsAsPosixDoes) {
    EXPECT_EQ(secondsOf("1970-01-01T00:00:00Z"), 0);
    EXPECT_EQ(secondsOf("2026-05-04T06:20:00Z"), posixSeconds(2026, 123, 6, 20, 0));
    EXPECT_EQ(secondsOf("2000-02-29T23:59:59Z"), posixSeconds(2000, 59, 23, 59, 59));
    EXPECT_EQ(secondsOf("2100-03-01T00:00:00Z"), posixSeconds(2100, 59, 0, 0, 0));
    EXPECT_EQ(secondsOf("2001-09-09T01:46:40Z"), 1000000000);
}

TEST(ParseUtc, TakesFractions) {
    using std::chrono::milliseconds;
    const Instant whole = parseUtc("2026-05-04T06:20:00Z").value();
    EXPECT_EQ(parseUtc("2026-05-04T06:20:00.5Z").value() - whole, milliseconds(500));
    EXPECT_EQ(parseUtc("2026-05-04T06:20:00.042Z").value() - whole, milliseconds(42));
    EXPECT_EQ(parseUtc("2026-05-04T06:20:00.042999Z").value() - whole, milliseconds(42));
}

// Gregorian rule: every fourth year, of the hundreds every fourth.
TEST(ParseUtc, KnowsLeapYears) {
    EXPECT_TRUE(parseUtc("2024-02-29T00:00:00Z"));
    EXPECT_TRUE(parseUtc("2000-02-29T00:00:00Z"));
    EXPECT_FALSE(parseUtc("2026-02-29T00:00:00Z"));
    EXPECT_FALSE(parseUtc("2100-02-29T00:00:00Z"));
}

TEST(ParseUtc, RefusesWhatIsNoUtcTime) {
    for (const char* text : {"",
                             "Z",
                             "2026-05-04",
                             "2026-05-04T06:20:00",
                             "2026-05-04T06:20:00z",
                             "2026-05-04T06:20:00+00:00",
                             "2026-05-04T06:20:00+02:00",
                             "2026-05-04 06:20:00Z",
                             "2026-5-4T6:20:00Z",
                             "2026-04-31T00:00:00Z",
                             "2026-00-10T00:00:00Z",
                             "2026-13-10T00:00:00Z",
                             "2026-05-00T00:00:00Z",
                             "2026-05-32T00:00:00Z",
                             "2026-05-04T24:00:00Z",
                             "2026-05-04T06:60:00Z",
                             "2026-05-04T06:20:60Z",
                             "2026-05-04T06:20:00.Z",
                             "2026-05-04T06:20:00,5Z",
                             "2026-05-04T06:20:00.5xZ",
                             "2026-05-04T06:20:00ZZ",
                             " 2026-05-04T06:20:00Z",
                             "04.05.2026 06:20",
                             "1777875600"})
        EXPECT_FALSE(parseUtc(text)) << text;
}

TEST(FormatUtc, GivesBackWhatWasRead) {
    for (const char* text : {"2026-05-04T06:20:00Z", "2026-05-04T06:20:00.042Z", "2024-02-29T23:59:59.999Z",
                             "1969-12-31T23:59:59.500Z", "1980-01-01T00:00:00Z"})
        EXPECT_EQ(formatUtc(parseUtc(text).value()), text);
    EXPECT_EQ(formatUtc(parseUtc("2026-05-04T06:20:00.5Z").value()), "2026-05-04T06:20:00.500Z");
}

TEST(FormatDate, IsTheDayInUtc) {
    EXPECT_EQ(formatDate(parseUtc("2026-05-04T23:59:59.999Z").value()), "2026-05-04");
    EXPECT_EQ(formatDate(parseUtc("1969-12-31T23:59:59Z").value()), "1969-12-31");
}

}  // namespace
}  // namespace fettle
