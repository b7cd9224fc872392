// Causes by pattern: the table is whole and sourced, shares add up, and textbook patterns lead where
// textbooks say (signatures as in ISO 13373-3:2015, cited by title, from memory).
#include "core/diagnosis/cause_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "core/diagnosis/cause_pattern.h"
#include "core/diagnosis/examine.h"
#include "core/diagnosis/shaft_faults.h"
#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

using ::testing::ElementsAre;

class Causes : public ::testing::Test {
  protected:
    void SetUp() override {
        auto loaded = CauseTable::load();
        ASSERT_TRUE(loaded) << loaded.error().sentence();
        table_ = std::move(*loaded);
    }
    std::string likeliest(const std::vector<CauseFeature>& features) const {
        return table_.causes()[table_.sharesOf(features).largest()].fault;
    }
    double share(const std::string& fault, const std::vector<CauseFeature>& features) const {
        const CauseShares shares = table_.sharesOf(features);
        for (std::size_t i = 0; i < shares.shares.size(); ++i)
            if (table_.causes()[i].fault == fault) return shares.shares[i];
        return -1;
    }
    CauseTable table_;
};

TEST_F(Causes, AreTheSevenOfTheShaft) {
    std::vector<std::string> faults;
    double priors = 0;
    for (const Cause& cause : table_.causes()) {
        faults.push_back(cause.fault);
        priors += cause.prior;
        EXPECT_FALSE(cause.test.empty());
    }
    EXPECT_THAT(faults, ElementsAre("unbalance", "misalignment", "bent_shaft", "looseness", "soft_foot",
                                    "resonance", "rub"));
    EXPECT_NEAR(priors, 1, 1e-12);
    for (const char* possible : {"bent_shaft", "soft_foot", "resonance", "rub"})
        EXPECT_TRUE(table_.cause(possible)->neverNamed) << possible;
    EXPECT_EQ(table_.cause("gear_mesh"), nullptr);
}

TEST_F(Causes, SharesAddUpToOneAndRowsAreCappedAndSourced) {
    const std::vector<CauseFeature> features = {
        {"two_over_one", 3}, {"three_over_one", -3}, {"axial_over_radial", 4}, {"one_share", 0.3},
        {"high_orders", 5},  {"half_orders", 2},     {"one_direction", 13},    {"rest_share", 0.6},
        {"speed_power", 7},  {"load_follow", 0.9},   {"warm_follow", 0.9},     {"not in the table", 1}};
    const CauseShares shares = table_.sharesOf(features);
    EXPECT_NEAR(std::accumulate(shares.shares.begin(), shares.shares.end(), 0.0), 1, 1e-12);
    EXPECT_EQ(shares.rows.size(), features.size() - 1);
    for (const CauseRow& row : shares.rows) {
        EXPECT_FALSE(row.source.empty()) << row.words;
        ASSERT_EQ(row.dban.size(), table_.causes().size());
        for (const double dban : row.dban)
            EXPECT_LE(std::abs(dban), 10);
    }
}

TEST_F(Causes, WithoutAFeatureThePriorSpeaks) {
    const CauseShares shares = table_.sharesOf({});
    for (std::size_t i = 0; i < shares.shares.size(); ++i)
        EXPECT_NEAR(shares.shares[i], table_.causes()[i].prior, 1e-12);
}

TEST_F(Causes, TextbookPatternsLeadWhereTextbooksSay) {
    const std::vector<CauseFeature> pure = {{"two_over_one", -20}, {"three_over_one", -25},
                                            {"one_share", 0.97},   {"high_orders", 0},
                                            {"half_orders", 0},    {"axial_over_radial", -15}};
    EXPECT_EQ(likeliest(pure), "unbalance");
    auto oneWay = pure;
    oneWay.push_back({"one_direction", 15});
    oneWay.push_back({"speed_power", 8});
    EXPECT_EQ(likeliest(oneWay), "resonance");
    EXPECT_EQ(
        likeliest({{"two_over_one", 3}, {"axial_over_radial", 1}, {"high_orders", 1}, {"half_orders", 0}}),
        "misalignment");
    EXPECT_EQ(
        likeliest({{"high_orders", 6}, {"half_orders", 2}, {"two_over_one", -5}, {"three_over_one", -6}}),
        "looseness");
    // 1x high along the shaft, hardly any 2x: a bend and angular misalignment are hard to part.
    const std::vector<CauseFeature> axial = {
        {"two_over_one", -9}, {"axial_over_radial", 3}, {"one_share", 0.8}};
    EXPECT_GT(share("bent_shaft", axial), 0.1);
    EXPECT_LT(share("unbalance", axial), 0.1);
}

TEST_F(Causes, HeatAndLoadSpeakForAlignment) {
    const std::vector<CauseFeature> before = {{"two_over_one", -4}};
    auto after = before;
    after.push_back({"load_follow", 0.8});
    EXPECT_GT(share("misalignment", after), share("misalignment", before));
    EXPECT_LT(share("unbalance", after), share("unbalance", before));
}

