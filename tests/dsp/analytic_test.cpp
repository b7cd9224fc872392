#include "core/dsp/analytic.h"

#include <gtest/gtest.h>

#include "core/dsp/statistics.h"
#include "tests/dsp/signals.h"

namespace fettle {
namespace {

TEST(Analytic, EnvelopeOfFixedSignals) {
    // check value: SciPy 1.10.1, abs(hilbert(.)) at 0, 1, 2, 100, 255 and its mean
    const std::size_t at[] = {0, 1, 2, 100, 255};
    const double x[] = {0.968221053899, 0.266820239077, 0.692617976982, 0.59016181774, 0.954517155702};
    const double y[] = {1.81090340617, 1.94943575105, 1.33312379557, 1.42797633866, 1.04573450636};
    const auto ex = hilbertEnvelope(signals::x()), ey = hilbertEnvelope(signals::y());
    ASSERT_EQ(ex.size(), 256u);
    for (std::size_t i = 0; i < 5; ++i) {
        EXPECT_NEAR(ex[at[i]], x[i], 1e-11);
        EXPECT_NEAR(ey[at[i]], y[i], 1e-11);
    }
    EXPECT_NEAR(mean(ex), 0.633334466325, 1e-11);
    EXPECT_NEAR(mean(ey), 1.91867353897, 1e-11);
}

TEST(Analytic, SineHasAConstantEnvelopeAtAnySize) {
    for (const std::size_t n : {100u, 101u, 256u, 997u}) {
        const auto analytic = analyticSignal(signals::sine(2, 7, double(n), n, 0.3));
        ASSERT_EQ(analytic.size(), n);
        for (std::size_t i = 0; i < n; ++i) {
            // The Hilbert transform of sin is -cos.
            const double angle = kTwoPi * 7 * double(i) / double(n) + 0.3;
            ASSERT_NEAR(analytic[i].real(), 2 * std::sin(angle), 1e-12);
            ASSERT_NEAR(analytic[i].imag(), -2 * std::cos(angle), 1e-12);
        }
    }
}

TEST(Analytic, RealPartIsTheSignal) {
    for (const std::size_t n : {1u, 2u, 3u, 64u, 77u}) {
        const auto noise = signals::normalNoise(1, n);
        const auto analytic = analyticSignal(noise);
        for (std::size_t i = 0; i < n; ++i)
            EXPECT_NEAR(analytic[i].real(), noise[i], 1e-13);
    }
    EXPECT_TRUE(hilbertEnvelope({}).empty());
}

TEST(Analytic, EnvelopeOfAModulatedCarrierIsItsModulation) {
    // Bedrosian's theorem: modulation below the carrier comes out as it went in.
    const std::size_t n = 4096;
    auto signal = signals::sine(1, 1000, double(n), n);
    for (std::size_t i = 0; i < n; ++i)
        signal[i] *= 1 + 0.6 * std::cos(kTwoPi * 32 * double(i) / double(n));
    const auto envelope = hilbertEnvelope(signal);
    for (std::size_t i = 0; i < n; ++i)
        ASSERT_NEAR(envelope[i], 1 + 0.6 * std::cos(kTwoPi * 32 * double(i) / double(n)), 1e-11);
}

}  // namespace
}  // namespace fettle
