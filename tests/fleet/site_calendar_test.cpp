// The site's calendar. Sources: the civil calendar (leap days, Gregorian rules); summer time in the European
// Union and the United Kingdom begins on the last Sunday of March and ends on the last of October at 01:00
// UTC (directive 2000/84/EC).
#include "core/fleet/site_calendar.h"

#include <gtest/gtest.h>

namespace fettle {
namespace {

using std::chrono::hours;

hours lengthOf(const std::string& zone, const std::string& date) {
    const auto start = startOfDate(zone, date), end = startOfDate(zone, datePlus(date, 1).value());
    EXPECT_TRUE(start && end) << zone << " " << date;
    return std::chrono::duration_cast<hours>(*end - *start);
}

TEST(SiteCalendar, DaysOfAClockChangeHave23And25Hours) {
    EXPECT_EQ(lengthOf("Europe/London", "2026-03-29"), hours(23));
    EXPECT_EQ(lengthOf("Europe/London", "2026-10-25"), hours(25));
    EXPECT_EQ(lengthOf("Europe/London", "2026-05-04"), hours(24));
    EXPECT_EQ(lengthOf("UTC", "2026-03-29"), hours(24));
}

TEST(SiteCalendar, AMomentBelongsToTheSitesDay) {
    const Instant late = parseUtc("2026-05-04T23:30:00Z").value();
    EXPECT_EQ(dateIn("UTC", late).value(), "2026-05-04");
    EXPECT_EQ(dateIn("Europe/London", late).value(), "2026-05-05");
    EXPECT_EQ(dateIn("America/New_York", late).value(), "2026-05-04");
    EXPECT_EQ(formatUtc(startOfDate("Asia/Kolkata", "2026-05-05").value()), "2026-05-04T18:30:00Z");
}

TEST(SiteCalendar, EveryMomentOfADayLiesBetweenItsStartAndTheNext) {
    for (int day = 0; day < 366; ++day) {
        const std::string date = datePlus("2026-01-01", day).value();
        const Instant start = startOfDate("Europe/Berlin", date).value();
        EXPECT_EQ(dateIn("Europe/Berlin", start).value(), date);
        EXPECT_LT(dateIn("Europe/Berlin", start - std::chrono::milliseconds(1)).value(), date);
    }
}

TEST(SiteCalendar, CountsDaysOverLeapDaysAndYears) {
    EXPECT_EQ(datePlus("2028-02-28", 1).value(), "2028-02-29");
    EXPECT_EQ(datePlus("2026-12-31", 1).value(), "2027-01-01");
    EXPECT_EQ(datePlus("2026-05-04", -7).value(), "2026-04-27");
    EXPECT_EQ(daysBetween("2026-05-04", "2027-05-04").value(), 365);
    EXPECT_EQ(dayNumber("1970-01-02").value(), 1);
    EXPECT_EQ(dateOfDay(dayNumber("2026-05-04").value()), "2026-05-04");
    EXPECT_EQ(spelledDate("2026-06-12"), "12 June 2026");
}

TEST(SiteCalendar, WhatIsNoDateOrNoZoneIsRefusedWithItsWords) {
    for (const char* bad : {"", "2026-02-30", "2026-5-4", "04.05.2026", "2026-05-04T00:00:00Z", "tomorrow"}) {
        const auto plus = datePlus(bad, 1);
        ASSERT_FALSE(plus) << bad;
        EXPECT_NE(plus.error().sentence().find("2026-05-04"), std::string::npos);
        EXPECT_EQ(spelledDate(bad), bad);
    }
    for (const char* bad : {"Nowhere/Town", "../../etc/passwd", "Europe/London\n", "summer"}) {
        const auto zone = checkTimeZone(bad);
        ASSERT_FALSE(zone) << bad;
        EXPECT_EQ(zone.error().kind, ErrorKind::Invalid);
        EXPECT_FALSE(dateIn(bad, Instant{}));
        EXPECT_FALSE(startOfDate(bad, "2026-05-04"));
    }
    EXPECT_TRUE(checkTimeZone("UTC"));
    EXPECT_TRUE(checkTimeZone("Europe/London"));
}

// British summer time is UTC+1, New York's UTC-4: IANA table.
TEST(SiteCalendar, TheDayOfItsClockIsTheSites) {
    const auto dayIn = [](const std::string& zone, const char* utc) {
        return formatDate(clockIn(zone, *parseUtc(utc)).value());
    };
    EXPECT_EQ(dayIn("Europe/London", "2026-07-05T23:30:00Z"), "2026-07-06");
    EXPECT_EQ(dayIn("America/New_York", "2026-07-06T03:30:00Z"), "2026-07-05");
    EXPECT_EQ(dayIn("UTC", "2026-07-06T03:30:00Z"), "2026-07-06");
    EXPECT_FALSE(clockIn("Nowhere/None", *parseUtc("2026-07-06T03:30:00Z")));
}

TEST(SiteCalendar, AMomentNamesItsZone) {
    const Instant time = parseUtc("2026-07-05T23:30:00Z").value();
    EXPECT_EQ(momentIn("Europe/London", time), "6 July 2026, 00:30 Europe/London");
    EXPECT_EQ(momentIn("Asia/Kolkata", time), "6 July 2026, 05:00 Asia/Kolkata");
    EXPECT_EQ(momentIn("", time), "5 July 2026, 23:30 UTC");
    EXPECT_EQ(momentIn("Nowhere/None", time), "5 July 2026, 23:30 UTC");
}

}  // namespace
}  // namespace fettle
