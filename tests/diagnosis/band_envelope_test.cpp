// Squared envelopes of bands: what modulates a band stands at its own frequency, and nothing folds.
// Source: Randall and Antoni, MSSP 25 (2011) 485-520, sec. 4; Borghesani et al., MSSP 36 (2013) 370-384.
#include "core/dsp/band_envelope.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

constexpr double kBandRateHz = 12800;
constexpr std::size_t kBandSamples = 25600;
constexpr double kDf = kBandRateHz / double(kBandSamples);

using Half = FftVector<std::complex<float>>;

Half transformed(const std::vector<double>& signal) {
    FftVector<float> samples(signal.begin(), signal.end());
    Half half;
    forwardReal(samples, half);
    return half;
}

// Noise about a carrier, about 300 Hz wide, whose strength beats at `beatHz`; white noise everywhere.
std::vector<double> beatingCarrier(double carrierHz, double beatHz, std::uint64_t seed) {
    const auto a = made::noise(kBandSamples, 1, seed), b = made::noise(kBandSamples, 1, seed + 1);
    std::vector<double> out = made::noise(kBandSamples, 0.05, seed + 2);
    double firstA = 0, firstB = 0, slowA = 0, slowB = 0;
    for (std::size_t i = 0; i < kBandSamples; ++i) {
        slowA += 0.07 * ((firstA += 0.07 * (a[i] - firstA)) - slowA);
        slowB += 0.07 * ((firstB += 0.07 * (b[i] - firstB)) - slowB);
        const double t = double(i) / kBandRateHz, angle = kTwoPi * carrierHz * t;
        out[i] +=
            (1 + 0.9 * std::cos(kTwoPi * beatHz * t)) * (slowA * std::cos(angle) + slowB * std::sin(angle));
    }
    return out;
}

std::size_t strongestFrom(const std::vector<float>& power, std::size_t first) {
    return std::size_t(std::max_element(power.begin() + long(first), power.end()) - power.begin());
}

double medianOf(std::vector<float> power) {
    std::nth_element(power.begin(), power.begin() + long(power.size() / 2), power.end());
    return power[power.size() / 2];
}

TEST(BandTree, CoversTheRangeOnEveryLevelAndKeepsToTheNarrowest) {
    const auto bands = bandTree(kBandRateHz, 900);
    for (const int level : {1, 3, 6}) {
        double at = 0.02 * kBandRateHz;
        for (const Band& band : bands) {
            if (band.level != level) continue;
            EXPECT_NEAR(band.lowHz, at, 1e-9);
            EXPECT_GE(band.highHz - band.lowHz, 900);
            at = band.highHz;
        }
        EXPECT_NEAR(at, 0.48 * kBandRateHz, 1e-9) << level;
    }
    EXPECT_EQ(bands.size(), 10u);  // twelfths would be 491 Hz wide
    EXPECT_EQ(bandTree(kBandRateHz, 400).size(), 22u);
    EXPECT_EQ(bandTree(800, 900).size(), 1u);  // the whole is always there
}

TEST(BandEnvelope, ShowsTheBeatOfTheCarrierInItsBand) {
    BandEnvelope envelope;
    const auto bands = bandTree(kBandRateHz, 900);
    for (const auto& [carrier, beat] :
         std::vector<std::pair<double, double>>{{900, 37.5}, {2700, 88}, {4600, 131.5}}) {
        const Half half = transformed(beatingCarrier(carrier, beat, 5));
        int showing = 0;
        for (const Band& band : bands) {
            if (carrier < band.lowHz + 350 || carrier > band.highHz - 350) continue;
            const auto& power = envelope.spectrum(half, kDf, band, 4500);
            const std::size_t top = strongestFrom(power, 20);
            EXPECT_NEAR(double(top) * kDf, beat, kDf)
                << carrier << " in " << band.lowHz << "-" << band.highHz;
            EXPECT_GT(power[top], 30 * medianOf(power));
            ++showing;
        }
        EXPECT_GE(showing, 2) << carrier;
    }
}

