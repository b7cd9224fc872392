// Which faults are asked for on which channel, and which cannot be.
#include "core/diagnosis/hypotheses.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/base/json_object.h"
#include "core/diagnosis/examine.h"
#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

using ::testing::HasSubstr;

Machine patched(const std::string& patch) {
    Json machine = Json::parse(made::motorText());
    machine.merge_patch(Json::parse(patch));
    return made::machineOf(machine.dump());
}

struct Asked {
    PreparedRecording prepared;
    AskedBearings bearings;
};

Asked ask(const Machine& machine, double seconds = 4) {
    auto setup = made::setupOf(machine, 4, seconds);
    Asked asked{prepare(machine, made::made(setup).recording, {}), {}};
    EXPECT_EQ(asked.prepared.unfit, "");
    asked.bearings = askBearings(machine, asked.prepared);
    return asked;
}

std::vector<std::string> places(const AskedBearings& asked, const std::string& fault) {
    std::vector<std::string> all;
    for (const BearingHypothesis& h : asked.hypotheses)
        if (h.fault == fault) all.push_back(h.at);
    return all;
}

const BearingHypothesis* hypothesis(const AskedBearings& asked, const std::string& at) {
    for (const BearingHypothesis& h : asked.hypotheses)
        if (h.at == at) return &h;
    return nullptr;
}

constexpr const char* kSameBearing =
    R"({ "driver": { "bearings": { "NDE": { "rolling_elements": 9, "element_mm": 25, "pitch_mm": 120.0 } } } })";

TEST(Hypotheses, FourElementsOfEveryBearing) {
    const Asked asked = ask(made::motor());
    EXPECT_EQ(asked.bearings.hypotheses.size(), 8u);
    EXPECT_THAT(places(asked.bearings, "bearing_cage"), testing::ElementsAre("driver DE", "driver NDE"));
    EXPECT_TRUE(asked.bearings.notAsked.empty());
}

// One node cannot tell two equal bearings apart: one question, not two.
TEST(Hypotheses, TwoEqualBearingsAreOneQuestion) {
    const Asked asked = ask(patched(kSameBearing));
    EXPECT_EQ(asked.bearings.hypotheses.size(), 4u);
    for (const BearingHypothesis& h : asked.bearings.hypotheses)
        EXPECT_EQ(h.at, "driver DE or NDE") << h.fault;
}

// BPFO 3.5625 and 3.5635: 0.025 Hz apart at 25 Hz, parted only by a record of 40 s and more.
TEST(Hypotheses, NearlyEqualOrdersAreOneQuestionWithinTheResolution) {
    const char* const patch =
        R"({ "driver": { "bearings": { "NDE": { "rolling_elements": 9, "element_mm": 24.95, "pitch_mm": 120.0 } } } })";
    EXPECT_THAT(places(ask(patched(patch), 4).bearings, "bearing_outer_race"),
                testing::ElementsAre("driver DE or NDE"));
    const char* const apart =
        R"({ "driver": { "bearings": { "NDE": { "rolling_elements": 9, "element_mm": 24.0, "pitch_mm": 120.0 } } } })";
    EXPECT_THAT(places(ask(patched(apart), 4).bearings, "bearing_outer_race"),
                testing::ElementsAre("driver DE", "driver NDE"));
}

TEST(Hypotheses, TheFindingOfTwoEqualBearingsNamesBoth) {
    const Machine machine = patched(kSameBearing);
    const auto made =
        made::made(made::with(made::setupOf(machine), "bearing_outer_race", "driver NDE", 0.75));
    const auto e = examine(machine, {made.recording});
    ASSERT_TRUE(e);
    ASSERT_FALSE(e->findings.empty());
    EXPECT_EQ(e->findings[0].at, "driver DE or NDE");
    EXPECT_THAT(e->findings[0].sentence, HasSubstr("driver DE or NDE"));
}

