// What is asked of every machine, what of none, and how short and long recordings make up for each other.
#include <set>

#include "core/diagnosis/blind_spots.h"
#include "core/diagnosis/examine.h"
#include "tests/diagnosis/measured.h"

namespace fettle {
namespace {

using testing::HasSubstr;

Machine motorWithFlux() {
    return made::machineOf(R"({ "tag": "T-M", "mains_hz": 50, "support": "rigid",
        "driver": { "power_kw": 75, "poles": 4, "rated_rpm": 1484, "rotor_bars": 58 },
        "points": [ { "id": "M", "at": "driver DE", "mount": "bearing_housing", "channels": [
            { "name": "x", "direction": "horizontal" },
            { "name": "flux", "quantity": "flux", "unit": "1" } ] } ] })");
}

TEST(Measures, EveryFamilyStatesWhatItStandsOn) {
    std::set<std::string> faults;
    for (const FaultFamily& family : faultFamilies()) {
        EXPECT_TRUE(faults.insert(family.fault).second) << family.fault;
        for (const char* text : {family.lines, family.directions, family.against, family.rivals, family.needs,
                                 family.test, family.source})
            EXPECT_STRNE(text, "") << family.fault;
        const std::set<std::string> proofs{"open data", "published numbers", "simulation only"};
        EXPECT_TRUE(proofs.count(family.provedOn)) << family.fault;
        EXPECT_EQ(faultFamily(family.fault)->fault, family.fault);
    }
    EXPECT_EQ(faultFamily("bearing_outer_race"), nullptr);
}

TEST(Measures, EveryHypothesisThatConcernsTheMachineIsConsidered) {
    const auto made = made::made(made::setupOf(made::fanSet()));
    const auto e = examine(made::fanSet(), {made.recording});
    ASSERT_TRUE(e);
    std::set<std::string> considered;
    for (const Hypothesis& h : e->considered) {
        considered.insert(h.fault);
        if (!h.weightDban && h.sentence.empty()) {
            EXPECT_NE(h.why, "") << h.fault;
        }
    }
    for (const char* fault : {"blade_pass", "flow", "rotor_bar", "electrical_2x_mains", "air_gap",
                              "supply_unbalance", "bearing_unknown"})
        EXPECT_TRUE(considered.count(fault)) << fault;
    for (const char* fault : {"gear_mesh", "belt", "cavitation", "bearing_current"})
        EXPECT_FALSE(considered.count(fault)) << fault;
    EXPECT_FALSE(e->recordings[0].measures.empty());
}

TEST(Measures, OfAMachineThatDoesNotTurnNothingIsMeasured) {
    auto setup = made::setupOf(motorWithFlux());
    setup.operation.turning = setup.operation.energised = false;
    const auto report = made::reportOf(setup);
    EXPECT_TRUE(report.measures.empty());
    const BlindSpot* blind = made::blindFor(report, "rotor_bar");
    ASSERT_NE(blind, nullptr);
    EXPECT_THAT(blind->cure, HasSubstr("running machine"));
    for (const Hypothesis& h : report.hypotheses)
        EXPECT_EQ(h.recordingCount, 0u) << h.fault << ": could not be judged";
}

// A node on the motor is a coupling away from the blades; one on the fan is not.
TEST(Measures, WhatIsHeardOnlyOverAWaySaysSo) {
    auto machine = made::fanSet();
    for (const bool fanToo : {true, false}) {
        if (!fanToo) machine.points.pop_back();
        const auto report = made::reportOf(made::setupOf(machine));
        for (const Hypothesis& h : report.hypotheses) {
            const bool far = !fanToo && h.at.starts_with("driven");
            EXPECT_EQ(h.path, far ? "through coupling" : "") << h.fault << " " << h.at;
        }
    }
}

TEST(Measures, NamesAreOfOneSeriesAChannel) {
    for (const Machine& machine : {motorWithFlux(), made::fanSet()}) {
        std::set<std::string> series;
        for (const FaultMeasure& m : made::reportOf(made::setupOf(machine, 1, 16)).measures) {
            EXPECT_TRUE(series.insert(m.fault + m.at + m.name + std::to_string(m.channel)).second) << m.name;
            EXPECT_TRUE(m.unit == "mm/s" || m.unit == "g" || m.unit == "dB" || m.unit == "1") << m.unit;
            EXPECT_TRUE(std::isfinite(m.value)) << m.name;
        }
        EXPECT_FALSE(series.empty());
    }
}

// The short wide recording is blind to rotor bars, the long narrow one is not: together they are not, and its
// verdict is not outvoted by recordings that could not judge.
TEST(Measures, ALongNarrowRecordingMakesUpForShortWideOnes) {
    std::vector<RecordingPtr> recordings;
    for (std::uint64_t seed = 1; seed <= 4; ++seed) {
        auto setup = made::with(made::setupOf(motorWithFlux(), seed, 2), "rotor_bar", "driver", 1);
        setup.operation.load = 0.9;
        recordings.push_back(made::made(setup).recording);
    }
    const auto brief = examine(motorWithFlux(), recordings);
    ASSERT_TRUE(brief);
    const auto blindTo = [](const Examination& e) {
        return std::any_of(e.blind.begin(), e.blind.end(),
                           [](const BlindSpot& b) { return b.fault == "rotor_bar"; });
    };
    EXPECT_TRUE(blindTo(*brief));
    auto narrow = made::with(made::setupOf(motorWithFlux(), 9, 32), "rotor_bar", "driver", 1);
    narrow.node.rateHz = 1000;
    narrow.operation.load = 0.9;
    recordings.push_back(made::made(narrow).recording);
    const auto both = examine(motorWithFlux(), recordings);
    ASSERT_TRUE(both);
    EXPECT_FALSE(blindTo(*both));
    const auto named = std::find_if(both->findings.begin(), both->findings.end(),
                                    [](const Hypothesis& h) { return h.fault == "rotor_bar"; });
    ASSERT_NE(named, both->findings.end());
    EXPECT_EQ(named->recordingCount, 1u);
    EXPECT_NE(named->urgency, "leave");
}

// Friction above 2 kHz (common practice, no source), at its own bearing only; never an element.
TEST(Measures, ADryBearingRaisesTheFloorAboveTwoKilohertz) {
    const auto setup = made::setupOf(made::motor());
    const made::Followed floor{"bearing_dry_or_worn", "floor 2-5.8 kHz"};
    made::expectRises(made::overSeverity(setup, "bearing_dry_or_worn", "driver DE", floor), 6);
    for (const char* rival : {"unbalance", "misalignment", "electrical_2x_mains"})
        made::expectLeavesAlone(setup, rival, "driver", floor, 1);
    const auto report = made::reportOf(setup);
    for (const FaultMeasure& m : report.measures)
        if (m.fault == floor.fault) {
            EXPECT_EQ(m.at, "driver DE");
        }
    ASSERT_NE(made::blindFor(report, "bearing_dry_or_worn"), nullptr);
    EXPECT_EQ(made::blindFor(report, "bearing_dry_or_worn")->at, "driver NDE");
}

// Bearing current: an inverter, race lines and a hump at 1 to 3 kHz (common practice, no source).
TEST(Measures, BearingCurrentNeedsInverterRaceLinesAndHump) {
    const Machine machine = made::machineOf(R"({ "tag": "T-INV", "mains_hz": 50,
        "driver": { "power_kw": 75, "poles": 4, "rated_rpm": 1484, "supply": "inverter", "rated_hz": 50,
          "rpm_min": 600, "rpm_max": 1500 },
        "points": [ { "id": "M", "at": "driver DE", "channels": [ { "name": "x" } ] } ] })");
    const auto hump = [](double level) {  // a ringing noise at 1.8 kHz over an even floor
        auto g = made::noise(51200, 0.05, 3);
        const auto drive = made::noise(51200, level, 4);
        double a = 0, b = 0;
        for (std::size_t i = 0; i < g.size(); ++i) {
            const double next = drive[i] + 1.2 * a - 0.81 * b;  // poles near 2 pi 1.7 kHz / 12.8 kHz
            b = a;
            a = next;
            g[i] += next;
        }
        return made::recordingOf(g, 12800, 1484);
    };
    Hypothesis race;
    race.fault = "bearing_outer_race";
    race.at = "driver DE";
    race.weightDban = 30;
    race.severity = {"stage", "developed", {}, {}, "", ""};
    PreparedRecording quiet = prepare(machine, hump(0), {}), loud = prepare(machine, hump(0.2), {});
    quiet.facts.running = loud.facts.running = "running";
    const auto with = measuresOf(machine, loud, {race});
    EXPECT_GT(*made::valueIn(with, "bearing_current", "hump 1-3 kHz"),
              *made::valueIn(measuresOf(machine, quiet, {}), "bearing_current", "hump 1-3 kHz") + 6);
    ASSERT_NE(made::named(with, "bearing_current"), nullptr);
    EXPECT_THAT(made::named(with, "bearing_current")->sentence, HasSubstr("A new bearing alone fails again"));
    EXPECT_EQ(made::named(measuresOf(machine, loud, {}), "bearing_current"), nullptr);
    EXPECT_EQ(made::named(measuresOf(machine, quiet, {race}), "bearing_current"), nullptr);
}

}  // namespace
}  // namespace fettle
