// Nodes held against the grid and gravity, from recordings of the simulator taken in by the usual door: seven
// machines on a grid that is the same for all at one moment, one node with a rate 1.5 % off, one knocked, one
// behind an inverter, one without flux.
#include "core/fleet/nodes.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fmt/format.h>

#include "core/exchange/round_text.h"
#include "core/fleet/round_desk.h"
#include "core/intake/import.h"
#include "tests/intake/intake_fixture.h"

namespace fettle::fleet_test {
namespace {

using testing::HasSubstr;

// Axis "y" stands upright; `up` "x": the node lies on its side, and the register does not know.
std::string machineText(const std::string& tag, const std::string& up = "y", bool inverter = false,
                        bool flux = true) {
    const auto direction = [&](const std::string& axis) {
        return axis == up ? "vertical" : axis == "z" ? "axial" : "horizontal";
    };
    std::string text = R"({ "tag": ")" + tag + R"(", "mains_hz": 50, "support": "rigid", "driver": {)";
    text += inverter ? R"("supply": "inverter", "rated_hz": 50, "output_hz_range": [20, 60], )" : "";
    text += R"("power_kw": 75, "poles": 4, "rated_rpm": 1484 },
        "points": [ { "id": "P", "at": "driver DE", "mount": "bearing_housing",
          "node": [ { "id": "04)" +
            tag.substr(2) + R"(", "from": "2026-01-01" } ], "channels": [)";
    for (const std::string axis : {"x", "y", "z"})
        text += (axis == "x" ? "" : ", ") + std::string(R"({ "name": ")") + axis +
                R"(", "quantity": "acceleration", "unit": "g", "direction": ")" + direction(axis) + "\" }";
    if (flux) text += R"(, { "name": "flux", "quantity": "flux", "unit": "1" })";
    return text + " ] } ] }";
}

class Nodes : public testing::Test {
  protected:
    static void SetUpTestSuite() {
        folder_ = std::make_unique<ScratchFolder>();
        fleet_ = FleetFile::create(*folder_ / "site.fettle", {"Test works", "UTC", 0.1}).value();
        for (int i = 1; i <= 7; ++i)
            ASSERT_TRUE(fleet_->machines().put(registered(i), tagOf(i)));
        for (int day = 4; day <= 10; ++day)
            for (int i = 1; i <= 7; ++i)
                send(i, day);
        ImportOptions options;
        options.now = intake_test::kNow;
        options.recursive = true;
        const auto report = import(*fleet_, RealFileSystem(), {*folder_ / "in"}, options);
        ASSERT_TRUE(report) << report.error().sentence();
        ASSERT_TRUE(report->refusals.empty()) << report->refusals[0].rule;
        ASSERT_EQ(report->stored, 49u);
    }
    static void TearDownTestSuite() {
        fleet_.reset();
        folder_.reset();
    }
    static std::string tagOf(int i) { return "N-" + std::to_string(i); }
    static std::string registered(int i) { return machineText(tagOf(i), "y", i == 6, i != 7); }

    static void send(int i, int day) {
        const bool knocked = i == 5 && day >= 8;
        auto setup =
            made::setupOf(made::machineOf(machineText(tagOf(i), knocked ? "x" : "y", i == 6, i != 7)),
                          std::uint64_t(10 * day + i), 3);
        setup.node.rateHz = 3200;
        setup.node.gravity = true;
        setup.node.clockError = i == 4 ? -0.015 : 0;
        setup.operation.mainsHz = 50 + 0.03 * std::sin(double(day));  // one grid
        setup.operation.outputHz = 42;
        if (i == 7) setup.character.twiceMainsMmS = 0;
        const auto sent = intake_test::sent(setup);
        intake_test::Said said;
        said.machine = tagOf(i);
        said.channels = {"x", "y", "z"};
        if (i != 7) said.channels.push_back("flux");
        said.unit.clear();  // as the register has it
        said.scale = sent.scale;
        said.time = fmt::format("2026-05-{:02}T06:{:02}:00Z", day, 5 * i);
        intake_test::send(*folder_ / "in", fmt::format("{}_{}", tagOf(i), day), sent.wav, said);
    }

    static const NodesAnswer& answer() {
        static const NodesAnswer all = nodesOf(*fleet_, "2026-05-10").value();
        return all;
    }
    static const NodeAnswer& node(int i) { return answer().nodes.at(std::size_t(i - 1)); }

    static inline std::unique_ptr<ScratchFolder> folder_;
    static inline std::unique_ptr<FleetFile> fleet_;
};

TEST_F(Nodes, TheOneWithTheWrongRateIsNamedWithItsInterval) {
    ASSERT_EQ(answer().nodes.size(), 7u);
    const RateError& rate = node(4).grid.rate.value();
    EXPECT_TRUE(rate.off);
    EXPECT_NEAR(rate.error, 1 / (1 - 0.015) - 1, 2e-4);  // stated over true
    EXPECT_LE(std::abs(rate.error - (1 / (1 - 0.015) - 1)), rate.plusMinus);
    EXPECT_LT(rate.plusMinus, 0.002);
    ASSERT_EQ(node(4).doubts.size(), 1u);
    EXPECT_THAT(node(4).doubts[0], HasSubstr("node 044 at P: sample rate 1.5"));
}

TEST_F(Nodes, TheOthersAgreeOnTheGridThoughItWanders) {
    for (const int i : {1, 2, 3, 5}) {
        ASSERT_TRUE(node(i).grid.rate) << i << node(i).noGrid;
        EXPECT_FALSE(node(i).grid.rate->off);
        EXPECT_LT(std::abs(node(i).grid.rate->error), 5e-4);
    }
    EXPECT_TRUE(node(1).doubts.empty());
}

TEST_F(Nodes, BehindAnInverterThereIsNoGrid) {
    EXPECT_FALSE(node(6).grid.rate);
    EXPECT_THAT(node(6).noGrid, HasSubstr("inverter"));
    EXPECT_TRUE(node(6).doubts.empty());
}

TEST_F(Nodes, WhereTheMainsIsNotHeardItIsSaid) {
    EXPECT_FALSE(node(7).grid.rate);
    EXPECT_THAT(node(7).noGrid, HasSubstr("was not read"));
}

TEST_F(Nodes, TheKnockIsDated) {
    ASSERT_EQ(node(5).pose.moves.size(), 1u);
    const PoseMove& move = node(5).pose.moves[0];
    EXPECT_EQ(formatUtc(move.before), "2026-05-07T06:25:00Z");
    EXPECT_EQ(formatUtc(move.after), "2026-05-08T06:25:00Z");
    EXPECT_NEAR(move.degrees, 90, 5);
    EXPECT_THAT(node(5).pose.misfit, HasSubstr("gravity reads"));
    EXPECT_THAT(node(1).pose.words, HasSubstr("y up"));
}

TEST_F(Nodes, AMoveThatTheSiteToldIsNoNews) {
    const auto copy = *folder_ / "told.fettle";
    ASSERT_TRUE(fleet_->backup(copy));
    const auto told = FleetFile::open(copy).value();
    ASSERT_TRUE(told->log().addEvent(
        {0, "N-5", intake_test::at("2026-05-07T12:00:00Z"), "moved_node", "P", "", "test"}));
    const auto all = nodesOf(*told, "2026-05-10");
    ASSERT_TRUE(all);
    for (const std::string& doubt : all->nodes[4].doubts)
        EXPECT_THAT(doubt, testing::Not(HasSubstr("knocked")));
}

TEST_F(Nodes, TheRoundTellsItOfTheMachineWithoutListingIt) {
    const auto list = listNow(*fleet_, "2026-05-10");
    ASSERT_TRUE(list) << list.error().sentence();
    std::size_t told = 0;
    for (const RoundMachine& machine : list->machines)
        for (const RoundFinding& finding : machine.findings)
            if (finding.finding.fault == "sensor") {
                EXPECT_THAT((std::vector<std::string>{"N-4", "N-5"}), testing::Contains(machine.tag));
                EXPECT_EQ(finding.finding.urgency, "leave");
                ++told;
            }
    EXPECT_EQ(told, 3u);  // a rate; a knock, and axes that are not as the register has them
    EXPECT_THAT(asText(*list), HasSubstr("nodes to see to 3"));
}

}  // namespace
}  // namespace fettle::fleet_test
