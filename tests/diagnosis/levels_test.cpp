// How bad it is: levels of known sines, zone edges, and what may be called possible from one recording.
// Sources: v = a / (2 pi f); zones of ISO 20816-3 group 2 (15 to 300 kW) on a rigid base, 1.4, 2.8 and 4.5
// mm/s, figures of ISO 10816-3:2009 table A.2, from memory; below 600 r/min the band starts at 2 Hz (the
// same, from memory).
#include "core/diagnosis/levels.h"

#include <gtest/gtest.h>

#include "core/diagnosis/examine.h"
#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

constexpr double kRateHz = 6400;
constexpr std::size_t kSamples = 25600;

ChannelLevels levelsOfSine(const Machine& machine, double mmS, double hz, const std::string& unit = "g",
                           double perG = 1) {
    auto samples = made::sine(made::peakG(mmS, hz) * perG, hz, kRateHz, kSamples);
    auto recording = made::recordingOf(samples, kRateHz);
    recording->channels[0].unit = unit;
    return prepare(machine, recording, {}).facts.levels.at(0);
}

TEST(Levels, ASineOfKnownVelocityReadsItWithinOnePerCent) {
    for (const double hz : {12.0, 24.6, 49.3, 120.7, 640.0, 950.0})
        for (const double mmS : {0.5, 4.0, 18.0})
            EXPECT_NEAR(levelsOfSine(made::motor(), mmS, hz).velocityRmsMmS.value_or(0) / mmS, 1, 0.01)
                << mmS << " mm/s at " << hz << " Hz";
}

TEST(Levels, UnitsAreTakenForWhatTheyAre) {
    const auto machine =
        made::machineOf(R"({ "tag": "U", "mains_hz": 50, "driver": { "power_kw": 75, "poles": 4 },
        "points": [ { "id": "P", "at": "driver DE", "channels": [ { "name": "other" } ] } ] })");
    EXPECT_NEAR(*levelsOfSine(machine, 4, 30, "m/s2", kStandardGravity).velocityRmsMmS, 4, 0.04);
    EXPECT_NEAR(*levelsOfSine(machine, 4, 30, "mg", 1000).velocityRmsMmS, 4, 0.04);
    EXPECT_NEAR(*levelsOfSine(machine, 4, 30, "g", 1).accelerationRmsG, made::peakG(4, 30) / std::sqrt(2),
                1e-4);
    EXPECT_FALSE(levelsOfSine(machine, 4, 30, "1").velocityRmsMmS);  // flux has no velocity
}

TEST(Levels, OutsideTheBandNothingCounts) {
    EXPECT_LT(*levelsOfSine(made::motor(), 10, 6).velocityRmsMmS, 0.1);
    EXPECT_LT(*levelsOfSine(made::motor(), 10, 1100).velocityRmsMmS, 0.1);
    Machine slow = made::motor();
    slow.driver.poles = 12;
    slow.driver.ratedRpm = 490;
    EXPECT_NEAR(*levelsOfSine(slow, 10, 6).velocityRmsMmS, 10, 0.1);
}

// A sine: peak over r.m.s. is the square root of 2, kurtosis 1.5; a standing gravity is not vibration.
TEST(Levels, CrestFactorAndKurtosisAreOfWhatMoves) {
    auto samples = made::sine(0.5, 50, kRateHz, kSamples);
    for (double& value : samples)
        value += 1;
    const auto levels = prepare(made::motor(), made::recordingOf(samples, kRateHz), {}).facts.levels.at(0);
    EXPECT_NEAR(levels.crestFactor, std::sqrt(2), 0.01);
    EXPECT_NEAR(levels.kurtosis, 1.5, 0.01);
    EXPECT_NEAR(*levels.accelerationRmsG, 0.5 / std::sqrt(2), 1e-3);
}

std::string zoneAt(double mmS, Machine machine = made::motor()) {
    const auto levels = levelsOfSine(machine, mmS, 24.6);
    std::string zones;
    for (const ZoneNote& zone : levels.zones)
        zones += zone.zone;
    return zones;
}

TEST(Zones, EdgesAreThoseOfTheStandard) {
    for (const auto& [mmS, zone] : std::vector<std::pair<double, std::string>>{{0.2, "A"},
                                                                               {1.38, "A"},
                                                                               {1.42, "B"},
                                                                               {2.77, "B"},
                                                                               {2.83, "C"},
                                                                               {4.45, "C"},
                                                                               {4.55, "D"},
                                                                               {30, "D"}})
        EXPECT_EQ(zoneAt(mmS), zone) << mmS;
    const auto levels = levelsOfSine(made::motor(), 3, 24.6);
    EXPECT_EQ(levels.zones.at(0).basis, "ISO 20816-3 group 2 rigid");
    EXPECT_EQ(levels.zones.at(0).limit, 4.5);  // the next edge up
    EXPECT_FALSE(levelsOfSine(made::motor(), 30, 24.6).zones.at(0).limit);
}

TEST(Zones, UnknownSupportShowsBothClassesAndAFootIsIndicative) {
    Machine machine = made::motor();
    machine.support = "unknown";
    EXPECT_EQ(zoneAt(2.5, machine), "BB");  // rigid 1.4 to 2.8, flexible 2.3 to 4.5
    EXPECT_EQ(zoneAt(2.0, machine), "BA");
    EXPECT_FALSE(levelsOfSine(made::motor(), 3, 24.6).zones.at(0).indicative);
    machine.points[0].mount = "foot";
    EXPECT_TRUE(levelsOfSine(machine, 3, 24.6).zones.at(0).indicative);
    machine.points[0].mount = "fin_or_cowl";
    const auto none = levelsOfSine(machine, 3, 24.6);
    EXPECT_TRUE(none.zones.empty());
    EXPECT_NE(none.noZoneWhy, "");
}

