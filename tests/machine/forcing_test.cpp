// Lines every healthy machine draws: gears, belts, blades, inverter. Kinematics, textbook.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <numbers>
#include <optional>
#include <set>

#include "core/machine/forcing.h"
#include "tests/machine/describe.h"

namespace fettle {
namespace {

std::optional<ForcingLine> find(const std::vector<ForcingLine>& lines, const std::string& name) {
    const auto found =
        std::find_if(lines.begin(), lines.end(), [&](const auto& line) { return line.name == name; });
    return found == lines.end() ? std::nullopt : std::optional(*found);
}

double hzOf(const std::vector<ForcingLine>& lines, const std::string& name, double shaftHz,
            double mainsHz = 50) {
    const auto line = find(lines, name);
    EXPECT_TRUE(line) << name;
    return line ? line->hz(shaftHz, mainsHz) : 0;
}

const char* const kGeared =
    R"({"driven": {"kind": "mill"}, "shafts": [{"id": "S1", "of": "driver"}, {"id": "S2", "of": "driven"}],
    "gears": [{"id": "G1", "from": "S1", "to": "S2", "teeth": [21, 67]}]})";

// 21/67 teeth, pinion 1480 r/min: mesh 518 Hz, wheel 7.731343 Hz (computed).
TEST(Forcing, GearMeshAndSidebandsOfBothShafts) {
    const auto lines = forcingLines(parsed(changed(kGeared)).machine, {});
    const double fr = 1480 / 60.0;
    EXPECT_NEAR(hzOf(lines, "G1 mesh", fr), 518, 1e-9);
    EXPECT_NEAR(hzOf(lines, "4 x G1 mesh", fr), 4 * 518, 1e-9);
    EXPECT_NEAR(hzOf(lines, "1 x S2", fr), 7.731343, 1e-6);
    EXPECT_NEAR(hzOf(lines, "G1 mesh + 1 x S2", fr), 525.731343, 1e-6);
    EXPECT_NEAR(hzOf(lines, "G1 mesh - 3 x S1", fr), 518 - 74, 1e-9);
    EXPECT_NEAR(hzOf(lines, "2 x G1 mesh - 2 x S2", fr), 1036 - 2 * 7.7313433, 1e-6);
    EXPECT_FALSE(find(lines, "5 x G1 mesh"));
}

// In a planetary set teeth meet at S (ws - wc) = R wc with the ring fixed; 20/80 teeth at 25 Hz: carrier 5
// Hz, mesh 400 Hz; four planets pass a point of the ring 20 times a second (textbook).
TEST(Forcing, PlanetaryMesh) {
    const auto lines = forcingLines(parsed(changed(R"({"shafts": [{"id": "S1", "of": "driver"}, {"id": "S2"}],
        "gears": [{"id": "P1", "from": "S1", "to": "S2", "sun": 20, "ring": 80, "planet": 30, "planets": 4, "fixed": "ring"}]})"))
                                        .machine,
                                    {});
    EXPECT_NEAR(hzOf(lines, "1 x S2", 25), 5, 1e-9);
    EXPECT_NEAR(hzOf(lines, "P1 mesh", 25), 400, 1e-9);
    EXPECT_NEAR(hzOf(lines, "P1 mesh", 25), 20 * (25.0 - 5), 1e-9);
    EXPECT_NEAR(hzOf(lines, "P1 mesh - 1 x planet pass of S2", 25), 380, 1e-9);
}

const char* const kBelted = R"({"shafts": [{"id": "S1", "of": "driver"}, {"id": "S2"}],
    "belts": [{"id": "B1", "from": "S1", "to": "S2", "pulley_mm": [200, 315], "length_mm": 2000, "creep_pct": [0, 2]}]})";

// pi 0.2 m x 24.666667 Hz / 2.0 m = 7.749262 Hz (computed); creep can only make it slower or leave it.
TEST(Forcing, BeltRate) {
    const auto lines = forcingLines(parsed(changed(kBelted)).machine, {});
    EXPECT_NEAR(hzOf(lines, "B1", 1480 / 60.0), 7.749262, 1e-6);
    EXPECT_NEAR(hzOf(lines, "6 x B1", 1480 / 60.0), 6 * 7.749262, 6e-6);
    EXPECT_NEAR(find(lines, "B1")->spread, 0.02, 1e-12);
    EXPECT_FALSE(find(lines, "7 x B1"));
}