TEST(BandEnvelope, OtherBandsDoNotHearTheCarrier) {
    const Half half = transformed(beatingCarrier(4600, 131.5, 7));
    BandEnvelope envelope;
    for (const Band& band : bandTree(kBandRateHz, 900)) {
        if (band.level != 6 || band.highHz > 3000) continue;
        const auto& power = envelope.spectrum(half, kDf, band, 4500);
        EXPECT_LT(power[std::size_t(131.5 / kDf)], 15 * medianOf(power)) << band.lowHz;
    }
}

// Two tones in a band of width B, 0.7 B apart: the squared envelope beats at 0.7 B. Sampled at B, as without
// padding, that would fold to 0.3 B.
TEST(BandEnvelope, BeatsFasterThanHalfTheBandDoNotFold) {
    const Band band{1000, 2200, 6};
    const double apart = 840, low = 1150;
    auto x = made::sum(made::sine(1, low, kBandRateHz, kBandSamples),
                       made::sine(1, low + apart, kBandRateHz, kBandSamples, 1));
    BandEnvelope envelope;
    const auto& power = envelope.spectrum(transformed(x), kDf, band, 4500);
    const std::size_t beat = std::size_t(apart / kDf), folded = std::size_t((1200 - apart) / kDf);
    ASSERT_LT(beat, power.size());
    EXPECT_EQ(strongestFrom(power, 5), beat);
    for (std::size_t k = folded - 4; k <= folded + 4; ++k)
        EXPECT_LT(power[k], 1e-6f * power[beat]) << k;
}

TEST(BandEnvelope, EndsAtNineTenthsOfTheBandOrAtTheTop) {
    const Half half = transformed(made::noise(kBandSamples, 1, 8));
    BandEnvelope envelope;
    EXPECT_NEAR(double(envelope.spectrum(half, kDf, {1000, 2000, 6}, 4500).size()) * kDf, 900, 2);
    EXPECT_NEAR(double(envelope.spectrum(half, kDf, {500, 6000, 1}, 3000).size()) * kDf, 3000, 2);
    EXPECT_TRUE(envelope.spectrum(half, kDf, {1000, 1000.4, 6}, 4500).empty());
    for (const float power :
         envelope.spectrum(half, kDf, {6300, 9000, 1}, 3000))  // reaches beyond half the rate
        EXPECT_TRUE(std::isfinite(power));
}

TEST(Prewhiten, EveryMagnitudeIsOneAndPhasesStay) {
    auto x = made::sum(made::noise(kBandSamples, 0.01, 9), made::sine(10, 1000, kBandRateHz, kBandSamples));
    Half half = transformed(x);
    half[77] = {0, 0};
    const Half before = half;
    prewhiten(half);
    for (std::size_t k = 0; k < half.size(); ++k) {
        if (k == 77) continue;
        ASSERT_NEAR(std::abs(half[k]), 1, 1e-5) << k;
        ASSERT_NEAR(std::arg(half[k] / before[k]), 0, 1e-4) << k;
    }
    EXPECT_EQ(half[77], std::complex<float>(0, 0));
}

// The purpose: a strong gear or rotor tone hides impacts of another rate, and whitened it does not.
TEST(Prewhiten, BringsImpactsOutFromUnderATone) {
    std::vector<double> x =
        made::sum(made::noise(kBandSamples, 0.1, 10), made::sine(20, 2500, kBandRateHz, kBandSamples));
    x = made::sum(x, made::sine(20, 2543, kBandRateHz, kBandSamples, 2));
    const auto slip =
        made::noise(200, 1, 11);  // real impacts are not evenly spaced: those would be tones as well
    for (std::size_t hit = 0; hit < 158; ++hit) {
        const auto start = std::size_t(double(hit) * 160 + 2 + 1.5 * std::abs(slip[hit]));  // 80 Hz
        for (std::size_t m = 0; m < 60; ++m)
            x[start + m] +=
                3 * std::exp(-0.1 * double(m)) * std::sin(kTwoPi * 3000 * double(m) / kBandRateHz);
    }
    const Band band{2000, 4000, 3};
    BandEnvelope envelope;
    Half half = transformed(x);
    const auto at80 = [&] {
        const auto& power = envelope.spectrum(half, kDf, band, 4500);
        return power[160] / *std::max_element(power.begin() + 20, power.end());
    };
    const double plain = at80();
    prewhiten(half);
    EXPECT_LT(plain, 0.05);
    EXPECT_GT(at80(), 0.5);
}

}  // namespace
}  // namespace fettle
