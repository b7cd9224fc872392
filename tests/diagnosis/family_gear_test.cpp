// Gears: wear raises the mesh, a broken tooth the sidebands, the comb and the peaks of its own wheel. Which
// lines: R. B. Randall, Vibration-based Condition Monitoring (2011), from memory. Levels are the simulator's.
#include "core/machine/path.h"
#include "tests/diagnosis/measured.h"

namespace fettle {
namespace {

using made::Followed;
using testing::HasSubstr;

// Mesh 23 x 24.4 = 561 Hz; the slow wheel turns at 6.4 Hz.
Machine gearbox(const std::string& at = "G1 box DE") {
    return made::machineOf(
        R"({ "tag": "T-GEAR", "mains_hz": 50, "driver": { "power_kw": 37, "poles": 4, "rated_rpm": 1475 },
        "driven": { "kind": "mixer" },
        "shafts": [ { "id": "S1", "of": "driver" }, { "id": "S2", "of": "driven" } ],
        "gears": [ { "id": "G1", "from": "S1", "to": "S2", "teeth": [23, 88] } ],
        "intermediate": [ { "id": "G1 box", "shaft": "S1", "bearings": {
          "DE": { "rolling_elements": 16, "element_mm": 14.8, "pitch_mm": 95, "contact_deg": 14 } } } ],
        "points": [ { "id": "G", "at": ")" +
        at + R"(", "channels": [ { "name": "x", "direction": "horizontal" } ] } ] })");
}

TEST(GearFamily, WearRaisesTheMesh) {
    const auto setup = made::setupOf(gearbox());
    const Followed mesh{"gear_mesh", "mesh 1-3 x"};
    made::expectRises(made::overSeverity(setup, "gear_mesh", "G1", mesh), 0.02);
    for (const char* rival : {"unbalance", "misalignment", "looseness"})
        made::expectLeavesAlone(setup, rival, "driver", mesh, 0.005);
}

TEST(GearFamily, ABrokenToothRaisesCombAndPeaks) {
    const auto setup = made::setupOf(gearbox());
    made::expectRises(made::overSeverity(setup, "gear_tooth", "G1", {"gear_tooth", "residual kurtosis"}), 3);
    made::expectRises(made::overSeverity(setup, "gear_tooth", "G1", {"gear_tooth", "comb of S1 in envelope"}),
                      6);
    for (const char* rival : {"unbalance", "misalignment"}) {
        made::expectLeavesAlone(setup, rival, "driver", {"gear_tooth", "residual kurtosis"}, 0.3);
        made::expectLeavesAlone(setup, rival, "driver", {"gear_tooth", "comb of S1 in envelope"}, 2);
    }
}

// A tooth that strikes may be named without a baseline, as possible; wear, unbalance and a sound box never.
TEST(GearFamily, AStrikingToothIsNamedAsPossible) {
    const auto struck = made::reportOf(made::with(made::setupOf(gearbox()), "gear_tooth", "G1", 1));
    const Hypothesis* h = made::named(struck, "gear_tooth");
    ASSERT_NE(h, nullptr);
    EXPECT_THAT(h->sentence, HasSubstr("wheel of S1"));
    EXPECT_THAT(h->sentence, HasSubstr("under lock-out"));
    EXPECT_EQ(h->severity.kind, "stage");
    for (const char* other : {"gear_mesh", "unbalance", "looseness"}) {
        const char* at = other[0] == 'g' ? "G1" : "driver";
        EXPECT_EQ(
            made::named(made::reportOf(made::with(made::setupOf(gearbox()), other, at, 1)), "gear_tooth"),
            nullptr)
            << other;
    }
    EXPECT_EQ(made::named(made::reportOf(made::setupOf(gearbox())), "gear_tooth"), nullptr);
}

// Even wear swings the mesh with the shaft, but strikes nothing.
TEST(GearFamily, WearRaisesSidebandsButNoPeaks) {
    const auto setup = made::setupOf(gearbox());
    made::expectRises(
        made::overSeverity(setup, "gear_mesh", "G1", {"gear_tooth", "sidebands of S1 beside mesh"}), 6);
    made::expectLeavesAlone(setup, "gear_mesh", "G1", {"gear_tooth", "residual kurtosis"}, 1);
}

// The slow wheel's sidebands lie 6.4 Hz apart: six steps of a 1 s record are 6 Hz, of a 0.8 s one 7.5 Hz.
TEST(GearFamily, SidebandsThatCannotBePartedAreBlind) {
    const auto report = made::reportOf(made::setupOf(gearbox(), 1, 0.8));
    const BlindSpot* blind = made::blindFor(report, "gear_tooth");
    ASSERT_NE(blind, nullptr);
    EXPECT_EQ(blind->at, "G1");
    EXPECT_THAT(blind->why, HasSubstr("S2"));
    EXPECT_THAT(blind->cure, HasSubstr("0.9 s"));
    EXPECT_FALSE(made::valueIn(report, "gear_tooth", "sidebands of S2 beside mesh"));
    EXPECT_TRUE(made::valueIn(report, "gear_tooth", "sidebands of S1 beside mesh"));
}

TEST(GearFamily, AMeshAboveTheChannelIsBlind) {
    auto setup = made::setupOf(gearbox());
    setup.node.rateHz = 1000;
    const auto report = made::reportOf(setup);
    const BlindSpot* blind = made::blindFor(report, "gear_mesh");
    ASSERT_NE(blind, nullptr);
    EXPECT_THAT(blind->cure, HasSubstr("sample rate"));
    EXPECT_FALSE(made::valueIn(report, "gear_mesh", "mesh 1 x"));
}

// practice of the trade: a node on the motor hears a small gear's mesh, hardly its teeth.
TEST(GearFamily, FromTheMotorOnlyTheMesh) {
    const Machine machine = gearbox("driver NDE");
    EXPECT_EQ(pathBetween(machine, machine.points[0], "G1"), Path::ThroughCoupling);
    EXPECT_EQ(nearestPath(gearbox(), "G1"), Path::SameHousing);
    const auto report = made::reportOf(made::setupOf(machine));
    EXPECT_TRUE(made::valueIn(report, "gear_mesh", "mesh 1-3 x"));
    const BlindSpot* blind = made::blindFor(report, "gear_tooth");
    ASSERT_NE(blind, nullptr);
    EXPECT_EQ(blind->why, "heard through the coupling only");
    EXPECT_EQ(blind->cure, "a sensor on the gearbox");
}

TEST(GearFamily, ConcernsNoMachineWithoutGears) {
    const auto report = made::reportOf(made::setupOf(made::motor()));
    for (const Hypothesis& h : report.hypotheses)
        EXPECT_EQ(h.fault.find("gear"), std::string::npos);
}

}  // namespace
}  // namespace fettle
