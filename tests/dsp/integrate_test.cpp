#include "core/dsp/integrate.h"

#include <gtest/gtest.h>

#include "core/base/units.h"
#include "core/dsp/statistics.h"
#include "tests/dsp/signals.h"

namespace fettle {
namespace {

struct SineLevels {
    double hz, accelerationG, velocityMmS, displacementUm;  // r.m.s.
};

// v = a / (2 pi f), d = v / (2 pi f) with 1 g = 9.80665 m/s2 (ISO 80000-3). At 1000 / (2 pi) Hz the figures
// are those of g.
constexpr SineLevels kSines[] = {{1000 / kTwoPi, 1, 9.80665, 9.80665},
                                 {159.2, 1, 9.80387451427, 9.80387451427 * 1000 / (kTwoPi * 159.2)},
                                 {100, 1, 15.6077682267, 15.6077682267 * 1000 / (kTwoPi * 100)},
                                 {25, 0.0160176648172, 1, 6.36619772368}};

class IntegratedSine : public testing::TestWithParam<SineLevels> {
  protected:
    static constexpr std::size_t kSize = 20000;
    // A rate that puts the sine on a line.
    double rate() const { return GetParam().hz * 20; }
    std::vector<double> signal() const {
        return signals::sine(GetParam().accelerationG * std::sqrt(2.0), GetParam().hz, rate(), kSize, 0.4);
    }
};
INSTANTIATE_TEST_SUITE_P(KnownLevels, IntegratedSine, testing::ValuesIn(kSines));

TEST_P(IntegratedSine, LineReadsVelocityAndDisplacement) {
    const Spectrum acceleration = converted(accelerationSpectrum(signal(), rate()), SpectrumKind::Rms);
    const std::size_t line = kSize / 20;
    EXPECT_NEAR(acceleration.values[line], GetParam().accelerationG, 1e-9);
    const Spectrum velocity = velocitySpectrum(acceleration, 2),
                   displacement = displacementSpectrum(acceleration, 2);
    EXPECT_NEAR(velocity.values[line] / GetParam().velocityMmS, 1, 1e-9);
    EXPECT_NEAR(displacement.values[line] / GetParam().displacementUm, 1, 1e-9);
    EXPECT_EQ(velocity.unit, "mm/s");
    EXPECT_EQ(displacement.unit, "um");
    EXPECT_EQ(velocity.kind, SpectrumKind::Rms);
}

TEST_P(IntegratedSine, BandLevelIsTheSinesWhateverTheKind) {
    // The lines beside the sine's own are divided by their own frequencies: 1e-5 at a thousand lines.
    EXPECT_NEAR(velocityRms(signal(), rate(), 10, 1000) / GetParam().velocityMmS, 1, 1e-5);
    EXPECT_NEAR(displacementRms(signal(), rate(), 10, 1000) / GetParam().displacementUm, 1, 1e-5);
    for (const SpectrumKind kind : {SpectrumKind::Amplitude, SpectrumKind::Rms, SpectrumKind::Density}) {
        const Spectrum acceleration = converted(accelerationSpectrum(signal(), rate()), kind);
        EXPECT_NEAR(velocityRms(acceleration, 10, 1000) / GetParam().velocityMmS, 1, 1e-5);
    }
}

TEST_P(IntegratedSine, SignalLagsAccelerationByAQuarterTurn) {
    const auto velocity = velocitySignal(signal(), rate(), 2);
    ASSERT_EQ(velocity.size(), kSize);
    // The integral of sin(w t + p) is sin(w t + p - pi / 2) / w.
    const auto wanted = signals::sine(GetParam().velocityMmS * std::sqrt(2.0), GetParam().hz, rate(), kSize,
                                      0.4 - std::numbers::pi / 2);
    for (std::size_t i = 0; i < kSize; ++i)
        ASSERT_NEAR(velocity[i], wanted[i], 1e-8 * GetParam().velocityMmS);
}

TEST(Integrate, SinesBetweenLinesReadRightFromOneSecondOn) {
    // 10 to 1000 Hz r.m.s. as in ISO 20816-1; one-second records have lines 1 Hz apart.
    for (const double seconds : {1.0, 2.5, 4.0})
        for (const double hz : {14.3, 24.75, 49.5, 333.3, 990.1}) {
            const double rate = 6400;
            const auto signal = signals::sine(std::sqrt(2.0), hz, rate, std::size_t(seconds * rate), 1);
            const double wanted = velocityMmPerS(1, Hertz(hz));
            EXPECT_NEAR(velocityRms(signal, rate, 10, 1000) / wanted, 1, 0.02)
                << seconds << " s, " << hz << " Hz";
        }
}

TEST(Integrate, GravityAndWhatIsBelowTheCornerDoNotCount) {
    const double rate = 3200;
    auto signal = signals::sine(0.1, 50, rate, 6400);
    const double alone = velocityRms(signal, rate, 10, 1000);
    const auto slow = signals::sine(0.2, 4, rate, 6400);
    for (std::size_t i = 0; i < signal.size(); ++i)
        signal[i] += 1 + slow[i];
    EXPECT_NEAR(velocityRms(signal, rate, 10, 1000), alone, 1e-6 * alone);
    const double both = std::hypot(alone, velocityMmPerS(0.2, Hertz(4)) * std::sqrt(0.5));
    // Hann's main lobe at 4 Hz reaches half a hertz to either side: 1 % of slant.
    EXPECT_NEAR(velocityRms(signal, rate, 2, 1000) / both, 1, 0.02);
    const auto velocity = velocitySignal(signal, rate, 10);
    EXPECT_NEAR(mean(velocity), 0, 1e-12);
    EXPECT_NEAR(rms(velocity), velocityMmPerS(0.1, Hertz(50)) * std::sqrt(0.5), 1e-9);
}

TEST(Integrate, CornerCutsTheSpectrum) {
    const Spectrum acceleration = accelerationSpectrum(signals::normalNoise(1, 3200), 3200);
    const Spectrum velocity = velocitySpectrum(acceleration, 10);
    for (std::size_t k = 0; k < 10; ++k)
        EXPECT_EQ(velocity.values[k], 0) << k;
    for (std::size_t k = 10; k < 1600; ++k)
        EXPECT_GT(velocity.values[k], 0) << k;
    EXPECT_EQ(velocitySpectrum(acceleration, 0).values[0], 0);
}

TEST(Integrate, AdjoiningBandsAddUp) {
    // Also where the cut falls between a line and the end of its cell.
    const Spectrum acceleration = accelerationSpectrum(signals::normalNoise(1, 3200), 3200);
    for (const double cut : {10.0, 10.3, 10.7}) {
        const double whole = velocityRms(acceleration, 2, 1000);
        EXPECT_NEAR(
            std::hypot(velocityRms(acceleration, 2, cut), velocityRms(acceleration, cut, 1000)) / whole, 1,
            1e-12);
        EXPECT_NEAR(
            std::hypot(displacementRms(acceleration, 2, cut), displacementRms(acceleration, cut, 1000)),
            displacementRms(acceleration, 2, 1000), 1e-9);
    }
}

TEST(Integrate, SensorNoiseFloor) {
    // Flat acceleration noise n in g / sqrt(Hz) gives n g / (2 pi) sqrt(1 / low - 1 / high) of velocity, by
    // integrating n^2 / (2 pi f)^2: 0.33 mm/s for 300 ug / sqrt(Hz) from 2 Hz.
    Spectrum floor;
    floor.kind = SpectrumKind::Density;
    floor.stepHz = 0.01;
    floor.transformSize = 400000;
    floor.values.assign(floor.transformSize / 2 + 1, 3e-4 * 3e-4);
    const double wanted = 3e-4 * kStandardGravity * 1000 / kTwoPi * std::sqrt(1 / 2.0 - 1 / 1000.0);
    EXPECT_NEAR(velocityRms(floor, 2, 1000) / wanted, 1, 1e-5);
    EXPECT_NEAR(wanted, 0.33, 0.005);
}

TEST(Integrate, SignalAgreesWithSpectrum) {
    // Level of a long noise from the signal in time and from its Hann spectrum: two readings of one thing.
    const double rate = 2560;
    const auto noise = signals::normalNoise(0.2, 1 << 17);
    const auto velocity = velocitySignal(noise, rate, 10);
    EXPECT_NEAR(rms(velocity) / velocityRms(noise, rate, 10, rate / 2), 1, 0.05);
}

TEST(Integrate, OddAndEmptyRecords) {
    const auto signal = signals::sine(1, 50, 2501, 2501, 0.1);
    const auto velocity = velocitySignal(signal, 2501, 10);
    EXPECT_NEAR(rms(velocity), velocityMmPerS(1, Hertz(50)) * std::sqrt(0.5), 1e-9);
    EXPECT_TRUE(velocitySignal({}, 1000, 10).empty());
    EXPECT_EQ(velocityRms(std::span<const double>(), 1000, 10, 1000), 0);
}

}  // namespace
}  // namespace fettle
