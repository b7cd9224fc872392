// A true fault's lines also fall where other families look: what it explains is not found a second time, and
// what it does not explain is.
#include "core/diagnosis/explain_away.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "core/diagnosis/examine.h"
#include "core/diagnosis/hypotheses.h"
#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

using ::testing::Contains;
using ::testing::Not;
using Named = std::pair<std::string, std::string>;  // fault, place

Examination examined(const sim::SimulationSetup& setup) {
    const auto result = examine(setup.machine, {made::made(setup).recording});
    EXPECT_TRUE(result);
    return result ? *result : Examination{};
}

std::set<Named> bearingFindings(const Examination& e) {
    std::set<Named> all;
    for (const Hypothesis& h : e.findings)
        if (h.weightDban) all.insert({h.fault, h.at});
    return all;
}

class Element : public ::testing::TestWithParam<const char*> {};

// Each element, by itself, on several machines: found where it is and nowhere else.
TEST_P(Element, IsFoundAloneAndNothingElseIs) {
    for (const char* tag : {"T-1", "KX-7", "CR-12"}) {
        Machine machine = made::motor();
        machine.tag = tag;
        const auto found =
            bearingFindings(examined(made::with(made::setupOf(machine, 31), GetParam(), "driver DE", 0.75)));
        EXPECT_EQ(found, std::set<Named>({{GetParam(), "driver DE"}})) << tag;
    }
}

INSTANTIATE_TEST_SUITE_P(Simulated, Element,
                         ::testing::Values("bearing_outer_race", "bearing_inner_race",
                                           "bearing_rolling_element"),
                         [](const auto& param) { return std::string(param.param).substr(8); });

// A loose machine draws shaft orders and sidebands round everything: a 9-element bearing's inner-race lines
// stand close.
TEST(ExplainAway, AnOuterRaceWithStrongLoosenessLeavesNoInnerRace) {
    for (const std::uint64_t seed : {41u, 42u, 43u})
        for (const double loose : {0.5, 1.0}) {
            auto setup =
                made::with(made::setupOf(made::motor(), seed), "bearing_outer_race", "driver DE", 0.75);
            const auto found = bearingFindings(examined(made::with(setup, "looseness", "driver", loose)));
            EXPECT_THAT(found, Contains(Named{"bearing_outer_race", "driver DE"})) << seed << " " << loose;
            EXPECT_THAT(found, Not(Contains(Named{"bearing_inner_race", "driver DE"})))
                << seed << " " << loose;
            EXPECT_THAT(found, Not(Contains(Named{"bearing_inner_race", "driver NDE"})))
                << seed << " " << loose;
        }
}

TEST(ExplainAway, LoosenessAloneIsNoBearing) {
    for (const std::uint64_t seed : {51u, 52u, 53u})
        EXPECT_TRUE(bearingFindings(
                        examined(made::with(made::setupOf(made::motor(), seed), "looseness", "driver", 1)))
                        .empty())
            << seed;
}

TEST(ExplainAway, TwoTrueFaultsOfTwoBearingsAreBothFound) {
    for (const std::uint64_t seed : {61u, 62u}) {
        auto setup = made::with(made::setupOf(made::motor(), seed), "bearing_outer_race", "driver DE", 0.7);
        setup = made::with(setup, "bearing_inner_race", "driver NDE", 0.8);
        const auto found = bearingFindings(examined(setup));
        EXPECT_THAT(found, Contains(Named{"bearing_outer_race", "driver DE"})) << seed;
        EXPECT_THAT(found, Contains(Named{"bearing_inner_race", "driver NDE"})) << seed;
    }
}

TEST(ExplainAway, TwoTrueFaultsAtTwoPointsAreBothFound) {
    const Machine machine = made::fanSet();
    auto setup = made::with(made::setupOf(machine, 71), "bearing_outer_race", "driver DE", 0.75);
    setup = made::with(setup, "bearing_inner_race", "driven DE", 0.75);
    const auto motor = made::made(setup);
    setup.point = 1;
    const auto fan = made::made(setup);
    const auto e = examine(machine, {motor.recording, fan.recording});
    ASSERT_TRUE(e);
    EXPECT_THAT(bearingFindings(*e), Contains(Named{"bearing_outer_race", "driver DE"}));
    EXPECT_THAT(bearingFindings(*e), Contains(Named{"bearing_inner_race", "driven DE"}));
}

// Claims are told: to whom the lines went and what the loser weighed before.
TEST(ExplainAway, WhoLostLinesToWhomIsTold) {
    // Nearly the same bearing at both ends: what one explains the other would have taken.
    const Machine machine =
        made::machineOf(R"({ "tag": "T-1", "mains_hz": 50, "driver": { "power_kw": 75, "poles": 4,
        "rated_rpm": 1484, "bearings": { "DE": { "rolling_elements": 9, "element_mm": 25, "pitch_mm": 120.0 },
                                         "NDE": { "rolling_elements": 9, "element_mm": 24.4, "pitch_mm": 120.0 } } },
        "points": [ { "id": "P", "at": "driver DE", "channels": [ { "name": "x" }, { "name": "z" } ] } ] })");
    const Examination e =
        examined(made::with(made::setupOf(machine, 81), "bearing_outer_race", "driver DE", 0.75));
    const Hypothesis* winner = nullptr;
    const Hypothesis* loser = nullptr;
    for (const Hypothesis& h : e.considered)
        if (h.fault == "bearing_outer_race") (*h.weightDban >= 20 ? winner : loser) = &h;
    ASSERT_TRUE(winner && loser);
    EXPECT_GT(*loser->beforeClaimsDban, 20);
    EXPECT_LT(*loser->weightDban, 10);
    bool told = false;
    for (const Rival& r : winner->rivals)
        told |= r.fault == loser->fault && r.at == loser->at && r.weightDban == *loser->beforeClaimsDban;
    EXPECT_TRUE(told);
    int claimed = 0;
    for (const LineRow& row : loser->best.rows)
        claimed += row.why.find(winner->at) != std::string::npos;
    EXPECT_GT(claimed, 0);
}

// Weights only fall, whatever stood first in the list.
TEST(ExplainAway, TheOrderOfTheQuestionsDoesNotMatter) {
    const made::Kind kind = made::kinds()[5];
    ASSERT_EQ(kind.name, "two faults");
    const Machine& machine = kind.setup.machine;
    const PreparedRecording prepared = prepare(machine, made::made(kind.setup).recording, {});
    const AskedBearings asked = askBearings(machine, prepared);
    auto reversed = asked.hypotheses;
    std::reverse(reversed.begin(), reversed.end());
    auto evidence = prepared.evidence, again = prepared.evidence;
    const auto forth = explainAway(asked.hypotheses, evidence, prepared.rates, {});
    const auto back = explainAway(reversed, again, prepared.rates, {});
    for (std::size_t i = 0; i < forth.size(); ++i)
        EXPECT_DOUBLE_EQ(forth[i].now.weightDban, back[back.size() - 1 - i].now.weightDban);
}

}  // namespace
}  // namespace fettle
