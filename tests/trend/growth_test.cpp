// Growth of a level, against Sen's own example and SciPy.
#include "core/trend/growth.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace fettle {
namespace {

std::vector<DayValue> daysOf(const std::vector<int>& days, const std::vector<double>& values) {
    std::vector<DayValue> all;
    for (std::size_t i = 0; i < days.size(); ++i)
        all.push_back({days[i], values[i], 1});
    return all;
}

std::vector<DayValue> from(int first, const std::vector<double>& values) {
    std::vector<int> days;
    for (std::size_t i = 0; i < values.size(); ++i)
        days.push_back(first + int(i));
    return daysOf(days, values);
}

struct Known {
    const char* source;
    std::vector<DayValue> days;
    double cover, slope, low, high, now;  // a day, not a week
};

std::vector<Known> known() {
    return {
        // Slope 4, interval 26/7 to 35/8: Sen (1968), worked example, as SciPy's own tests carry it.
        {"Sen (1968)", daysOf({1, 2, 3, 4, 10, 12, 18}, {9, 15, 19, 20, 45, 55, 78}), 0.93, 4, 26.0 / 7,
         35.0 / 8, 4 + 4 * 18},
        {"SciPy 1.10.1 theilslopes", from(0, {2.1, 2.3, 2.2, 2.6, 9.0, 2.9, 3.0, 3.3, 3.2, 3.6}), 0.95,
         0.1625, 0.12, 0.20, 2.21875 + 0.1625 * 9},
        {"SciPy 1.10.1 theilslopes", from(0, {2.1, 2.3, 2.2, 2.6, 9.0, 2.9, 3.0, 3.3, 3.2, 3.6}), 0.8, 0.1625,
         0.1375, 0.175, 2.21875 + 0.1625 * 9},
        {"SciPy 1.10.1 theilslopes", from(0, {1, 2, 4, 4, 7}), 0.9, 1.5, 1.0, 2.0, 1.0 + 1.5 * 4},
        // Days left out, ties.
        {"SciPy 1.10.1 theilslopes",
         daysOf({0, 1, 2, 4, 5, 6, 8, 9, 11, 12, 13, 15, 16, 18, 20, 21, 24, 25},
                {2.0, 2.0, 2.1, 2.1, 2.3, 2.2, 2.2, 2.4, 2.3, 2.6, 2.5, 2.5, 2.7, 2.6, 2.9, 2.8, 2.8, 3.1}),
         0.8, 0.04, 0.03478260869565217, 0.04375, 1.99 + 0.04 * 25},
        {"SciPy 1.10.1 theilslopes",
         from(100, {2.0, 2.0, 2.2, 2.1, 2.0, 2.2, 2.4, 2.4, 2.1, 2.1, 2.2, 2.3, 2.0, 2.4, 2.2,
                    2.3, 2.4, 2.5, 2.6, 2.7, 2.6, 2.8, 2.6, 2.7, 2.9, 2.8, 2.7, 2.7, 2.8, 2.9}),
         0.8, 0.21538461538461534 / 7, 0.1909090909090908 / 7, 0.23333333333333353 / 7, 2.846153846153846},
    };
}

TEST(Growth, MatchesPublishedSlopesAndIntervals) {
    for (const Known& one : known()) {
        SCOPED_TRACE(one.source);
        const auto growth = growthOf(one.days, {42, 5, one.cover});
        ASSERT_TRUE(growth);
        EXPECT_NEAR(growth->perWeek, 7 * one.slope, 1e-9);
        EXPECT_NEAR(growth->low, 7 * one.low, 1e-9);
        EXPECT_NEAR(growth->high, 7 * one.high, 1e-9);
        EXPECT_NEAR(growth->now, one.now, 1e-9);
        EXPECT_EQ(growth->days, int(one.days.size()));
        EXPECT_EQ(growth->sinceDay, one.days.front().day);
        EXPECT_EQ(growth->lastDay, one.days.back().day);
    }
}

std::vector<double> line(std::size_t count, double start, double perDay) {
    std::vector<double> values;
    for (std::size_t i = 0; i < count; ++i)
        values.push_back(start + perDay * double(i));
    return values;
}

TEST(Growth, LooksBackNoFartherThanAskedFor) {
    std::vector<double> values = line(60, 10, 0);
    const std::vector<double> recent = line(20, 10, 0.5);
    values.insert(values.end(), recent.begin(), recent.end());
    const auto growth = growthOf(from(0, values), {20, 10, 0.8});
    ASSERT_TRUE(growth);
    EXPECT_EQ(growth->days, 20);
    EXPECT_EQ(growth->sinceDay, 60);
    EXPECT_NEAR(growth->perWeek, 3.5, 1e-12);
}

// A cleaned fan drifts again: what it grew before the cleaning says nothing of now.
TEST(Growth, StartsAgainAfterARepair) {
    std::vector<double> values = line(20, 4, 0.2);
    const std::vector<double> after = line(14, 1.5, 0.05);
    values.insert(values.end(), after.begin(), after.end());
    const auto growth = growthOf(from(500, values));
    ASSERT_TRUE(growth);
    EXPECT_EQ(growth->sinceDay, 520);
    EXPECT_EQ(growth->days, 14);
    EXPECT_NEAR(growth->perWeek, 0.35, 1e-12);
    EXPECT_NEAR(growth->now, 1.5 + 0.05 * 13, 1e-12);
}

TEST(Growth, OfTwoRepairsTheLastCountsAndUntilTenDaysAfterItThereIsNone) {
    std::vector<double> values = line(10, 8, 0);
    for (const double level : {3.0, 1.0}) {
        const std::vector<double> after = line(level == 3.0 ? 10 : 9, level, 0.01);
        values.insert(values.end(), after.begin(), after.end());
    }
    EXPECT_FALSE(growthOf(from(0, values)));
    values.push_back(1.09);
    const auto growth = growthOf(from(0, values));
    ASSERT_TRUE(growth);
    EXPECT_EQ(growth->sinceDay, 20);
}

TEST(Growth, ASingleLowDayIsNoRepair) {
    std::vector<double> values = line(20, 4, 0.05);
    values[11] = 0.5;
    const auto growth = growthOf(from(0, values));
    ASSERT_TRUE(growth);
    EXPECT_EQ(growth->days, 20);
    values = line(20, 4, 0.05);
    values.back() = 0.5;
    EXPECT_EQ(growthOf(from(0, values))->days, 20);
}

TEST(Growth, AFallByHalfOrLessIsNoRepair) {
    std::vector<double> values = line(12, 4, 0);
    const std::vector<double> after = line(12, 2, 0);
    values.insert(values.end(), after.begin(), after.end());
    EXPECT_EQ(growthOf(from(0, values))->days, 24);
}

TEST(Growth, NeedsEnoughDaysAndFiniteOnes) {
    EXPECT_FALSE(growthOf({}));
    EXPECT_FALSE(growthOf(from(0, line(9, 1, 1))));
    EXPECT_TRUE(growthOf(from(0, line(10, 1, 1))));
    std::vector<double> values = line(12, 1, 1);
    values[3] = values[7] = values[8] = std::numeric_limits<double>::quiet_NaN();
    EXPECT_FALSE(growthOf(from(0, values)));
    EXPECT_FALSE(growthOf(std::vector<DayValue>{{5, 1, 1}}, {42, 0, 0.8}));
    const auto same = growthOf(from(0, line(30, 2, 0)));
    ASSERT_TRUE(same);
    EXPECT_EQ(same->perWeek, 0);
    EXPECT_EQ(same->now, 2);
}

}  // namespace
}  // namespace fettle
