// Grid as clock: nodes made by hand on a grid that wanders as a first-order process, 20 mHz r.m.s. with a
// time constant of an hour (the order of what interconnected networks do; from memory). Truth known, so every
// error is.
#include "core/round/grid_clock.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "core/trend/daily.h"

namespace fettle {
namespace {

using std::chrono::hours;
using std::chrono::minutes;
using testing::HasSubstr;

const Instant kStart = *parseUtc("2026-05-04T00:00:00Z");

// Minute by minute.
class Grid {
  public:
    explicit Grid(unsigned seed, int days = 9, double sigmaHz = 0.02) {
        std::mt19937 bits(seed);
        std::normal_distribution<double> normal;
        double x = 0;
        const double keep = std::exp(-1.0 / 60);
        for (int i = 0; i < days * 24 * 60; ++i) {
            x = keep * x + sigmaHz * std::sqrt(1 - keep * keep) * normal(bits);
            hz_.push_back(50 + x);
        }
    }
    double at(Instant time) const {
        return hz_.at(std::size_t((time - kStart + hours(24)) / minutes(1)));  // begins a day before
    }

  private:
    std::vector<double> hz_;
};

struct Node {
    double rateError = 0;
    minutes ahead{0};
    int everyMin = 20, minute = 0, days = 7;
    double noiseHz = 0.003;
};

GridNode heard(const Grid& grid, const Node& node, unsigned seed) {
    std::mt19937 bits(seed);
    std::normal_distribution<double> noise(0, node.noiseHz);
    GridNode out;
    for (int m = node.minute; m < node.days * 24 * 60; m += node.everyMin) {
        const Instant truly = kStart + minutes(m);
        out.readings.push_back(
            {truly + node.ahead, (grid.at(truly) + noise(bits)) * (1 + node.rateError), 0.005});
    }
    return out;
}

std::vector<GridNode> site(const Grid& grid, std::size_t count, Node like = {}) {
    std::vector<GridNode> nodes;
    for (std::size_t i = 0; i < count; ++i) {
        Node node = like;
        node.minute = int(7 * i) % node.everyMin;
        nodes.push_back(heard(grid, node, unsigned(100 + i)));
    }
    return nodes;
}

TEST(GridClock, ARateNearlyTwoPerCentOffStandsOutAgainstItsNeighbours) {
    const Grid grid(1);
    Node daily;
    daily.everyMin = 24 * 60;
    std::vector<GridNode> nodes = site(grid, 8, daily);
    daily.rateError = 0.019;
    daily.minute = 13 * 60;
    nodes.push_back(heard(grid, daily, 9));
    const auto verdicts = askGrid(nodes, kStart);
    for (std::size_t i = 0; i < 8; ++i)
        EXPECT_FALSE(verdicts[i].rate->off) << i << ": " << verdicts[i].rate->error;
    const RateError& rate = *verdicts[8].rate;
    EXPECT_TRUE(rate.off);
    EXPECT_LE(std::abs(rate.error - 0.019), rate.plusMinus);
    EXPECT_LT(rate.plusMinus, 0.001);
    EXPECT_EQ(rate.neighbours, 8u);
    EXPECT_TRUE(rate.sinceFirst);
    EXPECT_THAT(rateWords(rate), HasSubstr("too high against the grid of 8 neighbours of the same day"));
    EXPECT_EQ(rateWords(*verdicts[0].rate), "");
}

TEST(GridClock, NodesThatRecordTogetherAreHeldAgainstTheSameTenMinutes) {
    const Grid grid(2);
    std::vector<GridNode> nodes = site(grid, 6);
    nodes.push_back(heard(grid, {-0.0025}, 5));  // a quarter of a per cent: within what a grid does
    const RateError rate = *askGrid(nodes, kStart)[6].rate;
    EXPECT_TRUE(rate.off);
    EXPECT_EQ(rate.within, minutes(10));
    EXPECT_NEAR(rate.error, -0.0025, 1e-4);
    EXPECT_THAT(rateWords(rate), HasSubstr("too low"));
}

TEST(GridClock, TheDaySinceWhenItHasBeenOff) {
    const Grid grid(3);
    std::vector<GridNode> nodes = site(grid, 6);
    Node sound, off;
    off.rateError = 0.01;
    const GridNode before = heard(grid, sound, 5), after = heard(grid, off, 5);
    nodes.push_back(before);
    for (std::size_t i = 0; i < before.readings.size(); ++i)
        if (before.readings[i].time >= kStart + hours(4 * 24)) nodes[6].readings[i] = after.readings[i];
    const auto verdicts = askGrid(nodes, kStart + hours(5 * 24));
    ASSERT_TRUE(verdicts[6].rate->off);
    EXPECT_EQ(*verdicts[6].rate->since, dayOf(kStart) + 4);
    EXPECT_FALSE(verdicts[6].rate->sinceFirst);
    EXPECT_THAT(rateWords(*verdicts[6].rate), HasSubstr("since 2026-05-08"));
}

TEST(GridClock, AloneANodeIsHeldAgainstTheGridsNameAndWhatAGridMayDo) {
    const Grid grid(4);
    for (const double error : {0.003, 0.012}) {
        Node node;
        node.rateError = error;
        const std::vector<GridNode> nodes{heard(grid, node, 1)};
        const RateError rate = *askGrid(nodes, kStart)[0].rate;
        EXPECT_EQ(rate.neighbours, 0u);
        EXPECT_EQ(rate.off, error > 0.01);  // a grid may be 0.4 % off
    }
}

TEST(GridClock, NodesThatAgreeOnlyLooselySayLessSurely) {
    const Grid grid(5);
    std::vector<GridNode> nodes;
    for (int i = 0; i < 6; ++i) {
        Node node;
        node.rateError = 0.004 * (i - 2.5);  // cheap clocks, a per cent apart
        nodes.push_back(heard(grid, node, unsigned(i)));
    }
    nodes.push_back(heard(grid, {0.002}, 9));
    const RateError rate = *askGrid(nodes, kStart)[6].rate;
    EXPECT_GT(rate.plusMinus, 0.004);
    EXPECT_FALSE(rate.off);
}

TEST(GridClock, GridsOfDifferentNameAreNotOneGrid) {
    const Grid grid(6);
    std::vector<GridNode> nodes = site(grid, 5);
    GridNode other = nodes[0];
    other.nominalHz = 60;
    for (GridReading& reading : other.readings)
        reading.hz *= 1.2;
    nodes.push_back(other);
    const RateError rate = *askGrid(nodes, kStart)[5].rate;
    EXPECT_EQ(rate.neighbours, 0u);
    EXPECT_FALSE(rate.off);
}

TEST(GridClock, NothingReadNothingSaid) {
    const auto verdicts = askGrid(std::vector<GridNode>(3), kStart);
    EXPECT_FALSE(verdicts[0].rate);
    EXPECT_FALSE(verdicts[0].clock);
}

TEST(GridClock, ANodeOnSummerTimeFollowsTheGridOfAnotherHour) {
    for (const int ahead : {60, -120}) {
        const Grid grid(7);
        std::vector<GridNode> nodes = site(grid, 12);
        Node node;
        node.ahead = minutes(ahead);
        node.rateError = 0.01;  // a wrong rate as well hides nothing
        nodes.push_back(heard(grid, node, 5));
        const auto verdicts = askGrid(nodes, kStart);
        ASSERT_TRUE(verdicts[12].clock) << ahead;
        EXPECT_EQ(verdicts[12].clock->ahead, minutes(ahead));
        EXPECT_GT(verdicts[12].clock->likeness, 0.9);
        for (std::size_t i = 0; i < 12; ++i)
            EXPECT_FALSE(verdicts[i].clock) << i;
    }
}

TEST(GridClock, AGridThatHardlyMovesShowsNoClock) {
    const Grid still(8, 9, 0.001);
    std::vector<GridNode> nodes = site(still, 12);
    Node node;
    node.ahead = minutes(60);
    node.noiseHz = 1e-4;
    nodes.push_back(heard(still, node, 5));
    EXPECT_FALSE(askGrid(nodes, kStart)[12].clock);
}

// 40 sites of 8 sound nodes over two days, coarse readings: 320 questions, 289 other hours each.
TEST(GridClock, SoundClocksAreNotCalledWrong) {
    std::size_t clocks = 0, rates = 0;
    for (unsigned seed = 0; seed < 40; ++seed) {
        const Grid grid(1000 + seed);
        Node coarse;
        coarse.noiseHz = 0.03;
        coarse.days = 2;
        for (const GridVerdict& verdict : askGrid(site(grid, 8, coarse), kStart)) {
            clocks += verdict.clock.has_value();
            rates += verdict.rate && verdict.rate->off;
        }
    }
    EXPECT_EQ(clocks, 0u);
    EXPECT_EQ(rates, 0u);
}

}  // namespace
}  // namespace fettle
