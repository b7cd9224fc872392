// The window made of neighbouring bins is the window of the samples, and keeps what it is for: a line 60 dB
// down one hertz beside another.
#include "core/dsp/sharp_spectrum.h"

#include <gtest/gtest.h>

#include "tests/dsp/signals.h"

namespace fettle {
namespace {

constexpr double kSharpRate = 1000;

std::vector<double> twoLines(std::size_t n, double apartHz, double belowDb) {
    std::vector<double> out(n);
    const double small = std::pow(10, -belowDb / 20);
    for (std::size_t i = 0; i < n; ++i) {
        const double t = double(i) / kSharpRate;
        out[i] = 3 + std::sin(kTwoPi * 24.73 * t) + small * std::sin(kTwoPi * (24.73 - apartHz) * t);
    }
    return out;
}

// periodogram() windows the samples, in double.
TEST(SharpSpectrum, IsThePeriodogramUnderABlackmanHarrisWindow) {
    const std::vector<double> signal = twoLines(8000, 1.1, 40);
    const Spectrum sharp = sharpSpectrum(signal, kSharpRate, 100);
    const Spectrum plain = periodogram(signal, kSharpRate, {.window = WindowKind::BlackmanHarris});
    ASSERT_EQ(sharp.stepHz, plain.stepHz);
    ASSERT_EQ(sharp.values.size(), 801u);
    EXPECT_NEAR(sharp.noiseBandwidthBins, plain.noiseBandwidthBins, 1e-6);
    for (std::size_t k = 0; k < sharp.values.size(); ++k)
        if (plain.values[k] > 1e-9) {
            EXPECT_NEAR(sharp.values[k] / plain.values[k], 1, 2e-3) << k;
        }
}

// Side lobes of the four-term window: -92 dB (Harris 1978, table 1). Under a Hann window the skirt of the
// large line covers the small one.
TEST(SharpSpectrum, ASmallLineBesideALargeOneIsSeen) {
    const std::vector<double> signal = twoLines(32000, 1.07, 62);
    const Spectrum sharp = sharpSpectrum(signal, kSharpRate, 100);
    const auto at = [&](double hz) { return sharp.values[std::size_t(hz / sharp.stepHz + 0.5)]; };
    EXPECT_NEAR(10 * std::log10(at(24.73 - 1.07) / at(24.73)), -62, 1.5);
    EXPECT_LT(10 * std::log10(at(24.73 - 1.6) / at(24.73)), -80);
}

TEST(SharpSpectrum, ShortOrEmptySignalsHaveNoLines) {
    EXPECT_TRUE(sharpSpectrum(std::vector<double>{}, kSharpRate, 100).values.empty());
    EXPECT_TRUE(sharpSpectrum(std::vector<double>(7, 1.0), kSharpRate, 100).values.empty());
    EXPECT_EQ(sharpSpectrum(std::vector<double>(64, 1.0), kSharpRate, 1e9).values.size(), 33u);
}

}  // namespace
}  // namespace fettle
