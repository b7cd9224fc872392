// The rank p-value of one line and its calibrator, against a rank counted by hand and against chance.
// Sources: Vovk, Gammerman and Shafer, Algorithmic Learning in a Random World (2005), ch. 2 (rank p-values
// are uniform); Vovk and Wang, Ann. Statist. 49 (2021) 1736-1754, sec. 2 (kappa p^(kappa-1) integrates to 1).
#include "core/diagnosis/rank.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <random>

#include "core/dsp/spectrum.h"
#include "tests/diagnosis/made_recordings.h"
#include "tests/diagnosis/uniform.h"

namespace fettle {
namespace {

constexpr double kKappa = 0.15;
constexpr int kFewest = 200;
constexpr std::size_t kFirst = 10;
using Mask = std::vector<std::uint16_t>;

// Power spectrum of noise with 150 sines at chance frequencies, up to 60 dB above it: half the bins are
// tonal.
std::vector<float> tonal(std::uint64_t seed) {
    std::mt19937_64 bits(seed);
    std::uniform_real_distribution<double> even(0, 1);
    constexpr std::size_t n = 2048;
    std::vector<double> x = made::noise(n, 1, seed + 1000000);
    for (int tone = 0; tone < 150; ++tone) {
        const double peak = std::pow(10, 3 * even(bits)) * 0.05;
        x = made::sum(x, made::sine(peak, even(bits) * n / 2, n, n, 7 * even(bits)));
    }
    const Spectrum s = periodogram(x, n);
    return {s.values.begin(), s.values.end()};
}

Ranking ranked(const std::vector<float>& z, const Mask& mask) {
    return rankPositions(z, mask, kFirst, kFewest, kKappa);
}
Ranking ranked(const std::vector<float>& z) {
    return ranked(z, Mask(z.size(), 0));
}

float peakAt(const std::vector<float>& z, std::size_t k) {
    float most = z[k];
    if (k > 0) most = std::max(most, z[k - 1]);
    if (k + 1 < z.size()) most = std::max(most, z[k + 1]);
    return most;
}

// p[k] = (1 + others as high) / (1 + others), counted position by position.
double rankByHand(const std::vector<float>& z, const Mask& mask, std::size_t k) {
    std::size_t others = 0, asHigh = 0;
    for (std::size_t j = kFirst; j < z.size(); ++j) {
        if (mask[j] || std::abs(long(j) - long(k)) <= 3) continue;
        ++others;
        asHigh += peakAt(z, j) >= peakAt(z, k);
    }
    return double(1 + asHigh) / double(1 + others);
}

void expectAsByHand(const std::vector<float>& z, const Mask& mask) {
    const Ranking ranking = ranked(z, mask);
    ASSERT_EQ(ranking.unusable, "");
    for (std::size_t k = 0; k < z.size(); ++k) {
        const double p = k < kFirst || mask[k] ? 1 : rankByHand(z, mask, k);
        ASSERT_NEAR(ranking.p[k], p, 1e-6 * p) << k;
        const double factor = k < kFirst || mask[k] ? 1 : kKappa * std::pow(p, kKappa - 1);
        ASSERT_NEAR(ranking.factor[k], factor, 1e-4 * factor) << k;
    }
}

TEST(Rank, AsCountedByHandOnNoiseTonesAndTies) {
    expectAsByHand(made::exponential(700, 1), Mask(700, 0));
    const auto tones = tonal(2);
    expectAsByHand(tones, Mask(tones.size(), 0));
    auto steps = made::exponential(900, 3);  // coarse steps: many ties, none in the majority
    for (float& value : steps)
        value = std::floor(value * 4) / 4;
    expectAsByHand(steps, Mask(900, 0));
    std::vector<float> ramp(600);
    for (std::size_t k = 0; k < ramp.size(); ++k)
        ramp[k] = float(k);
    expectAsByHand(ramp, Mask(600, 0));
}

TEST(Rank, MaskedPositionsAreNeitherRankedNorCounted) {
    auto z = made::exponential(800, 4);
    Mask mask(800, 0);
    for (std::size_t k = 100; k < 400; ++k) {
        mask[k] = std::uint16_t(1 + k % 7);
        z[k] = 1e6f;
    }
    expectAsByHand(z, mask);
    // With the giants counted no free position would have a p below about one half.
    const Ranking ranking = ranked(z, mask);
    EXPECT_LT(*std::min_element(ranking.p.begin() + 500, ranking.p.end()), 0.02f);
}

// A Hann-windowed sine fills three bins, the maximum of three makes it five: without the exclusion its own
// skirt would be counted against it.
TEST(Rank, ALineIsNotItsOwnRival) {
    auto z = made::exponential(1000, 5);
    z[499] = z[501] = 500;
    z[500] = 2000;
    const Ranking ranking = ranked(z);
    const double references = 1000 - double(kFirst) - 7;
    EXPECT_NEAR(ranking.p[500], 1 / (1 + references), 1e-7);
}

template <class Make>
std::vector<double> ranksOfChancePositions(int spectra, Make make) {
    std::mt19937_64 bits(99);
    std::vector<double> sample;
    for (int i = 0; i < spectra; ++i) {
        const std::vector<float> z = make(std::uint64_t(i) + 1);
        const std::size_t k = kFirst + bits() % (z.size() - kFirst);
        sample.push_back(ranked(z).p[k]);
    }
    return sample;
}

TEST(Rank, OfOneChanceLineIsUniformInNoise) {
    const auto sample = ranksOfChancePositions(2000, [](auto seed) { return made::exponential(1000, seed); });
    EXPECT_LT(made::distanceFromUniform(sample), made::oneInAThousand(sample.size()));
    EXPECT_GT(*std::min_element(sample.begin(), sample.end()), 0);
}

TEST(Rank, OfOneChanceLineIsUniformHoweverTonalTheSpectrum) {
    const auto sample = ranksOfChancePositions(400, tonal);
    EXPECT_LT(made::distanceFromUniform(sample), made::oneInAThousand(sample.size()));
    EXPECT_GT(*std::min_element(sample.begin(), sample.end()), 0);
}

// The measure itself must be able to fail.
TEST(Rank, SquaredRanksAreNotUniform) {
    auto sample = ranksOfChancePositions(600, [](auto seed) { return made::exponential(1000, seed); });
    for (double& p : sample)
        p *= p;
    EXPECT_GT(made::distanceFromUniform(sample), made::oneInAThousand(sample.size()));
}

double meanFactor(const std::vector<float>& z) {
    const Ranking ranking = ranked(z);
    double sum = 0;
    for (std::size_t k = kFirst; k < z.size(); ++k)
        sum += ranking.factor[k];
    return sum / double(z.size() - kFirst);
}

// An e-value: its mean over all places a chance line may have is at most 1.
TEST(Calibrator, MeanOverThePositionsOfAnySpectrumIsAtMostOne) {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        EXPECT_LE(meanFactor(made::exponential(1000, seed)), 1 + 1e-4) << seed;
        EXPECT_LE(meanFactor(tonal(seed)), 1 + 1e-4) << seed;
    }
    std::vector<float> ramp(20000);
    for (std::size_t k = 0; k < ramp.size(); ++k)
        ramp[k] = float(k);
    EXPECT_LE(meanFactor(ramp), 1 + 1e-4);
}

// It integrates to 1: what is lost to whole ranks goes as n^-0.15 and shrinks with n, so it is not a loose
// bound.
TEST(Calibrator, LosesOnlyTheRoundingToWholeRanks) {
    const double few = meanFactor(made::exponential(1000, 1)),
                 many = meanFactor(made::exponential(400000, 1));
    EXPECT_GT(few, 0.6);
    EXPECT_GT(many, few + 0.05);
    EXPECT_LE(many, 1 + 1e-4);
}

TEST(Calibrator, AtChanceLevelOneCostsAndAtOneInAThousandPays) {
    const Ranking ranking = ranked(made::exponential(4000, 6));
    for (std::size_t k = kFirst; k < 4000; ++k) {
        if (ranking.p[k] > 0.999f) {
            EXPECT_NEAR(ranking.factor[k], 0.15, 0.001);
        }
        if (ranking.p[k] < 0.001f) {
            EXPECT_GT(ranking.factor[k], 0.15 * std::pow(1e-3, -0.85));
        }
    }
    EXPECT_LT(*std::min_element(ranking.p.begin(), ranking.p.end()), 0.001f);
}

TEST(Rank, TooFewReferencesAreSaidAndNeutral) {
    const Ranking ranking = ranked(made::exponential(kFirst + kFewest - 1, 7));
    EXPECT_NE(ranking.unusable.find("199"), std::string::npos) << ranking.unusable;
    for (const float factor : ranking.factor)
        EXPECT_EQ(factor, 1);
    EXPECT_EQ(ranked(made::exponential(kFirst + kFewest, 7)).unusable, "");
    Mask mask(1000, 0);
    std::fill(mask.begin(), mask.begin() + 900, std::uint16_t(1));
    EXPECT_NE(ranked(made::exponential(1000, 8), mask).unusable, "");
}

TEST(Rank, MostlyTiedIsUnusable) {
    auto z = made::exponential(1000, 9);
    for (std::size_t k = 0; k < z.size(); ++k)
        if (k % 5 < 3) z[k] = 0.25f;
    const Ranking ranking = ranked(z);
    EXPECT_NE(ranking.unusable, "");
    EXPECT_EQ(*std::max_element(ranking.factor.begin(), ranking.factor.end()), 1);
    for (std::size_t k = 0; k < z.size(); ++k)
        if (k % 5 < 3 && k % 2) z[k] = 0.5f + float(k);
    EXPECT_EQ(ranked(z).unusable, "");
}

TEST(Rank, NothingToRankIsNoTrouble) {
    EXPECT_NE(rankPositions({}, {}, 0, kFewest, kKappa).unusable, "");
    EXPECT_NE(ranked(std::vector<float>(5, 1.0f)).unusable, "");
    EXPECT_NE(ranked(std::vector<float>(5000, 0.0f)).unusable, "");
}

}  // namespace
}  // namespace fettle
