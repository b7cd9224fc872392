// What a machine description may hold, and that all of it arrives.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/machine/describe.h"

namespace fettle {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

const char* const kFan =
    R"({ "tag": "CR-21", "asset": "55310", "service": "cooler exhaust fan", "site": "Low Moor",
  "area": "cooler", "criticality": "A", "standby": true, "mains_hz": 50, "support": "flexible",
  "driver": { "kind": "induction", "power_kw": 90, "poles": 4, "rated_rpm": 1486, "shaft_height_mm": 280,
    "supply": "mains", "rotor_bars": 58, "stator_slots": 72, "thermal_class": "F",
    "bearings": { "DE":  { "designation": "6316", "type": "deep_groove", "rolling_elements": 8, "element_mm": 28.575,
                           "pitch_mm": 125.0, "contact_deg": 0, "source": "nameplate" },
                  "NDE": { "designation": "6316", "orders": { "bpfo": 3.0857, "bpfi": 4.9143, "bsf": 2.0729,
                                                              "ftf": 0.3857 } } } },
  "coupling": "flexible",
  "driven": { "kind": "fan", "blades": 11, "bearings": {
      "DE": { "designation": "22218", "type": "spherical_roller", "rows": 2 }, "NDE": { "designation": "22218" } } },
  "points": [ { "id": "M1", "at": "driver DE", "mount": "bearing_housing", "fixing": "adhesive",
      "usable_hz": [2, 4000], "range": 16, "noise_per_rt_hz": 3e-4, "interval_min": 20,
      "node": [ { "id": "1201", "from": "2025-03-01", "to": "2025-11-03" }, { "id": "0999", "from": "2025-11-03" } ],
      "hears": [ { "at": "driver NDE", "path": "same housing" }, { "at": "driven", "path": "through coupling" } ],
      "channels": [ { "name": "x", "quantity": "acceleration", "unit": "g", "direction": "horizontal" },
        { "name": "z", "quantity": "acceleration", "unit": "g", "direction": "axial" },
        { "name": "flux", "quantity": "flux", "unit": "1" } ] } ] })";

TEST(MachineJson, HeadingAndNameplate) {
    const auto [machine, warnings] = parsed(Json::parse(kFan));
    EXPECT_THAT(warnings, IsEmpty());
    EXPECT_EQ(machine.tag, "CR-21");
    EXPECT_EQ(machine.asset, "55310");
    EXPECT_EQ(machine.criticality, "A");
    EXPECT_TRUE(machine.standby);
    EXPECT_EQ(machine.support, "flexible");
    EXPECT_EQ(machine.driver.poles, 4);
    EXPECT_EQ(machine.driver.rotorBars, 58);
    EXPECT_EQ(machine.driver.statorSlots, 72);
    EXPECT_EQ(machine.driver.thermalClass, "F");
    EXPECT_FALSE(machine.driver.inverter);
    EXPECT_EQ(machine.driven.kind, "fan");
    EXPECT_EQ(machine.driven.blades, 11);
}

TEST(MachineJson, BearingsStandAtTheirPlaces) {
    const Machine machine = parsed(Json::parse(kFan)).machine;
    ASSERT_EQ(machine.bearings.size(), 4u);
    EXPECT_EQ(machine.bearings[0].at, "driver DE");
    EXPECT_EQ(machine.bearings[3].at, "driven NDE");
    EXPECT_EQ(machine.bearings[3].component, "driven");
    EXPECT_EQ(machine.bearings[2].bearing.rows, 2);
    for (const BearingPlace& bearing : machine.bearings)
        EXPECT_EQ(bearing.shaft, 0u);
}

TEST(MachineJson, BearingByGeometryAndByOrders) {
    const Machine machine = parsed(Json::parse(kFan)).machine;
    ASSERT_EQ(machine.bearings[0].bearing.variants.size(), 1u);
    const BearingVariant& geometry = machine.bearings[0].bearing.variants[0];
    EXPECT_NEAR(geometry.orders.bpfo, 3.0856, 1e-4);
    EXPECT_EQ(geometry.source, "nameplate");
    EXPECT_TRUE(geometry.confirmed);
    ASSERT_EQ(machine.bearings[1].bearing.variants.size(), 1u);
    const BearingVariant& orders = machine.bearings[1].bearing.variants[0];
    EXPECT_DOUBLE_EQ(orders.orders.bpfo, 3.0857);
    EXPECT_DOUBLE_EQ(orders.orders.bsf, 2.0729);
    EXPECT_EQ(orders.rollingElements, 8);
}

