// Days, not recordings: medians a day and a week. Expected values by hand.
#include "core/trend/daily.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace fettle {
namespace {

constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();

Instant at(const char* text) {
    return *parseUtc(text);
}

TEST(Daily, ADayIsCountedFrom1970) {
    EXPECT_EQ(dayOf(at("1970-01-01T00:00:00Z")), 0);
    EXPECT_EQ(dayOf(at("1970-01-01T23:59:59.999Z")), 0);
    EXPECT_EQ(dayOf(at("1969-12-31T23:59:59Z")), -1);
    // 20,454 days: 56 years of which 14 are leap years, to 2026-01-01.
    EXPECT_EQ(dayOf(at("2026-01-01T12:00:00Z")), 56 * 365 + 14);
    EXPECT_EQ(formatUtc(startOfDay(dayOf(at("2026-05-04T06:20:00Z")))), "2026-05-04T00:00:00Z");
}

TEST(Daily, TwentyRecordingsOfOneShiftAreOneDay) {
    std::vector<TimedValue> values;
    for (int i = 0; i < 20; ++i)
        values.push_back({at("2026-05-04T06:00:00Z") + std::chrono::minutes(20 * i), 2.0 + 0.01 * i});
    values.push_back({at("2026-05-05T06:00:00Z"), 9.0});
    const auto days = dailyMedians(values);
    ASSERT_EQ(days.size(), 2u);
    EXPECT_NEAR(days[0].value, 2.095, 1e-12);
    EXPECT_EQ(days[0].count, 20);
    EXPECT_EQ(days[1].value, 9.0);
    EXPECT_EQ(days[1].day, days[0].day + 1);
}

TEST(Daily, OrderOfTheInputDoesNotMatterAndWhatIsNoNumberIsLeftOut) {
    const std::vector<TimedValue> values = {
        {at("2026-05-06T01:00:00Z"), 3},
        {at("2026-05-04T09:00:00Z"), kNaN},
        {at("2026-05-04T08:00:00Z"), 1},
        {at("2026-05-05T08:00:00Z"), kNaN},
        {at("2026-05-04T07:00:00Z"), 5},
        {at("2026-05-04T06:00:00Z"), 2},
        {at("2026-05-06T02:00:00Z"), std::numeric_limits<double>::infinity()}};
    const auto days = dailyMedians(values);
    ASSERT_EQ(days.size(), 2u);
    EXPECT_EQ(days[0].value, 2);
    EXPECT_EQ(days[0].count, 3);
    EXPECT_EQ(days[1].value, 3);
    EXPECT_EQ(days[1].count, 1);
    EXPECT_TRUE(dailyMedians({}).empty());
}

TEST(Daily, WeeksEndWithTheLastDayAndMayBeEmpty) {
    const int last = 20000;
    const std::vector<DayValue> days = {{last - 27, 7, 1}, {last - 7, 4, 1}, {last - 6, 1, 9},
                                        {last - 1, 3, 1},  {last, 2, 1},     {last + 1, 100, 1}};
    const auto weeks = weeklyMedians(days, last, 4);
    ASSERT_EQ(weeks.size(), 4u);
    EXPECT_EQ(weeks[3], 2);  // of 1, 3, 2: days count, not recordings
    EXPECT_EQ(weeks[2], 4);
    EXPECT_TRUE(std::isnan(weeks[1]));
    EXPECT_EQ(weeks[0], 7);
    EXPECT_TRUE(weeklyMedians(days, last, 0).empty());
    EXPECT_TRUE(weeklyMedians(days, last, -3).empty());
    EXPECT_TRUE(std::isnan(weeklyMedians({}, last, 1).front()));
}

}  // namespace
}  // namespace fettle
