// The examination as JSON that others may rely on: fits the schema, adds up from the text alone, and no name
// breaks it.
#include "core/exchange/examination_json.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/base/file_system.h"
#include "core/base/text.h"
#include "core/diagnosis/combine.h"
#include "core/diagnosis/examine.h"
#include "tests/diagnosis/examined.h"
#include "tests/diagnosis/made_recordings.h"
#include "tests/exchange/schema_check.h"

namespace fettle {
namespace {

Json examinationSchema() {
    const auto text =
        RealFileSystem().read(std::string(FETTLE_SOURCE_DIR) + "/resources/schemas/examination.schema.json");
    return text ? Json::parse(*text) : Json();
}

std::string asWritten(const Examination& e) {
    return toJson(e).dump(2, ' ', false, Json::error_handler_t::replace);
}

struct Sample {
    std::string name;
    Examination examination;
};

// Every kind of outcome: sound, faulty, two faults, short, stopped, shaft fault, without geometry, clipped,
// over a week.
std::vector<Sample> samples() {
    std::vector<Sample> all;
    std::vector<RecordingPtr> week;
    for (const made::Kind& kind : made::kinds()) {
        const auto made = made::made(kind.setup);
        all.push_back({kind.name, made::examinedTogether(kind.setup.machine, {made.recording})});
        if (week.size() < 3) week.push_back(made.recording);
    }
    all.push_back({"three recordings", made::examinedTogether(made::motor(), week)});
    const Machine fan = made::fanSet();
    auto setup = made::setupOf(fan);
    setup.operation.turning = false;
    all.push_back({"stopped", made::examinedTogether(fan, {made::made(setup).recording})});
    setup = made::with(made::setupOf(fan), "unbalance", "driver", 0.9);
    all.push_back({"unbalance", made::examinedTogether(fan, {made::made(setup).recording})});
    setup = made::setupOf(fan, 3, 0.2);
    all.push_back({"too short", made::examinedTogether(fan, {made::made(setup).recording})});
    const auto noise = made::recordingOf(std::vector<double>(640, 0.0), 6400);
    all.push_back({"flat", made::examinedTogether(made::motor(), {noise})});
    all.push_back(
        {"left out views",
         made::examinedTogether(made::motor(), {made::recordingOf(made::noise(520, 0.1, 1), 800, 1484)})});
    const auto bare = made::machineOf(R"({ "tag": "T-9", "mains_hz": 50, "driver": { "rated_rpm": 1484,
        "bearings": { "DE": { "designation": "99999" } } },
        "points": [ { "id": "P", "at": "driver DE", "channels": [ { "name": "x" } ] } ] })");
    all.push_back({"no geometry", made::examinedTogether(
                                      bare, {made::recordingOf(made::noise(25600, 0.1, 1), 6400, 1484)})});
    return all;
}

// Once for all tests of this file.
const std::vector<Sample>& made_() {
    static const std::vector<Sample> all = samples();
    return all;
}

TEST(ExaminationJson, FitsItsSchema) {
    const Json schema = examinationSchema();
    ASSERT_TRUE(schema.is_object());
    for (const Sample& sample : made_())
        EXPECT_THAT(made::SchemaCheck(schema).faultsOf(Json::parse(asWritten(sample.examination))),
                    testing::IsEmpty())
            << sample.name;
}

// The check can fail.
TEST(ExaminationJson, ADocumentThatDoesNotFitIsSeen) {
    const Json schema = examinationSchema();
    Json json = toJson(made_()[1].examination);
    json["findings"][0]["lines"][0]["state"] = "perhaps";
    json["recordings"][0].erase("running");
    json["speed"]["rpm"] = "fast";
    json["considered"][0]["fault"] = "gremlins";
    EXPECT_EQ(made::SchemaCheck(schema).faultsOf(json).size(), 4u);
}

double sumOf(const Json& weighed) {
    double sum = weighed["search_dban"].get<double>();
    for (const Json& line : weighed["lines"])
        sum += line["weight_dban"].get<double>();
    return sum;
}

