// Speeds and slip lines of induction motors, computed from their definitions: ns = 120 f / poles, pole pass =
// poles x (ns - n) / 60 = 2 s f1, slot lines R fr +- 2 k f1 (Thomson and Culbert 2017; IEC 60034 for the
// synchronous speed).
#include <gtest/gtest.h>

#include <algorithm>

#include "core/machine/forcing.h"
#include "tests/machine/describe.h"

namespace fettle {
namespace {

Machine motor(double mainsHz, int poles, double rpm, int bars = 0) {
    Json machine = plainMachine();
    machine["mains_hz"] = mainsHz;
    machine["driver"]["poles"] = poles;
    machine["driver"]["rated_rpm"] = rpm;
    if (bars) machine["driver"]["rotor_bars"] = bars;
    return parsed(machine).machine;
}

// The line of a name, in Hz at the motor's rated speed; a failure where there is none.
double lineHz(const Machine& machine, const std::string& name) {
    const double shaftHz = *machine.driver.ratedRpm / 60;
    for (const ForcingLine& line : forcingLines(machine, {.mostHz = 5000, .shaftHz = shaftHz}))
        if (line.name == name) return line.hz(shaftHz, machine.mainsHz);
    ADD_FAILURE() << "no line " << name;
    return 0;
}

TEST(Motor, SynchronousSpeed) {
    const double at50[] = {3000, 1500, 1000, 750, 600, 500}, at60[] = {3600, 1800, 1200, 900, 720, 600};
    for (int i = 0; i < 6; ++i) {
        EXPECT_EQ(motor(50, 2 * (i + 1), at50[i] * 0.98).synchronousRpm(), at50[i]);
        EXPECT_EQ(motor(60, 2 * (i + 1), at60[i] * 0.98).synchronousRpm(), at60[i]);
    }
}

TEST(Motor, OnAnInverterThereIsNoSynchronousSpeed) {
    EXPECT_FALSE(parsed(changed(R"({"driver": {"supply": "inverter"}})")).machine.synchronousRpm());
}

struct Worked {
    double mainsHz;
    int poles;
    double rpm, polePass;
};

TEST(Motor, PolePassSidebands) {
    for (const Worked& one :
         {Worked{50, 4, 1470, 2.0}, Worked{60, 4, 1770, 2.0}, Worked{50, 2, 2950, 1.6666667},
          Worked{50, 6, 980, 2.0}, Worked{60, 2, 3550, 1.6666667}}) {
        const Machine machine = motor(one.mainsHz, one.poles, one.rpm);
        const double fr = one.rpm / 60;
        EXPECT_NEAR(lineHz(machine, "1 x shaft + 1 x pole pass"), fr + one.polePass, 1e-6);
        EXPECT_NEAR(lineHz(machine, "1 x shaft - 1 x pole pass"), fr - one.polePass, 1e-6);
        EXPECT_NEAR(lineHz(machine, "3 x shaft + 2 x pole pass"), 3 * fr + 2 * one.polePass, 1e-6);
        EXPECT_NEAR(lineHz(machine, "2 x mains - 1 x pole pass"), 2 * one.mainsHz - one.polePass, 1e-6);
    }
}

// A two-pole motor's 2 x shaft (98.33 Hz) lies one pole pass below 2 x mains (100 Hz).
TEST(Motor, TwoPoleTrap) {
    const Machine machine = motor(50, 2, 2950);
    EXPECT_NEAR(lineHz(machine, "2 x mains") - lineHz(machine, "2 x shaft"), 1.6666667, 1e-6);
    EXPECT_NEAR(lineHz(machine, "2 x mains - 1 x pole pass"), lineHz(machine, "2 x shaft"), 1e-9);
}

struct Slotted {
    double mainsHz;
    int poles;
    double rpm;
    int bars;
    double middle, low, high;
};

TEST(Motor, RotorSlotLines) {
    for (const Slotted& one :
         {Slotted{50, 4, 1470, 28, 686, 586, 786}, Slotted{60, 4, 1770, 44, 1298, 1178, 1418},
          Slotted{50, 2, 2950, 28, 1376.6666667, 1276.6666667, 1476.6666667},
          Slotted{50, 6, 980, 36, 588, 488, 688}}) {
        const Machine machine = motor(one.mainsHz, one.poles, one.rpm, one.bars);
        EXPECT_NEAR(lineHz(machine, "rotor slots"), one.middle, 1e-6);
        EXPECT_NEAR(lineHz(machine, "rotor slots - 2 x mains"), one.low, 1e-6);
        EXPECT_NEAR(lineHz(machine, "rotor slots + 2 x mains"), one.high, 1e-6);
        EXPECT_NEAR(lineHz(machine, "rotor slots + 4 x mains"), one.middle + 4 * one.mainsHz, 1e-6);
    }
}

TEST(Motor, NoCageNoSlipLines) {
    for (const char* kind : {"pm_synchronous", "reluctance"}) {
        Json description = plainMachine();
        description["driver"]["kind"] = kind;
        for (const ForcingLine& line : forcingLines(parsed(description).machine, {}))
            EXPECT_NE(line.kind, ForcingKind::PolePass) << kind << " " << line.name;
    }
}

TEST(Motor, UnknownPolesNoSlipLines) {
    const Machine machine = parsed(changed(R"({"driver": {"poles": null}})")).machine;
    for (const ForcingLine& line : forcingLines(machine, {}))
        EXPECT_NE(line.kind, ForcingKind::PolePass) << line.name;
}

}  // namespace
}  // namespace fettle
