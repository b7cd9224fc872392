// Five limits of one baseline, computed independently with SciPy 1.10.1.
#include "core/trend/limits.h"

#include <gtest/gtest.h>

#include <vector>

namespace fettle {
namespace {

TEST(Limits, OfTenDaysAreSciPysFigures) {
    const std::vector<double> days = {2.0, 2.2, 2.1, 2.4, 1.9, 2.3, 2.2, 2.0, 2.1, 2.8};
    const auto limits = statisticalLimits(days);
    ASSERT_TRUE(limits);
    EXPECT_EQ(limits->count, 10);
    EXPECT_NEAR(limits->meanPlus3s, 2.974596669, 1e-8);
    EXPECT_NEAR(limits->logNormal, 3.053852853, 1e-8);
    EXPECT_NEAR(limits->medianMad, 2.817170998, 1e-4);  // 1.4826 is the rounded constant
    EXPECT_NEAR(limits->p95, 2.62, 1e-12);
    EXPECT_NEAR(limits->tolerance, 2.2 + 2.910963413 * 0.2581988897, 1e-4);
}

TEST(Limits, NeedThreeDaysAndALogarithmNeedsValuesAboveZero) {
    EXPECT_FALSE(statisticalLimits(std::vector<double>{1, 2}));
    const auto limits = statisticalLimits(std::vector<double>{0, 1, 2, 3});
    ASSERT_TRUE(limits);
    EXPECT_EQ(limits->logNormal, 0);
    EXPECT_GT(limits->meanPlus3s, 1.5);
}

}  // namespace
}  // namespace fettle
