#include "core/dsp/orders.h"

#include <gtest/gtest.h>

#include "core/dsp/statistics.h"
#include "tests/dsp/signals.h"

namespace fettle {
namespace {

using SpeedSample = ShaftAngle::SpeedSample;

ShaftAngle curve(std::vector<SpeedSample> samples) {
    auto angle = ShaftAngle::fromSpeed(samples);
    EXPECT_TRUE(angle.has_value());
    return *angle;
}

TEST(Orders, OrderAndHertz) {
    // 1797 r/min, drive-end bearing order 3.5848 of the CWRU set: 107.364 Hz (published list, rounded)
    const Hertz shaft = toHertz(Rpm(1797));
    EXPECT_NEAR((Order(3.5848) * shaft).value, 107.365, 0.001);
    EXPECT_DOUBLE_EQ(orderOf(Order(3.5848) * shaft, shaft).value, 3.5848);
}

TEST(ShaftAngle, EvenSpeedTurnsEvenly) {
    const auto angle = ShaftAngle::fromConstant(Hertz(25));
    ASSERT_TRUE(angle.has_value());
    for (const double t : {-2.0, 0.0, 0.1, 100.0}) {
        EXPECT_DOUBLE_EQ(angle->turnsAt(t), 25 * t);
        EXPECT_DOUBLE_EQ(angle->secondsAt(25 * t), t);
        EXPECT_DOUBLE_EQ(angle->speedAt(t).value, 25);
    }
}

TEST(ShaftAngle, RampIsAParabola) {
    // 20 Hz rising by 2.5 Hz a second: turns = 20 t + 1.25 t^2
    const ShaftAngle angle = curve({{0, Hertz(20)}, {4, Hertz(30)}});
    for (double t = 0; t <= 4; t += 0.37) {
        EXPECT_NEAR(angle.turnsAt(t), 20 * t + 1.25 * t * t, 1e-12);
        EXPECT_NEAR(angle.secondsAt(20 * t + 1.25 * t * t), t, 1e-12);
        EXPECT_NEAR(angle.speedAt(t).value, 20 + 2.5 * t, 1e-12);
    }
    EXPECT_NEAR(angle.turnsAt(5), 100 + 30, 1e-12);
    EXPECT_NEAR(angle.secondsAt(130), 5, 1e-12);
}

TEST(ShaftAngle, AngleIsZeroAtTimeZeroWhereverTheCurveStarts) {
    const ShaftAngle late = curve({{1, Hertz(10)}, {2, Hertz(20)}}),
                     early = curve({{-1, Hertz(10)}, {1, Hertz(20)}});
    EXPECT_NEAR(late.turnsAt(0), 0, 1e-12);
    EXPECT_NEAR(late.turnsAt(1), 10, 1e-12);
    EXPECT_NEAR(late.turnsAt(2), 25, 1e-12);
    EXPECT_NEAR(early.turnsAt(0), 0, 1e-12);
    EXPECT_NEAR(early.turnsAt(1), 17.5, 1e-12);
    for (double t = -3; t < 4; t += 0.21)
        EXPECT_NEAR(late.secondsAt(late.turnsAt(t)), t, 1e-12);
}

TEST(ShaftAngle, MarksCountTurns) {
    const auto angle = ShaftAngle::fromMarks(std::vector<double>{0.5, 0.6, 0.65});
    ASSERT_TRUE(angle.has_value());
    EXPECT_NEAR(angle->turnsAt(0.5), 0, 1e-12);
    EXPECT_NEAR(angle->turnsAt(0.6), 1, 1e-12);
    EXPECT_NEAR(angle->turnsAt(0.625), 1.5, 1e-12);
    EXPECT_NEAR(angle->turnsAt(0.75), 4, 1e-12);
    EXPECT_NEAR(angle->turnsAt(0.4), -1, 1e-12);
    EXPECT_NEAR(angle->secondsAt(1.5), 0.625, 1e-12);
}

TEST(ShaftAngle, RefusesCurvesThatAreNone) {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const auto placeOf = [](std::vector<SpeedSample> samples) {
        const auto angle = ShaftAngle::fromSpeed(samples);
        EXPECT_FALSE(angle.has_value());
        return angle.has_value() ? "" : angle.error().place;
    };
    EXPECT_EQ(placeOf({}), "");
    EXPECT_EQ(placeOf({{0, Hertz(0)}}), "sample 1");
    EXPECT_EQ(placeOf({{0, Hertz(10)}, {1, Hertz(-3)}}), "sample 2");
    EXPECT_EQ(placeOf({{0, Hertz(10)}, {0, Hertz(11)}}), "sample 2");
    EXPECT_EQ(placeOf({{0, Hertz(10)}, {nan, Hertz(11)}}), "sample 2");
    EXPECT_EQ(placeOf({{0, Hertz(nan)}}), "sample 1");
    EXPECT_FALSE(ShaftAngle::fromMarks(std::vector<double>{1}).has_value());
    EXPECT_FALSE(ShaftAngle::fromMarks(std::vector<double>{1, 1}).has_value());
}

// A shaft that runs up from 20 to 30 Hz in 8 s, sampled at 4096 Hz, with lines at given orders of
// amplitude 1.
class RunUp : public testing::Test {
  protected:
    static constexpr double kRate = 4096;
    ShaftAngle angle_ = curve({{0, Hertz(20)}, {8, Hertz(30)}});

