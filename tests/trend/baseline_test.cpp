// What is usual: days at like speed and load, enough of them, since the machine was last altered. Expected
// values by hand.
#include "core/trend/baseline.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "core/trend/condition.h"

namespace fettle {
namespace {

using ::testing::HasSubstr;

int dayAt(const char* date) {
    return dayOf(*parseUtc(std::string(date) + "T00:00:00Z"));
}

std::vector<DayValue> days(int first, int count, double value = 2) {
    std::vector<DayValue> all;
    for (int i = 0; i < count; ++i)
        all.push_back({first + i, value, 1});
    return all;
}

// 2 May 2026 is a Saturday.
TEST(Baseline, AWeekendCountsWhereBothItsDaysLieWithin) {
    const int saturday = dayAt("2026-05-02");
    EXPECT_EQ(weekendsIn(saturday, saturday), 0);
    EXPECT_EQ(weekendsIn(saturday, saturday + 1), 1);
    EXPECT_EQ(weekendsIn(saturday + 1, saturday + 7), 0);
    EXPECT_EQ(weekendsIn(saturday + 1, saturday + 8), 1);
    EXPECT_EQ(weekendsIn(saturday - 5, saturday + 8), 2);
    EXPECT_EQ(weekendsIn(saturday, saturday + 70), 10);
    EXPECT_EQ(weekendsIn(-1, 3), 1);  // 3 and 4 January 1970
    EXPECT_EQ(weekendsIn(-5, 3), 2);  // and 27 and 28 December 1969
    EXPECT_EQ(weekendsIn(-4, 3), 1);
}

TEST(Baseline, NeedsFourteenDaysOverTwoWeekends) {
    const int monday = dayAt("2026-05-04");
    EXPECT_TRUE(baselineOf(days(monday, 14), std::nullopt, monday + 14).baseline);
    const BaselineSearch few = baselineOf(days(monday, 13), std::nullopt, monday + 14);
    EXPECT_FALSE(few.baseline);
    EXPECT_EQ(few.daysMissing, 1);
    EXPECT_EQ(few.weekendsMissing, 1);
    EXPECT_THAT(few.why, HasSubstr("13 of 14 days"));
    EXPECT_THAT(few.why, HasSubstr("1 more needed"));
    // Fifteen days from a Sunday on hold one whole weekend only.
    const BaselineSearch one = baselineOf(days(monday - 1, 14), std::nullopt, monday + 14);
    EXPECT_FALSE(one.baseline);
    EXPECT_EQ(one.daysMissing, 0);
    EXPECT_EQ(one.weekendsMissing, 1);
    EXPECT_THAT(baselineOf({}, monday, monday + 7).why, HasSubstr("0 of 14 days"));
}

TEST(Baseline, IsTheFirstDaysSinceTheAlterationWithoutItsRunIn) {
    const int start = dayAt("2026-02-02");
    std::vector<DayValue> all = days(start - 30, 30, 9);
    for (const DayValue& one : days(start, 90))
        all.push_back(one);
    const auto search = baselineOf(all, start, start + 90);
    ASSERT_TRUE(search.baseline);
    EXPECT_EQ(search.baseline->firstDay(), start + 3);
    EXPECT_EQ(search.baseline->days.size(), 42u);
    EXPECT_EQ(search.baseline->lastDay(), start + 44);
    EXPECT_EQ(search.baseline->median, 2);
    EXPECT_EQ(search.baseline->words(), "42 days from 2026-02-05 to 2026-03-18");
}

// Two days a week: six weeks hold 12, so it goes on until there are 14, not to the end of the year.
TEST(Baseline, OfSparseDaysTakesNoMoreThanItNeeds) {
    const int monday = dayAt("2026-01-05");
    std::vector<DayValue> all;
    for (int week = 0; week < 40; ++week)
        for (const int day : {0, 3})
            all.push_back({monday + 7 * week + day, 2, 1});
    const auto search = baselineOf(all, std::nullopt, monday + 280);
    ASSERT_TRUE(search.baseline);
    EXPECT_EQ(search.baseline->days.size(), 14u);
    EXPECT_EQ(search.baseline->lastDay(), monday + 45);
}

TEST(Baseline, TheWeekJudgedIsNotInIt) {
    const int start = dayAt("2026-05-04");
    std::vector<DayValue> all = days(start, 20);
    for (std::size_t i = 14; i < 20; ++i)
        all[i].value = 50;
    const auto search = baselineOf(all, std::nullopt, start + 14);
    ASSERT_TRUE(search.baseline);
    EXPECT_EQ(search.baseline->days.size(), 14u);
    EXPECT_NEAR(search.baseline->mean, 20 * std::log10(2.0), 1e-12);
    EXPECT_NEAR(search.baseline->spread, 0, 1e-12);
}

TEST(Baseline, MomentsAreThoseOfTheScale) {
    const int start = dayAt("2026-05-04");
    std::vector<DayValue> all = days(start, 14, 10);
    for (std::size_t i = 0; i < 14; i += 2)
        all[i].value = 1;
    const auto levels = baselineOf(all, std::nullopt, start + 20);
    EXPECT_NEAR(levels.baseline->mean, 10, 1e-12);
    EXPECT_NEAR(levels.baseline->spread, 10 * std::sqrt(14.0 / 13), 1e-12);
    const auto kelvin = baselineOf(all, std::nullopt, start + 20, Scale::Linear);
    EXPECT_NEAR(kelvin.baseline->mean, 5.5, 1e-12);
    EXPECT_NEAR(kelvin.baseline->median, 5.5, 1e-12);
}

RunValue run(double hours, double value, double rpm, double load, const char* state = "running") {
    RunValue one;
    one.time = startOfDay(20000) + std::chrono::minutes(int(hours * 60));
    one.value = value;
    one.running = state;
    if (rpm > 0) one.speedRpm = rpm;
    if (load >= 0) one.loadPct = load;
    return one;
}

// An inverter machine at two speeds: the one it runs at most is the condition.
TEST(Condition, IsTheOneInWhichMostValuesWereTaken) {
    const std::vector<RunValue> values = {
        run(0, 1, 900, 60),  run(1, 1, 905, 62),  run(2, 1, 895, 58),
        run(3, 9, 1400, 61), run(4, 9, 1410, 60), run(5, 5, 900, 10),
        run(6, 7, 0, 60),    run(24, 2, 910, 60), run(25, 9, 900, 60, "running_unloaded")};
    const auto condition = usualCondition(values);
    ASSERT_TRUE(condition);
    EXPECT_EQ(condition->running, "running");
    EXPECT_NEAR(*condition->speedRpm, 900, 10);
    EXPECT_NEAR(*condition->loadPct, 60, 2);
    const auto alike = likeDays(values, *condition);
    ASSERT_EQ(alike.size(), 2u);
    EXPECT_EQ(alike[0].count, 3);
    EXPECT_EQ(alike[0].value, 1);
    EXPECT_EQ(alike[1].value, 2);
}

TEST(Condition, WhatMostValuesDoNotSayIsNotAskedFor) {
    const std::vector<RunValue> values = {run(0, 1, 1480, -1), run(1, 2, 1482, 80), run(2, 3, 1481, -1)};
    const auto condition = usualCondition(values);
    EXPECT_TRUE(condition->speedRpm);
    EXPECT_FALSE(condition->loadPct);
    EXPECT_EQ(likeDays(values, *condition)[0].count, 3);
    EXPECT_FALSE(usualCondition({}));
}

}  // namespace
}  // namespace fettle
