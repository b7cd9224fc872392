// Descriptions that break a rule are refused with file, place and rule; none of them may crash or hang.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <utility>
#include <vector>

#include "tests/machine/describe.h"

namespace fettle {
namespace {

using ::testing::HasSubstr;

struct Case {
    const char* patch;  // on the plain machine
    const char* place;
    const char* rule;
};

void expectRefused(const std::vector<Case>& cases) {
    for (const Case& one : cases) {
        const Error error = refused(changed(one.patch));
        SCOPED_TRACE(one.patch);
        EXPECT_EQ(error.file, "m.json");
        EXPECT_EQ(error.place, one.place);
        EXPECT_THAT(error.rule, HasSubstr(one.rule));
    }
}

TEST(MachineRefused, WhatIsRequired) {
    expectRefused(
        {{R"({"tag": null})", "/tag", "required"},
         {R"({"tag": ""})", "/tag", "empty"},
         {R"({"tag": "a\nb"})", "/tag", "one line"},
         {R"({"mains_hz": null})", "/mains_hz", "required"},
         {R"({"driver": null})", "/driver", "object"},
         {R"({"driver": {"poles": null, "rated_rpm": null}})", "/driver/poles", "poles or rated_rpm"},
         {R"({"points": null})", "/points", "at least one"},
         {R"({"points": []})", "/points", "at least one"},
         {R"({"points": [{"id": "P", "at": "driver"}]})", "/points/0/channels", "at least one"},
         {R"({"points": [{"id": "P", "at": "driver", "channels": []}]})", "/points/0/channels",
          "at least one"}});
}

TEST(MachineRefused, AbsurdNumbers) {
    expectRefused({{R"({"mains_hz": 5})", "/mains_hz", "40"},
                   {R"({"mains_hz": 70.1})", "/mains_hz", "70"},
                   {R"({"driver": {"poles": 3}})", "/driver/poles", "even"},
                   {R"({"driver": {"poles": 0}})", "/driver/poles", "2"},
                   {R"({"driver": {"poles": 50}})", "/driver/poles", "48"},
                   {R"({"driver": {"poles": 4.5}})", "/driver/poles", "whole"},
                   {R"({"driver": {"rated_rpm": -1480}})", "/driver/rated_rpm", "from 1"},
                   {R"({"driver": {"power_kw": 1e30}})", "/driver/power_kw", "from"},
                   {R"({"driver": {"rpm_min": 900, "rpm_max": 900}})", "/driver/rpm_min", "less than"},
                   {R"({"driver": {"output_hz_range": [50]}})", "/driver/output_hz_range", "list of 2"},
                   {R"({"driver": {"output_hz_range": [50, 20]}})", "/driver/output_hz_range", "less than"},
                   {R"({"driven": {"blades": 0}})", "/driven/blades", "from 1"}});
}

TEST(MachineRefused, WrongKinds) {
    expectRefused({{R"({"tag": 7})", "/tag", "text"},
                   {R"({"mains_hz": "50"})", "/mains_hz", "number"},
                   {R"({"standby": "yes"})", "/standby", "true or false"},
                   {R"({"criticality": "Z"})", "/criticality", "one of"},
                   {R"({"support": "soft"})", "/support", "one of"},
                   {R"({"driver": []})", "/driver", "object"},
                   {R"({"driver": {"kind": "steam"}})", "/driver/kind", "one of"},
                   {R"({"driver": {"bearings": []}})", "/driver/bearings", "object"},
                   {R"({"driver": {"bearings": {"DE": 6316}}})", "/driver/bearings/DE", "object"},
                   {R"({"driver": {"bearings": {"": {}}}})", "/driver/bearings", "position"},
                   {R"({"driven": 3})", "/driven", "object"},
                   {R"({"shafts": {}})", "/shafts", "list"},
                   {R"({"gears": "G1"})", "/gears", "list"},
                   {R"({"points": {}})", "/points", "list"},
                   {R"({"points": [5]})", "/points/0", "object"}});
}

TEST(MachineRefused, BearingsThatCannotBe) {
    const auto bearing = [](const std::string& body) {
        return R"({"driver": {"bearings": {"DE": )" + body + "}}}";
    };
    const std::vector<std::pair<std::string, const char*>> cases = {
        {R"({"rolling_elements": 8, "element_mm": 125, "pitch_mm": 125})", "smaller than pitch_mm"},
        {R"({"rolling_elements": 18, "element_mm": 28.575, "pitch_mm": 125})", "do not fit"},
        {R"({"rolling_elements": 8, "element_mm": 28.575})", "together"},
        {R"({"rolling_elements": 2, "element_mm": 5, "pitch_mm": 20})", "from 3"},
        {R"({"rolling_elements": 8, "element_mm": 5, "pitch_mm": 20, "contact_deg": 90})", "from 0"},
        {R"({"orders": {"bpfo": 4.9, "bpfi": 3.1}})", "less than bpfi"},
        {R"({"orders": {"bpfo": 3.2, "bpfi": 5.2}})", "whole number"},
        {R"({"orders": {"bpfo": 3.09}})", "required"},
        {R"({"orders": 3.09})", "object"},
        {R"({"type": "magnetic"})", "one of"},
        {R"({"turning": "both"})", "one of"},
        {R"({"shaft": "S9"})", "no shaft"}};
    for (const auto& [body, rule] : cases) {
        const Error error = refused(changed(bearing(body)));
        EXPECT_THAT(error.rule, HasSubstr(rule)) << body;
        EXPECT_THAT(error.place, ::testing::StartsWith("/driver/bearings/DE")) << body;
    }
}

// The published CWRU list gives 4.7135 for the ball: both races struck, twice the spin. An element of a
// bearing with these outer and inner orders cannot spin that fast.
TEST(MachineRefused, TwiceTheSpinFrequencyIsCaught) {
    expectRefused(
        {{R"({"driver": {"bearings": {"DE": {"orders": {"bpfo": 3.5848, "bpfi": 5.4152, "bsf": 4.7135,
        "ftf": 0.39828}}}}})",
          "/driver/bearings/DE/orders/bsf", "not twice it"}});
}