TEST(MachineJson, ADesignationOutsideTheTableIsBlindAndSaysSo) {
    const Machine machine = parsed(Json::parse(kFan)).machine;
    EXPECT_THAT(machine.bearings[2].bearing.variants, IsEmpty());
    EXPECT_THAT(machine.bearings[2].bearing.whyNone, HasSubstr("22218"));
}

TEST(MachineJson, PointsNodesAndWhatTheyHear) {
    const Machine machine = parsed(Json::parse(kFan)).machine;
    ASSERT_EQ(machine.points.size(), 1u);
    const Point& point = machine.points[0];
    EXPECT_EQ(point.mount, "bearing_housing");
    EXPECT_EQ(point.fixing, "adhesive");
    EXPECT_THAT(*point.usableHz, ElementsAre(2, 4000));
    EXPECT_EQ(point.range, 16);
    EXPECT_EQ(point.noisePerRtHz, 3e-4);
    EXPECT_EQ(point.intervalMin, 20);
    ASSERT_EQ(point.nodes.size(), 2u);
    EXPECT_EQ(point.nodes[0].to, "2025-11-03");
    EXPECT_EQ(point.nodes[1].to, "");
    ASSERT_EQ(point.hears.size(), 2u);
    EXPECT_EQ(point.hears[1].path, "through coupling");
    ASSERT_EQ(point.channels.size(), 3u);
    EXPECT_EQ(point.channels[1].direction, "axial");
    EXPECT_EQ(point.channels[2].quantity, "flux");
    EXPECT_EQ(point.channels[2].direction, "unknown");
}

// The least the contract asks for: tag, mains, poles, a point with a channel. What is assumed is said.
TEST(MachineJson, TheLeastThatIsTaken) {
    const auto [machine, warnings] = parsed(Json::parse(
        R"({"tag": "X", "mains_hz": 60, "driver": {"poles": 2}, "points": [{"channels": [{}]}]})"));
    EXPECT_EQ(machine.criticality, "B");
    EXPECT_EQ(machine.support, "unknown");
    EXPECT_EQ(machine.driver.kind, DriverKind::Induction);
    ASSERT_EQ(machine.shafts.size(), 1u);
    EXPECT_EQ(machine.points[0].mount, "unknown");
    EXPECT_EQ(machine.points[0].channels[0].quantity, "acceleration");
    EXPECT_THAT(warnings, ElementsAre(HasSubstr("m.json: /points/0/id"), HasSubstr("/points/0/at"),
                                      HasSubstr("/points/0/channels/0/name")));
}

TEST(MachineJson, RatedSpeedStandsInForPoles) {
    const Machine machine = parsed(changed(R"({"driver": {"poles": null, "rated_rpm": 1730}})")).machine;
    EXPECT_FALSE(machine.driver.poles);
    EXPECT_FALSE(machine.synchronousRpm());
    EXPECT_EQ(machine.nominalRpm(), 1730);
}

TEST(MachineJson, DriverKinds) {
    const std::vector<std::pair<const char*, DriverKind>> kinds = {
        {"induction", DriverKind::Induction},
        {"wound_rotor", DriverKind::WoundRotor},
        {"two_speed", DriverKind::TwoSpeed},
        {"pm_synchronous", DriverKind::PmSynchronous},
        {"reluctance", DriverKind::Reluctance}};
    for (const auto& [word, kind] : kinds) {
        Json machine = plainMachine();
        machine["driver"]["kind"] = word;
        EXPECT_EQ(parsed(machine).machine.driver.kind, kind) << word;
    }
}

