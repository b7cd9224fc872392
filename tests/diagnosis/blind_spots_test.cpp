// What a recording could not show is said, with what would.
#include "core/diagnosis/blind_spots.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/diagnosis/examined.h"
#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

using ::testing::HasSubstr;

const BlindSpot* spot(const Examination& e, const std::string& word) {
    for (const BlindSpot& b : e.blind)
        if (b.why.find(word) != std::string::npos) return &b;
    return nullptr;
}

void expectNothingWeighed(const Examination& e) {
    EXPECT_TRUE(e.findings.empty());
    EXPECT_GE(e.considered.size(), 8u) << "asked for, but not weighed";
    for (const Hypothesis& h : e.considered)
        EXPECT_FALSE(h.weightDban) << h.fault;
}

// Fifteen shaft turns at 1500 r/min are 0.6 s.
TEST(BlindSpots, FewerThanFifteenTurnsAreBlindAndSayHowManySecondsAreNeeded) {
    for (const double turns : {3.0, 9.0, 14.5}) {
        auto setup = made::with(made::setupOf(made::motor()), "bearing_outer_race", "driver DE", 0.75);
        setup.seconds = turns / 24.8;
        const auto made = made::made(setup);
        const Examination e = made::examined(made::motor(), made.recording);
        expectNothingWeighed(e);
        const BlindSpot* blind = spot(e, fmt::format("{:.2f} s or more", 15 / made.shaftHz));
        ASSERT_NE(blind, nullptr) << turns;
        EXPECT_THAT(blind->cure, HasSubstr("long"));
    }
    auto setup = made::with(made::setupOf(made::motor()), "bearing_outer_race", "driver DE", 0.75);
    setup.seconds = 16 / 24.8;
    EXPECT_TRUE(made::examined(made::motor(), made::made(setup).recording).considered[0].weightDban);
}

// Snapshots of a run-to-failure rig: 0.1 s at 25.6 kHz, 1800 r/min, 3 turns (Nectoux et al., IEEE PHM 2012).
TEST(BlindSpots, ATenthOfASecondIsTooShortAndSaysSo) {
    const Machine machine = made::machineOf(R"({ "tag": "RIG", "mains_hz": 60, "driver": { "power_kw": 0.25,
        "rated_rpm": 1800, "bearings": { "DE": { "rolling_elements": 13, "element_mm": 3.5, "pitch_mm": 25.6 } } },
        "points": [ { "id": "P", "at": "driver DE", "channels": [ { "name": "x" } ] } ] })");
    auto g = made::noise(2560, 0.5, 1);
    for (std::size_t hit = 0; hit + 60 < g.size(); hit += 152)  // 168 Hz, 5.6 x shaft: its outer race
        for (std::size_t m = 0; m < 60; ++m)
            g[hit + m] += 10 * std::exp(-0.1 * double(m)) * std::sin(0.9 * double(m));
    const Examination e = made::examined(machine, made::recordingOf(g, 25600, 1800));
    EXPECT_TRUE(e.findings.empty());
    const BlindSpot* blind = spot(e, "shaft turns");
    ASSERT_NE(blind, nullptr);
    EXPECT_THAT(blind->why, HasSubstr("0.10 s"));
    EXPECT_THAT(blind->why, HasSubstr("0.50 s"));
}

// BPFO of an 8-ball bearing 6309 is 3.04 shaft orders: at 25 Hz 0.9 Hz away from order 3, which a 1 s record
// cannot part.
TEST(BlindSpots, ACarrierOnAShaftOrderIsSaidAndALongerRecordPartsIt) {
    const Machine machine =
        made::machineOf(R"({ "tag": "T-1", "mains_hz": 50, "driver": { "kind": "pm_synchronous",
        "power_kw": 75, "rated_rpm": 1470, "bearings": { "DE": { "orders": { "bpfo": 3.04, "bpfi": 4.96, "bsf": 1.98,
        "ftf": 0.38 } } } },
        "points": [ { "id": "P", "at": "driver DE", "channels": [ { "name": "x" }, { "name": "z" } ] } ] })");
    const auto blindOver = [&](double seconds) {
        const auto made = made::made(made::setupOf(machine, 3, seconds));
        for (const BlindSpot& b : made::examined(machine, made.recording).blind)
            if (b.fault == "bearing_outer_race" && b.why.find("3 x shaft") != std::string::npos) return true;
        return false;
    };
    EXPECT_TRUE(blindOver(1));
    EXPECT_FALSE(blindOver(16));
}

// Half the common 8-ball sizes have BPFO within 0.05 to 0.09 orders of 3 x shaft (6316: 3.0857): one second
// does not part them, and the length that is told does.
TEST(BlindSpots, TheLengthThatIsToldPartsAnEightBallBearing) {
    const Machine machine =
        made::machineOf(R"({ "tag": "T-1", "mains_hz": 50, "driver": { "kind": "pm_synchronous",
        "power_kw": 75, "rated_rpm": 1470, "bearings": { "DE": { "designation": "6316" } } },
        "points": [ { "id": "P", "at": "driver DE", "channels": [ { "name": "x" }, { "name": "z" } ] } ] })");
    const auto outerRace = [&](double seconds) -> std::optional<BlindSpot> {
        for (const BlindSpot& b :
             made::examined(machine, made::made(made::setupOf(machine, 3, seconds)).recording).blind)
            if (b.fault == "bearing_outer_race") return b;
        return std::nullopt;
    };
    const auto blind = outerRace(1);
    ASSERT_TRUE(blind);
    EXPECT_THAT(blind->why, HasSubstr("3 x shaft"));
    ASSERT_TRUE(blind->cure.starts_with("a recording of ")) << blind->cure;
    const double told = std::stod(blind->cure.substr(15));
    EXPECT_GT(told, 1);
    EXPECT_FALSE(outerRace(told)) << told;
}

