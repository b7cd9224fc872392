#include "core/simulate/sensor.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "core/simulate/exact_math.h"
#include "core/simulate/resonator.h"
#include "tests/simulate/probe.h"
#include "tests/simulate/test_machines.h"

namespace fettle::sim {
namespace {

using namespace probe;

TEST(Clock, ErrorMovesEveryLineByTheSameShare) {
    auto setup = setupOf(fan());
    setup.node.clockError = 0.02;
    const auto recording = made(setup);
    EXPECT_DOUBLE_EQ(recording.trueRateHz, 12800 * 1.02);
    EXPECT_EQ(recording.rateHz, 12800);
    const auto find = [&](const std::string& channel, double trueHz) {
        return strongest(valuesOf(recording, channel), recording.rateHz, trueHz / 1.02, 0.3).hz;
    };
    EXPECT_NEAR(find("flux", recording.supplyHz), recording.supplyHz / 1.02, 0.01);
    EXPECT_NEAR(find("x", recording.shaftHz), recording.shaftHz / 1.02, 0.01);
    EXPECT_NEAR(find("x", 12 * recording.shaftHz), 12 * recording.shaftHz / 1.02, 0.03);
}

TEST(Range, ClipsAtBothEnds) {
    auto setup = with(setupOf(fan()), "unbalance", "driver", 1);
    setup.node.bits = 16;
    setup.node.rangeG = 0.1;
    const auto recording = made(setup);
    const auto& samples = recording.channels[0].samples;
    EXPECT_EQ(*std::max_element(samples.begin(), samples.end()), 32767);
    EXPECT_EQ(*std::min_element(samples.begin(), samples.end()), -32768);
    EXPECT_GT(std::count(samples.begin(), samples.end(), 32767), 100);
}

TEST(Quantisation, StepIsRangeOverHalfTheSteps) {
    const std::vector<double> values{0, 0.4 / 32768, 0.6 / 32768, -1.6 / 32768, 0.99999, 1, 7, -1, -9};
    const std::vector<std::int32_t> expected{0, 0, 1, -2, 32767, 32767, 32767, -32768, -32768};
    EXPECT_EQ(quantised(values, 1, 16), expected);
    EXPECT_EQ(quantised({0.5}, 2, 24), std::vector<std::int32_t>{2097152});
    EXPECT_EQ(quantised({1.5 / 32768, 2.5 / 32768}, 1, 16), (std::vector<std::int32_t>{2, 2}));
}

TEST(Quantisation, CoarseRangeLeavesFewSteps) {
    auto setup = setupOf(fan());
    setup.operation.turning = setup.operation.energised = false;
    setup.node.bits = 16;
    setup.node.rangeG = 50;
    const auto recording = made(setup);
    const std::set<std::int32_t> kinds(recording.channels[0].samples.begin(),
                                       recording.channels[0].samples.end());
    EXPECT_LE(kinds.size(), 5u);
}

// A seismic sensor on its mounting: gain 1 / (2 zeta) at resonance and + 4.17 % at a fifth of it (single
// degree of freedom; check value computed: 1 / (1 - 1/25) = 1.041667).
TEST(Mount, RingsAtItsResonance) {
    const auto gainAt = [](double hz) {
        std::vector<double> signal(64000);
        for (std::size_t i = 0; i < signal.size(); ++i)
            signal[i] = exact::sine(hz * double(i) / 64000);
        applyMount(2000, 0.05, 64000, signal);
        signal.erase(signal.begin(), signal.begin() + 32000);
        return peakAt(signal, 64000, hz);
    };
    EXPECT_NEAR(gainAt(2000), 10, 0.05);
    EXPECT_NEAR(gainAt(400), 1.041667, 0.002);
    EXPECT_NEAR(gainAt(20), 1, 0.001);
    EXPECT_LT(gainAt(8000), 0.1);
}

TEST(Noise, HasTheStatedDensity) {
    auto setup = setupOf(fan());
    setup.operation.turning = setup.operation.energised = false;
    setup.node.noisePerRtHz = 3e-4;
    EXPECT_NEAR(rmsOf(valuesOf(made(setup), "x")), 3e-4 * std::sqrt(6400.0), 3e-4);
}

TEST(Gravity, ReadsOneGUpright) {
    auto setup = setupOf(fan());
    setup.node.gravity = true;
    const auto recording = made(setup);
    EXPECT_NEAR(meanOf(valuesOf(recording, "y")), 1, 0.02);
    EXPECT_LT(std::abs(meanOf(valuesOf(recording, "x"))), 0.15);
    setup.node.gravity = false;
    EXPECT_LT(std::abs(meanOf(valuesOf(made(setup), "y"))), 0.001);
}

TEST(LooseNode, HearsLessAndSwings) {
    auto setup = setupOf(fan());
    setup.node.gravity = true;
    const auto firm = made(setup), loose = made(with(setup, "loose_node", "driver", 1));
    const double hz = firm.shaftHz;
    EXPECT_LT(peakAt(valuesOf(loose, "x"), 12800, hz), 0.7 * peakAt(valuesOf(firm, "x"), 12800, hz));
    const auto swing = [](const SimulatedRecording& r) {
        return strongest(valuesOf(r, "x"), 12800, 1.5, 1).peak - 2 * std::abs(meanOf(valuesOf(r, "x")));
    };
    EXPECT_GT(rmsOf(valuesOf(loose, "x")), 4 * rmsOf(valuesOf(firm, "x")));
    EXPECT_GT(swing(loose), swing(firm));
    EXPECT_LT(meanOf(valuesOf(loose, "y")), 0.97);
}

// The anti-alias filter ends at half the rate: a slow node cannot hear what lies above, unless it folds.
TEST(Alias, OnlyACheapNodeFoldsLinesBack) {
    auto setup = setupOf(fan());
    setup.node.rateHz = 2000;
    const double slots = 58 * made(setup).shaftHz, folded = 2000 - slots;
    const double clean = peakAt(valuesOf(made(setup), "x"), 2000, folded);
    setup.node.aliasShare = 0.5;
    EXPECT_GT(peakAt(valuesOf(made(setup), "x"), 2000, folded), 4 * clean);
}

}  // namespace
}  // namespace fettle::sim
