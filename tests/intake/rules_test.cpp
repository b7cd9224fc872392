// Rules fill what neither file nor sidecar says, and nothing else; a sidecar always wins. Source: the
// project's own contract; no outside figures.
#include "core/intake/rules.h"

#include <gmock/gmock.h>

#include "tests/cli/run_program.h"
#include "tests/intake/intake_fixture.h"

namespace fettle::intake_test {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

PathSays said(const std::string& pattern, const std::string& path) {
    const auto compiled = PathPattern::parse(pattern);
    EXPECT_TRUE(compiled) << (compiled ? "" : compiled.error().sentence());
    const auto match = compiled->match(path);
    EXPECT_TRUE(match) << pattern << " on " << path;
    return match.value_or(PathSays{});
}
bool matches(const std::string& pattern, const std::string& path) {
    return PathPattern::parse(pattern)->match(path).has_value();
}

TEST(PathPattern, StarsWithinANameAndAcrossFolders) {
    EXPECT_TRUE(matches("/in/*.wav", "/in/a.wav"));
    EXPECT_FALSE(matches("/in/*.wav", "/in/deep/a.wav"));
    EXPECT_TRUE(matches("/in/**/*.wav", "/in/deep/er/a.wav"));
    EXPECT_TRUE(matches("/in/**/*.wav", "/in/a.wav"));
    EXPECT_FALSE(matches("/in/*.wav", "/out/in/a.wav"));
    EXPECT_TRUE(matches("in/*.wav", "/out/in/a.wav"));
    EXPECT_FALSE(matches("in/*.wav", "/out/begin/a.wav"));
    EXPECT_FALSE(matches("/in/*.wav", "/in/a.wav.csv"));
    EXPECT_TRUE(matches("**", "/any/thing"));
}

TEST(PathPattern, FieldsSayMachinePointAndTime) {
    const PathSays one =
        said("logger/{machine}/{point}_{time_utc}.wav", "/data/logger/KL-ID-01/M-DE_20260504T062000Z.wav");
    EXPECT_EQ(one.machine, "KL-ID-01");
    EXPECT_EQ(one.point, "M-DE");
    EXPECT_EQ(one.time, "2026-05-04T06:20:00Z");
    EXPECT_EQ(said("{machine}_{time_utc}_*.csv", "X/T-1_2026-05-04_06-20-00_raw.csv").time,
              "2026-05-04T06:20:00Z");
    EXPECT_FALSE(matches("{machine}_{time_utc}.wav", "/T-1_20261304062000.wav"));  // month 13
    EXPECT_FALSE(matches("{machine}_{time_utc}.wav", "/T-1_notime.wav"));
}

TEST(PathPattern, RefusesWhatItCannotMean) {
    EXPECT_FALSE(PathPattern::parse(""));
    EXPECT_FALSE(PathPattern::parse("{motor}/*.wav"));
    EXPECT_FALSE(PathPattern::parse("{machine}/{machine}.wav"));
    EXPECT_FALSE(PathPattern::parse("{machine"));
    EXPECT_FALSE(PathPattern::parse("a\nb"));
    EXPECT_FALSE(PathPattern::parse(std::string(2000, 'a')));
    std::string stars;
    for (int i = 0; i < 100; ++i)
        stars += "*a";
    EXPECT_FALSE(PathPattern::parse(stars));
}

// Ten stars against a long path that does not match in its last letter: without a memory of failures this
// would take longer than anyone waits.
TEST(PathPattern, APathMadeToBeSlowEnds) {
    EXPECT_FALSE(matches("*a*a*a*a*a*a*a*a*a*a*b", std::string(2000, 'a')));
}

class RulesTest : public IntakeTest {
  protected:
    void keep(const std::string& pattern, const std::string& keys) {
        const auto rule = readRule(pattern, keys);
        ASSERT_TRUE(rule) << rule.error().sentence();
        ASSERT_TRUE(fleet_->readingRules().put({0, pattern, keys, {}, "tester"}));
    }
    std::string bare(const std::string& name, std::uint64_t seed = 1) {
        EXPECT_TRUE(disk_.makeFolders(in_));
        EXPECT_TRUE(disk_.writeSafely(in_ + "/" + name, noiseWav(seed)));
        return in_ + "/" + name;
    }
    static constexpr const char* kKeys = R"({ "point": "P", "speed_rpm": 1480,
        "channels": [ { "name": "x", "unit": "g", "scale": 2 }, { "name": "z", "unit": "g", "scale": 2 } ] })";
};

