#include "core/dsp/statistics.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/dsp/signals.h"

namespace fettle {
namespace {

TEST(Statistics, FixedSignalX) {
    // check value: NumPy 1.24.2, SciPy 1.10.1
    const auto x = signals::x();
    EXPECT_DOUBLE_EQ(mean(x), -18.0 / 256);
    EXPECT_NEAR(rms(x), 0.500457554316, 1e-12);
    EXPECT_NEAR(standardDeviation(x), 0.495493608451, 1e-12);
    EXPECT_NEAR(standardDeviation(x, 1), 0.496464213903, 1e-12);
    EXPECT_EQ(peak(x), 0.875);
    EXPECT_NEAR(crestFactor(x), 1.74840002405, 1e-11);
    EXPECT_EQ(peakToPeak(x), 1.75);
    EXPECT_NEAR(skewness(x), 0.210742211003, 1e-12);
    EXPECT_NEAR(kurtosis(x), 1.98507966956, 1e-11);
}

TEST(Statistics, FixedSignalU) {
    // check value: NumPy 1.24.2, SciPy 1.10.1
    const auto u = signals::u();
    EXPECT_EQ(u[0], -0.2635444747284055);
    EXPECT_NEAR(mean(u), -0.00235276937019, 1e-13);
    EXPECT_NEAR(rms(u), 0.289374599227, 1e-12);
    EXPECT_NEAR(kurtosis(u), 1.81007461089, 1e-11);
}

TEST(Statistics, TicksOfABearing) {
    // check value: NumPy 1.24.2, SciPy 1.10.1
    const auto ticks = signals::ticks();
    EXPECT_NEAR(rms(ticks), 0.139888918463, 1e-12);
    EXPECT_NEAR(kurtosis(ticks), 23.8434135474, 1e-9);
    EXPECT_NEAR(peak(ticks), 0.923180041059, 1e-12);
    EXPECT_NEAR(crestFactor(ticks), 6.59937935901, 1e-10);
}

std::vector<double> triangle(std::size_t n) {
    std::vector<double> out(n);
    for (std::size_t i = 0; i < n; ++i)
        out[i] = 4 * std::abs(double(i) / double(n) - 0.5) - 1;
    return out;
}

TEST(Statistics, CrestAndKurtosisOfPlainShapes) {
    // Closed forms: sine sqrt 2 and 3/2, square 1 and 1, triangle sqrt 3 and 9/5.
    const auto sine = signals::sine(2.5, 10, 10000, 10000);
    EXPECT_NEAR(crestFactor(sine), 1.41421356, 1e-8);
    EXPECT_NEAR(kurtosis(sine), 1.5, 1e-12);
    std::vector<double> square(1000, 3);
    std::fill(square.begin(), square.begin() + 500, -3);
    EXPECT_NEAR(crestFactor(square), 1, 1e-15);
    EXPECT_NEAR(kurtosis(square), 1, 1e-15);
    EXPECT_NEAR(crestFactor(triangle(100000)), 1.73205081, 1e-7);
    EXPECT_NEAR(kurtosis(triangle(100000)), 1.8, 1e-7);
}

TEST(Statistics, KurtosisOfNoise) {
    // Normal 3, even 1.8, Laplace 6 (closed forms). Standard error of the normal one sqrt(24 / n) = 0.0191 at
    // 65 536; five of them are allowed.
    constexpr std::size_t n = 65536;
    const auto normal = signals::normalNoise(0.3, n);
    EXPECT_NEAR(kurtosis(normal), 3, 5 * 0.0191366386);
    EXPECT_NEAR(skewness(normal), 0, 5 * std::sqrt(6.0 / n));
    std::mt19937_64 bits(7);
    std::uniform_real_distribution<double> even(-1, 1);
    std::exponential_distribution<double> exponential(1);
    std::vector<double> flat(n), laplace(n);
    for (std::size_t i = 0; i < n; ++i) {
        flat[i] = even(bits);
        laplace[i] = exponential(bits) * (bits() % 2 ? 1 : -1);
    }
    EXPECT_NEAR(kurtosis(flat), 1.8, 0.03);
    EXPECT_NEAR(kurtosis(laplace), 6, 0.6);
    EXPECT_NEAR(skewness(laplace), 0, 0.2);
}

TEST(Statistics, CrestOfNormalNoiseGrowsWithLength) {
    // Expected peak of n normal samples of either sign is below sqrt(2 ln 2n) (extreme-value theory), and for
    // 1024 above 2.5.
    for (const std::size_t n : {1024u, 65536u}) {
        double sum = 0;
        for (unsigned i = 0; i < 40; ++i)
            sum += crestFactor(signals::normalNoise(1, n, 100 + i)) / 40;
        EXPECT_LT(sum, std::sqrt(2 * std::log(2.0 * double(n))));
        EXPECT_GT(sum, std::sqrt(2 * std::log(2.0 * double(n))) - 0.8);
    }
}

TEST(Statistics, OffsetAndScale) {
    const auto noise = signals::normalNoise(1, 1000);
    std::vector<double> moved = noise;
    for (double& value : moved)
        value = -3 * value + 7;
    EXPECT_NEAR(mean(moved), 7 - 3 * mean(noise), 1e-12);
    EXPECT_NEAR(standardDeviation(moved), 3 * standardDeviation(noise), 1e-12);
    EXPECT_NEAR(skewness(moved), -skewness(noise), 1e-10);
    EXPECT_NEAR(kurtosis(moved), kurtosis(noise), 1e-10);
    EXPECT_NEAR(rms(moved) * rms(moved), mean(moved) * mean(moved) + std::pow(standardDeviation(moved), 2),
                1e-10);
}

TEST(Statistics, MedianAndDistance) {
    EXPECT_EQ(median(std::vector<double>{3, 1, 2}), 2);
    EXPECT_EQ(median(std::vector<double>{4, 1, 3, 2}), 2.5);
    // Ten values of a baseline; median + 3 x 1.4826 MAD = 2.817170998, check value: NumPy 1.24.2
    const std::vector<double> baseline{2.0, 2.2, 2.1, 2.4, 1.9, 2.3, 2.2, 2.0, 2.1, 2.8};
    EXPECT_NEAR(median(baseline) + 3 * 1.482602218505602 * medianAbsoluteDeviation(baseline), 2.817170998,
                1e-9);
    EXPECT_NEAR(standardDeviation(baseline, 1), 0.2581988897, 1e-10);
    // 1.4826 x MAD estimates a normal standard deviation.
    EXPECT_NEAR(1.4826 * medianAbsoluteDeviation(signals::normalNoise(2, 65536)), 2, 0.04);
}

TEST(Statistics, NothingAndConstantsGiveNoNotANumber) {
    const std::vector<double> none, zeros(100, 0.0), tenths(1000, 0.1);
    EXPECT_EQ(mean(none), 0);
    EXPECT_EQ(rms(none), 0);
    EXPECT_EQ(standardDeviation(none), 0);
    EXPECT_EQ(standardDeviation(std::vector<double>{4}, 1), 0);
    EXPECT_EQ(peakToPeak(none), 0);
    EXPECT_EQ(median(none), 0);
    EXPECT_EQ(medianAbsoluteDeviation(none), 0);
    EXPECT_EQ(crestFactor(zeros), 0);
    EXPECT_EQ(kurtosis(zeros), 0);
    EXPECT_EQ(kurtosis(tenths), 0);
    EXPECT_EQ(skewness(tenths), 0);
    EXPECT_NEAR(crestFactor(tenths), 1, 1e-12);
}

}  // namespace
}  // namespace fettle