TEST(MachineJson, InverterSupply) {
    const Driver driver = parsed(changed(R"({"driver": {"kind": "pm_synchronous", "supply": "inverter",
        "output_hz_range": [20, 60], "rated_hz": 50, "carrier_hz": 4000, "rpm_min": 600, "rpm_max": 1800}})"))
                              .machine.driver;
    EXPECT_TRUE(driver.inverter);
    EXPECT_EQ(driver.outputHzLeast, 20);
    EXPECT_EQ(driver.outputHzMost, 60);
    EXPECT_EQ(driver.ratedHz, 50);
    EXPECT_EQ(driver.carrierHz, 4000);
    EXPECT_EQ(driver.rpmMin, 600);
    EXPECT_EQ(driver.rpmMax, 1800);
}

TEST(MachineJson, PlainBearingHasNoRollingElements) {
    const Machine machine =
        parsed(changed(R"({"driver": {"bearings": {"DE": {"type": "sleeve", "designation": "6316"}}}})"))
            .machine;
    EXPECT_THAT(machine.bearings[0].bearing.variants, IsEmpty());
    EXPECT_EQ(machine.bearings[0].bearing.whyNone, "plain bearing: no rolling elements");
}

TEST(MachineJson, ABearingOfWhichNothingIsKnownSaysSo) {
    const Machine machine = parsed(changed(R"({"driver": {"bearings": {"DE": {}}}})")).machine;
    EXPECT_THAT(machine.bearings[0].bearing.variants, IsEmpty());
    EXPECT_THAT(machine.bearings[0].bearing.whyNone, HasSubstr("no designation"));
}

TEST(MachineJson, DesignationAloneBringsAllKnownGeometries) {
    const Machine machine =
        parsed(changed(R"({"driver": {"bearings": {"DE": {"designation": "6205-2Z/C3"}}}})")).machine;
    ASSERT_EQ(machine.bearings[0].bearing.variants.size(), 2u);
    EXPECT_FALSE(machine.bearings[0].bearing.variants[0].confirmed);
    EXPECT_EQ(machine.bearings[0].bearing.whyNone, "");
}

TEST(MachineJson, OuterRingTurning) {
    const Machine machine =
        parsed(changed(R"({"driver": {"bearings": {"DE": {"turning": "outer", "rolling_elements": 9,
        "element_mm": 7.94, "pitch_mm": 39.04}}}})"))
            .machine;
    EXPECT_EQ(machine.bearings[0].bearing.turning, TurningRing::Outer);
    EXPECT_GT(machine.bearings[0].bearing.variants[0].orders.ftf, 0.5);
}

// FTF and BSF follow from BPFO and BPFI where the contact angle is 0 (textbook): 9 x 7.94 on 39.04.
TEST(MachineJson, MissingCageAndSpinAreComputed) {
    const auto [machine, warnings] = parsed(
        changed(R"({"driver": {"bearings": {"DE": {"orders": {"bpfo": 3.58478, "bpfi": 5.41522}}}}})"));
    const BearingOrders& orders = machine.bearings[0].bearing.variants[0].orders;
    EXPECT_NEAR(orders.ftf, 0.398308, 1e-5);
    EXPECT_NEAR(orders.bsf, 2.356722, 1e-4);
    EXPECT_THAT(warnings, ElementsAre(HasSubstr("/driver/bearings/DE/orders/bsf")));
}

TEST(MachineJson, GeometryAndOrdersThatDifferAreBothKept) {
    const auto [machine, warnings] = parsed(changed(R"({"driver": {"bearings": {"DE": {"rolling_elements": 9,
        "element_mm": 7.938, "pitch_mm": 36, "orders": {"bpfo": 3.5848, "bpfi": 5.4152, "bsf": 2.3567, "ftf": 0.3983}}}}})"));
    EXPECT_EQ(machine.bearings[0].bearing.variants.size(), 2u);
    EXPECT_THAT(warnings, ElementsAre(HasSubstr("does not fit the geometry")));
}

TEST(MachineJson, UnknownKeysAreNamedNotRefused) {
    const auto [machine, warnings] = parsed(changed(R"({"colour": "blue", "driver": {"pole": 4},
        "points": [{"id": "P1", "at": "driver DE", "sensor": 3, "channels": [{"name": "v", "gain": 2}]}]})"));
    EXPECT_EQ(machine.tag, "CR-07");
    EXPECT_THAT(warnings, ::testing::UnorderedElementsAre(HasSubstr("/colour: unknown key"),
                                                          HasSubstr("/driver/pole: unknown key"),
                                                          HasSubstr("/points/0/sensor: unknown key"),
                                                          HasSubstr("/channels/0/gain: unknown key")));
}

