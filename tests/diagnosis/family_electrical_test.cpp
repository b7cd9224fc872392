// Twice the mains, air gap, supply: signatures of common textbooks and of Thomson and Culbert (2017), from
// memory; levels are the simulator's.
#include "tests/diagnosis/measured.h"

namespace fettle {
namespace {

using made::Followed;
using testing::HasSubstr;

Machine motor(int poles = 4, int rpm = 1484, const std::string& more = "") {
    return made::machineOf(R"({ "tag": "T-EL", "mains_hz": 50, "support": "rigid",
        "driver": { "power_kw": 75, "poles": )" +
                           std::to_string(poles) + R"(, "rated_rpm": )" + std::to_string(rpm) + more + R"(,
          "bearings": { "DE": { "rolling_elements": 9, "element_mm": 25, "pitch_mm": 120.0 } } },
        "points": [ { "id": "M", "at": "driver DE", "mount": "bearing_housing", "channels": [
            { "name": "x", "direction": "horizontal" },
            { "name": "flux", "quantity": "flux", "unit": "1" } ] } ] })");
}

const Followed kTwice{"electrical_2x_mains", "2 x mains"};

TEST(ElectricalFamilies, TwiceTheMainsRisesAndTwiceTheShaftIsNotIt) {
    const auto setup = made::setupOf(motor(), 1, 8);
    made::expectRises(made::overSeverity(setup, "electrical_2x_mains", "driver", kTwice), 1);
    // 4 x shaft lies 1.1 Hz away, misalignment and looseness raise it.
    for (const char* rival : {"misalignment", "unbalance", "looseness"})
        made::expectLeavesAlone(setup, rival, "driver", kTwice, 0.3);
}

// Two poles at 2950 r/min: 2 x shaft is 98.33 Hz, 1.67 Hz from 2 x mains; five steps apart needs 3 s.
TEST(ElectricalFamilies, TwoPolesNeedALongRecordingToPartTwiceTheShaft) {
    const auto brief = made::reportOf(made::setupOf(motor(2, 2950), 1, 1.5));
    const BlindSpot* blind = made::blindFor(brief, "electrical_2x_mains");
    ASSERT_NE(blind, nullptr);
    EXPECT_THAT(blind->why, HasSubstr("2 x shaft"));
    EXPECT_THAT(blind->cure, HasSubstr("long narrow"));
    const auto setup = made::setupOf(motor(2, 2950), 1, 10);
    made::expectRises(made::overSeverity(setup, "electrical_2x_mains", "driver", kTwice), 1);
    made::expectLeavesAlone(setup, "misalignment", "driver", kTwice, 0.4);
}

TEST(ElectricalFamilies, AnUnevenAirGapRaisesFluxAndSlotLines) {
    const auto setup = made::setupOf(motor(4, 1484, R"(, "rotor_bars": 58)"));
    made::expectRises(made::overSeverity(setup, "air_gap", "driver", {"air_gap", "f1 +- fr in flux"}), 10);
    made::expectRises(made::overSeverity(setup, "air_gap", "driver", {"air_gap", "slot passing over floor"}),
                      0.005);
    for (const char* rival : {"unbalance", "misalignment", "electrical_2x_mains", "rotor_bar"}) {
        made::expectLeavesAlone(setup, rival, "driver", {"air_gap", "f1 +- fr in flux"}, 2);
        made::expectLeavesAlone(setup, rival, "driver", {"air_gap", "slot passing over floor"}, 0.002);
    }
}

// Three slot lines of 12 mg within noise of 1 mg/sqrt(Hz): the noise in which they stand is not theirs.
TEST(ElectricalFamilies, SlotLinesAreReadOverTheNoiseBetweenThem) {
    auto quiet = made::setupOf(motor(4, 1484, R"(, "rotor_bars": 58)"));
    quiet.character.slotPeakG = 0.012;
    auto noisy = quiet;
    noisy.node.noisePerRtHz = 1e-3;
    const Followed slots{"air_gap", "slot passing over floor"};
    EXPECT_NEAR(made::meanOf(noisy, slots) / made::meanOf(quiet, slots), 1, 0.15);
}

TEST(ElectricalFamilies, AirGapSaysWhatIsMissing) {
    const auto report = made::reportOf(made::setupOf(motor()));
    ASSERT_NE(made::blindFor(report, "air_gap"), nullptr);
    EXPECT_THAT(made::blindFor(report, "air_gap")->cure, HasSubstr("rotor_bars"));
    EXPECT_TRUE(made::valueIn(report, "air_gap", "f1 +- fr in flux"));
    const auto noFlux = made::reportOf(made::setupOf(made::motor()));
    EXPECT_THAT(made::blindFor(noFlux, "supply_unbalance")->cure, HasSubstr("flux"));
}

TEST(ElectricalFamilies, UnbalancedSupplyRaisesTheThirdHarmonic) {
    const auto setup = made::setupOf(motor());
    const Followed third{"supply_unbalance", "3 x mains in flux"};
    made::expectRises(made::overSeverity(setup, "supply_unbalance", "driver", third), 10);
    for (const char* rival : {"electrical_2x_mains", "rotor_bar", "air_gap", "misalignment"})
        made::expectLeavesAlone(setup, rival, "driver", third, 2);
}

// What the trade says of flux: it shows neither turn shorts nor amperes; first voltages and currents.
TEST(ElectricalFamilies, TwiceTheMainsIsNamedAsWhatItMayBe) {
    const auto loud =
        made::reportOf(made::with(made::setupOf(motor(), 1, 8), "electrical_2x_mains", "driver", 1));
    const Hypothesis* h = made::named(loud, "electrical_2x_mains");
    ASSERT_NE(h, nullptr);
    EXPECT_THAT(h->sentence, HasSubstr("Possible electrical 2 x mains at driver"));
    EXPECT_THAT(h->sentence, HasSubstr("voltages and currents"));
    EXPECT_THAT(h->sentence, HasSubstr("unbalanced supply, a twisted frame, a static gap or a loose core"));
    EXPECT_EQ(made::named(made::reportOf(made::with(made::setupOf(motor(), 1, 8), "unbalance", "driver", 1)),
                          "electrical_2x_mains"),
              nullptr);
}

}  // namespace
}  // namespace fettle
