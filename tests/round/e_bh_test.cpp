// e-BH: by hand from its definition, and the bound it promises by simulation of chance machines.
#include "core/round/e_bh.h"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <limits>
#include <random>

#include "tests/round/made_weeks.h"

namespace fettle {
namespace {

constexpr double kInf = std::numeric_limits<double>::infinity();
constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();

std::vector<double> weightsOf(const std::vector<double>& eValues) {
    std::vector<double> weights;
    for (const double e : eValues)
        weights.push_back(made::dban(e));
    return weights;
}

using Listed = std::vector<bool>;

// Definition (Wang and Ramdas 2022, section 4): with e[k] the k-th largest of K, list the k* largest where
// k* = max {k: k e[k] / K >= 1 / alpha}. Worked by hand for K = 5, alpha = 0.1: e[1] needs 50, e[2] 25,
// e[3] 16.67, e[4] 12.5, e[5] 10.
TEST(EBh, FollowsItsDefinition) {
    EXPECT_EQ(eBh(weightsOf({50, 1, 1, 1, 1}), 0.1).listed, Listed({true, false, false, false, false}));
    EXPECT_EQ(eBh(weightsOf({49, 1, 1, 1, 1}), 0.1).listed, Listed(5, false));
    EXPECT_EQ(eBh(weightsOf({1, 26, 1, 25, 0.1}), 0.1).listed, Listed({false, true, false, true, false}));
    // None of the first four steps holds; the fifth does, so all are listed.
    EXPECT_EQ(eBh(weightsOf({10, 11, 12, 10, 10}), 0.1).listed, Listed(5, true));
    EXPECT_EQ(eBh(weightsOf({24, 24, 17, 12, 9}), 0.1).listed, Listed({true, true, true, false, false}));
}

TEST(EBh, SaysWhatAMachineNeedsNow) {
    EXPECT_NEAR(eBh(weightsOf({1, 1, 1, 1, 1}), 0.1).needsDban, made::dban(50), 1e-9);
    EXPECT_NEAR(eBh(weightsOf({24, 24, 17, 12, 9}), 0.1).needsDban, made::dban(5 / 0.3), 1e-9);
    EXPECT_NEAR(eBh({}, 0.1).needsDban, 10, 1e-9);
    EXPECT_TRUE(eBh({}, 0.1).listed.empty());
}

TEST(EBh, WeightsWithoutMeasureAndWithoutNumber) {
    const std::vector<double> weights = {3000, -kInf, kNaN, 3000, -3000, kInf};
    EXPECT_EQ(eBh(weights, 0.1).listed, Listed({true, false, false, true, false, true}));
    EXPECT_EQ(eBh(std::vector<double>{kNaN}, 0.1).listed, Listed({false}));
    EXPECT_EQ(eBh(std::vector<double>{20.0}, 0).listed, Listed({false}));
    EXPECT_EQ(eBh(std::vector<double>{10.0}, 0.1).listed, Listed({true}));  // exactly what it needs
}

// Uniform numbers that are the same with every library: std's distributions need not be.
class Chance {
  public:
    explicit Chance(std::uint64_t seed) : random_(seed) {}
    double uniform() { return (double(random_() >> 11) + 0.5) / 9007199254740992.0; }