TEST(Forcing, ShaftBehindABeltIsSpreadByItsCreep) {
    const auto lines = forcingLines(parsed(changed(kBelted)).machine, {});
    const auto line = find(lines, "3 x S2");
    ASSERT_TRUE(line);
    EXPECT_GE(line->perShaft * (1 + line->spread), 3 * 200.0 / 315 * (1 - 1e-12));
    EXPECT_LE(line->perShaft * (1 - line->spread), 3 * 200.0 / 315 * 0.98 * (1 + 1e-12));
    EXPECT_EQ(find(lines, "3 x S1")->spread, 0);
}

TEST(Forcing, ToothedBeltMeshes) {
    const auto lines = forcingLines(parsed(changed(R"({"shafts": [{"id": "S1", "of": "driver"}, {"id": "S2"}],
        "belts": [{"id": "B1", "from": "S1", "to": "S2", "teeth": [24, 60]}]})"))
                                        .machine,
                                    {});
    EXPECT_NEAR(hzOf(lines, "B1 tooth mesh", 25), 600, 1e-9);
    EXPECT_FALSE(find(lines, "B1"));  // no length: the belt's own rate is not known
}

TEST(Forcing, BladePassOnTheDrivenShaft) {
    const auto lines = forcingLines(
        parsed(changed(R"({"driven": {"kind": "fan", "blades": 12, "speed_ratio": 0.5}})")).machine, {});
    EXPECT_NEAR(hzOf(lines, "blade pass", 25), 150, 1e-9);
    EXPECT_NEAR(hzOf(lines, "4 x blade pass", 25), 600, 1e-9);
    EXPECT_NEAR(hzOf(lines, "blade pass - 1 x S2", 25), 137.5, 1e-9);
    EXPECT_NEAR(hzOf(lines, "blade pass + 1 x S2", 25), 162.5, 1e-9);
}

TEST(Forcing, MainsMultiples) {
    const auto lines = forcingLines(parsed(plainMachine()).machine, {.mainsHarmonics = 7});
    for (int h = 1; h <= 7; ++h)
        EXPECT_EQ(hzOf(lines, std::to_string(h) + " x mains", 25), 50.0 * h);
    EXPECT_FALSE(find(lines, "8 x mains"));
}

// An inverter masks by its output, not by the grid; the carrier and its even sidebands stand still while
// speed moves.
TEST(Forcing, InverterLines) {
    const auto lines =
        forcingLines(parsed(changed(R"({"driver": {"supply": "inverter", "carrier_hz": 2000}})")).machine,
                     {.mostHz = 5000});
    EXPECT_FALSE(find(lines, "2 x mains"));
    EXPECT_NEAR(hzOf(lines, "2 x output", 20, 41), 82, 1e-12);
    EXPECT_NEAR(hzOf(lines, "6 x output", 20, 41), 246, 1e-12);
    EXPECT_NEAR(hzOf(lines, "carrier", 20, 41), 2000, 1e-12);
    EXPECT_NEAR(hzOf(lines, "carrier + 2 x output", 20, 41), 2082, 1e-12);
    EXPECT_NEAR(hzOf(lines, "2 x carrier - 1 x output", 20, 41), 4000 - 41, 1e-12);
    EXPECT_EQ(find(lines, "carrier")->kind, ForcingKind::Inverter);
}

TEST(Forcing, NothingAboveTheCutOffNorBelowZero) {
    const ForcingExtent extent{.mostHz = 700, .shaftHz = 24.7};
    for (const char* patch : {kGeared, kBelted})
        for (const ForcingLine& line : forcingLines(parsed(changed(patch)).machine, extent)) {
            EXPECT_GT(line.hz(24.7, 50), 0) << line.name;
            EXPECT_LE(line.hz(24.7, 50), 700) << line.name;
        }
}

TEST(Forcing, EveryNameIsUsedOnce) {
    for (const char* patch : {kGeared, kBelted}) {
        std::set<std::string> names;
        for (const ForcingLine& line : forcingLines(parsed(changed(patch)).machine, {}))
            EXPECT_TRUE(names.insert(line.name).second) << line.name;
    }
}

}  // namespace
}  // namespace fettle
