// The local floor: a sliding median divided by ln 2, the mean of an exponentially distributed power.
#include "core/dsp/local_floor.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

#include "tests/diagnosis/uniform.h"

namespace fettle {
namespace {

std::vector<float> overFloor(const std::vector<float>& power, std::size_t width) {
    std::vector<float> out(power.size());
    overLocalFloor(power, width, out);
    return out;
}

// Buckets of 2^-7 of a mantissa: half of one either way.
constexpr double kBucket = 1.0 / 256 + 1e-6;

// Between the two middle values of an even count any number is a median.
void expectMedianOf(std::vector<float> window, float power, float out, std::size_t k) {
    std::sort(window.begin(), window.end());
    const double low = window[(window.size() - 1) / 2], high = window[window.size() / 2];
    EXPECT_LE(out, power * std::numbers::ln2 / low * (1 + kBucket)) << k;
    EXPECT_GE(out, power * std::numbers::ln2 / high * (1 - kBucket)) << k;
}

TEST(LocalFloor, IsTheSlidingMedianCountedByHand) {
    std::mt19937_64 bits(1);
    std::uniform_real_distribution<float> decades(-9, 9);
    for (const std::size_t width : {3u, 21u, 80u, 5000u}) {
        std::vector<float> power(1200);
        for (float& value : power)
            value = std::pow(10.0f, decades(bits));
        const auto out = overFloor(power, width);
        const std::size_t half = width / 2;
        for (std::size_t k = 0; k < power.size(); ++k) {
            const auto from = power.begin() + std::ptrdiff_t(k > half ? k - half : 0);
            const auto to = power.begin() + std::ptrdiff_t(std::min(power.size(), k + half + 1));
            expectMedianOf({from, to}, power[k], out[k], k);
        }
    }
}

TEST(LocalFloor, AToneStandsOutAndDoesNotLiftIt) {
    const auto plain = made::exponential(2000, 2);
    auto tone = plain;
    tone[999] = tone[1001] = 2.5e5f;
    tone[1000] = 1e6f;
    const auto before = overFloor(plain, 161), after = overFloor(tone, 161);
    for (std::size_t k = 900; k < 1100; ++k)
        if (k < 999 || k > 1001) {
            EXPECT_NEAR(after[k] / before[k], 1, 0.12) << k;
        }
    EXPECT_GT(after[1000], 5e5f);
}

// Seven decades of slope: afterwards no part of the spectrum has an advantage.
TEST(LocalFloor, ColouredNoiseBecomesEven) {
    auto power = made::exponential(40000, 3);
    for (std::size_t k = 0; k < power.size(); ++k)
        power[k] *= float(1e5 * std::pow(10.0, -7 * double(k) / 40000) * (1.2 + std::sin(double(k) / 900)));
    const auto out = overFloor(power, 161);
    for (std::size_t from = 0; from < out.size(); from += 4000) {
        const auto part = made::meanOf({out.begin() + long(from), out.begin() + long(from) + 4000});
        EXPECT_NEAR(part.mean, 1, 0.06 + 3 * part.error) << from;
    }
}

// Even means exponential with mean 1 for noise of one colour: exp(-z) is uniform.
TEST(LocalFloor, NoiseKeepsItsDistribution) {
    std::vector<double> chance;
    for (const float z : overFloor(made::exponential(3000, 4), 401))
        chance.push_back(std::exp(-double(z)));
    EXPECT_LT(made::distanceFromUniform(chance), made::oneInAThousand(chance.size()));
}

TEST(LocalFloor, SilenceStaysSilenceAndOneBinIsTaken) {
    for (const float z : overFloor(std::vector<float>(300, 0.0f), 21))
        EXPECT_EQ(z, 0);
    EXPECT_NEAR(overFloor({7.0f}, 21)[0], std::numbers::ln2, 0.01);
    EXPECT_TRUE(overFloor({}, 21).empty());
    auto mostlySilent = std::vector<float>(300, 0.0f);
    mostlySilent[150] = 1;
    for (const float z : overFloor(mostlySilent, 21))
        EXPECT_TRUE(std::isfinite(z));
}

}  // namespace
}  // namespace fettle
