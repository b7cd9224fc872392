// Belts: rate pi D n / L (kinematics), harmonics 1 to 4 (common textbooks, from memory).
#include "tests/diagnosis/measured.h"

namespace fettle {
namespace {

using made::Followed;
using testing::HasSubstr;

// Belt at 3.2 Hz, shafts at 16.2 and 5.5 Hz.
Machine belted(const std::string& length = R"(, "length_mm": 2800)") {
    return made::machineOf(
        R"({ "tag": "T-BELT", "mains_hz": 50, "driver": { "power_kw": 15, "poles": 6, "rated_rpm": 970 },
        "driven": { "kind": "fan", "blades": 6 },
        "shafts": [ { "id": "S1", "of": "driver" }, { "id": "S2", "of": "driven" } ],
        "belts": [ { "id": "B1", "from": "S1", "to": "S2", "pulley_mm": [180, 530])" +
        length + R"( } ],
        "points": [ { "id": "M", "at": "driver DE", "channels": [ { "name": "x", "direction": "horizontal" } ] } ] })");
}

std::string beltMeasure(const FamilyReport& report) {
    for (const FaultMeasure& m : report.measures)
        if (m.fault == "belt") return m.name;
    return "";
}

TEST(BeltFamily, AWornBeltRaisesItsLines) {
    auto setup = made::setupOf(belted(), 1, 16);
    setup.node.rateHz = 1000;
    const std::string name = beltMeasure(made::reportOf(setup));
    ASSERT_NE(name, "");
    made::expectRises(made::overSeverity(setup, "belt", "B1", {"belt", name}), 1);
    for (const char* rival : {"unbalance", "misalignment"})
        made::expectLeavesAlone(setup, rival, "driver", {"belt", name}, 0.2);
    made::expectLeavesAlone(setup, "blade_pass", "driven", {"belt", name}, 0.2);
}

// Creep moves the belt by up to 2 %: the lines are found where they are.
TEST(BeltFamily, CreepIsSearched) {
    auto setup = made::with(made::setupOf(belted(), 1, 16), "belt", "B1", 0.75);
    setup.node.rateHz = 1000;
    const std::string name = beltMeasure(made::reportOf(setup));
    setup.operation.beltCreep = 0;
    const double without = made::meanOf(setup, {"belt", name});
    setup.operation.beltCreep = 1;
    EXPECT_NEAR(made::meanOf(setup, {"belt", name}) / without, 1, 0.15);
}

TEST(BeltFamily, UnknownLengthIsBlind) {
    const Machine machine = made::machineOf(
        R"({ "tag": "T-BELT", "mains_hz": 50, "driver": { "power_kw": 15, "poles": 6, "rated_rpm": 970 },
        "driven": { "kind": "fan", "blades": 6 },
        "shafts": [ { "id": "S1", "of": "driver" }, { "id": "S2", "of": "driven" } ],
        "belts": [ { "id": "B1", "from": "S1", "to": "S2", "kind": "toothed", "teeth": [30, 60] } ],
        "points": [ { "id": "M", "at": "driver DE", "channels": [ { "name": "x" } ] } ] })");
    const auto report = made::reportOf(made::setupOf(machine));
    const BlindSpot* blind = made::blindFor(report, "belt");
    ASSERT_NE(blind, nullptr);
    EXPECT_THAT(blind->why, HasSubstr("length"));
}

TEST(BeltFamily, AShortRecordingCannotPartItFromThePulleys) {
    const auto report = made::reportOf(made::setupOf(belted(), 1, 1.2));
    const BlindSpot* blind = made::blindFor(report, "belt");
    ASSERT_NE(blind, nullptr);
    EXPECT_THAT(blind->cure, HasSubstr("32 s"));
}

}  // namespace
}  // namespace fettle