TEST(Hypotheses, TheNearestPointSpeaksForABearing) {
    const Machine machine = made::fanSet();
    auto both = made::made(made::setupOf(machine)).recording;
    auto setup = made::setupOf(machine);
    setup.point = 1;
    const auto fan = made::made(setup).recording;
    both->channels.insert(both->channels.end(), fan->channels.begin(), fan->channels.end());
    const PreparedRecording prepared = prepare(machine, both, {});
    const AskedBearings asked = askBearings(machine, prepared);
    for (const auto& [at, point] : std::vector<std::pair<std::string, std::string>>{
             {"driver DE", "M"}, {"driver NDE", "M"}, {"driven DE", "F"}}) {
        const BearingHypothesis* h = hypothesis(asked, at);
        ASSERT_NE(h, nullptr) << at;
        for (const Hearing& hearing : h->hearings) {
            EXPECT_EQ(prepared.facts.channels[prepared.views[hearing.channel].channel].point, point) << at;
            EXPECT_EQ(hearing.wCut, 1) << at;
        }
    }
}

// A motor node hardly hears the driven machine's bearings.
TEST(Hypotheses, ThroughTheCouplingLessIsExpected) {
    const Asked asked = ask(made::fanSet());  // the motor's point only
    const BearingHypothesis* far = hypothesis(asked.bearings, "driven DE");
    ASSERT_NE(far, nullptr);
    EXPECT_LT(far->hearings[0].wCut, 0.6);
}

Machine hearing(const std::string& hears) {
    return patched(R"({ "driven": { "kind": "fan", "bearings": {
        "DE": { "rolling_elements": 13, "element_mm": 18, "pitch_mm": 110.0 },
        "NDE": { "rolling_elements": 12, "element_mm": 18, "pitch_mm": 110.0 } } },
        "points": [ { "id": "P", "at": "driver DE", "hears": )" +
                   hears + R"(, "channels": [ { "name": "x", "direction": "horizontal" },
                                                               { "name": "z", "direction": "axial" } ] } ] })");
}

TEST(Hypotheses, HearsNamesThePathAndItsCut) {
    const Asked asked = ask(hearing(R"([ { "at": "driven DE", "path": "same base" },
                                         { "at": "driver DE", "path": "same housing" } ])"));
    ASSERT_NE(hypothesis(asked.bearings, "driven DE"), nullptr);
    EXPECT_EQ(hypothesis(asked.bearings, "driven DE")->hearings[0].wCut, 0.5);
    EXPECT_EQ(hypothesis(asked.bearings, "driver DE")->hearings[0].wCut, 1);
}

TEST(Hypotheses, APlaceNobodyHearsIsNotAskedAndSaysWhy) {
    const Asked asked = ask(hearing(R"([ { "at": "driver NDE", "path": "same housing" } ])"));
    EXPECT_EQ(hypothesis(asked.bearings, "driven NDE"), nullptr);
    bool told = false;
    for (const auto& n : asked.bearings.notAsked)
        if (n.at == "driven NDE") {
            told = true;
            EXPECT_THAT(n.why, HasSubstr("hears"));
            EXPECT_NE(n.cure, "");
        }
    EXPECT_TRUE(told);
}

// The grammar of `at`: "driven" is all of the driven machine.
TEST(Hypotheses, HearsAComponentHearsAllItsPositions) {
    const Asked asked = ask(hearing(R"([ { "at": "driven", "path": "through coupling" } ])"));
    EXPECT_NE(hypothesis(asked.bearings, "driven DE"), nullptr);
    EXPECT_NE(hypothesis(asked.bearings, "driven NDE"), nullptr);
}

// What else a point hears is said by `hears`; that it hears the bearing it sits on goes without saying.
TEST(Hypotheses, APointHearsItsOwnPlaceWhateverElseItHears) {
    const Asked asked = ask(hearing(R"([ { "at": "driver NDE", "path": "same housing" } ])"));
    ASSERT_NE(hypothesis(asked.bearings, "driver DE"), nullptr);
    EXPECT_EQ(hypothesis(asked.bearings, "driver DE")->hearings[0].wCut, 1);
}

TEST(Hypotheses, ABearingWithoutGeometryIsNotAskedAndSaysWhy) {
    const Machine machine = patched(R"({ "driver": { "bearings": { "DE": null,
        "NDE": { "designation": "99999", "rolling_elements": null, "element_mm": null, "pitch_mm": null } } } })");
    const Asked asked = ask(machine);
    EXPECT_TRUE(asked.bearings.hypotheses.empty());
    ASSERT_EQ(asked.bearings.notAsked.size(), 1u);
    EXPECT_EQ(asked.bearings.notAsked[0].at, "driver NDE");
    EXPECT_THAT(asked.bearings.notAsked[0].why, HasSubstr("99999"));
}

