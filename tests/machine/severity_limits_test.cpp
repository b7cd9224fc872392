// Zone limits: figures from memory of the standards, with an independent check where there is one.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "core/base/units.h"
#include "core/machine/resource.h"
#include "core/machine/severity_limits.h"
#include "tests/machine/describe.h"

namespace fettle {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

ApplicableLimits limits(const std::string& patch, const std::string& at = "driver DE",
                        const std::string& mount = "bearing_housing") {
    Machine machine = parsed(changed(patch)).machine;
    machine.points[0].at = at;
    machine.points[0].mount = mount;
    const auto found = limitsFor(machine, machine.points[0]);
    if (found) return *found;
    ADD_FAILURE() << found.error().sentence();
    return {};
}

std::vector<std::string> bases(const ApplicableLimits& found) {
    std::vector<std::string> names;
    for (const ZoneLimits& set : found.sets)
        names.push_back(set.basis);
    return names;
}

struct TableRow {
    const char* patch;
    const char* basis;
    double velocity[3], displacement[3];
    double cornerHz;
};

// ISO 10816-3:2009 tables A.1 and A.2, from memory. One column checks the other: each displacement is its
// velocity over 2 pi fc, with fc 12.5 Hz in group 1 and 10 Hz in group 2, to the printed whole um (71.6 is
// printed 71).
const std::vector<TableRow>& iso20816() {
    static const std::vector<TableRow> rows = {{R"({"support": "rigid", "driver": {"power_kw": 400}})",
                                                "ISO 20816-3 group 1 rigid",
                                                {2.3, 4.5, 7.1},
                                                {29, 57, 90},
                                                12.5},
                                               {R"({"support": "flexible", "driver": {"power_kw": 400}})",
                                                "ISO 20816-3 group 1 flexible",
                                                {3.5, 7.1, 11},
                                                {45, 90, 140},
                                                12.5},
                                               {R"({"support": "rigid", "driver": {"power_kw": 75}})",
                                                "ISO 20816-3 group 2 rigid",
                                                {1.4, 2.8, 4.5},
                                                {22, 45, 71},
                                                10},
                                               {R"({"support": "flexible", "driver": {"power_kw": 75}})",
                                                "ISO 20816-3 group 2 flexible",
                                                {2.3, 4.5, 7.1},
                                                {37, 71, 113},
                                                10}};
    return rows;
}

TEST(SeverityLimits, Iso20816Part3) {
    for (const TableRow& row : iso20816()) {
        const auto found = limits(row.patch);
        ASSERT_THAT(bases(found), ElementsAre(row.basis));
        for (int i = 0; i < 3; ++i) {
            EXPECT_EQ(found.sets[0].velocity[i], row.velocity[i]) << row.basis;
            EXPECT_EQ(found.sets[0].displacement[i], row.displacement[i]) << row.basis;
        }
        EXPECT_EQ(found.sets[0].sure, "memory, cross-checked");
        EXPECT_FALSE(found.indicative);
    }
}

TEST(SeverityLimits, DisplacementFollowsFromVelocity) {
    for (const TableRow& row : iso20816()) {
        const auto found = limits(row.patch);
        ASSERT_EQ(found.sets.size(), 1u);
        for (int i = 0; i < 3; ++i)
            EXPECT_NEAR(*found.sets[0].displacement[i],
                        displacementUm(found.sets[0].velocity[i], Hertz(row.cornerHz)), 0.7)
                << row.basis;
    }
}

// The standards leave open what a level exactly on a boundary is; this program: the better zone.
TEST(SeverityLimits, ZonesAndTheirEdges) {
    for (const TableRow& row : iso20816()) {
        const auto found = limits(row.patch);
        ASSERT_EQ(found.sets.size(), 1u);
        const ZoneLimits& set = found.sets[0];
        const Zone better[] = {Zone::A, Zone::B, Zone::C}, worse[] = {Zone::B, Zone::C, Zone::D};
        for (int i = 0; i < 3; ++i) {
            EXPECT_EQ(zoneOf(row.velocity[i], set), better[i]);
            EXPECT_EQ(zoneOf(std::nextafter(row.velocity[i], 100), set), worse[i]);
            EXPECT_EQ(displacementZoneOf(row.displacement[i], set), better[i]);
            EXPECT_EQ(displacementZoneOf(std::nextafter(row.displacement[i], 1000), set), worse[i]);
        }
        EXPECT_EQ(zoneOf(0, set), Zone::A);
        EXPECT_EQ(zoneOf(1000, set), Zone::D);
    }
    EXPECT_EQ(toText(Zone::A) + toText(Zone::B) + toText(Zone::C) + toText(Zone::D), "ABCD");
}

TEST(SeverityLimits, TheTableStatesTheEqualityRule) {
    const auto table = loadResource("severity_limits.json");
    ASSERT_TRUE(table);
    EXPECT_THAT((*table)["equality"].get<std::string>(), HasSubstr("better zone"));
}

// Electrical machines: group 1 above 300 kW or from shaft height 315 mm, group 2 from 15 kW or height 160 mm
// (ISO 10816-3, from memory). A 132 kW four-pole motor has frame 315.
TEST(SeverityLimits, GroupByPowerAndShaftHeight) {
    EXPECT_THAT(bases(limits(R"({"driver": {"power_kw": 300}})")), ElementsAre("ISO 20816-3 group 2 rigid"));
    EXPECT_THAT(bases(limits(R"({"driver": {"power_kw": 300.1}})")),
                ElementsAre("ISO 20816-3 group 1 rigid"));
    EXPECT_THAT(bases(limits(R"({"driver": {"power_kw": 132, "shaft_height_mm": 315}})")),
                ElementsAre("ISO 20816-3 group 1 rigid"));
    EXPECT_THAT(bases(limits(R"({"driver": {"power_kw": null, "shaft_height_mm": 200}})")),
                ElementsAre("ISO 20816-3 group 2 rigid"));
    EXPECT_THAT(
        bases(limits(R"({"driver": {"power_kw": 132, "shaft_height_mm": 315}, "driven": {"kind": "fan"}})",
                     "driven DE")),
        ElementsAre("ISO 20816-3 group 2 rigid"));
}

TEST(SeverityLimits, UnknownSupportShowsBothClasses) {
    EXPECT_THAT(bases(limits(R"({"support": "unknown"})")),
                ElementsAre("ISO 20816-3 group 2 rigid", "ISO 20816-3 group 2 flexible"));
}

TEST(SeverityLimits, UnknownPowerGivesNoneAndSaysWhy) {
    const auto found = limits(R"({"driver": {"power_kw": null}})");
    EXPECT_THAT(found.sets, IsEmpty());
    EXPECT_THAT(found.why, HasSubstr("power_kw"));
}

// Motors to 15 kW are outside ISO 20816-3; ISO 10816-1 class I stands as a note only.
TEST(SeverityLimits, SmallMotorHasAGreyNoteOnly) {
    const auto found = limits(R"({"driver": {"power_kw": 15}})");
    ASSERT_THAT(bases(found), ElementsAre("ISO 10816-1 class I"));
    EXPECT_TRUE(found.sets[0].greyOnly);
    EXPECT_EQ(found.sets[0].velocity[0], 0.71);
    EXPECT_EQ(found.sets[0].velocity[1], 1.8);
    EXPECT_EQ(found.sets[0].velocity[2], 4.5);
    EXPECT_FALSE(limits(R"({"driver": {"power_kw": 15.1}})").sets[0].greyOnly);
}

// ISO 10816-1:1995 table B.1 (from memory): limits step through the preferred series R5, a factor of
// about 1.6.
TEST(SeverityLimits, ClassesOfPart1StepByTheFifthRootOfTen) {
    const auto table = loadResource("severity_limits.json");
    ASSERT_TRUE(table);
    int classes = 0;
    for (const Json& set : (*table)["sets"]) {
        if (set["basis"].get<std::string>().rfind("ISO 10816-1 class", 0) != 0) continue;
        ++classes;
        for (std::size_t i = 0; i < 2; ++i) {
            const double step =
                set["velocity_mm_s"][i + 1].get<double>() / set["velocity_mm_s"][i].get<double>();
            EXPECT_NEAR(std::log10(step) / 0.2, 2, 0.06) << set["basis"];
        }
    }
    EXPECT_EQ(classes, 4);
}

struct Pump {
    const char* criticality;
    double powerKw;
    double limits[3];
};

// ISO 10816-7:2009 (from memory): category I for the higher demands, to 200 kW and above.
TEST(SeverityLimits, PumpsFromOneKilowatt) {
    for (const Pump& pump : {Pump{"A", 11, {2.5, 4.0, 6.6}}, Pump{"A", 250, {3.5, 5.0, 7.6}},
                             Pump{"B", 200, {3.2, 5.1, 8.5}}, Pump{"C", 201, {4.2, 6.1, 9.5}}}) {
        Json patch = {{"criticality", pump.criticality},
                      {"driver", {{"power_kw", pump.powerKw}}},
                      {"driven", {{"kind", "pump"}}}};
        const auto found = limits(patch.dump(), "driven DE");
        ASSERT_EQ(found.sets.size(), 1u);
        EXPECT_THAT(found.sets[0].basis, HasSubstr("ISO 10816-7"));
        for (int i = 0; i < 3; ++i)
            EXPECT_EQ(found.sets[0].velocity[i], pump.limits[i]);
    }
    EXPECT_THAT(bases(limits(R"({"driver": {"power_kw": 0.9}, "driven": {"kind": "pump"}})", "driven DE")),
                ElementsAre("ISO 10816-1 class I"));
    EXPECT_THAT(bases(limits(R"({"driver": {"power_kw": 11}, "driven": {"kind": "pump"}})", "driver DE")),
                ElementsAre(HasSubstr("ISO 10816-7")));
    EXPECT_THAT(bases(limits(R"({"driver": {"power_kw": 75}, "driven": {"kind": "pump"}})", "driver DE")),
                ElementsAre("ISO 20816-3 group 2 rigid"));
}

// ISO 14694:2003 (from memory, doubtful).
TEST(SeverityLimits, SmallFans) {
    const auto found = limits(R"({"driver": {"power_kw": 7.5}, "driven": {"kind": "fan"}})", "driven DE");
    ASSERT_THAT(bases(found), ElementsAre("ISO 14694 BV-3 rigid"));
    EXPECT_EQ(found.sets[0].sure, "memory, doubtful");
    EXPECT_EQ(found.sets[0].velocity[1], 7.1);
}

TEST(SeverityLimits, OffTheBearingHousingIsIndicative) {
    for (const char* mount : {"frame", "foot", "unknown"}) {
        const auto found = limits("{}", "driver DE", mount);
        EXPECT_EQ(found.sets.size(), 1u) << mount;
        EXPECT_TRUE(found.indicative) << mount;
        EXPECT_THAT(found.why, HasSubstr(mount));
    }
    EXPECT_FALSE(limits("{}", "driver DE", "end_shield").indicative);
}

TEST(SeverityLimits, NoneOnAFinOrCowl) {
    const auto found = limits("{}", "driver DE", "fin_or_cowl");
    EXPECT_THAT(found.sets, IsEmpty());
    EXPECT_THAT(found.why, HasSubstr("fin or cowl"));
}

TEST(SeverityLimits, AMachineTheStandardDoesNotNameIsIndicative) {
    EXPECT_TRUE(limits(R"({"driven": {"kind": "crusher"}})", "driven DE").indicative);
    EXPECT_FALSE(limits(R"({"driven": {"kind": "fan"}})", "driven DE").indicative);
}

// ISO 10816-3 (from memory): below 600 r/min the band starts at 2 Hz; the standard covers 120 to 15 000
// r/min.
TEST(SeverityLimits, SlowShafts) {
    EXPECT_EQ(limits(R"({"driver": {"poles": 12, "rated_rpm": 490}})").sets.at(0).leastHz, 2);
    EXPECT_EQ(limits("{}").sets.at(0).leastHz, 10);
    EXPECT_EQ(limits("{}").sets.at(0).mostHz, 1000);
    const auto slow = limits(R"({"driven": {"kind": "fan", "speed_ratio": 0.05}})", "driven DE");
    EXPECT_THAT(slow.sets, IsEmpty());
    EXPECT_THAT(slow.why, HasSubstr("120"));
}

TEST(SeverityLimits, EverySetSaysWhereItComesFromAndRises) {
    const auto table = loadResource("severity_limits.json");
    ASSERT_TRUE(table);
    ASSERT_GE((*table)["sets"].size(), 20u);
    const std::vector<std::string> sure = {"read", "memory, cross-checked", "memory", "memory, doubtful"};
    for (const Json& set : (*table)["sets"]) {
        for (const char* key : {"id", "basis", "edition", "clause"})
            EXPECT_FALSE(set[key].get<std::string>().empty());
        EXPECT_THAT(sure, ::testing::Contains(set["sure"].get<std::string>()));
        EXPECT_LT(set["velocity_mm_s"][0], set["velocity_mm_s"][1]) << set["id"];
        EXPECT_LT(set["velocity_mm_s"][1], set["velocity_mm_s"][2]) << set["id"];
    }
}

}  // namespace
}  // namespace fettle
