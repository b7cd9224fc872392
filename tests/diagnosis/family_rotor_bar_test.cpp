// Rotor bars: sidebands at (1 +- 2 s) f1 and 1x +- pole pass (Thomson and Culbert 2017, from memory). 75 kW
// at 1484 r/min: pole pass 1.07 Hz at full load, so 7.5 s and, at half load, 15 s.
#include "core/diagnosis/rotor_bar_limits.h"
#include "tests/diagnosis/measured.h"

namespace fettle {
namespace {

using made::Followed;
using testing::HasSubstr;

Machine barMotor() {
    return made::machineOf(R"({ "tag": "T-BAR", "mains_hz": 50, "support": "rigid",
        "driver": { "power_kw": 75, "poles": 4, "rated_rpm": 1484, "rotor_bars": 58 },
        "points": [ { "id": "M", "at": "driver DE", "mount": "bearing_housing", "channels": [
            { "name": "x", "direction": "horizontal" },
            { "name": "flux", "quantity": "flux", "unit": "1" } ] } ] })");
}

sim::SimulationSetup narrow(double seconds = 32, double load = 0.9) {
    auto setup = made::setupOf(barMotor(), 1, seconds);
    setup.node.rateHz = 1000;
    setup.operation.load = load;
    return setup;
}

const Followed kFlux{"rotor_bar", "lower pole-pass sideband of mains"};
const Followed kVelocity{"rotor_bar", "pole-pass sidebands of 1x"};

TEST(RotorBarFamily, BrokenBarsRaiseTheSidebands) {
    made::expectRises(made::overSeverity(narrow(), "rotor_bar", "driver", kFlux), 20);
    const auto velocity = made::overSeverity(narrow(), "rotor_bar", "driver", kVelocity);
    made::expectRises(velocity, 15);
    for (const char* rival : {"unbalance", "misalignment", "electrical_2x_mains", "air_gap"})
        made::expectLeavesAlone(narrow(), rival, "driver", kFlux, 2);
}

// The simulator sets severity 1 at -30 dB at full load; load takes off 20 log10(0.9).
TEST(RotorBarFamily, TheSidebandReadsAsItWasMade) {
    EXPECT_NEAR(made::meanOf(made::with(narrow(), "rotor_bar", "driver", 1), kFlux), -30.9, 2.5);
}

TEST(RotorBarFamily, FluxGivesAVerdictByDecibelsBelowTheMains) {
    EXPECT_EQ(made::named(made::reportOf(narrow()), "rotor_bar"), nullptr) << "sound";
    const auto bad = made::reportOf(made::with(narrow(), "rotor_bar", "driver", 1));
    const Hypothesis* h = made::named(bad, "rotor_bar");
    ASSERT_NE(h, nullptr);
    EXPECT_EQ(h->severity.kind, "db_below_carrier");
    EXPECT_EQ(h->severity.value, "probable");
    EXPECT_THAT(h->sentence, HasSubstr("of 58 bars"));
    EXPECT_THAT(h->sentence, HasSubstr("qualified staff"));
    EXPECT_FALSE(h->weightDban);
}

TEST(RotorBarFamily, AShortRecordingOrALowLoadIsBlind) {
    const auto brief = made::reportOf(narrow(4));
    const BlindSpot* blind = made::blindFor(brief, "rotor_bar");
    ASSERT_NE(blind, nullptr);
    EXPECT_THAT(blind->cure, HasSubstr("long narrow"));
    EXPECT_FALSE(made::valueIn(brief, "rotor_bar", kFlux.name));
    const auto idle = made::reportOf(narrow(64, 0.3));
    ASSERT_NE(made::blindFor(idle, "rotor_bar"), nullptr);
    EXPECT_THAT(made::blindFor(idle, "rotor_bar")->cure, HasSubstr("half load"));
    EXPECT_EQ(made::blindFor(made::reportOf(narrow()), "rotor_bar"), nullptr);
}

// Without flux the noise about 1x decides: 3 mg/sqrt(Hz) hide what stands 36 dB below 1x of some 0.01 g, the
// sensor's own noise does not. Limits of the table, from memory.
TEST(RotorBarFamily, SidebandsWithinTheNoiseAreBlind) {
    auto quiet = narrow();
    std::erase_if(quiet.machine.points[0].channels,
                  [](const PointChannel& c) { return c.quantity == "flux"; });
    EXPECT_EQ(made::blindFor(made::reportOf(quiet), "rotor_bar"), nullptr);
    quiet.node.noisePerRtHz = 3e-3;
    const auto noisy = made::reportOf(quiet);
    const BlindSpot* blind = made::blindFor(noisy, "rotor_bar");
    ASSERT_NE(blind, nullptr);
    EXPECT_THAT(blind->why, HasSubstr("hide"));
    EXPECT_THAT(blind->cure, HasSubstr("flux"));
}

TEST(RotorBarFamily, ConcernsOnlyAMotorWithACage) {
    const Machine magnets = made::machineOf(R"({ "tag": "T-PM", "mains_hz": 50,
        "driver": { "kind": "pm_synchronous", "power_kw": 75, "poles": 4, "rated_rpm": 1500 },
        "points": [ { "id": "M", "at": "driver DE", "channels": [ { "name": "x" } ] } ] })");
    EXPECT_TRUE(faultFamily("rotor_bar")->placesOn(magnets).empty());
    EXPECT_FALSE(faultFamily("rotor_bar")->placesOn(barMotor()).empty());
}

// Figures of the trade for motor current: 54 dB and more is sound, below 45 suspect, below 36 probable (from
// memory, +- 6 dB between authors).
TEST(RotorBarFamily, LimitsAreThoseOfTheTable) {
    const auto limits = RotorBarLimits::load();
    ASSERT_TRUE(limits) << limits.error().sentence();
    EXPECT_EQ(limits->rowOf(60), nullptr);
    EXPECT_EQ(limits->rowOf(54), nullptr);
    EXPECT_EQ(limits->rowOf(50)->value, "watch");
    EXPECT_EQ(limits->rowOf(44.9)->value, "suspect");
    EXPECT_EQ(limits->rowOf(30)->value, "probable");
}

}  // namespace
}  // namespace fettle