// A level from a record that stands at its stops grades the sensor, not the machine.
TEST(Zones, AClippedRecordHasNone) {
    auto samples = made::sine(made::peakG(8, 24.6), 24.6, kRateHz, kSamples);
    for (double& value : samples)
        value = std::clamp(value, -0.06, 0.06);
    const auto prepared = prepare(made::motor(), made::recordingOf(samples, kRateHz), {});
    EXPECT_EQ(prepared.facts.quality.at(0).code, "clipped");
    EXPECT_TRUE(prepared.facts.levels.at(0).zones.empty());
    EXPECT_NE(prepared.facts.levels.at(0).noZoneWhy, "");
}

TEST(ShaftOrders, AreReadOnceTheSpeedIsKnown) {
    const double fr = 24.7;
    auto g =
        made::sum(made::noise(kSamples, 0.002, 1), made::sine(made::peakG(3, fr), fr, kRateHz, kSamples));
    g = made::sum(g, made::sine(made::peakG(1.5, 2 * fr), 2 * fr, kRateHz, kSamples));
    g = made::sum(g, made::sine(made::peakG(0.7, 3 * fr), 3 * fr, kRateHz, kSamples));
    const auto levels = prepare(made::motor(), made::recordingOf(g, kRateHz, fr * 60), {}).facts.levels.at(0);
    EXPECT_NEAR(levels.order1MmS.value_or(0), 3, 0.05);
    EXPECT_NEAR(levels.order2MmS.value_or(0), 1.5, 0.05);
    EXPECT_NEAR(levels.order3MmS.value_or(0), 0.7, 0.05);
}

// What one simulated recording with a shaft fault leads to.
class Possible : public ::testing::Test {
  protected:
    void examineWith(const std::string& kind, double severity, std::uint64_t seed = 7) {
        auto setup = made::setupOf(machine_, seed);
        if (severity > 0) setup = made::with(setup, kind, "driver", severity);
        auto result = examine(machine_, {made::made(setup).recording});
        ASSERT_TRUE(result);
        e_ = *result;
    }
    std::vector<std::string> named() const {
        std::vector<std::string> faults;
        for (const Hypothesis& h : e_.findings)
            faults.push_back(h.fault);
        return faults;
    }
    std::string worstZone() const {
        std::string worst;
        for (const ChannelLevels& l : e_.recordings.at(0).levels)
            for (const ZoneNote& zone : l.zones)
                worst = std::max(worst, zone.zone);
        return worst;
    }

    Machine machine_ = made::fanSet();
    Examination e_;
};

TEST_F(Possible, UnbalanceWhere1xDominatesARadialZoneD) {
    examineWith("unbalance", 0.9);
    ASSERT_EQ(worstZone(), "D");
    ASSERT_EQ(named(), std::vector<std::string>{"unbalance"});
    const Hypothesis& h = e_.findings[0];
    EXPECT_FALSE(h.weightDban);
    EXPECT_NE(h.sentence.find("Possible"), std::string::npos) << h.sentence;
    EXPECT_EQ(h.severity.kind, "zone");
    EXPECT_EQ(h.severity.value, "D");
    EXPECT_GT(h.severity.level.value_or(0), 4.5);
    EXPECT_EQ(h.severity.unit, "mm/s");
    EXPECT_EQ(h.urgency, "act");
}

TEST_F(Possible, MisalignmentWhere2xStandsBeside1x) {
    examineWith("misalignment", 1);
    ASSERT_GE(worstZone(), "C");
    EXPECT_EQ(named(), std::vector<std::string>{"misalignment"});
}

TEST_F(Possible, LoosenessWhereManyOrdersStand) {
    examineWith("looseness", 0.9);
    ASSERT_GE(worstZone(), "C");
    EXPECT_EQ(named(), std::vector<std::string>{"looseness"});
}

TEST_F(Possible, NothingIsNamedInZoneAAndB) {
    for (const char* kind : {"unbalance", "misalignment", "looseness"})
        for (const double severity : {0.0, 0.1}) {
            examineWith(kind, severity);
            ASSERT_LE(worstZone(), "B") << kind;
            EXPECT_TRUE(named().empty()) << kind << " " << named()[0];
            int considered = 0;
            for (const Hypothesis& h : e_.considered)
                if (h.fault == "unbalance" || h.fault == "misalignment" || h.fault == "looseness") {
                    ++considered;
                    EXPECT_FALSE(h.weightDban);
                    EXPECT_NE(h.why.find("baseline"), std::string::npos) << h.why;
                }
            EXPECT_EQ(considered, 3);
        }
}

// Not a bearing housing: said beside the zone.
TEST_F(Possible, OnAFootTheZoneIsIndicative) {
    machine_.points[0].mount = "foot";
    examineWith("unbalance", 0.9);
    ASSERT_EQ(named(), std::vector<std::string>{"unbalance"});
    EXPECT_NE(e_.findings[0].sentence.find("indicative"), std::string::npos) << e_.findings[0].sentence;
}

// Motors to 15 kW: ISO 10816-1 class I is a note, alone never above watch.
TEST_F(Possible, ASmallMotorIsNeverMoreThanWatched) {
    machine_.driver.powerKw = 7.5;
    machine_.driven = {};
    examineWith("unbalance", 0.9);
    for (const Hypothesis& h : e_.findings)
        EXPECT_TRUE(h.urgency == "watch" || h.urgency == "leave") << h.urgency << ": " << h.sentence;
}

}  // namespace
}  // namespace fettle