TEST(Hypotheses, ARecordingOfAnUnknownPointSpeaksForNothing) {
    const Machine machine = made::motor();
    const auto made = made::made(made::setupOf(machine));
    made.recording->point = "elsewhere";
    for (Channel& channel : made.recording->channels)
        channel.point = "elsewhere";
    const PreparedRecording prepared = prepare(machine, made.recording, {});
    const AskedBearings asked = askBearings(machine, prepared);
    EXPECT_TRUE(asked.hypotheses.empty());
    EXPECT_EQ(asked.notAsked.size(), 2u);
}

// The plate says 8 balls, the bearing that runs has 9.
TEST(Hypotheses, TheFindingSaysWhichMakersVariantFits) {
    const std::string nine = R"("rolling_elements": 9, "element_mm": 26, "pitch_mm": 125)";
    const auto withBearing = [](const std::string& de) {
        return made::machineOf(
            R"({ "tag": "T-1", "mains_hz": 50, "support": "rigid", "driver": { "power_kw": 75,
            "poles": 4, "rated_rpm": 1484, "bearings": { "DE": { )" +
            de + R"( } } },
            "points": [ { "id": "P", "at": "driver DE", "channels": [ { "name": "x" }, { "name": "z" } ] } ] })");
    };
    const auto recording =
        made::made(made::with(made::setupOf(withBearing(nine)), "bearing_outer_race", "driver DE", 0.75));
    const auto e = examine(withBearing(R"("designation": "6316", "variants": [ { )" + nine + " } ]"),
                           {recording.recording});
    ASSERT_TRUE(e);
    ASSERT_FALSE(e->findings.empty());
    EXPECT_EQ(e->findings[0].at, "driver DE");
    EXPECT_THAT(e->findings[0].sentence, HasSubstr("It fits the 9-ball variant"));
}

const Hypothesis* outerRaceAt(const Examination& e, const std::string& at) {
    for (const Hypothesis& h : e.considered)
        if (h.fault == "bearing_outer_race" && h.at == at) return &h;
    return nullptr;
}

// A fan's bearing is heard from the motor in one recording and at the fan in the other: the fan's speaks.
TEST(Hypotheses, OverAWeekTheNearestPointSpeaks) {
    const Machine machine = made::fanSet();
    auto setup = made::with(made::setupOf(machine), "bearing_outer_race", "driven DE", 0.75);
    const auto motor = made::made(setup).recording;
    setup.point = 1;
    const auto fan = made::made(setup).recording;
    const auto far = examine(machine, {motor}), near = examine(machine, {fan}),
               week = examine(machine, {motor, fan});
    ASSERT_TRUE(far && near && week);
    EXPECT_EQ(outerRaceAt(*far, "driven DE")->path, "through coupling");
    EXPECT_EQ(outerRaceAt(*near, "driven DE")->path, "");
    EXPECT_EQ(outerRaceAt(*week, "driven DE")->path, "");
    EXPECT_EQ(outerRaceAt(*week, "driven DE")->recordingCount, 1u);
    EXPECT_NEAR(*outerRaceAt(*week, "driven DE")->weightDban, *outerRaceAt(*near, "driven DE")->weightDban,
                1e-9);
}

// What `channel` of a verdict indexes: the recording's channels, also where the first could not be weighed.
TEST(Hypotheses, AVerdictNamesTheChannelOfItsRecording) {
    auto made = made::made(made::with(made::setupOf(made::motor()), "bearing_outer_race", "driver DE", 0.75));
    auto& dead = made.recording->channels[0].samples;
    std::fill(dead.begin(), dead.end(), 0.0);
    const auto e = examine(made::motor(), {made.recording});
    ASSERT_TRUE(e);
    ASSERT_FALSE(e->findings.empty());
    EXPECT_EQ(e->findings[0].best.channel, 1u);
    EXPECT_TRUE(e->findings[0].best.view.starts_with("z, "));
    EXPECT_EQ(e->findings[0].best.point, "P");
}

}  // namespace
}  // namespace fettle
