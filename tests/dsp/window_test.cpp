#include "core/dsp/window.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <string>

namespace fettle {
namespace {

constexpr std::size_t kSize = 4096;

struct WindowFigures {
    std::string name;
    std::vector<double> terms;
    double gain, noiseBandwidth, scallopDb, worstDb, sidelobeDb, threeDbBins, correlation50, correlation75;
};

// check values: computed with NumPy 1.24.2 on 4096 periodic samples.
const std::vector<WindowFigures>& figures() {
    static const std::vector<WindowFigures> table{
        {"rectangular", {1}, 1, 1, 3.9223974, 3.9223974, -13.2637, 0.88433, 0.5, 0.75},
        {"Hann", {.5, .5}, 0.5, 1.5, 1.4236228, 3.1845354, -31.4676, 1.43820, 0.1666667, 0.6591549},
        {"Hamming",
         {.54, .46},
         0.54,
         1.3628258,
         1.7514312,
         3.0958346,
         -42.6752,
         1.30072,
         0.2337695,
         0.7069189},
        {"Hamming 25/46",
         {25 / 46., 21 / 46.},
         0.5434783,
         1.3528,
         1.7781982,
         3.0905341,
         -41.6909,
         1.29104,
         0.2392076,
         0.7105488},
        {"Blackman",
         {.42, .5, .08},
         0.42,
         1.7267574,
         1.0988788,
         3.4711920,
         -58.1088,
         1.64085,
         0.0896257,
         0.5666664},
        {"Blackman-Harris",
         {.35875, .48829, .14128, .01168},
         0.35875,
         2.0043529,
         0.8255722,
         3.8453142,
         -92.0097,
         1.89618,
         0.0376019,
         0.4599852},
        {"flat top",
         {.21557895, .41663158, .277263158, .083578947, .006947368},
         0.21557895,
         3.7702464,
         0.0097781,
         5.7734755,
         -93.0256,
         3.72098,
         -0.0152603,
         0.0455033},
        // ISO 18431-2 flat top (terms from memory) and another in use; the code carries neither.
        {"flat top, other terms",
         {1, 1.933, 1.286, .388, .0322},
         1,
         3.7709329,
         0.0089721,
         5.7734602,
         -83.9332,
         3.72082,
         -0.0153941,
         0.0455304},
        {"flat top, third terms",
         {1, 1.93, 1.29, .388, .028},
         1,
         3.770164,
         0.0156171,
         5.7792195,
         -76.6172,
         3.72739,
         -0.0139623,
         0.0442317}};
    return table;
}

class WindowTable : public testing::TestWithParam<std::size_t> {
  protected:
    const WindowFigures& row() const { return figures()[GetParam()]; }
    FftVector<double> window() const { return cosineWindow(row().terms, kSize, WindowForm::Periodic); }
};
INSTANTIATE_TEST_SUITE_P(Harris, WindowTable, testing::Range<std::size_t>(0, 9));

TEST_P(WindowTable, GainAndNoiseBandwidth) {
    const auto w = window();
    EXPECT_NEAR(coherentGain(w), row().gain, 1e-7) << row().name;
    EXPECT_NEAR(noiseBandwidthBins(w), row().noiseBandwidth, 5e-7) << row().name;
}

TEST_P(WindowTable, NoiseBandwidthFollowsFromTheTerms) {
    // Of a cosine sum exactly (a0^2 + sum of a_i^2 / 2) / a0^2; any size above the number of terms.
    const auto& terms = row().terms;
    double sum = terms[0] * terms[0];
    for (std::size_t i = 1; i < terms.size(); ++i)
        sum += terms[i] * terms[i] / 2;
    for (const std::size_t n : {16u, 17u, 1001u})
        EXPECT_NEAR(noiseBandwidthBins(cosineWindow(terms, n, WindowForm::Periodic)),
                    sum / (terms[0] * terms[0]), 1e-12);
}

TEST_P(WindowTable, LossBetweenBins) {
    const auto w = window();
    const double scallop = scallopingLossDb(w);
    EXPECT_NEAR(scallop, row().scallopDb, 5e-7) << row().name;
    EXPECT_NEAR(scallop + 10 * std::log10(noiseBandwidthBins(w)), row().worstDb, 1e-6) << row().name;
}

TEST_P(WindowTable, MainLobeIsThreeDecibelsWide) {
    // 3.000 dB, as the table is worked out, not a power of one half.
    const auto w = window();
    const double down = std::pow(10, -3 / 20.0);
    EXPECT_GT(windowResponse(w, row().threeDbBins / 2 - 1e-4), down) << row().name;
    EXPECT_LT(windowResponse(w, row().threeDbBins / 2 + 1e-4), down) << row().name;
}

TEST_P(WindowTable, HighestSidelobe) {
    // The main lobe of a cosine sum with m terms ends m bins off its top.
    const auto w = cosineWindow(row().terms, kSize, WindowForm::Periodic);
    double highest = 0;
    for (double bins = double(row().terms.size()); bins < 20; bins += 0.02)
        highest = std::max(highest, windowResponse(w, bins));
    EXPECT_NEAR(20 * std::log10(highest), row().sidelobeDb, 0.01) << row().name;
}

TEST_P(WindowTable, OverlapCorrelation) {
    const auto w = window();
    EXPECT_NEAR(overlapCorrelation(w, kSize / 2), row().correlation50, 1e-7) << row().name;
    EXPECT_NEAR(overlapCorrelation(w, kSize / 4), row().correlation75, 1e-7) << row().name;
    EXPECT_EQ(overlapCorrelation(w, kSize), 0);
}

TEST(Window, PrintedTableOfHarris) {
    // Harris, Proc. IEEE 66 (1978) 51-83, table 1 (printed values from memory). Left out are Hamming's
    // scallop (1.78 is that of 25/46), Hamming's overlap and Blackman's 3 dB width, which do not fit these
    // terms.
    struct Printed {
        WindowKind kind;
        double gain, noiseBandwidth, scallopDb, worstDb, threeDbBins;
    };
    constexpr double kNone = 0;
    constexpr Printed table[] = {{WindowKind::Rectangular, 1.00, 1.00, 3.92, 3.92, 0.89},
                                 {WindowKind::Hann, 0.50, 1.50, 1.42, 3.18, 1.44},
                                 {WindowKind::Hamming, 0.54, 1.36, kNone, 3.10, 1.30},
                                 {WindowKind::Blackman, 0.42, 1.73, 1.10, 3.47, kNone},
                                 {WindowKind::BlackmanHarris, 0.36, 2.00, 0.83, 3.85, 1.90}};
    for (const Printed& printed : table) {
        const auto w = makeWindow(printed.kind, kSize);
        const double scallop = scallopingLossDb(w), bandwidth = noiseBandwidthBins(w);
        EXPECT_NEAR(coherentGain(w), printed.gain, 0.005);
        EXPECT_NEAR(bandwidth, printed.noiseBandwidth, 0.005);
        if (printed.scallopDb != kNone) {
            EXPECT_NEAR(scallop, printed.scallopDb, 0.005);
        }
        EXPECT_NEAR(scallop + 10 * std::log10(bandwidth), printed.worstDb, 0.005);
        if (printed.threeDbBins == kNone) continue;
        EXPECT_GT(windowResponse(w, (printed.threeDbBins - 0.005) / 2), std::sqrt(0.5))
            << windowName(printed.kind);
        EXPECT_LT(windowResponse(w, (printed.threeDbBins + 0.005) / 2), std::sqrt(0.5))
            << windowName(printed.kind);
    }
}

TEST(Window, KindsHaveTheTermsOfTheTable) {
    constexpr std::array kinds{WindowKind::Rectangular, WindowKind::Hann,           WindowKind::Hamming,
                               WindowKind::Blackman,    WindowKind::BlackmanHarris, WindowKind::FlatTop};
    for (const WindowKind kind : kinds) {
        const auto row = std::find_if(figures().begin(), figures().end(),
                                      [&](const WindowFigures& f) { return f.name == windowName(kind); });
        ASSERT_NE(row, figures().end()) << windowName(kind);
        const auto terms = windowTerms(kind);
        EXPECT_EQ(std::vector<double>(terms.begin(), terms.end()), row->terms) << row->name;
        EXPECT_EQ(makeWindow(kind, 64), cosineWindow(terms, 64, WindowForm::Periodic));
    }
}

TEST(Window, PeriodicAndSymmetricHann) {
    // check value: SciPy 1.10.1, get_window("hann", 8) and windows.hann(8)
    const auto periodic = makeWindow(WindowKind::Hann, 8);
    const std::array<double, 5> wantedPeriodic{0, .146446609407, .5, .853553390593, 1};
    for (std::size_t i = 0; i < 5; ++i)
        EXPECT_NEAR(periodic[i], wantedPeriodic[i], 1e-12);
    EXPECT_EQ(periodic[7], periodic[1]);
    const auto symmetric = makeWindow(WindowKind::Hann, 8, WindowForm::Symmetric);
    const std::array<double, 4> wantedSymmetric{0, .188255099071, .611260466978, .950484433951};
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_NEAR(symmetric[i], wantedSymmetric[i], 1e-12);
        EXPECT_EQ(symmetric[7 - i], symmetric[i]);
    }
}

TEST(Window, SizesAtTheEdge) {
    EXPECT_TRUE(makeWindow(WindowKind::Hann, 0).empty());
    for (const WindowForm form : {WindowForm::Periodic, WindowForm::Symmetric}) {
        const auto one = makeWindow(WindowKind::FlatTop, 1, form);
        ASSERT_EQ(one.size(), 1u);
        EXPECT_EQ(one[0], 1);
    }
    // A symmetric window of n is the periodic one of n - 1 with its first sample again.
    const auto symmetric = makeWindow(WindowKind::Blackman, 8, WindowForm::Symmetric);
    const auto periodic = makeWindow(WindowKind::Blackman, 7);
    for (std::size_t i = 0; i < 8; ++i)
        EXPECT_NEAR(symmetric[i], periodic[i % 7], 1e-15);
}

TEST(Window, EffectiveAverages) {
    // check value: K / (1 + 2 sum (1 - q/K) rho_q^2) (Welch 1967) for Hann, computed with NumPy 1.24.2
    const auto w = makeWindow(WindowKind::Hann, kSize);
    EXPECT_NEAR(effectiveAverages(w, kSize / 2, 7), 6.681818, 1e-6);
    EXPECT_NEAR(effectiveAverages(w, kSize / 2, 15), 14.260563, 1e-6);
    EXPECT_NEAR(effectiveAverages(w, kSize / 2, 63), 59.734114, 1e-6);
    EXPECT_NEAR(effectiveAverages(w, kSize / 4, 13), 7.029984, 1e-6);
    EXPECT_NEAR(effectiveAverages(w, kSize / 4, 29), 15.337169, 1e-6);
    EXPECT_EQ(effectiveAverages(w, kSize, 9), 9);
}

}  // namespace
}  // namespace fettle