// Simulated recordings of each cause the simulator knows, three seeds each, severities from clear up: the
// pattern's likeliest cause.
TEST_F(Causes, SimulatedCausesAreTheLikeliest) {
    const Machine machine = made::fanSet();
    for (const char* kind : {"unbalance", "misalignment", "looseness"})
        for (const double severity : {0.6, 0.9})
            for (const std::uint64_t seed : {3u, 7u, 11u}) {
                const auto setup = made::with(made::setupOf(machine, seed), kind, "driver", severity);
                const auto examined = examine(machine, {made::made(setup).recording});
                ASSERT_TRUE(examined);
                const Hypothesis* best = nullptr;
                double total = 0;
                for (const Hypothesis& h : examined->considered) {
                    if (!h.causeShare) continue;
                    total += *h.causeShare;
                    if (!best || *h.causeShare > *best->causeShare) best = &h;
                }
                ASSERT_TRUE(best);
                EXPECT_NEAR(total, 1, 1e-9);
                EXPECT_EQ(best->fault, kind) << severity << " " << seed << " " << *best->causeShare;
            }
}

// Six blades on the motor's shaft stand at 6x and 12x, twice the mains of four poles beside 4x.
TEST(CausePattern, OrdersOfTheMachinesOwnLinesSayNothingOfTheShaft) {
    const Machine fan = made::machineOf(
        R"({ "tag": "T-6", "mains_hz": 50, "driver": { "power_kw": 75, "poles": 4, "rated_rpm": 1484 },
        "driven": { "kind": "fan", "blades": 6 },
        "points": [ { "id": "M", "at": "driver DE", "channels": [ { "name": "x" } ] } ] })");
    EXPECT_EQ(highOrdersName(ownOrders(fan)), "orders 4-10 but 4, 6");
    EXPECT_EQ(halfOrdersName(ownOrders(fan)), "half orders over floor");
    const auto highOf = [&](const std::string& kind, const std::string& at, double severity) {
        const auto setup = made::with(made::setupOf(fan, 3), kind, at, severity);
        const auto prepared = prepare(fan, made::made(setup).recording, {});
        return shaftPattern(fan, prepared).channels.at(0).highMmS();
    };
    const double sound = highOf("blade_pass", "driven", 0);
    EXPECT_LT(highOf("blade_pass", "driven", 1), 1.3 * sound);
    EXPECT_LT(highOf("electrical_2x_mains", "driver", 1), 1.3 * sound);
    EXPECT_GT(highOf("looseness", "driver", 1), 3 * sound);
}

// Rough flow shakes at 0.4x of the pump's shaft and about it: noise about a half order is none.
TEST(CausePattern, RoughFlowDrawsNoHalfOrders) {
    const Machine pump = made::machineOf(
        R"({ "tag": "T-7", "mains_hz": 50, "driver": { "power_kw": 75, "poles": 4, "rated_rpm": 1484 },
        "driven": { "kind": "pump" },
        "points": [ { "id": "M", "at": "driven DE", "channels": [ { "name": "x" } ] } ] })");
    const auto halfOf = [&](const std::string& kind, double severity) {
        const auto setup = made::with(made::setupOf(pump, 3, 8), kind, "driven", severity);
        const auto prepared = prepare(pump, made::made(setup).recording, {});
        return shaftPattern(pump, prepared).channels.at(0).halfMmS();
    };
    EXPECT_LT(halfOf("flow", 1), 0.3 * halfOf("looseness", 1));
}

// Two-pole motor with its only point on the pump: whose unbalance it is cannot be said.
TEST(CausePattern, AMotorWithoutAPointIsBlindToItsOwnShaftFaults) {
    const Machine pump = made::machineOf(
        R"({ "tag": "T-8", "mains_hz": 50, "driver": { "poles": 2 }, "driven": { "kind": "pump" },
        "points": [ { "id": "P", "at": "driven DE", "channels": [ { "name": "x" } ] } ] })");
    ASSERT_EQ(shaftBlindSpots(pump).size(), 2u);
    EXPECT_EQ(shaftBlindSpots(pump)[0].at, "driver");
    EXPECT_TRUE(shaftBlindSpots(made::motor()).empty());
}

// Twice the shaft of a two-pole motor at hardly any load lies within a bin of twice the mains: not judged.
TEST(CausePattern, LeavesOutWhatTheRecordCannotPart) {
    constexpr double kRate = 6400, kMains = 50;
    const Machine machine = made::motor();
    const auto hasTwo = [&](double shaftHz) {
        const auto g = made::sum(made::noise(std::size_t(kRate * 2), 0.002, 1),
                                 made::sine(made::peakG(3, shaftHz), shaftHz, kRate, std::size_t(kRate * 2)));
        const auto prepared = prepare(machine, made::recordingOf(g, kRate, shaftHz * 60), {});
        const ShaftPattern pattern = shaftPattern(machine, prepared);
        return std::any_of(pattern.features.begin(), pattern.features.end(),
                           [](const CauseFeature& f) { return f.key == "two_over_one"; });
    };
    EXPECT_TRUE(hasTwo(24.7));
    EXPECT_FALSE(hasTwo(kMains - 0.3));
}

}  // namespace
}  // namespace fettle
