// Control charts against worked examples, run lengths against published tables, and the charts themselves
// against their run lengths.
#include "core/trend/charts.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace fettle {
namespace {

// D. C. Montgomery, Introduction to Statistical Quality Control: 30 values, target 10, sigma 1; the last ten
// have mean 11.
const std::vector<double> kMontgomery = {
    9.45, 7.99,  9.29,  11.66, 12.16, 10.18, 8.04, 11.46, 9.20,  10.34, 9.03,  11.47, 10.51, 9.40,  10.08,
    9.37, 10.62, 10.31, 8.52,  10.84, 10.90, 9.33, 12.29, 11.50, 10.60, 11.08, 10.38, 11.62, 11.31, 10.52};

TEST(Charts, EwmaOfMontgomerysValues) {
    const auto points = ewma(kMontgomery, {10, 1}, {0.1, 2.7, false});
    ASSERT_EQ(points.size(), 30u);
    EXPECT_NEAR(points[0].value, 9.945, 1e-9);
    EXPECT_NEAR(points[1].value, 9.7495, 1e-9);
    EXPECT_NEAR(points[2].value, 9.70355, 1e-9);
    EXPECT_NEAR(points[27].value, 10.57313717, 1e-8);
    EXPECT_NEAR(points[28].value, 10.64682345, 1e-8);
    EXPECT_NEAR(points[29].value, 10.63414111, 1e-8);
    EXPECT_NEAR(points[0].high, 10.27, 1e-9);
    EXPECT_NEAR(points[1].high, 10.36324785, 1e-8);
    EXPECT_NEAR(points[2].high, 10.42400317, 1e-8);
    EXPECT_NEAR(points[29].high, 10.6188657, 1e-6);  // by hand: 0.9^60 is left of the start
    EXPECT_NEAR(ewma(kMontgomery, {10, 1}, {0.1, 2.7, true})[29].high, 10.61942248, 1e-8);
    for (std::size_t i = 0; i < points.size(); ++i)
        EXPECT_EQ(points[i].out, i >= 28) << i;
}

TEST(Charts, CusumOfMontgomerysValues) {
    const auto points = cusum(kMontgomery, {10, 1}, {0.5, 5}).points;
    EXPECT_NEAR(points[28].up, 5.28, 1e-9);
    EXPECT_NEAR(points[29].up, 5.30, 1e-9);
    EXPECT_EQ(points[28].upRun, 7);
    double down = 0;
    for (std::size_t i = 0; i < points.size(); ++i) {
        EXPECT_EQ(points[i].out, i >= 28) << i;
        down = std::max(down, points[i].down);
    }
    EXPECT_NEAR(down, 1.77, 1e-9);
}

// NIST/SEMATECH e-Handbook, EWMA control charts: target 50, s 2.0539, lambda 0.3, none out.
TEST(Charts, EwmaOfTheHandbook) {
    const std::vector<double> values = {52,   47,   53,   49.3, 50.1, 47,   51,   50.1, 51.2, 50.5,
                                        49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1};
    const auto points = ewma(values, {50, 2.0539}, {0.3, 3, true});
    EXPECT_NEAR(points[0].value, 50.6, 1e-9);
    EXPECT_NEAR(points[5].value, 49.2116, 5e-5);
    EXPECT_NEAR(points[19].value, 51.9882, 5e-5);
    EXPECT_NEAR(points[0].high, 52.5884, 5e-5);
    EXPECT_NEAR(points[0].low, 47.4116, 5e-5);
    for (const EwmaPoint& point : points)
        EXPECT_FALSE(point.out);
}

TEST(Charts, ShewhartFindsWhatLiesBeyondThreeSigma) {
    EXPECT_THAT(shewhartOut(kMontgomery, {10, 1}), testing::IsEmpty());
    EXPECT_THAT(shewhartOut(std::vector<double>{13.01, 12.99, 6.9}, {10, 1}), testing::ElementsAre(0, 2));
}

constexpr double kShifts[] = {0, 0.25, 0.5, 0.75, 1, 1.5, 2, 3};

// To the digits printed; computed from the same equations elsewhere, agree with Lucas and Saccucci (1990).
TEST(Charts, EwmaRunsAsLongAsPublished) {
    const struct {
        double lambda, width, lengths[8];
    } rows[] = {{0.40, 3.054, {499.95, 223.73, 71.20, 28.42, 14.26, 5.875, 3.522, 2.019}},
                {0.25, 2.998, {499.84, 170.30, 48.29, 20.11, 11.14, 5.464, 3.614, 2.258}},
                {0.20, 2.962, {499.74, 150.22, 41.76, 18.15, 10.54, 5.501, 3.743, 2.381}},
                {0.10, 2.814, {499.58, 106.32, 31.30, 15.85, 10.33, 6.084, 4.362, 2.868}},
                {0.05, 2.615, {499.93, 84.01, 28.76, 16.37, 11.38, 7.112, 5.225, 3.496}},
                {0.10, 2.703, {371.89, 89.50, 28.27, 14.75, 9.745, 5.805, 4.183, 2.762}},
                {0.20, 2.860, {371.10, 121.22, 36.20, 16.45, 9.802, 5.231, 3.593, 2.309}}};
    for (const auto& row : rows)
        for (std::size_t i = 0; i < std::size(kShifts); ++i)
            EXPECT_NEAR(ewmaRunLength({row.lambda, row.width}, kShifts[i]) / row.lengths[i], 1, 6e-4)
                << row.lambda << " " << kShifts[i];
}

// J. M. Lucas, J. Qual. Technol. 8 (1976), and Montgomery, to rounding.
TEST(Charts, CusumRunsAsLongAsPublished) {
    const struct {
        double k, h, lengths[8];
    } rows[] = {{0.5, 4, {167.684, 74.224, 26.630, 13.285, 8.3831, 4.7472, 3.3428, 2.1945}},
                {0.5, 5, {465.444, 139.494, 37.996, 17.048, 10.3760, 5.7472, 4.0089, 2.5733}},
                {0.5, 4.77, {368.561, 121.313, 35.208, 16.173, 9.9170, 5.5172, 3.8553, 2.4844}},
                {0.25, 8.01, {370.332, 83.816, 28.802, 16.392, 11.4065, 7.1221, 5.2199, 3.4791}}};
    for (const auto& row : rows)
        for (std::size_t i = 0; i < std::size(kShifts); ++i)
            EXPECT_NEAR(cusumRunLength({row.k, row.h}, kShifts[i]) / row.lengths[i], 1, 2e-4)
                << row.h << " " << kShifts[i];
    EXPECT_NEAR(cusumOneSidedRunLength({0.5, 4}, 0), 335.368, 1e-3);
    EXPECT_NEAR(cusumOneSidedRunLength({0.5, 5}, 0), 930.887, 1e-3);
}

TEST(Charts, ShewhartRunsAsLongAsPublished) {
    EXPECT_NEAR(shewhartRunLength(3, 0), 370.398, 1e-3);
    EXPECT_NEAR(shewhartRunLength(3, 0.5), 155.224, 1e-3);
    EXPECT_NEAR(shewhartRunLength(3, 1), 43.895, 1e-3);
    EXPECT_NEAR(shewhartRunLength(3, 2), 6.303, 1e-3);
    EXPECT_NEAR(shewhartRunLength(3, 3), 2.000, 1e-3);
}

// The charts as drawn: values one sigma off, until the first signal. 4,000 runs; a run length spreads by
// about its mean, so the standard error is at most 1.6 %; four of them are allowed.
TEST(Charts, SignalAsOftenAsTheirRunLengthSays) {
    std::mt19937_64 random(20260505);
    std::normal_distribution<double> normal(1, 1);
    double ewmaSum = 0, cusumSum = 0;
    constexpr int kRuns = 4000;
    for (int run = 0; run < kRuns; ++run) {
        std::vector<double> values(200);
        for (double& value : values)
            value = normal(random);
        const auto smooth = ewma(values, {0, 1}, {0.2, 2.86, true});
        const auto sums = cusum(values, {0, 1}, {0.5, 5}).points;
        const auto first = [](const auto& points) {
            std::size_t i = 0;
            while (i < points.size() && !points[i].out)
                ++i;
            return double(i + 1);
        };
        ewmaSum += first(smooth);
        cusumSum += first(sums);
    }
    EXPECT_NEAR(ewmaSum / kRuns / 9.802, 1, 4 * 0.016);
    EXPECT_NEAR(cusumSum / kRuns / 10.376, 1, 4 * 0.016);
}

}  // namespace
}  // namespace fettle
