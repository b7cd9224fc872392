// Blade pass, cavitation, rough flow: signatures of common textbooks, from memory; levels are the
// simulator's.
#include "tests/diagnosis/measured.h"

namespace fettle {
namespace {

using made::Followed;
using testing::HasSubstr;

Machine pump(const std::string& at = "driven DE", const std::string& kind = "pump") {
    return made::machineOf(
        R"({ "tag": "T-PUMP", "mains_hz": 50, "support": "rigid",
        "driver": { "power_kw": 75, "poles": 4, "rated_rpm": 1484 },
        "driven": { "kind": ")" +
        kind + R"(", "blades": 6,
          "bearings": { "DE": { "rolling_elements": 13, "element_mm": 18, "pitch_mm": 110.0 } } },
        "points": [ { "id": "P", "at": ")" +
        at +
        R"(", "mount": "bearing_housing", "channels": [ { "name": "x", "direction": "horizontal" } ] } ] })");
}

TEST(FlowFamilies, BladePassRisesWithItsFaultAlone) {
    const auto setup = made::setupOf(pump());
    const Followed pass{"blade_pass", "blade pass 1-2 x"};
    made::expectRises(made::overSeverity(setup, "blade_pass", "driven", pass), 1);
    for (const char* rival : {"unbalance", "misalignment", "electrical_2x_mains"})
        made::expectLeavesAlone(setup, rival, "driver", pass, 0.3);
    made::expectLeavesAlone(setup, "cavitation", "driven", pass, 0.3);
}

TEST(FlowFamilies, CavitationRaisesTheFloorFromTwoKilohertz) {
    const auto setup = made::setupOf(pump());
    const Followed floor{"cavitation", "floor 2-5.8 kHz"};
    made::expectRises(made::overSeverity(setup, "cavitation", "driven", floor), 10);
    for (const char* rival : {"unbalance", "looseness", "blade_pass"})
        made::expectLeavesAlone(setup, rival, "driven", floor, 1.5);
}

// The simulator swings cavitation's noise by 35 % with the blades; friction hisses evenly. The floor tells
// them not apart, the swing does.
TEST(FlowFamilies, OnlyCavitationSwingsWithTheBlades) {
    const auto setup = made::setupOf(pump());
    const Followed swing{"cavitation", kBladeSwing};
    const auto values = made::overSeverity(setup, "cavitation", "driven", swing);
    EXPECT_GT(values.back() - values.front(), 12) << testing::PrintToString(values);
    for (const char* rival : {"bearing_dry_or_worn", "unbalance", "blade_pass"})
        made::expectLeavesAlone(setup, rival, rival[1] == 'e' ? "driven DE" : "driven", swing, 3);
}

TEST(FlowFamilies, RoughFlowRaisesRandomMotionBelowTheShaft) {
    auto setup = made::setupOf(pump(), 1, 8);
    const Followed random{"flow", "random below 1x"};
    made::expectRises(made::overSeverity(setup, "flow", "driven", random), 0.5);
    for (const char* rival : {"unbalance", "misalignment", "blade_pass"})
        made::expectLeavesAlone(setup, rival, "driven", random, 0.1);
}

// 1 mg/sqrt(Hz) is 1e-3 x 9807 / (2 pi) sqrt(1/2 - 1/19.8) = 1.05 mm/s between 2 Hz and 0.8 x 24.7 Hz (v = a
// / (2 pi f)): taken away where the description says so; 6 mg/sqrt(Hz) drown what matters by the B/C limit.
TEST(FlowFamilies, TheSensorsOwnNoiseIsNoFlow) {
    auto noisy = made::setupOf(pump(), 1, 8);
    noisy.node.noisePerRtHz = 1e-3;
    const double untold = made::meanOf(noisy, {"flow", "random below 1x"});
    noisy.machine.points[0].noisePerRtHz = 1e-3;
    const Followed random{"flow", "random below 1x over noise"};
    EXPECT_LT(made::meanOf(noisy, random), 0.6 * untold);
    made::expectRises(made::overSeverity(noisy, "flow", "driven", random), 0.5);
    EXPECT_EQ(made::blindFor(made::reportOf(noisy), "flow"), nullptr);
    noisy.node.noisePerRtHz = 6e-3;
    noisy.machine.points[0].noisePerRtHz = 6e-3;
    const auto drowned = made::reportOf(noisy);
    ASSERT_NE(made::blindFor(drowned, "flow"), nullptr);
    EXPECT_THAT(made::blindFor(drowned, "flow")->cure, HasSubstr("less noise"));
}

TEST(FlowFamilies, WhatTheNodeCannotHearIsBlind) {
    auto slow = made::setupOf(pump());
    slow.node.rateHz = 3200;
    EXPECT_THAT(made::blindFor(made::reportOf(slow), "cavitation")->cure, HasSubstr("10 kHz"));
    const auto fromMotor = made::reportOf(made::setupOf(pump("driver DE")));
    EXPECT_THAT(made::blindFor(fromMotor, "cavitation")->cure, HasSubstr("sensor on the pump"));
    EXPECT_TRUE(made::valueIn(fromMotor, "blade_pass", "blade pass 1-2 x"));
    // 20 steps between 2 Hz and 0.8 x 24.7 Hz need 1.1 s.
    const auto brief = made::reportOf(made::setupOf(pump(), 1, 0.9));
    EXPECT_THAT(made::blindFor(brief, "flow")->cure, HasSubstr("1.1 s"));
    EXPECT_EQ(made::blindFor(made::reportOf(made::setupOf(pump())), "flow"), nullptr);
}

// Common practice, no source: a belt passes hardly anything of the fan's casing on to the motor's.
TEST(FlowFamilies, BehindABeltTheFanIsHardlyHeard) {
    const auto blindOf = [](const char* at) {
        const Machine fan = made::machineOf(
            R"({ "tag": "T-BF", "mains_hz": 50, "driver": { "power_kw": 15, "poles": 6, "rated_rpm": 970 },
            "driven": { "kind": "fan", "blades": 6 }, "shafts": [ { "id": "S1", "of": "driver" },
            { "id": "S2", "of": "driven" } ], "belts": [ { "id": "B1", "from": "S1", "to": "S2",
            "pulley_mm": [200, 315], "length_mm": 2500, "kind": "vee" } ], "points": [ { "id": "M", "at": ")" +
            std::string(at) + R"(", "channels": [ { "name": "x" } ] } ] })");
        const auto report = made::reportOf(made::setupOf(fan));
        return made::blindFor(report, "blade_pass") != nullptr;
    };
    EXPECT_TRUE(blindOf("driver DE"));
    EXPECT_FALSE(blindOf("driven DE"));
}

// A line that makes up a zone of C or D may be named, as possible, with the test; below, never.
TEST(FlowFamilies, BladePassIsNamedOnlyWhereItMakesUpAZone) {
    const Machine blower = pump("driven DE", "blower");  // group 2 of ISO 20816-3, rigid: C from 2.8 mm/s
    const auto loud = made::reportOf(made::with(made::setupOf(blower), "blade_pass", "driven", 1));
    const Hypothesis* h = made::named(loud, "blade_pass");
    ASSERT_NE(h, nullptr);
    EXPECT_THAT(h->sentence, HasSubstr("Possible"));
    EXPECT_EQ(h->severity.kind, "zone");
    EXPECT_FALSE(h->weightDban);
    EXPECT_EQ(made::named(made::reportOf(made::setupOf(blower)), "blade_pass"), nullptr);
    EXPECT_EQ(made::named(made::reportOf(made::with(made::setupOf(blower), "unbalance", "driven", 1)),
                          "blade_pass"),
              nullptr);
}

}  // namespace
}  // namespace fettle