TEST(MachineRefused, CageThatDoesNotFitIsWarnedOf) {
    const auto warnings =
        parsed(
            changed(
                R"({"driver": {"bearings": {"DE": {"orders": {"bpfo": 3.5848, "bpfi": 5.4152, "bsf": 2.3567,
        "ftf": 0.42}}}}})"))
            .warnings;
    ASSERT_EQ(warnings.size(), 1u);
    EXPECT_THAT(warnings[0], HasSubstr("/driver/bearings/DE/orders/ftf"));
}

TEST(MachineRefused, PointsAndPlaces) {
    const auto point = [](const std::string& body) {
        return R"({"points": [{"id": "P1", )" + body + R"(, "channels": [{"name": "v"}]}]})";
    };
    const std::vector<std::pair<std::string, const char*>> cases = {
        {R"("at": "gearbox")", "/points/0/at"},
        {R"("at": "driven DE")", "/points/0/at"},
        {R"("at": "driverDE")", "/points/0/at"},
        {R"("at": "driver", "mount": "wall")", "/points/0/mount"},
        {R"("at": "driver", "usable_hz": [4000, 2])", "/points/0/usable_hz"},
        {R"("at": "driver", "hears": [{"at": "pump", "path": "same base"}])", "/points/0/hears/0/at"},
        {R"("at": "driver", "hears": [{"at": "driver NDE", "path": "air"}])", "/points/0/hears/0/path"},
        {R"("at": "driver", "node": [{"id": "1", "from": "2025-02-30"}])", "/points/0/node/0/from"},
        {R"("at": "driver", "node": [{"id": "1", "from": "2025-03-02", "to": "2025-03-01"}])",
         "/points/0/node/0/to"}};
    for (const auto& [body, place] : cases)
        EXPECT_EQ(refused(changed(point(body))).place, place) << body;
}

TEST(MachineRefused, NamesUsedTwice) {
    expectRefused(
        {{R"({"points": [{"id": "P", "at": "driver", "channels": [{"name": "v"}]},
                         {"id": "P", "at": "driver", "channels": [{"name": "v"}]}]})",
          "/points/1/id", "twice"},
         {R"({"points": [{"id": "P", "at": "driver", "channels": [{"name": "v"}, {"name": "v"}]}]})",
          "/points/0/channels/1/name", "twice"},
         {R"({"shafts": [{"id": "S1", "of": "driver"}, {"id": "S1"}]})", "/shafts/1/id", "twice"},
         {R"({"shafts": [{"id": "driver", "of": "driver"}]})", "/shafts/0/id", "twice"},
         {R"({"intermediate": [{"id": "B", "shaft": "S1"}, {"id": "B", "shaft": "S1"}]})",
          "/intermediate/1/id", "twice"}});
}