TEST_F(RulesTest, AFileThatSaysNothingComesInByARule) {
    bare("T-1_20260504T062000Z.wav");
    EXPECT_EQ(taken().refusals.at(0).kind, "parked");
    keep("in/{machine}_{time_utc}.wav", kKeys);
    const ImportReport report = taken();
    ASSERT_EQ(report.stored, 1u) << (report.refusals.empty() ? "" : report.refusals[0].rule);
    EXPECT_TRUE(fleet_->log().refusals()->empty());
    const auto entries = entriesOf("T-1");
    ASSERT_EQ(entries.size(), 1u);
    EXPECT_EQ(formatUtc(entries[0].time), "2026-05-04T06:20:00Z");
    EXPECT_EQ(entries[0].point, "P");
    EXPECT_THAT(entries[0].channels, ElementsAre("x", "z"));
    const auto recording = fleet_->recordings().recording(entries[0].id);
    ASSERT_TRUE(recording);
    EXPECT_EQ((*recording)->channels[0].scale, 2);
    EXPECT_EQ((*recording)->speedRpm, 1480);
    // What was filled in comes out with the recording.
    EXPECT_THAT(fleet_->recordings().sidecar(entries[0].id).value(), HasSubstr("T-1"));
    EXPECT_EQ(taken().already, 1u);
}

TEST_F(RulesTest, ASidecarAlwaysWinsAndTheRuleFillsTheRest) {
    keep("*.wav", R"({ "machine": "T-2", "point": "M", "speed_rpm": 990, "operating": { "load_pct": 60 } })");
    Said own;
    own.speedRpm = 1470;
    sendNoise("a", own);
    ASSERT_EQ(taken().stored, 1u);
    const auto entries = entriesOf("T-1");
    ASSERT_EQ(entries.size(), 1u);
    EXPECT_EQ(entries[0].point, "P");
    EXPECT_EQ(entries[0].loadPct, 60);
    EXPECT_EQ(fleet_->recordings().recording(entries[0].id).value()->speedRpm, 1470);
}

TEST_F(RulesTest, WhatACsvFileSaysItselfHolds) {
    keep(
        "*.csv",
        R"({ "machine": "T-2", "point": "P", "channels": [ { "name": "a", "unit": "mm/s", "scale": 5 } ] })");
    std::string csv = "# sample_rate_hz: 1000\n# machine: T-1\n# time: 2026-05-04T06:20:00Z\nx [g]\n";
    for (int i = 0; i < 700; ++i)
        csv += i % 7 ? "0.1\n" : "-0.2\n";
    ASSERT_TRUE(disk_.makeFolders(in_));
    ASSERT_TRUE(disk_.writeSafely(in_ + "/a.csv", csv));
    const ImportReport report = taken();
    ASSERT_EQ(report.stored, 1u) << (report.refusals.empty() ? "" : report.refusals[0].rule);
    const auto recording = fleet_->recordings().recording(entriesOf("T-1").at(0).id).value();
    EXPECT_EQ(recording->channels[0].name, "x");
    EXPECT_EQ(recording->channels[0].unit, "g");
    EXPECT_EQ(recording->channels[0].scale, 1);
}

TEST_F(RulesTest, TheNearerRuleComesFirst) {
    keep("*.wav", R"({ "machine": "T-2", "point": "P" })");
    keep("in/T-1*.wav", R"({ "machine": "T-1" })");
    bare("T-1_a.wav");
    auto read = readWithSource(disk_, in_ + "/T-1_a.wav");
    ASSERT_TRUE(read);
    const auto applied = applyRules(*RuleBook::of(*fleet_), *read);
    ASSERT_TRUE(applied);
    EXPECT_THAT(applied->patterns, ElementsAre("in/T-1*.wav", "*.wav"));
    EXPECT_EQ(read->recording->machine, "T-1");
    EXPECT_EQ(read->recording->point, "P");
}

