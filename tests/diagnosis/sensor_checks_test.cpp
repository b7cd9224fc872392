// Faults of the sensor and of the record, each on a record that has it, and none on noise that has nothing.
#include "core/diagnosis/sensor_checks.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

using ::testing::Contains;
using ::testing::IsEmpty;
using ::testing::Not;

constexpr double kNodeRateHz = 6400;

struct Checked {
    std::vector<std::string> codes;
    bool unfit = false;
    std::vector<QualityNote> notes;
};

// As a channel of a point that lists it, or of one that does not.
Checked check(const std::vector<double>& g, double fullScale = 0, std::optional<double> range = std::nullopt,
              bool listed = true, double rateHz = kNodeRateHz) {
    static const PointChannel described{"x", "acceleration", "g", "horizontal"};
    Point point;
    point.id = "P";
    point.range = range;
    ChannelRole role{&point, listed ? &described : nullptr, "acceleration", 1};
    const Channel channel{"x", "P", "g", rateHz, g, fullScale};
    const ChannelViews views = makeViews(g, rateHz, 150, {});
    const SensorCheck found = checkSensor(channel, role, &views);
    Checked out{{}, found.unfit, found.notes};
    for (const QualityNote& note : found.notes) {
        out.codes.push_back(note.code);
        EXPECT_EQ(note.channel, "x");
        EXPECT_NE(note.detail, "");
    }
    return out;
}

std::vector<double> rounded(std::vector<double> g, double step) {
    for (double& value : g)
        value = std::round(value / step) * step;
    return g;
}

std::vector<double> limited(std::vector<double> g, double most) {
    for (double& value : g)
        value = std::clamp(value, -most, most);
    return g;
}

TEST(SensorChecks, GaussianNoisePassesThemAll) {
    for (const std::size_t n : {256u, 300u, 1000u, 6400u, 25600u, 200000u})
        for (std::uint64_t seed = 1; seed <= 8; ++seed) {
            const auto g = made::noise(n, 0.2, seed);
            EXPECT_THAT(check(g).codes, IsEmpty()) << n << " samples, seed " << seed;
            EXPECT_FALSE(check(g).unfit);
        }
}

// The same through a 16-bit converter of 16 g: 0.2 g is 400 steps.
TEST(SensorChecks, GaussianNoiseInStepsOfAConverterPassesToo) {
    for (std::uint64_t seed = 1; seed <= 8; ++seed)
        for (const double sigma : {0.01, 0.2, 2.0})
            EXPECT_THAT(check(rounded(made::noise(51200, sigma, seed), 16.0 / 32768), 16, 16).codes,
                        IsEmpty())
                << sigma << " g, seed " << seed;
}

TEST(SensorChecks, ALimitedRecordIsClipped) {
    const auto loud = made::noise(25600, 1, 1);
    EXPECT_THAT(check(limited(loud, 2)).codes, Contains("clipped"));
    std::vector<double> oneSided = loud;
    for (double& value : oneSided)
        value = std::min(value, 1.8);
    EXPECT_THAT(check(oneSided).codes, Contains("clipped"));
    EXPECT_THAT(check(limited(made::sine(3, 25, kNodeRateHz, 25600), 2)).codes, Contains("clipped"));
}

TEST(SensorChecks, ARecordAtTheEndOfItsRangeIsClipped) {
    auto g = made::noise(25600, 1, 2);
    g[100] = 16;
    EXPECT_THAT(check(g, 0, 16).codes, Contains("clipped"));
    EXPECT_THAT(check(g, 16).codes, Contains("clipped"));
    EXPECT_THAT(check(g, 0, 32).codes, Not(Contains("clipped")));
}

TEST(SensorChecks, AFlatRecordIsFlatAndUnfit) {
    for (const double level : {0.0, 1.0}) {
        const Checked checked = check(std::vector<double>(6400, level));
        EXPECT_THAT(checked.codes, Contains("flat"));
        EXPECT_TRUE(checked.unfit);
    }
}

// A radio link that repeats the last sample it has.
TEST(SensorChecks, RepeatedSamplesAreHeld) {
    auto g = made::noise(25600, 0.2, 3);
    for (std::size_t gap = 1000; gap < 25000; gap += 2000)
        for (std::size_t i = 0; i < 80; ++i)
            g[gap + i] = g[gap];
    EXPECT_THAT(check(g).codes, Contains("held"));
    EXPECT_FALSE(check(g).unfit);
}

TEST(SensorChecks, AFewStepsAreCoarse) {
    EXPECT_THAT(check(rounded(made::noise(25600, 0.2, 4), 0.125)).codes, Contains("coarse"));
    EXPECT_THAT(check(rounded(made::sine(0.5, 25, kNodeRateHz, 25600), 0.1)).codes, Contains("coarse"));
}

// A drifting integrator: its error is a random walk, which rises ever steeper towards 0 Hz.
TEST(SensorChecks, ADriftingSensorIsASkiSlope) {
    const auto steps = made::noise(25600, 0.005, 5);
    auto g = made::noise(25600, 0.005, 6);
    double walk = 0;
    for (std::size_t i = 0; i < g.size(); ++i)
        g[i] += (walk += steps[i]);
    EXPECT_THAT(check(g).codes, Contains("ski_slope"));
}

// A node off its seat swings on one edge.
TEST(SensorChecks, ALooseNodeIsASkiSlope) {
    const Machine machine = made::motor();
    const auto made = made::made(made::with(made::setupOf(machine, 8), "loose_node", "driver DE", 1));
    std::vector<std::string> codes;
    for (const QualityNote& note : prepare(machine, made.recording, {}).facts.quality)
        codes.push_back(note.code);
    EXPECT_THAT(codes, Contains("ski_slope"));
}

TEST(SensorChecks, ASlowMachineIsNotASkiSlope) {
    auto g = made::noise(51200, 0.02, 6);
    g = made::sum(g, made::sine(made::peakG(2, 5), 5, kNodeRateHz, g.size()));  // 300 r/min, 2 mm/s
    g = made::sum(g, made::sine(made::peakG(1, 15), 15, kNodeRateHz, g.size()));
    EXPECT_THAT(check(g).codes, Not(Contains("ski_slope")));
}

TEST(SensorChecks, AChannelNobodyDescribedIsNamed) {
    EXPECT_THAT(check(made::noise(25600, 0.2, 7), 0, std::nullopt, false).codes, Contains("unknown_channel"));
}

TEST(SensorChecks, TooFewSamplesForASpectrumAreShortAndUnfit) {
    for (const std::size_t n : {1u, 2u, 30u, 255u}) {
        const Checked checked = check(made::noise(n, 0.2, 8));
        EXPECT_TRUE(checked.unfit) << n;
        EXPECT_THAT(checked.codes, Contains(n == 1 ? "flat" : "short")) << n;
    }
}

// Simulated nodes of every build: what the node does wrong is named, what it does right is not.
TEST(SensorChecks, ASimulatedNodeInItsRangePassesAndOutOfItIsClipped) {
    const Machine machine = made::motor();
    auto setup = made::with(made::setupOf(machine, 9), "bearing_outer_race", "driver DE", 0.75);
    const auto codesOf = [&] {
        std::vector<std::string> codes;
        for (const QualityNote& note : prepare(machine, made::made(setup).recording, {}).facts.quality)
            codes.push_back(note.code);
        return codes;
    };
    EXPECT_THAT(codesOf(), IsEmpty());
    setup.node.rangeG = 0.15;
    EXPECT_THAT(codesOf(), Contains("clipped"));
}

}  // namespace
}  // namespace fettle