    std::vector<double> line(double order) const {
        std::vector<double> out(std::size_t(8 * kRate));
        for (std::size_t i = 0; i < out.size(); ++i)
            out[i] = std::sin(kTwoPi * order * angle_.turnsAt(double(i) / kRate));
        return out;
    }
};

TEST_F(RunUp, SamplesAreThoseOfTheAngle) {
    // Orders to 0.9 of the cut-off (32 of 64 samples a turn); 0.01 dB is 1.2e-3 of amplitude.
    for (const double order : {0.5, 1.0, 7.3, 20.6, 28.8}) {
        const TurnSignal turned = resampledByAngle(line(order), kRate, angle_, 64);
        ASSERT_GT(turned.samples.size(), 190u * 64);
        EXPECT_EQ(turned.samplesPerTurn, 64);
        for (std::size_t i = 0; i < turned.samples.size(); ++i) {
            const double turns = turned.firstTurn + double(i) / 64;
            ASSERT_NEAR(turned.samples[i], std::sin(kTwoPi * order * turns), 1.2e-3)
                << order << " at turn " << turns;
        }
    }
}

TEST_F(RunUp, SmearedLineIsSharpAgain) {
    const auto signal = line(7.25);
    const Spectrum smeared = periodogram(signal, kRate, {.kind = SpectrumKind::Amplitude});
    EXPECT_LT(*std::max_element(smeared.values.begin(), smeared.values.end()), 0.3);
    TurnSignal turned = resampledByAngle(signal, kRate, angle_, 64);
    turned.samples.resize(192 * 64);  // whole turns, 7.25 x 192 whole as well
    const Spectrum sharp =
        periodogram(turned.samples, turned.samplesPerTurn, {.kind = SpectrumKind::Amplitude});
    const auto top = std::max_element(sharp.values.begin(), sharp.values.end());
    EXPECT_NEAR(*top, 1, 1.2e-3);
    EXPECT_NEAR(sharp.frequencyHz(std::size_t(top - sharp.values.begin())), 7.25, 1e-12);
}

TEST_F(RunUp, NothingFoldsBack) {
    // Orders above 1.12 of the cut-off would fold onto lower ones; 80 dB is 1e-4.
    for (const double order : {36.0, 44.3, 60.0}) {
        const TurnSignal turned = resampledByAngle(line(order), kRate, angle_, 64);
        EXPECT_LT(peak(turned.samples), 1e-4) << order;
    }
}

TEST(Resample, DenserThanTheSignalKeepsIt) {
    // 4 samples of angle to one of time: only the signal's own band limits.
    const double rate = 1000;
    const auto angle = ShaftAngle::fromConstant(Hertz(10));
    const TurnSignal turned = resampledByAngle(signals::sine(1, 440, rate, 2000), rate, *angle, 400);
    ASSERT_GT(turned.samples.size(), 7000u);
    for (std::size_t i = 0; i < turned.samples.size(); ++i) {
        const double turns = turned.firstTurn + double(i) / 400;
        ASSERT_NEAR(turned.samples[i], std::sin(kTwoPi * 44 * turns), 1.2e-3);
    }
}

TEST(Resample, RecordsTooShortForTheKernelGiveNothing) {
    const auto angle = ShaftAngle::fromConstant(Hertz(25));
    EXPECT_TRUE(resampledByAngle(signals::sine(1, 50, 1000, 40), 1000, *angle, 64).samples.empty());
    EXPECT_TRUE(resampledByAngle({}, 1000, *angle, 64).samples.empty());
    EXPECT_TRUE(resampledByAngle(signals::sine(1, 50, 1000, 400), 1000, *angle, 0).samples.empty());
}

class RefinedPeakOffsets : public testing::TestWithParam<double> {};
INSTANTIATE_TEST_SUITE_P(AcrossALine, RefinedPeakOffsets,
                         testing::Values(-0.5, -0.4, -0.3, -0.2, -0.1, 0.0, 0.05, 0.15, 0.25, 0.35, 0.45));

TEST_P(RefinedPeakOffsets, HannLineIsFoundBetweenLines) {
    const std::size_t n = 4096;
    const double hz = 500 + GetParam();  // lines are 1 Hz apart
    const auto signal = signals::sine(2, hz, double(n), n, 0.9);
    for (const SpectrumKind kind : {SpectrumKind::Amplitude, SpectrumKind::Power}) {
        const Spectrum spectrum = periodogram(signal, double(n), {.kind = kind});
        const auto top = std::max_element(spectrum.values.begin(), spectrum.values.end());
        const RefinedPeak peak = refinedPeak(spectrum, std::size_t(top - spectrum.values.begin()));
        EXPECT_NEAR(peak.frequencyHz, hz, 0.001);
        const double amplitude = kind == SpectrumKind::Power ? std::sqrt(2 * peak.value) : peak.value;
        EXPECT_NEAR(20 * std::log10(amplitude / 2), 0, 0.01);
    }
}

TEST_P(RefinedPeakOffsets, BlackmanHarrisLineIsFoundBetweenLines) {
    // Gasior and Gonzalez 2004: the smoother the main lobe, the closer a parabola of logs fits it.
    const std::size_t n = 4096;
    const double hz = 500 + GetParam();
    const Spectrum spectrum =
        periodogram(signals::sine(1, hz, double(n), n), double(n), {.window = WindowKind::BlackmanHarris});
    const auto top = std::max_element(spectrum.values.begin(), spectrum.values.end());
    EXPECT_NEAR(refinedPeak(spectrum, std::size_t(top - spectrum.values.begin())).frequencyHz, hz, 0.01);
}

TEST(RefinedPeak, SecondLineOfNoiseIsFoundWithinItsError) {
    // A line 30 dB above its noise: 0.02 of a line, as a Monte Carlo run of the estimator gave.
    std::vector<double> errors;
    const std::size_t n = 1024;
    for (unsigned i = 0; i < 200; ++i) {
        const double hz = 200 + double(i) / 200 - 0.5;
        auto signal = signals::sine(1, hz, double(n), n, 0.1 * i);
        const auto noise = signals::normalNoise(std::sqrt(double(n) / 6) / 31.6, n, i);
        for (std::size_t k = 0; k < n; ++k)
            signal[k] += noise[k];
        const Spectrum spectrum = periodogram(signal, double(n));
        const auto top = std::max_element(spectrum.values.begin(), spectrum.values.end());
        errors.push_back(refinedPeak(spectrum, std::size_t(top - spectrum.values.begin())).frequencyHz - hz);
    }
    EXPECT_LT(rms(errors), 0.03);
    EXPECT_LT(std::abs(mean(errors)), 0.01);
}

TEST(RefinedPeak, LeavesAloneWhatIsNoPeak) {
    Spectrum spectrum;
    spectrum.stepHz = 2;
    spectrum.values = {5, 1, 3, 2, 0, 4, 0, 7};
    spectrum.transformSize = 14;
    for (const std::size_t line : {0u, 1u, 3u, 5u, 7u, 20u}) {
        EXPECT_EQ(refinedPeak(spectrum, line).frequencyHz, 2.0 * double(line)) << line;
        EXPECT_EQ(refinedPeak(spectrum, line).value, line < 8 ? spectrum.values[line] : 0) << line;
    }
    EXPECT_NE(refinedPeak(spectrum, 2).frequencyHz, 4);
}

}  // namespace
}  // namespace fettle
