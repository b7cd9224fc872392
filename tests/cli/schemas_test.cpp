// Every answer in JSON fits the schema that is shipped with it, has nothing the schema does not tell of, and
// begins with schema and engine. Source: JSON Schema, draft 2020-12 (the part in schema_check.h).
#include "core/fleet/trial_desk.h"
#include "tests/cli/site_fixture.h"
#include "tests/exchange/schema_check.h"

namespace fettle::cli_test {
namespace {

using testing::IsEmpty;

class Schemas : public Site {
  protected:
    static void expectFits(const Json& answer, const std::string& name) {
        const auto text = RealFileSystem().read(std::string(FETTLE_SOURCE_DIR) + "/resources/schemas/" +
                                                name + ".schema.json");
        ASSERT_TRUE(text) << text.error().sentence();
        const Json schema = Json::parse(*text);
        const made::SchemaCheck check(schema);
        EXPECT_THAT(check.faultsOf(answer), IsEmpty()) << name;
        EXPECT_THAT(check.untoldKeysOf(answer), IsEmpty()) << name;
        EXPECT_EQ(answer["schema"], 1) << name;
        EXPECT_TRUE(answer["engine"].is_string()) << name;
    }
    void expectFits(const std::string& command, const std::vector<std::string>& more,
                    const std::string& name) const {
        expectFits(jsonOf(command, more), name);
    }
    void openWithJob() const {
        ASSERT_EQ(on("round", {"--open", "--until", kUntil}).status, 0);
        expectFits("jobs", {"--machine", "C-SHAKE", "--finding", "1"}, "jobs");
        ASSERT_EQ(on("jobs", {"--id", "1", "--state", "done", "--on", "2026-05-06"}).status, 0);
    }
};

TEST_F(Schemas, JobsAndTheirVerification) {
    openWithJob();
    expectFits("jobs", {}, "jobs");
    expectFits("jobs", {"--verify"}, "verifications");
    EXPECT_EQ(jsonOf("jobs", {"--verify"})["verifications"].size(), 1u);
}

TEST_F(Schemas, ReportsSummedUp) {
    expectFits("feedback", {"--summary"}, "feedback");
    openWithJob();
    ASSERT_EQ(on("feedback", {"--machine", "A-RACE", "--fault", "bearing_inner_race", "--outcome",
                              "confirmed", "--time", "2026-05-12T08:00:00Z"})
                  .status,
              0);
    expectFits("feedback", {"--summary"}, "feedback");
}

TEST_F(Schemas, EventsWithWhatTheSensorHeard) {
    ASSERT_EQ(on("event", {"--machine", "A-RACE", "--kind", "greasing", "--at", "driver", "--time",
                           "2026-05-06T12:00:00Z"})
                  .status,
              0);
    ASSERT_EQ(on("event", {"--machine", "A-RACE", "--kind", "note", "--text", "noisy", "--time",
                           "2026-05-06T13:00:00Z"})
                  .status,
              0);
    const Json events = jsonOf("event", {"--machine", "A-RACE", "--list"});
    expectFits(events, "events");
    EXPECT_TRUE(events["events"][0]["heard"].is_object());
}

TEST_F(Schemas, WarningLineAndNodes) {
    expectFits("round", {"--first-listed", "C-SHAKE", "--before", "2026-05-08"}, "first_listed");
    expectFits("whose-line", {"--machine", "C-SHAKE", "--hz", "24.7"}, "whose_line");
    expectFits("nodes", {"--until", kUntil}, "nodes");
    EXPECT_EQ(jsonOf("nodes", {"--until", kUntil})["nodes"].size(), 4u);
}

TEST_F(Schemas, TheRoundsReport) {
    openWithJob();
    const Ran ran = on("round", {"--report", at("report.json"), "--today", "2026-05-12"});
    ASSERT_EQ(ran.status, 0) << ran.err;
    const auto text = RealFileSystem().read(at("report.json"));
    ASSERT_TRUE(text);
    expectFits(Json::parse(*text), "round_report");
    EXPECT_EQ(Json::parse(*text)["work"].size(), 2u);
    ASSERT_EQ(on("round", {"--report", at("report.csv"), "--today", "2026-05-12"}).status, 0);
    EXPECT_EQ(on("round", {"--report", fleet_}).status, 2);
}

TEST_F(Schemas, TrialsAsTheyStand) {
    expectFits("trial", {}, "trials");
    {
        auto fleet = FleetFile::open(fleet_);
        ASSERT_TRUE(fleet) << fleet.error().sentence();
        Trial trial;
        trial.name = "10 g at the rotor";
        trial.machine = "B-SOUND";
        trial.change.at = "driver";
        trial.change.massG = 10;
        trial.change.radiusMm = 100;
        trial.expectation.lines = {{"1 x", 1, 24.7}};
        ASSERT_TRUE(keepTrial(**fleet, 0, trial));
    }
    expectFits("trial", {}, "trials");
    const Json trials = jsonOf("trial", {"--machine", "B-SOUND"})["trials"];
    ASSERT_EQ(trials.size(), 1u);
    EXPECT_EQ(trials[0]["change"]["mass_g"], 10);
    EXPECT_EQ(trials[0]["result"]["outcome"], "open");
    EXPECT_TRUE(trials[0]["closed_at"].is_null());
    EXPECT_EQ(jsonOf("trial", {"--machine", "A-RACE"})["trials"].size(), 0u);
}

// One speed makes no map, and that is said; a map itself is held against the schema in tests/fleet.
TEST_F(Schemas, AResonanceMapThatLacksSpeeds) {
    const Json map = jsonOf("resonance", {"--machine", "C-SHAKE"});
    expectFits(map, "resonance");
    EXPECT_EQ(map["machine"], "C-SHAKE");
    EXPECT_TRUE(map["lacking"].is_string());
    EXPECT_EQ(map["bands"].size(), 0u);
}

TEST_F(Schemas, ImportCheckAndPhantoms) {
    expectFits("import", {recordings()}, "import");
    expectFits("import", {recordings(), "--preview"}, "import_preview");
    ASSERT_EQ(on("rules", {"--put", "{machine}_*.wav", "--keys", R"({ "point": "P" })"}).status, 0);
    expectFits("rules", {}, "rules");
    expectFits("check", {"--deep"}, "check");
    made::write(at("m.json"), description("A-RACE"));
    const Ran ran = run({"phantoms", recordings() + "/A-RACE_5.wav", "--machine", at("m.json"),
                         "--per-recording", "5", "--json"});
    ASSERT_EQ(ran.status, 0) << ran.err;
    expectFits(Json::parse(ran.out), "phantoms");
}

TEST_F(Schemas, OldVerdictsBesideNewOnes) {
    expectFits("re-examine", {}, "re_examination");
    expectFits("re-examine", {"--all", "--machine", "A-RACE"}, "re_examination");
    expectFits("re-examine", {"--report", "--least", "0"}, "re_examination");
}

}  // namespace
}  // namespace fettle::cli_test