TEST(BlindSpots, WhatALongerRecordingOfTheWeekSeesIsNotBlind) {
    const Machine machine = made::motor();
    const auto brief = made::made(made::setupOf(machine, 1, 0.3)).recording;
    const auto enough = made::made(made::setupOf(machine, 2, 4)).recording;
    EXPECT_NE(spot(made::examined(machine, brief), "shaft turns"), nullptr);
    const auto week = examine(machine, {brief, enough});
    ASSERT_TRUE(week);
    EXPECT_EQ(spot(*week, "shaft turns"), nullptr);
}

// 3 s at 24.7 / 12.6 turns a second are 5.9 turns of the slow shaft: its bearing is blind, the motor's is
// not.
TEST(BlindSpots, TheTurnsOfItsOwnShaftCount) {
    const Machine machine = made::machineOf(
        R"({ "tag": "T-2", "mains_hz": 50, "driver": { "power_kw": 37, "poles": 4, "rated_rpm": 1475, "bearings": {
          "DE": { "rolling_elements": 9, "element_mm": 25, "pitch_mm": 120.0 } } }, "driven": { "kind": "mixer",
          "speed_ratio": 0.08, "bearings": { "DE": { "rolling_elements": 13, "element_mm": 18, "pitch_mm": 110.0 } } },
        "shafts": [ { "id": "S1", "of": "driver" }, { "id": "S2", "of": "driven" } ],
        "points": [ { "id": "P", "at": "driver DE", "channels": [ { "name": "x" } ] } ] })");
    const Examination e = made::examined(machine, made::made(made::setupOf(machine, 1, 3)).recording);
    const BlindSpot* blind = spot(e, "turns of S2");
    ASSERT_NE(blind, nullptr);
    EXPECT_EQ(blind->at, "driven DE");
    for (const Hypothesis& h : e.considered)
        if (h.fault == "bearing_outer_race") {
            EXPECT_EQ(h.weightDban.has_value(), h.at == "driver DE") << h.at;
        }
}

TEST(BlindSpots, AViewThatIsLeftOutIsNamed) {
    // 0.65 s at 800 Hz: 520 samples, most positions under the masks of shaft orders.
    const auto recording = made::recordingOf(made::noise(520, 0.1, 1), 800, 1484);
    const PreparedRecording prepared = prepare(made::motor(), recording, {});
    ASSERT_EQ(prepared.unfit, "");
    int unusable = 0;
    for (const View& view : prepared.views.at(0).envelopes)
        unusable += !view.unusable.empty();
    ASSERT_GT(unusable, 0);
    EXPECT_NE(spot(made::examined(made::motor(), recording), "left out"), nullptr);
}

TEST(BlindSpots, WhatABeltPartsIsToldOnceWithItsHousing) {
    const Machine machine = made::machineOf(
        R"({ "tag": "T-2", "mains_hz": 50, "driver": { "power_kw": 37, "poles": 4, "rated_rpm": 1475 },
        "driven": { "kind": "fan", "blades": 8, "bearings": {
          "DE": { "rolling_elements": 13, "element_mm": 18, "pitch_mm": 110.0 },
          "NDE": { "rolling_elements": 13, "element_mm": 18, "pitch_mm": 110.0 } } },
        "shafts": [ { "id": "S1", "of": "driver" }, { "id": "S2", "of": "driven" } ],
        "belts": [ { "id": "B1", "from": "S1", "to": "S2", "pulley_mm": [200, 260], "length_mm": 2500 } ],
        "points": [ { "id": "P", "at": "driver DE", "channels": [ { "name": "x" } ] } ] })");
    const Examination e = made::examined(machine, made::made(made::setupOf(machine)).recording);
    std::vector<std::string> told;
    for (const BlindSpot& b : e.blind)
        if (b.fault == "bearing" && b.at.starts_with("driven")) told.push_back(b.at + ": " + b.why);
    EXPECT_THAT(told, testing::ElementsAre("driven: heard through the belt only"));
}

// A plain bearing has no rolling elements: not blind, no concern.
TEST(BlindSpots, APlainBearingIsNotAskedForItsElements) {
    const Machine machine = made::machineOf(
        R"({ "tag": "T-2", "mains_hz": 50, "driver": { "power_kw": 900, "poles": 4, "rated_rpm": 1492, "bearings": {
          "DE": { "type": "sleeve" }, "NDE": { "type": "sleeve" } } },
        "points": [ { "id": "P", "at": "driver DE", "channels": [ { "name": "x" } ] } ] })");
    const Examination e = made::examined(machine, made::made(made::setupOf(machine)).recording);
    for (const BlindSpot& b : e.blind)
        EXPECT_NE(b.fault, "bearing") << b.why;
    for (const Hypothesis& h : e.considered)
        EXPECT_NE(h.fault, "bearing_outer_race");
}

TEST(BlindSpots, UnknownSpeedSaysWhyNothingWasWeighed) {
    const Examination e = made::examined(made::motor(), made::recordingOf(made::noise(25600, 0.1, 2), 6400));
    expectNothingWeighed(e);
    EXPECT_NE(spot(e, "speed"), nullptr);
}

}  // namespace
}  // namespace fettle
