// The date at a limit: straight and exponential growth met on the day, an interval that holds it, and no date
// where there is none to tell. How often the interval holds the truth is a trial's matter.
#include "core/trend/forecast.h"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <limits>
#include <random>

namespace fettle {
namespace {

std::vector<DayValue> days(int count, const std::function<double(int)>& value) {
    std::vector<DayValue> all;
    for (int i = 0; i < count; ++i)
        all.push_back({1000 + i, value(i), 1});
    return all;
}

// 2.0 + 0.05 a day meets 4.5 on day 50; 2 exp(0.02 t) meets it on day 40.5: by hand.
TEST(Forecast, CleanGrowthMeetsItsLimitOnTheDay) {
    const auto straight = forecastLimit(days(30, [](int i) { return 2 + 0.05 * i; }), 4.5);
    ASSERT_TRUE(straight);
    EXPECT_NEAR(*straight->median, 1050, 1);
    EXPECT_LE(*straight->from, 1050);
    EXPECT_GE(straight->to.value_or(9999), 1050);
    const auto bent = forecastLimit(days(30, [](int i) { return 2 * std::exp(0.02 * i); }), 4.5);
    ASSERT_TRUE(bent);
    EXPECT_NEAR(*bent->median, 1041, 1);
}

TEST(Forecast, TheIntervalIsWiderWhereTheDaysScatter) {
    std::mt19937 random(3);
    std::normal_distribution<double> normal;
    const auto scattered = [&](double share) {
        return days(42, [&](int i) { return (2 + 0.04 * i) * (1 + share * normal(random)); });
    };
    const auto calm = forecastLimit(scattered(0.01), 4.5), wild = forecastLimit(scattered(0.1), 4.5);
    ASSERT_TRUE(calm && wild && calm->to);
    EXPECT_GT(wild->to.value_or(9999) - *wild->from, *calm->to - *calm->from);
}

TEST(Forecast, NoDateWithoutGrowthOrFarAwayOrAlreadyOver) {
    std::mt19937 random(4);
    std::normal_distribution<double> normal;
    EXPECT_FALSE(forecastLimit(days(42, [&](int) { return 2 + 0.2 * normal(random); }), 4.5));
    EXPECT_FALSE(forecastLimit(days(42, [](int i) { return 4 - 0.02 * i; }), 4.5));
    EXPECT_FALSE(forecastLimit(days(42, [](int i) { return 4 + 0.02 * i; }), 4.5));
    EXPECT_FALSE(forecastLimit(days(42, [](int i) { return 1 + 0.001 * i; }), 4.5));
    EXPECT_FALSE(forecastLimit(days(9, [](int i) { return 2 + 0.05 * i; }), 4.5));
    EXPECT_FALSE(forecastLimit({}, 4.5));
    const double none = std::numeric_limits<double>::quiet_NaN();
    EXPECT_FALSE(forecastLimit(days(42, [](int i) { return 2 + 0.05 * i; }), none));
}

// Growth is judged since the last step down: a cleaned fan's date counts from the cleaning.
TEST(Forecast, StartsAgainAfterARepair) {
    const auto date =
        forecastLimit(days(34, [](int i) { return i < 20 ? 4 + 0.2 * i : 1.5 + 0.1 * (i - 20); }), 4.5);
    ASSERT_TRUE(date);
    EXPECT_NEAR(*date->median, 1050, 2);
}

TEST(Forecast, AWeekWithoutRecordingsMovesNoDate) {
    auto all = days(42, [](int i) { return 2 + 0.04 * i; });
    all.erase(all.begin() + 20, all.begin() + 27);
    const auto date = forecastLimit(all, 4.5);
    ASSERT_TRUE(date);
    EXPECT_NEAR(*date->median, 1063, 1);
}

}  // namespace
}  // namespace fettle
