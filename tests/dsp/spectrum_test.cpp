#include "core/dsp/spectrum.h"

#include <gtest/gtest.h>

#include <numeric>

#include "core/dsp/analytic.h"
#include "core/dsp/statistics.h"
#include "tests/dsp/signals.h"

namespace fettle {
namespace {

constexpr double kSpectrumRate = signals::kRateHz;

double areaOf(const Spectrum& density) {
    return std::accumulate(density.values.begin(), density.values.end(), 0.0) * density.stepHz;
}

// A value of the check tables has twelve digits.
void expectRelative(double value, double expected) {
    EXPECT_NEAR(value, expected, 1e-10 * std::abs(expected));
}

TEST(Spectrum, PlainPeriodogram) {
    // check value: SciPy 1.10.1, periodogram(window="boxcar", detrend=False, scaling="density")
    const SpectrumOptions plain{
        .window = WindowKind::Rectangular, .kind = SpectrumKind::Density, .removeMean = false};
    const Spectrum x = periodogram(signals::x(), kSpectrumRate, plain);
    ASSERT_EQ(x.values.size(), 129u);
    EXPECT_EQ(x.stepHz, 4);
    expectRelative(x.values[0], 1.23596191406e-3);
    expectRelative(x.values[1], 3.15407314878e-5);
    expectRelative(x.values[25], 2.92667505287e-3);
    expectRelative(areaOf(x), 0.250457763672);
    const Spectrum y = periodogram(signals::y(), kSpectrumRate, plain);
    expectRelative(y.values[25], 0.431835524353);
    expectRelative(areaOf(y), 1.96609316087);
}

TEST(Spectrum, HannPeriodogram) {
    // check value: SciPy 1.10.1, periodogram(window="hann", detrend="constant", scaling="spectrum")
    expectRelative(periodogram(signals::x(), kSpectrumRate).values[25], 0.0117306373472);
    expectRelative(periodogram(signals::y(), kSpectrumRate).values[25], 1.72444342455);
}

TEST(Spectrum, WelchDensity) {
    // check value: SciPy 1.10.1, welch(window="hann", nperseg=64, noverlap=32, detrend="constant",
    // scaling="density")
    const SpectrumOptions options{.kind = SpectrumKind::Density, .segment = 64};
    const Spectrum x = welch(signals::x(), kSpectrumRate, options),
                   y = welch(signals::y(), kSpectrumRate, options);
    ASSERT_EQ(x.values.size(), 33u);
    EXPECT_EQ(x.segments, 7u);
    expectRelative(x.values[0], 1.21435364331e-5);
    expectRelative(x.values[1], 3.1334111751e-4);
    expectRelative(x.values[6], 4.95817613174e-4);
    expectRelative(x.values[16], 1.25123576076e-3);
    expectRelative(x.values[32], 1.02243378386e-5);
    expectRelative(areaOf(x), 0.248220547777);
    expectRelative(y.values[0], 1.02399640057e-4);
    expectRelative(y.values[1], 4.0864128903e-4);
    expectRelative(y.values[6], 0.0665818974428);
    expectRelative(y.values[16], 1.25127072279e-3);
    expectRelative(y.values[32], 1.02242517883e-5);
    expectRelative(areaOf(y), 1.9331946172);
}

TEST(Spectrum, WelchPower) {
    // check value: SciPy 1.10.1, welch(scaling="spectrum", detrend=False): Hann 64/32, flattop 64/48
    SpectrumOptions options{.removeMean = false, .segment = 64};
    expectRelative(welch(signals::x(), kSpectrumRate, options).values[6], 0.0118996227162);
    expectRelative(welch(signals::x(), kSpectrumRate, options).values[16], 0.0300296582582);
    expectRelative(welch(signals::y(), kSpectrumRate, options).values[6], 1.59796553863);
    expectRelative(welch(signals::y(), kSpectrumRate, options).values[16], 0.030030497347);
    options.window = WindowKind::FlatTop;
    options.overlap = 0.75;
    expectRelative(welch(signals::x(), kSpectrumRate, options).values[6], 0.017661047308);
    expectRelative(welch(signals::y(), kSpectrumRate, options).values[6], 1.72493974906);
}

TEST(Spectrum, WelchMedian) {
    // check value: SciPy 1.10.1, welch(average="median", detrend="constant", scaling="density")
    const SpectrumOptions options{
        .kind = SpectrumKind::Density, .segment = 64, .average = AverageOver::Median};
    const Spectrum x = welch(signals::x(), kSpectrumRate, options),
                   y = welch(signals::y(), kSpectrumRate, options);
    expectRelative(x.values[6], 6.52919234194e-4);
    expectRelative(x.values[16], 1.67707567511e-3);
    expectRelative(y.values[6], 0.0866866862574);
    expectRelative(y.values[16], 1.67657863964e-3);
}

TEST(Spectrum, WelchOfEvenNoise) {
    // check value: SciPy 1.10.1, welch(u, fs=4096, nperseg=1024); its theory is 2 / 12 / 4096 = 4.06901e-5
    const Spectrum u = welch(signals::u(), 4096, {.kind = SpectrumKind::Density, .segment = 1024});
    expectRelative(u.values[1], 5.05157890701e-5);
    expectRelative(u.values[100], 4.08750401816e-5);
    expectRelative(u.values[256], 6.21942113733e-5);
    const double inner = std::accumulate(u.values.begin() + 1, u.values.end() - 1, 0.0);
    expectRelative(inner / double(u.values.size() - 2), 4.11624147464e-5);
}

TEST(Spectrum, EnvelopeOfTicksStandsAtTheirRate) {
    // check value: SciPy 1.10.1: 2 / N |rfft(envelope - mean)| at 32, 64, 96 Hz; its largest line is at 32 Hz
    const SpectrumOptions options{.window = WindowKind::Rectangular, .kind = SpectrumKind::Amplitude};
    FftVector<double> envelope = hilbertEnvelope(signals::ticks());
    const Spectrum plain = periodogram(envelope, 4096, options);
    expectRelative(plain.values[32], 0.137125301618);
    expectRelative(plain.values[64], 0.111377514447);
    expectRelative(plain.values[96], 0.0868552813235);
    EXPECT_EQ(std::max_element(plain.values.begin(), plain.values.end()) - plain.values.begin(), 32);
    for (double& value : envelope)
        value *= value;
    const Spectrum squared = periodogram(envelope, 4096, options);
    expectRelative(squared.values[32], 0.075084827939);
    expectRelative(squared.values[64], 0.0693437451979);
    expectRelative(squared.values[96], 0.0622532849581);
}

constexpr WindowKind kWindows[] = {WindowKind::Rectangular, WindowKind::Hann,           WindowKind::Hamming,
                                   WindowKind::Blackman,    WindowKind::BlackmanHarris, WindowKind::FlatTop};

// Every window with even, odd, prime and power-of-two sizes.
class EveryWindow : public testing::TestWithParam<std::tuple<WindowKind, std::size_t>> {
  protected:
    WindowKind window() const { return std::get<0>(GetParam()); }
    std::size_t size() const { return std::get<1>(GetParam()); }
};
INSTANTIATE_TEST_SUITE_P(Sizes, EveryWindow,
                         testing::Combine(testing::ValuesIn(kWindows),
                                          testing::Values(1000, 1001, 1021, 1024, 4096)));

double decibelsApart(double amplitude, double expected) {
    return 20 * std::log10(amplitude / expected);
}

TEST_P(EveryWindow, UnitSineReadsOneWhateverTheSize) {
    const std::size_t line = size() / 5;
    const double hz = kSpectrumRate * double(line) / double(size());
    const auto signal = signals::sine(1, hz, kSpectrumRate, size(), 0.7);
    const auto read = [&](SpectrumKind kind) {
        return periodogram(signal, kSpectrumRate, {.window = window(), .kind = kind}).values[line];
    };
    EXPECT_NEAR(decibelsApart(read(SpectrumKind::Amplitude), 1), 0, 1e-4);
    EXPECT_NEAR(decibelsApart(read(SpectrumKind::Rms), std::sqrt(0.5)), 0, 1e-4);
    EXPECT_NEAR(read(SpectrumKind::Power), 0.5, 1e-5);
}

TEST_P(EveryWindow, SineBetweenLinesLosesTheScallop) {
    const std::size_t line = size() / 5;
    const double hz = kSpectrumRate * (double(line) + 0.5) / double(size());
    const auto signal = signals::sine(1, hz, kSpectrumRate, size(), 0.7);
    const Spectrum spectrum =
        periodogram(signal, kSpectrumRate, {.window = window(), .kind = SpectrumKind::Amplitude});
    const double loss = scallopingLossDb(makeWindow(window(), size()));
    EXPECT_NEAR(decibelsApart(spectrum.values[line], 1), -loss, 0.02);
    EXPECT_NEAR(decibelsApart(spectrum.values[line + 1], 1), -loss, 0.02);
}

TEST_P(EveryWindow, BandOfASineIsItsRms) {
    for (const double offset : {0.0, 0.25, 0.5}) {
        const double hz = kSpectrumRate * (double(size() / 5) + offset) / double(size());
        const auto signal = signals::sine(3, hz, kSpectrumRate, size(), 0.7);
        for (const SpectrumKind kind :
             {SpectrumKind::Amplitude, SpectrumKind::Rms, SpectrumKind::Power, SpectrumKind::Density}) {
            const Spectrum spectrum = periodogram(signal, kSpectrumRate, {.window = window(), .kind = kind});
            EXPECT_NEAR(decibelsApart(bandRms(spectrum, 0, kSpectrumRate / 2), 3 * std::sqrt(0.5)), 0, 0.03);
        }
    }
}

TEST_P(EveryWindow, WhiteNoiseReadsItsLevelWhateverTheSize) {
    // One-sided density of white noise is 2 sigma^2 / rate.
    const auto noise = signals::normalNoise(0.5, 1 << 17);
    const double expected = 2 * 0.25 / kSpectrumRate;
    for (const AverageOver average : {AverageOver::Mean, AverageOver::Median}) {
        const Spectrum spectrum =
            welch(noise, kSpectrumRate,
                  {.window = window(), .kind = SpectrumKind::Density, .segment = size(), .average = average});
        // The lines beside an edge are bent by the taken-out mean and the fold.
        const auto& v = spectrum.values;
        const double level = std::accumulate(v.begin() + 5, v.end() - 5, 0.0) / double(v.size() - 10);
        EXPECT_NEAR(10 * std::log10(level / expected), 0, average == AverageOver::Mean ? 0.1 : 0.15);
    }
}

TEST_P(EveryWindow, BandsAgreeWithParseval) {
    // Sum of squares in time and frequency are the same: exactly, of the windowed signal over the window's
    // mean square.
    const auto signal = signals::normalNoise(1.7, size());
    const Spectrum spectrum = periodogram(signal, kSpectrumRate, {.window = window(), .removeMean = false});
    const auto w = makeWindow(window(), size());
    double windowed = 0, weights = 0;
    for (std::size_t i = 0; i < size(); ++i) {
        windowed += std::pow(signal[i] * w[i], 2);
        weights += w[i] * w[i];
    }
    EXPECT_NEAR(bandRms(spectrum, 0, kSpectrumRate / 2), std::sqrt(windowed / weights), 1e-12);
    for (const double cut : {1.0, 10.3, 100.0, 511.9}) {
        const double below = bandRms(spectrum, 0, cut), above = bandRms(spectrum, cut, kSpectrumRate / 2);
        EXPECT_NEAR(below * below + above * above, windowed / weights, 1e-12) << "cut at " << cut;
    }
}

TEST_P(EveryWindow, KindsConvertThereAndBack) {
    const Spectrum power = periodogram(signals::normalNoise(1, size()), kSpectrumRate, {.window = window()});
    for (const SpectrumKind kind : {SpectrumKind::Amplitude, SpectrumKind::Rms, SpectrumKind::Density}) {
        const Spectrum back = converted(converted(power, kind), SpectrumKind::Power);
        for (std::size_t k = 0; k < power.values.size(); ++k)
            ASSERT_NEAR(back.values[k], power.values[k], 1e-14 * power.values[k] + 1e-300);
        EXPECT_EQ(converted(power, kind).kind, kind);
    }
}

TEST(Spectrum, RmsOfFixedSignalIsItsWholeBand) {
    // check value: NumPy 1.24.2, r.m.s. of x
    const Spectrum x =
        periodogram(signals::x(), kSpectrumRate, {.window = WindowKind::Rectangular, .removeMean = false});
    EXPECT_NEAR(bandRms(x, 0, kSpectrumRate / 2), 0.500457554316, 1e-12);
}

TEST(Spectrum, SummingLinesAsTheyAreOverstatesABand) {
    // The square root of Hann's noise bandwidth, 1.2247: what bandRms takes out.
    const Spectrum noise = welch(signals::normalNoise(1, 1 << 16), kSpectrumRate, {.segment = 1024});
    const double summed = std::sqrt(std::accumulate(noise.values.begin(), noise.values.end(), 0.0));
    EXPECT_NEAR(summed / bandRms(noise, 0, kSpectrumRate / 2), std::sqrt(1.5), 1e-12);
    EXPECT_NEAR(bandRms(noise, 0, kSpectrumRate / 2), 1, 0.01);
    EXPECT_NEAR(bandRms(noise, 128, 256), 0.5, 0.01);
}

TEST(Spectrum, BandOutsideOrUpsideDownHoldsNothing) {
    const Spectrum spectrum = periodogram(signals::normalNoise(1, 1000), kSpectrumRate);
    EXPECT_EQ(bandRms(spectrum, 600, 700), 0);
    EXPECT_EQ(bandRms(spectrum, 300, 200), 0);
    EXPECT_EQ(bandRms(spectrum, 200, 200), 0);
    EXPECT_EQ(bandRms({}, 0, 100), 0);
    EXPECT_EQ(bandRms(spectrum, -50, 5000), bandRms(spectrum, 0, kSpectrumRate / 2));
}

TEST(Spectrum, EdgesHaveOneSignOfFrequency) {
    // A constant of 3 and an alternation of 2: amplitude and r.m.s. are 3 and 2, there is no square root
    // of 2.
    std::vector<double> signal(64);
    for (std::size_t i = 0; i < 64; ++i)
        signal[i] = 3 + (i % 2 ? -2 : 2);
    for (const SpectrumKind kind : {SpectrumKind::Amplitude, SpectrumKind::Rms}) {
        const Spectrum spectrum = periodogram(
            signal, kSpectrumRate, {.window = WindowKind::Rectangular, .kind = kind, .removeMean = false});
        EXPECT_NEAR(spectrum.values.front(), 3, 1e-12);
        EXPECT_NEAR(spectrum.values.back(), 2, 1e-12);
    }
    // An odd size has no line at half the rate: its last one holds both signs.
    const Spectrum odd = periodogram(std::span(signal).first(63), kSpectrumRate);
    EXPECT_FALSE(odd.isEdge(odd.values.size() - 1));
    EXPECT_DOUBLE_EQ(odd.topHz(), kSpectrumRate / 2);
}

TEST(Spectrum, RemovedMeanLeavesNothingAtZero) {
    std::vector<double> signal = signals::normalNoise(0.1, 1000);
    for (double& value : signal)
        value += 40;
    const SpectrumOptions plain{.window = WindowKind::Rectangular, .kind = SpectrumKind::Amplitude};
    EXPECT_NEAR(periodogram(signal, kSpectrumRate, plain).values[0], 0, 1e-12);
    EXPECT_NEAR(bandRms(periodogram(signal, kSpectrumRate, plain), 0, kSpectrumRate / 2),
                standardDeviation(signal), 1e-12);
}

TEST(Spectrum, MedianStepsOverAKnock) {
    auto signal = signals::normalNoise(1, 32 * 256);
    const auto levelOf = [&](AverageOver average) {
        return bandRms(welch(signal, kSpectrumRate, {.segment = 256, .average = average}), 100, 400);
    };
    const double quiet = levelOf(AverageOver::Median);
    signal[5000] += 300;
    EXPECT_GT(levelOf(AverageOver::Mean), 2 * quiet);
    EXPECT_NEAR(levelOf(AverageOver::Median), quiet, 0.1 * quiet);
}

TEST(Spectrum, ScatterOfAnAverageIsThatOfItsEffectiveNumber) {
    // A mean of K independent powers scatters by 1 / sqrt K of itself (chi-squared with 2K degrees of
    // freedom).
    const std::size_t size = 256, segments = 15;
    const auto window = makeWindow(WindowKind::Hann, size);
    std::vector<double> levels;
    for (unsigned i = 0; i < 400; ++i) {
        const auto noise = signals::normalNoise(1, size * (segments + 1) / 2, 1000 + i);
        const Spectrum spectrum = welch(noise, kSpectrumRate, {.segment = size});
        ASSERT_EQ(spectrum.segments, segments);
        for (std::size_t k = 8; k < 120; k += 8)
            levels.push_back(spectrum.values[k]);
    }
    const double scatter = standardDeviation(levels) / mean(levels);
    EXPECT_NEAR(scatter * std::sqrt(effectiveAverages(window, size / 2, segments)), 1, 0.05);
}

TEST(Spectrum, SegmentsAtTheEdge) {
    const auto signal = signals::normalNoise(1, 1000);
    EXPECT_EQ(welch(signal, kSpectrumRate, {.segment = 4096}).transformSize, 1000u);
    EXPECT_EQ(welch(signal, kSpectrumRate, {.segment = 300, .overlap = 0}).segments, 3u);
    EXPECT_EQ(welch(signal, kSpectrumRate, {.segment = 1000}).values,
              periodogram(signal, kSpectrumRate).values);
    EXPECT_TRUE(welch({}, kSpectrumRate).values.empty());
    EXPECT_TRUE(periodogram({}, kSpectrumRate).values.empty());
    const double one = 5;
    const Spectrum single =
        periodogram({&one, 1}, kSpectrumRate, {.kind = SpectrumKind::Rms, .removeMean = false});
    ASSERT_EQ(single.values.size(), 1u);
    EXPECT_EQ(single.values[0], 5);
    EXPECT_EQ(bandRms(single, 0, kSpectrumRate / 2), 5);
}

TEST(Spectrum, SaysWhatItsNumbersAre) {
    const auto unitOf = [](SpectrumKind kind, const char* unit) {
        Spectrum spectrum;
        spectrum.kind = kind;
        spectrum.unit = unit;
        return valueUnit(spectrum);
    };
    EXPECT_EQ(unitOf(SpectrumKind::Amplitude, "g"), "g peak");
    EXPECT_EQ(unitOf(SpectrumKind::Rms, "mm/s"), "mm/s r.m.s.");
    EXPECT_EQ(unitOf(SpectrumKind::Power, "g"), "g²");
    EXPECT_EQ(unitOf(SpectrumKind::Density, "mm/s"), "(mm/s)²/Hz");
    EXPECT_EQ(unitOf(SpectrumKind::Density, "1"), "1/Hz");
    EXPECT_EQ(periodogram(signals::x(), kSpectrumRate, {.unit = "g"}).unit, "g");
    EXPECT_EQ(periodogram(signals::x(), kSpectrumRate, {.window = WindowKind::FlatTop}).window,
              WindowKind::FlatTop);
}

}  // namespace
}  // namespace fettle
