// A machine of known natural frequencies swept by an inverter: orders with a force that grows with the square
// of speed, heard through one spring, mass and damper each (any textbook of vibration: velocity for a force
// goes with w / sqrt((w0^2 - w^2)^2 + (2 d w0 w)^2)). Spectra of 800 lines to 1 kHz as they are stored.
#include "core/trend/resonance_map.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace fettle {
namespace {

using testing::HasSubstr;

struct Mode {
    double hz = 0, damping = 0.05;
};

double response(const std::vector<Mode>& modes, double hz) {
    double sum = modes.empty() ? 1 : 0;
    for (const Mode& mode : modes)
        sum += mode.hz * hz / std::hypot(mode.hz * mode.hz - hz * hz, 2 * mode.damping * mode.hz * hz);
    return sum;
}

struct Swept {
    std::vector<Mode> modes = {};
    double leastRpm = 900, mostRpm = 1450, fixedHz = 0, fixedMmS = 0;
    int recordings = 200;
    unsigned seed = 1;
};

std::vector<SpeedSpectrum> heard(const Swept& swept) {
    std::mt19937 chance(swept.seed);
    std::uniform_real_distribution<double> speed(swept.leastRpm, swept.mostRpm);
    std::normal_distribution<double> swingDb(0, 1);  // of an order from recording to recording
    std::exponential_distribution<double> noise(1);
    std::vector<SpeedSpectrum> all;
    for (int i = 0; i < swept.recordings; ++i) {
        SpeedSpectrum one{speed(chance), 1000, std::vector<float>(800)};
        for (float& line : one.lines)
            line = float(0.004 * std::sqrt(noise(chance)));
        const auto add = [&](double hz, double mmS) {
            float& line = one.lines[std::size_t(hz / 1.25)];
            line = std::max(line, float(mmS));
        };
        const double shaftHz = one.rpm / 60;
        for (int order = 1; order <= 8; ++order)
            add(order * shaftHz, 0.6 / order * std::pow(shaftHz / 24, 2) *
                                     response(swept.modes, order * shaftHz) *
                                     std::pow(10, swingDb(chance) / 20));
        if (swept.fixedHz > 0) add(swept.fixedHz, swept.fixedMmS);
        all.push_back(std::move(one));
    }
    return all;
}

ResonanceMap mapOf(const Swept& swept) {
    return resonanceMap({{"P x", heard(swept)}}, 720, 1490);
}

TEST(ResonanceMap, FindsANaturalFrequencyWithinABin) {
    const ResonanceMap map = mapOf({.modes = {{62, 0.06}}});
    ASSERT_EQ(map.lacking, "");
    ASSERT_EQ(map.resonances.size(), 1u);
    const Resonance& found = map.resonances.front();
    // A bin of speed is as wide as its step times the order.
    const double bin = found.crossings.front().order * 20.0 / 60;
    EXPECT_NEAR(found.hz, 62, bin);
    EXPECT_NEAR(found.sharpness, 1 / (2 * 0.06), 3);  // Q = 1 / (2 d), half-power points
    EXPECT_EQ(found.crossings.front().order, 3);
    EXPECT_GT(map.bands.front().riseDb, 3);
    EXPECT_GT(map.bands.front().recordings, 10u);
    EXPECT_LT(map.bands.front().fromRpm, 1240);
    EXPECT_GT(map.bands.front().toRpm, 1240);  // 62 Hz / 3
}

// At 110 Hz orders 5 (1320 r/min) and 6 (1100 r/min) and 7 (943) pass.
TEST(ResonanceMap, SeveralOrdersSupportOneFrequency) {
    const ResonanceMap map = mapOf({.modes = {{110, 0.04}}, .seed = 3});
    ASSERT_EQ(map.resonances.size(), 1u);
    EXPECT_NEAR(map.resonances[0].hz, 110, 3);
    EXPECT_GE(map.resonances[0].orders, 2u);
    std::vector<int> orders;
    for (const SkipBand& band : map.bands)
        orders.push_back(band.order);
    EXPECT_THAT(orders, testing::IsSupersetOf({5, 6}));
}

TEST(ResonanceMap, TwoFrequenciesAreTwo) {
    const ResonanceMap map = mapOf({.modes = {{36, 0.04}, {110, 0.04}}, .seed = 4});
    std::vector<double> hz;
    for (const Resonance& one : map.resonances)
        hz.push_back(one.hz);
    EXPECT_THAT(hz, testing::UnorderedElementsAre(testing::DoubleNear(36, 1.5), testing::DoubleNear(110, 3)));
}

TEST(ResonanceMap, AMachineWithoutOneShowsNone) {
    for (unsigned seed = 1; seed <= 20; ++seed) {
        const ResonanceMap map = mapOf({.modes = {}, .seed = seed});
        ASSERT_EQ(map.lacking, "");
        EXPECT_TRUE(map.resonances.empty()) << seed << ": " << map.resonances[0].hz << " Hz";
    }
}

// 50 Hz from a neighbour: order 3 passes it at 1000 r/min and order 2 does not reach it.
TEST(ResonanceMap, ALineThatIsAlwaysThereIsNoResonance) {
    const ResonanceMap map = mapOf({.modes = {}, .fixedHz = 50.5, .fixedMmS = 1.5});
    EXPECT_TRUE(map.resonances.empty());
    ASSERT_EQ(map.fixed.size(), 1u);
    EXPECT_NEAR(map.fixed[0].hz, 50.5, 2);
    EXPECT_NEAR(map.fixed[0].level, 1.5, 1e-6);
}

TEST(ResonanceMap, SaysWhatWasNeverRun) {
    auto low = heard({.modes = {{62, 0.06}}, .leastRpm = 900, .mostRpm = 1100, .recordings = 100});
    const auto high =
        heard({.modes = {{62, 0.06}}, .leastRpm = 1200, .mostRpm = 1400, .recordings = 100, .seed = 2});
    low.insert(low.end(), high.begin(), high.end());
    const ResonanceMap map = resonanceMap({{"P x", low}}, 720, 1490);
    ASSERT_EQ(map.unseen.size(), 4u);
    EXPECT_THAT(map.unseen[0], HasSubstr("720 to"));
    EXPECT_THAT(map.unseen[1], HasSubstr("1100 to 1200"));
    EXPECT_THAT(map.unseen[2], HasSubstr("to 1490"));
}

TEST(ResonanceMap, AFixedSpeedHasNotEnoughSpeeds) {
    const ResonanceMap fixed = mapOf({.leastRpm = 1476, .mostRpm = 1484});
    EXPECT_THAT(fixed.lacking, HasSubstr("not enough speeds: 200 recordings between 1476 and 1484 r/min"));
    EXPECT_TRUE(fixed.bands.empty());
    EXPECT_THAT(mapOf({.recordings = 8}).lacking, HasSubstr("not enough speeds"));
    EXPECT_THAT(resonanceMap({}).lacking, HasSubstr("not enough speeds"));
}

TEST(ResonanceMap, GathersMedianAndLargestByBinsWithTheirCounts) {
    std::vector<SpeedSpectrum> spectra;
    for (const float level : {1.0F, 2.0F, 9.0F})
        spectra.push_back({1001, 1000, std::vector<float>(800, level)});
    spectra.push_back({1142, 1000, std::vector<float>(800, 4.0F)});
    spectra.push_back({1143, 500, std::vector<float>(400, 7.0F)});  // does not fit the grid
    const ResonanceMap map = resonanceMap({{"P x", spectra}});
    ASSERT_EQ(map.channels.size(), 1u);
    const SpeedMap& grid = map.channels[0];
    ASSERT_EQ(grid.bins.size(), 2u);
    EXPECT_EQ(grid.bins[0].count, 3u);
    EXPECT_EQ(grid.bins[1].count, 1u);
    EXPECT_EQ(grid.middle[0], 2.0F);
    EXPECT_EQ(grid.most[799], 9.0F);
    EXPECT_EQ(grid.most[800], 4.0F);
}

}  // namespace
}  // namespace fettle