TEST(MachineJson, WhatTheProgramWritesItselfIsNoUnknownKey) {
    EXPECT_THAT(parsed(changed(R"({"schema": 1, "engine": "0.1.0 abc"})")).warnings, IsEmpty());
}

// A plate copied with a wrong number of poles: 1480 r/min cannot be a 6-pole machine at 50 Hz (synchronous
// 1000 r/min).
TEST(MachineJson, SpeedThatDoesNotFitThePolesIsWarnedOf) {
    EXPECT_THAT(parsed(changed(R"({"driver": {"poles": 6}})")).warnings,
                ElementsAre(HasSubstr("synchronous speed is 1000")));
    EXPECT_THAT(parsed(changed(R"({"driver": {"kind": "reluctance", "rated_rpm": 1500}})")).warnings,
                IsEmpty());
}

TEST(MachineJson, PlacesAreReadByTheLongestName) {
    const Machine machine = parsed(changed(R"({"driven": {"kind": "mill"},
        "shafts": [{"id": "S1", "of": "driver"}, {"id": "S2", "of": "driven"}],
        "gears": [{"id": "G1", "from": "S1", "to": "S2", "teeth": [20, 40]}],
        "intermediate": [{"id": "G1 box", "shaft": "S2", "bearings": {"DE": {"designation": "6310"}}}]})"))
                                .machine;
    EXPECT_EQ(machine.placeOf("G1 box DE")->component, "G1 box");
    EXPECT_EQ(machine.placeOf("G1 box DE")->position, "DE");
    EXPECT_EQ(machine.placeOf("G1 box DE")->shaft, 1u);
    EXPECT_EQ(machine.placeOf("G1")->component, "G1");
    EXPECT_EQ(machine.placeOf("G1")->position, "");
    EXPECT_EQ(machine.placeOf("driver DE or NDE")->position, "DE or NDE");
    EXPECT_FALSE(machine.placeOf("G1box"));
    EXPECT_FALSE(machine.placeOf(""));
}

Bearing bearingOf(const std::string& text) {
    const Machine machine =
        parsed(changed(R"({ "driver": { "bearings": { "DE": )" + text + " } } }")).machine;
    EXPECT_EQ(machine.bearings.size(), 1u);
    return machine.bearings.at(0).bearing;
}

// Makers differ: what the site knows stands beside the plate's geometry, or beside the table's.
TEST(MachineJson, OtherMakersVariantsStandBesideTheBearingsOwn) {
    const Bearing own = bearingOf(R"({ "designation": "6316", "rolling_elements": 8, "element_mm": 28.575,
        "pitch_mm": 125, "variants": [ { "rolling_elements": 9, "element_mm": 26, "pitch_mm": 125 },
        { "rolling_elements": 8, "element_mm": 28.575, "pitch_mm": 125 } ] })");
    ASSERT_EQ(own.variants.size(), 2u);  // the second is the bearing's own
    EXPECT_EQ(own.variants[1].rollingElements, 9);
    EXPECT_TRUE(own.variants[1].confirmed);
    const Bearing typical = bearingOf(R"({ "designation": "6316", "variants": [
        { "orders": { "bpfo": 3.564, "bpfi": 5.436, "bsf": 2.3, "ftf": 0.396 } } ] })");
    ASSERT_EQ(typical.variants.size(), 2u);
    EXPECT_FALSE(typical.variants[0].confirmed);
    const Bearing unknown =
        bearingOf(R"({ "variants": [ { "rolling_elements": 9, "element_mm": 26, "pitch_mm": 125 } ] })");
    EXPECT_EQ(unknown.variants.size(), 1u);
    EXPECT_EQ(unknown.whyNone, "");
}

TEST(MachineJson, AVariantWithoutGeometryOrOrdersIsRefused) {
    EXPECT_FALSE(parseMachine(
        changed(R"({ "driver": { "bearings": { "DE": { "designation": "6316", "variants": [ {} ] } } } })")
            .dump(),
        "m.json"));
}

}  // namespace
}  // namespace fettle