TEST(MachineRefused, Hoards) {
    Json shafts = plainMachine(), points = plainMachine(), channels = plainMachine();
    for (int i = 0; i < 65; ++i)
        shafts["shafts"].push_back({{"id", "S" + std::to_string(i)}});
    for (int i = 0; i < 257; ++i)
        points["points"].push_back(points["points"][0]);
    for (int i = 0; i < 1025; ++i)
        channels["points"][0]["channels"].push_back({{"name", "c" + std::to_string(i)}});
    EXPECT_EQ(refused(shafts).place, "/shafts");
    EXPECT_EQ(refused(points).place, "/points");
    EXPECT_EQ(refused(channels).place, "/points/0/channels");
}

TEST(MachineRefused, NotADescriptionAtAll) {
    for (const char* text : {"", " \n", "{", "[]", "null", "17", "\"machine\"", "{}",
                             "{\"tag\": \"\\ud800\"}", "\xff\xfe{}", "RIFF\x24", "{\"tag\": 1e999}"}) {
        const auto result = parseMachine(text, "m.json");
        ASSERT_FALSE(result) << text;
        EXPECT_EQ(result.error().file, "m.json") << text;
        EXPECT_FALSE(result.error().place.empty()) << text;
        EXPECT_FALSE(result.error().rule.empty()) << text;
    }
}

TEST(MachineRefused, NestedWithoutEnd) {
    EXPECT_FALSE(parseMachine(std::string(100000, '['), "m.json"));
    std::string objects;
    for (int i = 0; i < 100000; ++i)
        objects += "{\"driver\":";
    EXPECT_FALSE(parseMachine(objects, "m.json"));
}

TEST(MachineRefused, BrokenOffAnywhere) {
    const std::string whole = changed(R"({"driver": {"bearings": {"DE": {"designation": "6316"}}}})").dump(2);
    ASSERT_TRUE(parseMachine(whole, "m.json"));
    for (std::size_t length = 0; length < whole.size(); length += 64) {
        const auto result = parseMachine(whole.substr(0, length), "m.json");
        ASSERT_FALSE(result) << length;
        EXPECT_EQ(result.error().kind, ErrorKind::Damaged) << length;
        EXPECT_THAT(result.error().place, HasSubstr("byte")) << length;
    }
}

// Every value of a sound description replaced by each wrong kind: either taken or refused, with a place that
// is in the tree.
TEST(MachineRefused, EveryValueOfEveryKind) {
    const Json sound =
        changed(R"({"driven": {"kind": "fan", "blades": 9, "bearings": {"DE": {"designation": "6310"}}},
        "shafts": [{"id": "S1", "of": "driver"}, {"id": "S2", "of": "driven"}],
        "gears": [{"id": "G1", "from": "S1", "to": "S2", "teeth": [21, 67], "kind": "helical"}],
        "belts": [{"id": "B1", "from": "S1", "to": "S2", "pulley_mm": [21, 67], "length_mm": 300}],
        "intermediate": [{"id": "box", "shaft": "S2", "bearings": {"DE": {"orders": {"bpfo": 3.1, "bpfi": 4.9}}}}]})");
    ASSERT_TRUE(parseMachine(sound.dump(), "m.json"));
    const Json flat = sound.flatten();
    for (const auto& leaf : flat.items())
        for (const char* wrong :
             {"null", "true", "-1", "0", "1e300", "\"\"", "\"x\"", "[]", "[1,2,3]", "{}", "{\"a\":1}"}) {
            Json broken = sound;
            broken[Json::json_pointer(leaf.key())] = Json::parse(wrong);
            const auto result = parseMachine(broken.dump(), "m.json");
            if (result) continue;
            EXPECT_EQ(result.error().file, "m.json");
            EXPECT_THAT(result.error().place, ::testing::StartsWith("/")) << leaf.key() << " " << wrong;
            EXPECT_FALSE(result.error().rule.empty());
        }
}

}  // namespace
}  // namespace fettle
