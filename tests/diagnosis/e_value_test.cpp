// An e-value's mean over recordings without the fault is at most 1. For one line that is a theorem, for a
// family it is measured. Source: Vovk and Wang, Ann. Statist. 49 (2021) 1736-1754, definition of an
// e-variable.
#include <gtest/gtest.h>

#include <cmath>
#include <map>

#include "core/diagnosis/hypotheses.h"
#include "tests/diagnosis/made_recordings.h"
#include "tests/diagnosis/uniform.h"

namespace fettle {
namespace {

using ByElement = std::map<std::string, std::vector<double>>;

void addWeights(const Machine& machine, const RecordingPtr& recording, ByElement& e) {
    const PreparedRecording prepared = prepare(machine, recording, {});
    ASSERT_EQ(prepared.unfit, "");
    for (const BearingHypothesis& h : askBearings(machine, prepared).hypotheses)
        e[h.fault].push_back(
            std::pow(10, weigh(h, prepared.evidence, prepared.rates.shaftHz, {}).weightDban / 10));
}

// Margin: three standard errors of the mean; heavy tails are in the error.
void expectEValues(const ByElement& e) {
    ASSERT_EQ(e.size(), 4u);
    for (const auto& [fault, values] : e) {
        const auto mean = made::meanOf(values);
        EXPECT_LE(mean.mean, 1 + 3 * mean.error) << fault << " over " << values.size();
        const auto over = [&](double level) {
            return double(std::count_if(values.begin(), values.end(), [&](double v) { return v >= level; }));
        };
        // Markov: at most one in ten reaches 10 decibans, one in a hundred 20; with the chance of the count
        // itself.
        const double n = double(values.size());
        EXPECT_LE(over(10), n / 10 + 3 * std::sqrt(n / 10)) << fault;
        EXPECT_LE(over(100), n / 100 + 3 * std::sqrt(n / 100)) << fault;
    }
}

TEST(EValue, MeanOverNoiseIsAtMostOne) {
    const Machine machine = made::motor();
    ByElement e;
    for (std::uint64_t seed = 1; seed <= 250; ++seed)
        addWeights(machine, made::recordingOf(made::noise(12800, 0.1, seed), 6400, 1480 + double(seed % 8)),
                   e);
    expectEValues(e);
}

// Noise whose strength beats at forty chance frequencies: the envelopes are full of strong lines, none of
// them a comb.
std::vector<double> beating(std::size_t n, double rateHz, std::uint64_t seed) {
    std::mt19937_64 bits(seed);
    std::uniform_real_distribution<double> even(0, 1);
    std::vector<double> beat(n, 1.0);
    for (int line = 0; line < 40; ++line)
        beat =
            made::sum(beat, made::sine(0.15 * even(bits), 3 + 700 * even(bits), rateHz, n, 7 * even(bits)));
    std::vector<double> x = made::noise(n, 0.1, seed + 5000);
    for (std::size_t i = 0; i < n; ++i)
        x[i] *= beat[i];
    return x;
}

TEST(EValue, MeanOverStrongUnrelatedLinesIsAtMostOne) {
    const Machine machine = made::motor();
    ByElement e;
    for (std::uint64_t seed = 1; seed <= 150; ++seed)
        addWeights(machine, made::recordingOf(beating(12800, 6400, seed), 6400, 1480 + double(seed % 8)), e);
    expectEValues(e);
}

}  // namespace
}  // namespace fettle
