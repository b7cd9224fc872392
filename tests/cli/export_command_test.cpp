// `fettle-cli export`: what is in a fleet file comes out, all of it, in forms others read. Truth: what the
// test put in. CSV: RFC 4180; the apostrophe before a formula: common practice, no source.
#include <set>

#include "tests/cli/site_fixture.h"

namespace fettle::cli_test {
namespace {

using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

class ExportCommand : public Site {
  protected:
    // A week of work: a decision, a reason, an event, a report, a job and a file that was refused.
    void work() {
        jsonOf("round", {"--open", "--until", kUntil});
        EXPECT_EQ(on("decide", {"--machine", "A-RACE", "--dispute", kReason, "--by", "kim"}).status, 0);
        EXPECT_EQ(on("decide", {"--machine", "D-MUTE", "--unseen", "--reason", "no node yet"}).status, 0);
        EXPECT_EQ(on("decide", {"--machine", "B-SOUND", "--opened"}).status, 0);
        EXPECT_EQ(on("decide", {"--leave-block", "--by", "lee"}).status, 0);
        EXPECT_EQ(on("event", {"--machine", "A-RACE", "--kind", "greasing", "--text", "12 g"}).status, 0);
        EXPECT_EQ(on("feedback", {"--machine", "A-RACE", "--fault", "bearing_inner_race", "--at", "driver DE",
                                  "--outcome", "confirmed"})
                      .status,
                  0);
        jsonOf("jobs", {"--machine", "A-RACE", "--finding", "1"});
        made::write(at("broken.wav"), "no sound");
        EXPECT_EQ(on("import", {at("broken.wav")}).status, 1);
        EXPECT_EQ(on("register", {"--remove", "D-MUTE", "--on", "2026-06-01", "--note", "sold"}).status, 0);
    }
    Json read(const std::string& name) const {
        const Json json = Json::parse(made::contentOf(at("out/") + name), nullptr, false);
        EXPECT_FALSE(json.is_discarded()) << name;
        return json;
    }
    const std::string kReason = "=1+1 \"two\"\nlines, " + std::string(3000, 'x');
};

TEST_F(ExportCommand, EverythingComesOutIntoOneFolder) {
    work();
    const Ran ran = on("export", {"all", "-o", at("out")});
    ASSERT_EQ(ran.status, 0) << ran.err;
    EXPECT_THAT(ran.out, HasSubstr("decisions.json: 3 rows written\n"));
    EXPECT_THAT(ran.out, HasSubstr("rounds.json: 1 round written\n"));
    EXPECT_THAT(ran.out, HasSubstr("recordings: 9 recordings written\n"));
    EXPECT_EQ(read("site.json")["site"], "Test works");
    EXPECT_EQ(read("register.json").size(), 4u);
    EXPECT_EQ(read("machines.json")[3]["removed_on"], "2026-06-01");
    EXPECT_EQ(read("machines.json")[3]["removed_why"], "sold");
    EXPECT_EQ(read("events.json")[0]["text"], "12 g");
    EXPECT_EQ(read("feedback.json")[0]["outcome"], "confirmed");
    EXPECT_EQ(read("jobs.json")[0]["findings"][0], "bearing_inner_race @ driver DE");
    EXPECT_THAT(read("refusals.json")[0]["path"].get<std::string>(), HasSubstr("broken.wav"));
    EXPECT_EQ(read("examinations.json").size(), 9u);
    EXPECT_GT(read("weights.json").size(), 9u);
    EXPECT_THAT(made::contentOf(at("out/trends.csv")), StartsWith("time,recording,machine"));
    EXPECT_TRUE(std::filesystem::exists(at("out/recordings/A-RACE/20260505T062000Z_P.wav")));
    for (const auto& entry : std::filesystem::recursive_directory_iterator(at("out")))
        EXPECT_NE(entry.path().extension(), ".part");
}

TEST_F(ExportCommand, DecisionsKeepEveryCharacterAndCsvStartsNoFormula) {
    work();
    ASSERT_EQ(on("export", {"all", "-o", at("out")}).status, 0);
    const Json all = read("decisions.json");
    ASSERT_EQ(all.size(), 3u);
    EXPECT_EQ(all[0]["reason"], kReason);
    EXPECT_EQ(all[0]["by"], "kim");
    EXPECT_TRUE(all[0]["defer_to"].is_null());
    EXPECT_EQ(all[1]["decision"], "unseen");
    EXPECT_EQ(all[1]["reason"], "no node yet");
    EXPECT_EQ(all[2]["decision"], "opened");
    ASSERT_EQ(on("export", {"decisions", "-o", at("d.csv"), "--machine", "A-RACE"}).status, 0);
    const std::string csv = made::contentOf(at("d.csv"));
    EXPECT_THAT(csv, StartsWith("round,until,machine,decision,reason,defer_to,by,at\r\n1,\"2026-05-10\","
                                "\"A-RACE\",\"dispute\",\"'=1+1 \"\"two\"\"?lines, xxx"));
    EXPECT_THAT(csv, HasSubstr(std::string(3000, 'x') + "\",,\"kim\",\""));
    EXPECT_EQ(split(csv, '\n').size(), 3u) << "header, one row, the last line's end";
}

TEST_F(ExportCommand, ARoundComesOutAsItWasKept) {
    work();
    const Json kept = jsonOf("round", {"--kept"});
    ASSERT_EQ(on("export", {"all", "-o", at("out")}).status, 0);
    const Json rounds = read("rounds.json");
    ASSERT_EQ(rounds.size(), 1u);
    EXPECT_EQ(rounds[0]["machines"].dump(), kept["machines"].dump());
    EXPECT_EQ(rounds[0]["leave_accepted_by"], "lee");
    ASSERT_EQ(rounds[0]["examinations"].size(), 2u) << "of the listed that ran: A-RACE and C-SHAKE";
    for (const Json& week : rounds[0]["examinations"])
        EXPECT_EQ(week["examination"]["schema"], 1) << week["machine"];
}

// What came out goes in again and comes out the same.
TEST_F(ExportCommand, TheFolderMakesAFleetOfTheSameContent) {
    work();
    ASSERT_EQ(on("export", {"all", "-o", at("out")}).status, 0);
    const std::string again = at("again.fettle");
    ASSERT_EQ(run({"new", again, "--site", "Test works"}).status, 0);
    ASSERT_EQ(run({"register", again, at("out/register.json")}).status, 0);
    const Ran in = run({"import", again, at("out/recordings"), "--recursive"});
    ASSERT_EQ(in.status, 0) << in.err;
    ASSERT_EQ(run({"event", again, "--file", at("out/events.json")}).status, 0);
    for (const char* part : {"register", "events"}) {
        ASSERT_EQ(run({"export", again, part, "-o", at("part.json")}).status, 0);
        EXPECT_EQ(made::contentOf(at("part.json")), made::contentOf(at("out/") + part + ".json")) << part;
    }
    const Ran before = on("export", {"weights", "-o", at("before.csv")});
    const Ran after = run({"export", again, "weights", "-o", at("after.csv")});
    EXPECT_EQ(made::contentOf(at("after.csv")), made::contentOf(at("before.csv")));
    EXPECT_EQ(after.out, before.out);
}

// A sidecar stands by its stem: that of a second form must not become that of the first.
TEST_F(ExportCommand, SeveralFormsOfARecordingKeepASidecarEach) {
    const std::string folder = at("out/A-RACE");
    const auto exported = [&](const std::string& format) {
        const Ran ran = on("export", {"recordings", "-o", at("out"), "--format", format});
        EXPECT_EQ(ran.status, 0) << ran.err;
    };
    const auto names = [&] {
        std::set<std::string> all;
        for (const auto& entry : std::filesystem::directory_iterator(folder))
            if (const std::string name = entry.path().filename(); name.starts_with("20260505"))
                all.insert(name);
        return all;
    };
    exported("uff58b");
    const std::string stem = "20260505T062000Z_P";
    const std::string sidecar = made::contentOf(folder + "/" + stem + ".json");
    const std::set<std::string> both{stem + ".json", stem + ".uff", stem + "_2.json", stem + "_2.wav"};
    for (const char* format : {"wav", "wav", "uff58b"}) {
        exported(format);
        EXPECT_EQ(names(), both) << format;
    }
    EXPECT_EQ(made::contentOf(folder + "/" + stem + ".json"), sidecar);
    const std::string again = at("again.fettle");
    ASSERT_EQ(run({"new", again}).status, 0);
    made::write(at("a.json"), description("A-RACE"));
    ASSERT_EQ(run({"register", again, at("a.json")}).status, 0);
    const Ran in = run({"import", again, folder + "/" + stem + ".uff", folder + "/" + stem + "_2.wav"});
    EXPECT_THAT(in.out, StartsWith("1 stored, 1 already there")) << in.err;
}

TEST_F(ExportCommand, DaysAndMachineNarrowEveryPart) {
    work();
    EXPECT_EQ(on("export", {"rounds", "-o", at("r.json"), "--until", "2026-05-09"}).out,
              "0 rounds written\n");
    EXPECT_EQ(made::contentOf(at("r.json")), "[]\n");
    EXPECT_EQ(on("export", {"rounds", "-o", at("r.json"), "--from", kUntil}).out, "1 round written\n");
    EXPECT_EQ(on("export", {"jobs", "-o", at("j.csv"), "--machine", "B-SOUND"}).out, "0 rows written\n");
    EXPECT_EQ(
        on("export", {"examinations", "-o", at("e.json"), "--machine", "A-RACE", "--until", "2026-05-06"})
            .out,
        "2 examinations written\n");
    EXPECT_EQ(on("export", {"refusals", "-o", at("f.json"), "--machine", "A-RACE"}).status, 2);
    EXPECT_EQ(on("export", {"all", "-o", at("one"), "--machine", "A-RACE"}).status, 0);
    EXPECT_FALSE(std::filesystem::exists(at("one/refusals.json")));
    EXPECT_THAT(made::contentOf(at("one/decisions.json")), Not(HasSubstr("D-MUTE")));
    EXPECT_EQ(on("export", {"all", "-o", at("broken.wav/below")}).status, 3);
}

}  // namespace
}  // namespace fettle::cli_test
