#include "core/dsp/cepstrum.h"

#include <gtest/gtest.h>

#include <numeric>

#include "core/dsp/statistics.h"
#include "tests/dsp/signals.h"

namespace fettle {
namespace {

double sumOfSquares(std::span<const double> values) {
    return std::inner_product(values.begin(), values.end(), values.begin(), 0.0);
}

TEST(Cepstrum, RealCepstrumOfFixedSignals) {
    // check value: NumPy 1.24.2, irfft(log(abs(rfft(.)))) at 0, 1, 2, 10
    const std::size_t at[] = {0, 1, 2, 10};
    const double x[] = {0.995955674308, 0.120841798071, -0.118778337457, -0.0309553233583};
    const double y[] = {1.01546418134, 0.136791657149, -0.112206119383, -0.0116579664559};
    const auto cx = realCepstrum(signals::x()), cy = realCepstrum(signals::y());
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_NEAR(cx[at[i]], x[i], 1e-9);
        EXPECT_NEAR(cy[at[i]], y[i], 1e-9);
    }
}

TEST(Cepstrum, PrewhitenedFixedSignals) {
    // check value: NumPy 1.24.2, irfft(X / abs(X)) at 0, 1, 2, 100; sum of squares 1; kurtosis
    const std::size_t at[] = {0, 1, 2, 100};
    const double x[] = {-0.129787730236, 0.0756642638656, -0.195045756286, 0.0204927891668};
    const double y[] = {-0.132437198039, 0.0821745653502, -0.181750841238, 0.00523732701303};
    const auto wx = cepstrumPrewhitened(signals::x()), wy = cepstrumPrewhitened(signals::y());
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_NEAR(wx[at[i]], x[i], 1e-9);
        EXPECT_NEAR(wy[at[i]], y[i], 1e-9);
    }
    EXPECT_NEAR(sumOfSquares(wx), 1, 1e-12);
    EXPECT_NEAR(sumOfSquares(wy), 1, 1e-12);
    EXPECT_NEAR(kurtosis(wx), 7.77957516576, 1e-8);
    EXPECT_NEAR(kurtosis(wy), 7.83373044211, 1e-8);
}

TEST(Cepstrum, EchoStandsAtItsDelay) {
    // ln |1 + a e^-iwd| = sum of (-1)^(m+1) a^m / m cos(m w d): a / 2 at d, -a^2 / 4 at 2 d (Bogert, Healy,
    // Tukey 1963).
    for (const std::size_t n : {1000u, 1001u}) {
        std::vector<double> signal(n, 0.0);
        signal[0] = 1;
        signal[40] = 0.5;
        const auto cepstrum = realCepstrum(signal);
        EXPECT_NEAR(cepstrum[40], 0.25, 1e-6);
        EXPECT_NEAR(cepstrum[80], -0.0625, 1e-6);
        EXPECT_NEAR(cepstrum[41], 0, 1e-6);
    }
}

TEST(Cepstrum, GainMovesOnlyTheFirstSample) {
    const auto noise = signals::normalNoise(1, 500);
    std::vector<double> louder = noise;
    for (double& value : louder)
        value *= 10;
    const auto before = realCepstrum(noise), after = realCepstrum(louder);
    EXPECT_NEAR(after[0] - before[0], std::log(10.0), 1e-12);
    for (std::size_t i = 1; i < 500; ++i)
        ASSERT_NEAR(after[i], before[i], 1e-12);
    const auto white = cepstrumPrewhitened(noise), whiteLouder = cepstrumPrewhitened(louder);
    for (std::size_t i = 0; i < 500; ++i)
        ASSERT_NEAR(white[i], whiteLouder[i], 1e-12);
}

TEST(Cepstrum, ZeroBinsStayZero) {
    // A sine on bin 9 of n has one bin: whitened it is a cosine of 2 / n and nothing else, not n / 2 bins of
    // rounding.
    for (const std::size_t n : {256u, 255u}) {
        const auto white = cepstrumPrewhitened(signals::sine(5, 9, double(n), n, 0.2));
        const auto wanted = signals::sine(2.0 / double(n), 9, double(n), n, 0.2);
        for (std::size_t i = 0; i < n; ++i)
            ASSERT_NEAR(white[i], wanted[i], 1e-14);
    }
}

TEST(Cepstrum, BinOfExactlyZeroCountsAsSmall) {
    // 1, -1, 0, 0 .. has no mean: bin 0 is 0, |X| at half the rate is 2. The mean of ln |X| over all other
    // bins of n is ln n / (n - 1), from the product of 2 sin(pi k / n), k = 1 .. n - 1, being n; bin 0 adds
    // ln 2e-15 to the sum.
    const std::size_t n = 64;
    std::vector<double> signal(n, 0.0);
    signal[0] = 1;
    signal[1] = -1;
    const auto cepstrum = realCepstrum(signal);
    EXPECT_NEAR(cepstrum[0], (std::log(64.0) + std::log(2e-15)) / 64, 1e-9);
    for (const double value : cepstrum)
        EXPECT_TRUE(std::isfinite(value));
}

TEST(Cepstrum, PrewhiteningBringsTicksOutOfATone) {
    auto signal = signals::ticks();
    const auto tone = signals::sine(3, 500.3, 4096, signal.size());
    for (std::size_t i = 0; i < signal.size(); ++i)
        signal[i] += tone[i];
    EXPECT_LT(kurtosis(signal), 2);
    EXPECT_GT(kurtosis(cepstrumPrewhitened(signal)), 4);
}

TEST(Cepstrum, SilenceAndNothing) {
    const std::vector<double> silence(64, 0.0);
    EXPECT_EQ(sumOfSquares(realCepstrum(silence)), 0);
    EXPECT_EQ(sumOfSquares(cepstrumPrewhitened(silence)), 0);
    EXPECT_TRUE(realCepstrum({}).empty());
    EXPECT_TRUE(cepstrumPrewhitened({}).empty());
}

}  // namespace
}  // namespace fettle