  private:
    std::mt19937_64 random_;
};

// Mean share of chance entries over `rounds` rounds of `chance` chance machines, whose e-values `draw` fills,
// and `sure` true faults of 60 decibans.
double meanShare(std::size_t rounds, std::size_t chance, std::size_t sure, std::span<const double> priors,
                 const std::function<void(std::vector<double>&)>& draw) {
    double sum = 0;
    for (std::size_t r = 0; r < rounds; ++r) {
        std::vector<double> weights(chance);
        draw(weights);
        weights.resize(chance + sure, 60);
        for (std::size_t i = 0; i < priors.size(); ++i)
            weights[i] += priors[i];
        const std::vector<bool> listed = eBh(weights, 0.1).listed;
        const auto wrong = double(std::count(listed.begin(), listed.begin() + std::ptrdiff_t(chance), true));
        const auto all = double(std::count(listed.begin(), listed.end(), true));
        sum += all > 0 ? wrong / all : 0;
    }
    return sum / double(rounds);
}

constexpr std::size_t kRounds = 20000;
constexpr double kSpread = 3 * 0.3 / 141.4;  // three standard errors of a share of 0.1 over kRounds

// The hardest chance there is: e = c with probability 1/c, else 0. It comes close to the bound, so the
// simulation would see a procedure that lists more.
TEST(EBhBound, HoldsForIndependentMachinesAndIsNearlyReached) {
    Chance chance(1);
    const double c = 50 / 0.1;
    const double share = meanShare(kRounds, 50, 0, {}, [&](std::vector<double>& weights) {
        for (double& w : weights)
            w = chance.uniform() < 1 / c ? made::dban(c) : -kInf;
    });
    EXPECT_LE(share, 0.1 + kSpread);
    EXPECT_GT(share, 0.08);
}

// All machines hang on one draw (the mains, the weather): e = 10 for all of them in one round of ten.
TEST(EBhBound, HoldsForMachinesThatHangTogether) {
    Chance chance(2);
    const double share = meanShare(kRounds, 50, 0, {}, [&](std::vector<double>& weights) {
        const double e = chance.uniform() < 0.1 ? 10 : 1e-9;
        for (double& w : weights)
            w = made::dban(e);
    });
    EXPECT_LE(share, 0.1 + kSpread);
    EXPECT_GT(share, 0.08);
}

TEST(EBhBound, HoldsBesideTrueFaultsAndInGroups) {
    Chance chance(3);
    const double share = meanShare(kRounds, 40, 5, {}, [&](std::vector<double>& weights) {
        for (std::size_t i = 0; i < weights.size(); ++i)  // groups of four share a draw
            weights[i] = i % 4 ? weights[i - 1] : made::dban(chance.uniform() < 0.01 ? 100 : 0.01);
    });
    EXPECT_LE(share, 0.1 + kSpread);
    EXPECT_GT(share, 0.02);
}

// Criticality as prior weight with a mean of 1: the bound stands, even where chance is aimed at it.
TEST(EBhBound, HoldsWithPriorWeights) {
    Chance chance(4);
    std::vector<double> shares;
    for (int i = 0; i < 50; ++i)
        shares.push_back(i % 3 == 0 ? 2 : i % 3 == 1 ? 1 : 0.5);
    const std::vector<double> priors = priorsDban(shares);
    const double share = meanShare(kRounds, 50, 0, priors, [&](std::vector<double>& weights) {
        for (std::size_t i = 0; i < weights.size(); ++i) {
            const double c = 500 / std::pow(10.0, priors[i] / 10);
            weights[i] = chance.uniform() < 1 / c ? made::dban(c) : -kInf;
        }
    });
    EXPECT_LE(share, 0.1 + kSpread);
    EXPECT_GT(share, 0.08);
}

TEST(Priors, HaveAMeanOfOne) {
    const std::vector<double> priors = priorsDban(std::vector<double>{2, 1, 0.5, 0.5});
    double mean = 0;
    for (const double p : priors)
        mean += std::pow(10.0, p / 10) / 4;
    EXPECT_NEAR(mean, 1, 1e-12);
    EXPECT_NEAR(priors[0] - priors[1], made::dban(2), 1e-12);
    EXPECT_NEAR(priorsDban(std::vector<double>{7})[0], 0, 1e-12);
    EXPECT_TRUE(priorsDban({}).empty());
}

TEST(MeanDban, IsTheMeanOfEValues) {
    EXPECT_NEAR(meanDban(weightsOf({100, 1})), made::dban(50.5), 1e-9);
    EXPECT_NEAR(meanDban(weightsOf({100, 1}), std::vector<double>{1, 3}), made::dban(103 / 4.0), 1e-9);
    EXPECT_NEAR(meanDban(weightsOf({100, 1}), std::vector<double>{10, 30}), made::dban(103 / 4.0), 1e-9);
    EXPECT_NEAR(meanDban(weightsOf({100, 1}), std::vector<double>{0, 1}), 0, 1e-9);
}

TEST(MeanDban, NeitherOverflowsNorUnderflows) {
    EXPECT_NEAR(meanDban(std::vector<double>{5000, 0}), 5000 - made::dban(2), 1e-9);
    EXPECT_NEAR(meanDban(std::vector<double>{-9000, -9000}), -9000, 1e-9);
    EXPECT_NEAR(meanDban(std::vector<double>{-kInf, 20}), 20 - made::dban(2), 1e-9);
    EXPECT_EQ(meanDban(std::vector<double>{-kInf, -kInf}), -kInf);
    EXPECT_NEAR(meanDban(std::vector<double>{kNaN, 20}), 20, 1e-9);
    EXPECT_EQ(meanDban({}), 0);
    EXPECT_EQ(meanDban(std::vector<double>{20}, std::vector<double>{0}), 0);
}

}  // namespace
}  // namespace fettle