TEST(ExaminationJson, RowsAddUpFromTheTextAlone) {
    int summed = 0;
    for (const Sample& sample : made_()) {
        const Json json = Json::parse(asWritten(sample.examination));
        for (const char* list : {"findings", "considered"})
            for (const Json& h : json[list]) {
                if (h["weight_dban"].is_null()) continue;
                EXPECT_NEAR(sumOf(h), h["weight_dban"].get<double>(), 1e-9)
                    << sample.name << " " << h["fault"];
                ++summed;
            }
    }
    EXPECT_GT(summed, 60);
}

TEST(ExaminationJson, OverSeveralRecordingsTheRowOfTheMeanClosesTheSum) {
    const auto week = std::find_if(made_().begin(), made_().end(),
                                   [](const Sample& s) { return s.name == "three recordings"; });
    ASSERT_NE(week, made_().end());
    const Json json = Json::parse(asWritten(week->examination));
    for (const Json& h : json["considered"])
        if (!h["weight_dban"].is_null()) {
            EXPECT_EQ(h["lines"].back()["name"], "mean over 3 recordings");
            EXPECT_LE(h["lines"].back()["weight_dban"].get<double>(), 0);
        }
}

// Shortest digits that give the same double back: nothing is rounded on the way.
TEST(ExaminationJson, NumbersComeBackTheSame) {
    for (const Sample& sample : made_()) {
        const Examination& e = sample.examination;
        const Json json = Json::parse(asWritten(e));
        EXPECT_EQ(json, toJson(e)) << sample.name;
        ASSERT_EQ(json["considered"].size(), e.considered.size());
        for (std::size_t i = 0; i < e.considered.size(); ++i) {
            const Hypothesis& h = e.considered[i];
            if (!h.weightDban) continue;
            EXPECT_EQ(json["considered"][i]["weight_dban"].get<double>(), *h.weightDban);
            EXPECT_EQ(json["considered"][i]["search_dban"].get<double>(), h.best.searchDban);
            for (std::size_t r = 0; r < h.best.rows.size(); ++r)
                EXPECT_EQ(json["considered"][i]["lines"][r]["weight_dban"].get<double>(),
                          h.best.rows[r].weightDban);
        }
    }
}

void expectKeys(const Json& object, std::initializer_list<const char*> keys, const std::string& what) {
    for (const char* key : keys)
        EXPECT_TRUE(object.contains(key)) << what << " has no " << key;
}

TEST(ExaminationJson, KeysAreTheSameWhateverTheOutcome) {
    for (const Sample& sample : made_()) {
        const Json json = toJson(sample.examination);
        expectKeys(json,
                   {"schema", "engine", "machine", "recordings", "speed", "findings", "considered", "blind"},
                   sample.name);
        EXPECT_EQ(json["engine"], WeighingSettings().engine());
        for (const Json& r : json["recordings"]) {
            expectKeys(r, {"file", "channels", "running", "speed", "quality", "levels"}, sample.name);
            expectKeys(r["speed"], {"rpm", "plus_minus_rpm", "from", "given_rpm", "estimates"}, sample.name);
            for (const Json& l : r["levels"])
                expectKeys(l,
                           {"channel", "velocity_rms_mm_s", "acceleration_rms_g", "crest_factor", "kurtosis",
                            "zone", "zone_basis"},
                           sample.name);
        }
        for (const Json& f : json["findings"])
            expectKeys(
                f,
                {"fault", "variant", "at", "weight_dban", "cage_shift", "urgency", "proved_on", "severity",
                 "lines", "search_dban", "recording", "view", "rivals", "against", "sentence"},
                sample.name);
        for (const Json& c : json["considered"])
            expectKeys(c, {"fault", "at", "weight_dban", "before_claims_dban", "why"}, sample.name);
        for (const Json& b : json["blind"])
            expectKeys(b, {"fault", "at", "why", "cure"}, sample.name);
    }
}

TEST(ExaminationJson, NotWeighedIsNullNotZero) {
    for (const Sample& sample : made_()) {
        if (sample.name != "stopped" && sample.name != "unbalance") continue;
        const Json json = toJson(sample.examination);
        for (const Json& c : json["considered"])
            if (c["fault"] == "unbalance") {
                EXPECT_TRUE(c["weight_dban"].is_null());
                EXPECT_NE(c["why"], "");
            }
    }
}

