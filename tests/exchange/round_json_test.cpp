// The round as JSON that others may rely on: fits its schema, comes back whole, and no input breaks the
// reader.
#include "core/exchange/round_json.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <functional>

#include "core/base/file_system.h"
#include "tests/exchange/schema_check.h"
#include "tests/round/made_weeks.h"

namespace fettle {
namespace {

using namespace made;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

Json roundSchema() {
    const auto text =
        RealFileSystem().read(std::string(FETTLE_SOURCE_DIR) + "/resources/schemas/round.schema.json");
    return text ? Json::parse(*text) : Json();
}

MachineWeek silent(const std::string& tag) {
    MachineWeek week = plain(tag);
    week.newest = parseUtc("2026-04-20T06:00:00.250Z");
    week.recordings = week.turning = 0;
    week.week.reset();
    return week;
}

// Every kind of entry there is, in a second round.
RoundList full() {
    MachineWeek bearing = with(plain("F"), {staged("bearing_outer_race", "driver DE", 3000, "developed")});
    bearing.week->findings[0].rivals = {
        {"bearing_inner_race", "driver DE", 14.5, "claimed lines of this one"}};
    bearing.week->findings[0].against = {"none of its sidebands stands out"};
    bearing.week->findings[0].best.variant = "8 balls";
    bearing.criticality = "A";
    bearing.lateRecordings = 3;
    MachineWeek grows =
        inZone(with(plain("G"), {cause("unbalance", "C", 3.8, 0.9), cause("looseness", "C", 3.8, 0.1)}), "C",
               3.82, 4.5);
    grows.days = days(3.0, 3.82, 42);
    MachineWeek hand = plain("H");
    hand.byHand = true;
    hand.byHandWhy = "operator heard it";
    MachineWeek gone = silent("F2");
    const std::vector<MachineWeek> before = {
        with(plain("F2"), {staged("bearing_cage", "driver DE", 60, "late")}), plain("L")};
    const RoundList last = round(before);
    RoundList list = round(
        {bearing, grows, hand, gone, silent("S"), inZone(plain("D"), "D", 6, 4.5), plain("L"), plain("L2")},
        &last);
    list.warnings = {"urgency.json: something"};
    drawSample(list, 7);
    list.machines.back().inSample = false;
    return list;
}

std::string textOf(const RoundList& list) {
    return toJson(list).dump(2, ' ', false, Json::error_handler_t::replace);
}

TEST(RoundJson, FitsItsSchema) {
    const Json schema = roundSchema();
    ASSERT_TRUE(schema.is_object());
    for (const RoundList& list : {full(), round({}), round({silent("S")}), round({plain("L")})})
        EXPECT_THAT(made::SchemaCheck(schema).faultsOf(Json::parse(textOf(list))), IsEmpty());
}

// The check can fail.
TEST(RoundJson, ADocumentThatDoesNotFitIsSeen) {
    Json json = toJson(full());
    json["machines"][0]["urgency"] = "soon";
    json["machines"][0]["listed_by"] = "luck";
    json["machines"][1].erase("changed");
    json["until"] = 5;
    json["machines"][2]["strip"][0] = "high";
    EXPECT_EQ(made::SchemaCheck(roundSchema()).faultsOf(json).size(), 5u);
}

// The keys that other programs were promised, and the fault keys of the examination.
TEST(RoundJson, HasThePromisedKeys) {
    const Json json = toJson(full());
    for (const char* key : {"schema", "until", "alpha", "list_needs_dban", "machines", "engine"})
        EXPECT_TRUE(json.contains(key)) << key;
    for (const Json& m : json["machines"]) {
        for (const char* key : {"tag", "urgency", "listed_by", "weight_dban", "changed", "newest_recording",
                                "unseen_reason", "findings"})
            EXPECT_TRUE(m.contains(key)) << key;
        for (const Json& f : m["findings"])
            for (const char* key : {"fault", "at", "weight_dban", "persistence", "cause_share", "severity",
                                    "limit_reached", "sentence"})
                EXPECT_TRUE(f.contains(key)) << key;
    }
    const auto text =
        RealFileSystem().read(std::string(FETTLE_SOURCE_DIR) + "/resources/schemas/examination.schema.json");
    ASSERT_TRUE(text);
    EXPECT_EQ(roundSchema()["$defs"]["fault"], Json::parse(*text)["$defs"]["fault"]);
}

TEST(RoundJson, SaysWhatTheListSays) {
    const RoundList list = full();
    const Json json = toJson(list);
    EXPECT_EQ(json["machines"].size(), list.machines.size());
    for (const Json& m : json["machines"]) {
        if (m["tag"] == "G") {
            EXPECT_EQ(m["listed_by"], "zone");
            EXPECT_EQ(m["findings"][0]["fault"], "unbalance");
            EXPECT_TRUE(m["findings"][0]["weight_dban"].is_null());
            EXPECT_NEAR(m["findings"][0]["severity"]["growth_per_week"].get<double>(), 0.14, 1e-9);
            EXPECT_EQ(m["findings"][0]["limit_reached"]["median"].get<std::string>().substr(0, 7), "2026-06");
        }
        if (m["tag"] == "S") {
            EXPECT_EQ(m["unseen_reason"], "silent");
            EXPECT_EQ(m["newest_recording"], "2026-04-20T06:00:00.250Z");
            EXPECT_TRUE(m["strip"].is_array());
        }
        EXPECT_EQ(m["tag"] == "D", !m["findings"].empty() && m["findings"][0]["fault"].is_null());
        if (m["tag"] == "F") {
            EXPECT_TRUE(m["findings"][0]["limit_reached"].is_null());
        }
    }
}

TEST(RoundJson, ComesBackWhole) {
    const RoundList list = full();
    const auto parsed = parseJson(textOf(list), "kept");
    ASSERT_TRUE(parsed);
    const auto back = roundListFromJson(*parsed, "kept");
    ASSERT_TRUE(back) << back.error().sentence();
    EXPECT_EQ(toJson(*back), toJson(list));
    ASSERT_EQ(back->machines.size(), list.machines.size());
    for (std::size_t i = 0; i < list.machines.size(); ++i) {
        const RoundMachine &a = list.machines[i], &b = back->machines[i];
        EXPECT_EQ(a.newest, b.newest);
        EXPECT_EQ(a.listedBy, b.listedBy);
        EXPECT_EQ(a.weightDban, b.weightDban);
        ASSERT_EQ(a.findings.size(), b.findings.size());
        for (std::size_t f = 0; f < a.findings.size(); ++f) {
            EXPECT_EQ(a.findings[f].finding.persistence, b.findings[f].finding.persistence);
            EXPECT_EQ(a.findings[f].growthPerWeek, b.findings[f].growthPerWeek);
            EXPECT_EQ(a.findings[f].limitDate.has_value(), b.findings[f].limitDate.has_value());
        }
    }
}

using Change = std::function<void(RoundMachine&)>;

// One change a field that a kept round must carry.
std::vector<Change> changesOfAMachine() {
    return {
        [](RoundMachine& m) { m.tag += "x"; },
        [](RoundMachine& m) { m.asset += "x"; },
        [](RoundMachine& m) { m.service += "x"; },
        [](RoundMachine& m) { m.area += "x"; },
        [](RoundMachine& m) { m.criticality += "x"; },
        [](RoundMachine& m) { m.urgency = "unseen"; },
        [](RoundMachine& m) { m.listedBy = ListedBy::Change; },
        [](RoundMachine& m) { m.weightDban = 0.1 + 0.2; },
        [](RoundMachine& m) { m.priorDban += 1; },
        [](RoundMachine& m) { m.changed += "x"; },
        [](RoundMachine& m) { m.newest.reset(); },
        [](RoundMachine& m) { m.unseenReason = "moved"; },
        [](RoundMachine& m) { m.unseenWords += "x"; },
        [](RoundMachine& m) { m.foundBefore += "x"; },
        [](RoundMachine& m) { m.byHandWhy += "x"; },
        [](RoundMachine& m) { m.governing += "x"; },
        [](RoundMachine& m) { m.unit += "x"; },
        [](RoundMachine& m) { m.strip[25] = std::nan(""); },
        [](RoundMachine& m) { m.strip.clear(); },
        [](RoundMachine& m) { m.limit.reset(); },
        [](RoundMachine& m) { m.zone = "D"; },
        [](RoundMachine& m) { m.lateRecordings += 1; },
        [](RoundMachine& m) { m.inSample = !m.inSample; },
        [](RoundMachine& m) { m.baseline = "42 days"; },
        [](RoundMachine& m) { m.findings.clear(); },
    };
}

std::vector<Change> changesOfAFinding() {
    return {
        [](RoundMachine& m) { m.findings[0].persistence = 0.25; },
        [](RoundMachine& m) { m.findings[0].causeShare = 0.25; },
        [](RoundMachine& m) {
            m.findings[0].change = ChangeFacts{"1x",
                                               "M-DE",
                                               "x",
                                               "horizontal",
                                               "mm/s",
                                               0.5,
                                               1.5,
                                               9.5,
                                               42,
                                               20500,
                                               20541,
                                               20600,
                                               StatisticalLimits{1, 2, 3, 4, 5, 42}};
        },
        [](RoundMachine& m) {
            m.findings[0].change =
                ChangeFacts{"2x", "P-DE", "z", "axial", "g", 0.25, 0.75, 9.5, 14, 20400, 20420, {}, {}};
        },
        [](RoundMachine& m) { m.findings[0].growthPerWeek = -0.25; },
        [](RoundMachine& m) { m.findings[0].limitDate->median = 20600; },
        [](RoundMachine& m) { m.findings[0].limitDate->from = 20500; },
        [](RoundMachine& m) { m.findings[0].limitDate->to.reset(); },
        [](RoundMachine& m) { m.findings[0].limitDate.reset(); },
        [](RoundMachine& m) { m.findings[0].finding.fault.clear(); },
        [](RoundMachine& m) { m.findings[0].finding.at = "G1 DE"; },
        [](RoundMachine& m) { m.findings[0].finding.weightDban = 33.3; },
        [](RoundMachine& m) { m.findings[0].finding.beforeClaimsDban = 34.3; },
        [](RoundMachine& m) { m.findings[0].finding.meanDban = -3.3; },
        [](RoundMachine& m) { m.findings[0].finding.recording = 5; },
        [](RoundMachine& m) { m.findings[0].finding.recordingCount = 6; },
        [](RoundMachine& m) { m.findings[0].finding.best.view = "z"; },
        [](RoundMachine& m) { m.findings[0].finding.best.variant = "z"; },
        [](RoundMachine& m) { m.findings[0].finding.best.cageShift = 0.01; },
        [](RoundMachine& m) { m.findings[0].finding.urgency = "act"; },
        [](RoundMachine& m) { m.findings[0].finding.provedOn = "z"; },
        [](RoundMachine& m) { m.findings[0].finding.why += "z"; },
        [](RoundMachine& m) {
            m.findings[0].finding.rivals = {{"belt", "B1", 3, "z"}};
        },
        [](RoundMachine& m) { m.findings[0].finding.against = {"z"}; },
        [](RoundMachine& m) { m.findings[0].finding.sentence += "z"; },
        [](RoundMachine& m) { m.findings[0].finding.severity.kind = "stage"; },
        [](RoundMachine& m) { m.findings[0].finding.severity.value = "D"; },
        [](RoundMachine& m) { m.findings[0].finding.severity.level.reset(); },
        [](RoundMachine& m) { m.findings[0].finding.severity.limit = 7.1; },
        [](RoundMachine& m) { m.findings[0].finding.severity.unit = "in/s"; },
        [](RoundMachine& m) { m.findings[0].finding.severity.basis += "z"; },
    };
}

TEST(RoundJson, CarriesEveryFieldThereAndBack) {
    const RoundMachine grows = machine(full(), "G");
    ASSERT_TRUE(grows.findings[0].limitDate);
    std::vector<Change> changes = changesOfAMachine();
    for (const Change& change : changesOfAFinding())
        changes.push_back(change);
    for (std::size_t i = 0; i < changes.size(); ++i) {
        RoundMachine m = grows;
        changes[i](m);
        EXPECT_NE(toJson(m), toJson(grows)) << i;
        const auto back = roundMachineFromText(roundMachineAsText(m));
        ASSERT_TRUE(back) << i << ": " << back.error().sentence();
        EXPECT_EQ(toJson(*back), toJson(m)) << i;
    }
}

TEST(RoundJson, ANewerVersionsKeysAreLetBe) {
    Json json = toJson(full());
    json["later"] = 1;
    json["machines"][0]["later"] = Json::array({1, 2});
    const auto back = roundListFromJson(json);
    ASSERT_TRUE(back);
    EXPECT_EQ(toJson(*back), toJson(full()));
}

TEST(RoundJson, AnotherSchemaOrNoRoundIsRefused) {
    Json json = toJson(full());
    json["schema"] = 2;
    EXPECT_EQ(roundListFromJson(json).error().kind, ErrorKind::Unsupported);
    EXPECT_FALSE(roundListFromJson(Json::parse("[]")));
    EXPECT_FALSE(roundListFromJson(Json::parse("{}")));
    EXPECT_FALSE(roundMachineFromText("{\"tag\": "));
    EXPECT_FALSE(roundMachineFromText(""));
    json = toJson(full());
    json["machines"][1]["urgency"] = "soon";
    const auto back = roundListFromJson(json, "kept");
    ASSERT_FALSE(back);
    EXPECT_EQ(back.error().place, "/machines/1/urgency");
    EXPECT_THAT(back.error().sentence(), HasSubstr("kept"));
}

// Every key in turn as something else: a value or an error comes back, never a crash, and a wrong type of a
// key that matters is an error.
TEST(RoundJson, ValuesOfAnotherKindNeverBreakTheReader) {
    const Json good = toJson(machine(full(), "G"));
    int refused = 0;
    for (const char* wrong : {"[]", "{}", "-1", "\"x\"", "null", "true", "[null]", "[{}]", "1e300", "[[[]]]"})
        for (const auto& item : good.items()) {
            Json json = good;
            json[item.key()] = Json::parse(wrong);
            refused += !roundMachineFromJson(json);
            for (const auto& inner : good["findings"][0].items()) {
                json = good;
                json["findings"][0][inner.key()] = Json::parse(wrong);
                refused += !roundMachineFromJson(json);
            }
        }
    EXPECT_GT(refused, 200);
    Json json = good;
    json["weight_dban"] = "heavy";
    EXPECT_FALSE(roundMachineFromJson(json));
    json = good;
    json["findings"][0]["limit_reached"]["median"] = "soon";
    EXPECT_EQ(roundMachineFromJson(json).error().place, "/findings/0/limit_reached/median");
}

}  // namespace
}  // namespace fettle
