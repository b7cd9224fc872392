// What a level follows, where the weeks hold a range to tell. Expected values by hand.
#include "core/trend/dependence.h"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>

namespace fettle {
namespace {

std::vector<RunValue> values(int count, const std::function<void(int, RunValue&)>& fill) {
    std::vector<RunValue> all(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) {
        all[std::size_t(i)].time = startOfDay(i);
        fill(i, all[std::size_t(i)]);
    }
    return all;
}

TEST(Dependence, ThePowerOfTheSpeedIsFound) {
    const auto cubic = values(40, [](int i, RunValue& v) {
        v.speedRpm = 900 + 10 * i;
        v.value = std::pow(*v.speedRpm / 1000, 3);
    });
    EXPECT_NEAR(speedPower(cubic).value_or(0), 3, 1e-9);
    const auto narrow = values(40, [](int i, RunValue& v) {
        v.speedRpm = 1480 + i * 0.1;
        v.value = 2;
    });
    EXPECT_FALSE(speedPower(narrow));
    EXPECT_FALSE(speedPower(std::span(cubic).first(19)));
}

TEST(Dependence, LoadAndWarmthByRank) {
    const auto rising = values(30, [](int i, RunValue& v) {
        v.loadPct = 40 + i;
        v.frameTempC = 50 - 0.5 * i;
        v.value = 1 + 0.1 * i;
    });
    EXPECT_NEAR(followsLoad(rising).value_or(0), 1, 1e-12);
    EXPECT_NEAR(followsWarmth(rising).value_or(0), -1, 1e-12);
    const auto apart = values(30, [](int i, RunValue& v) {
        v.loadPct = 40 + i;
        v.value = i % 2 ? 2 : 1;
    });
    EXPECT_LT(std::abs(followsLoad(apart).value_or(9)), 0.2);
    EXPECT_FALSE(followsWarmth(apart));
}

}  // namespace
}  // namespace fettle