TEST_F(RulesTest, ARuleForOtherChannelsRefusesTheFileByName) {
    keep("*.wav", R"({ "machine": "T-1", "channels": [ { "name": "x" } ] })");
    bare("a.wav");
    const ImportReport report = taken();
    ASSERT_EQ(report.refusals.size(), 1u);
    EXPECT_THAT(report.refusals[0].place, HasSubstr("rule *.wav"));
    EXPECT_THAT(report.refusals[0].rule, HasSubstr("names 1 channels, the recording has 2"));
}

TEST_F(RulesTest, KeysThatASidecarWouldRefuseAreNoRule) {
    for (const char* keys : {R"([])", R"({ "speed_rpm": "fast" })", R"({ "time": "2026-05-04T06:20:00Z" })",
                             R"({ "machin": "T-1" })", R"({ "channels": [ { "scale": 0 } ] })", "{ nonsense",
                             R"({ "channels": 3 })"})
        EXPECT_FALSE(readRule("*.wav", keys)) << keys;
    EXPECT_TRUE(readRule("*.wav", kKeys));
}

TEST_F(RulesTest, ARuleThatCannotBeReadAnyMoreIsToldAndStopsNothing) {
    ASSERT_TRUE(fleet_->readingRules().put({0, "*.wav", "{ nonsense", {}, "x"}));
    sendNoise("a", {});
    const ImportReport report = taken();
    EXPECT_EQ(report.stored, 1u);
    ASSERT_FALSE(report.warnings.empty());
    EXPECT_THAT(report.warnings[0].path, HasSubstr("rule *.wav"));
}

TEST_F(RulesTest, ByCommand) {
    bare("T-1_20260504T062000Z.wav");
    fleet_.reset();
    using made::run;
    const auto wrong = run({"rules", path_, "--put", "{motor}.wav", "--keys", kKeys});
    EXPECT_EQ(wrong.status, 3);
    EXPECT_THAT(wrong.err, HasSubstr("{machine}"));
    EXPECT_EQ(run({"rules", path_, "--put", "{machine}_{time_utc}.wav", "--keys", kKeys}).status, 0);
    const Json listed = Json::parse(run({"rules", path_, "--json"}).out, nullptr, false);
    ASSERT_EQ(listed["rules"].size(), 1u);
    EXPECT_EQ(listed["rules"][0]["keys"]["point"], "P");
    const auto keyless = run({"rules", path_, "--put", "{machine}_{time_utc}.wav"});
    EXPECT_EQ(keyless.status, 2);
    EXPECT_THAT(keyless.err, HasSubstr("--keys"));
    EXPECT_EQ(Json::parse(run({"rules", path_, "--json"}).out, nullptr, false)["rules"], listed["rules"]);
    for (const std::vector<std::string>& nothing : {std::vector<std::string>{"--put", "", "--keys", kKeys},
                                                    {"--put", " ", "--keys", kKeys},
                                                    {"--remove", ""}}) {
        std::vector<std::string> words{"rules", path_};
        words.insert(words.end(), nothing.begin(), nothing.end());
        const auto ran = run(words);
        EXPECT_EQ(ran.status, 2) << nothing[0] << nothing[1];
        EXPECT_THAT(ran.err, HasSubstr("pattern"));
    }
    EXPECT_EQ(run({"import", path_, in_}).status, 0);
    EXPECT_EQ(run({"rules", path_, "--remove", "{machine}_{time_utc}.wav"}).status, 0);
    EXPECT_EQ(run({"rules", path_, "--remove", "nothing"}).status, 3);
    EXPECT_EQ(run({"rules", path_}).out, "");
}

}  // namespace
}  // namespace fettle::intake_test