// A name may hold anything a file system or a careless export allows.
std::vector<std::string> hostileNames() {
    return {"<script>alert(1)</script>",
            "a\nb\r\n\tc",
            "\"quoted\" and 'so'",
            "back\\slash",
            std::string(10000, 'n'),
            "\xff\xfe not UTF-8 \xc3",
            std::string("nul\0in it", 9),
            "\xe2\x80\xae right to left",
            "{\"a\": [",
            ""};
}

TEST(ExaminationJson, HostileNamesNeitherBreakNorChangeAnything) {
    const Machine machine = made::motor();
    const auto plain =
        made::made(made::with(made::setupOf(machine, 2, 2), "bearing_outer_race", "driver DE", 0.75));
    const Json expected = toJson(made::examinedTogether(machine, {plain.recording}));
    for (const std::string& name : hostileNames()) {
        auto recording = std::make_shared<Recording>(*plain.recording);
        recording->file = name;
        recording->channels[0].name = name;
        recording->timeSource = recording->capture = name;
        std::string text;
        ASSERT_NO_THROW(text = asWritten(made::examinedTogether(machine, {recording})));
        Json json;
        ASSERT_NO_THROW(json = Json::parse(text));
        ASSERT_TRUE(json.is_object());
        if (isUtf8(name)) {
            EXPECT_EQ(json["recordings"][0]["file"], name);
        }
        EXPECT_EQ(json["findings"].size(), expected["findings"].size());
        EXPECT_EQ(json["considered"][0]["weight_dban"], expected["considered"][0]["weight_dban"]);
        EXPECT_EQ(json["recordings"][0]["levels"][1], expected["recordings"][0]["levels"][1]);
    }
}

TEST(ExaminationJson, NumbersThatAreNoneBecomeNull) {
    Examination e = made_()[1].examination;
    e.recordings[0].levels[0].crestFactor = std::numeric_limits<double>::quiet_NaN();
    e.recordings[0].levels[0].kurtosis = std::numeric_limits<double>::infinity();
    const Json json = Json::parse(asWritten(e));
    EXPECT_TRUE(json["recordings"][0]["levels"][0]["crest_factor"].is_null());
    EXPECT_TRUE(json["recordings"][0]["levels"][0]["kurtosis"].is_null());
}

TEST(ExaminationJson, ReadsBackToTheSameText) {
    for (const Sample& s : samples()) {
        const std::string text = examinationAsText(s.examination);
        const auto back = examinationFromText(text, "stored");
        ASSERT_TRUE(back) << s.name << ": " << back.error().sentence();
        EXPECT_EQ(examinationAsText(*back), text) << s.name;
    }
}

// The mean of e-values, whether weighed together or read back one by one: Vovk and Wang (2021), section 3.
TEST(ExaminationJson, ReadBackOneByOneCombinesToTheWeek) {
    std::vector<RecordingPtr> week;
    for (const made::Kind& kind : made::kinds())
        if (week.size() < 3) week.push_back(made::made(kind.setup).recording);
    const Machine machine = made::motor();
    std::vector<Examination> parts;
    for (const RecordingPtr& recording : week) {
        const auto one =
            examinationFromText(examinationAsText(made::examinedTogether(machine, {recording})), "stored");
        ASSERT_TRUE(one);
        parts.push_back(*one);
    }
    const auto joined = combine(machine, parts);
    ASSERT_TRUE(joined);
    EXPECT_EQ(examinationAsText(*joined), examinationAsText(made::examinedTogether(machine, week)));
}

TEST(ExaminationJson, RefusesWhatIsNoExamination) {
    for (const char* text :
         {"", "[]", "{}", "{\"schema\": 2}", "{\"schema\": 1}", "{\"schema\": 1, \"recordings\": 3}",
          "{\"schema\": 1, \"recordings\": [{\"channels\": [], \"levels\": [{}]}]}"})
        EXPECT_FALSE(examinationFromText(text, "stored")) << text;
    EXPECT_TRUE(
        examinationFromText("{\"schema\": 1, \"recordings\": [7], \"considered\": {\"a\": []}}", "stored"));
}

}  // namespace
}  // namespace fettle
