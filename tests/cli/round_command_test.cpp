// `fettle-cli round`, `decide`, `feedback`, `jobs`, `event`: the week's work from the command line.
#include "tests/cli/site_fixture.h"
#include "tests/exchange/schema_check.h"

namespace fettle::cli_test {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

class RoundCommand : public Site {
  protected:
    Json listedIn(const Json& round, const std::string& tag) const {
        for (const Json& machine : round["machines"])
            if (machine["tag"] == tag) return machine;
        ADD_FAILURE() << tag << " is not in the round";
        return {};
    }
    Json open() const { return jsonOf("round", {"--open", "--until", kUntil}); }
    int decide(std::vector<std::string> more) const { return on("decide", more).status; }
};

TEST_F(RoundCommand, TellsEveryMachineAndWritesNothing) {
    const std::string before = made::contentOf(fleet_);
    const Ran ran = on("round", {"--until", kUntil});
    EXPECT_EQ(ran.status, 0) << ran.err;
    for (const char* tag : {"A-RACE", "B-SOUND", "C-SHAKE", "D-MUTE"})
        EXPECT_THAT(ran.out, HasSubstr(tag));
    EXPECT_THAT(ran.out, HasSubstr("Inner-race defect of the driver DE bearing"));
    EXPECT_THAT(ran.out, HasSubstr("1 listed on evidence: at most 1 in 10"));
    EXPECT_EQ(made::contentOf(fleet_), before);
}

TEST_F(RoundCommand, JsonFitsItsSchemaAndIsTheSameTwice) {
    const auto schema =
        RealFileSystem().read(std::string(FETTLE_SOURCE_DIR) + "/resources/schemas/round.schema.json");
    ASSERT_TRUE(schema);
    const Json parsed = Json::parse(*schema), round = jsonOf("round", {"--until", kUntil});
    EXPECT_THAT(made::SchemaCheck(parsed).faultsOf(round), IsEmpty());
    EXPECT_EQ(listedIn(round, "A-RACE")["listed_by"], "evidence");
    EXPECT_EQ(listedIn(round, "C-SHAKE")["urgency"], "act");
    EXPECT_EQ(listedIn(round, "D-MUTE")["unseen_reason"], "silent");
    EXPECT_TRUE(round["kept"].is_null());
    EXPECT_THAT(round["promise"].get<std::string>(),
                HasSubstr("of the 1 listed on evidence, at most 1 in 10"));
    EXPECT_EQ(jsonOf("round", {"--until", kUntil}).dump(), round.dump());
}

TEST_F(RoundCommand, AWeekFromOpeningToClosing) {
    const Json opened = open();
    EXPECT_THAT(opened["kept"]["missing"], Not(IsEmpty()));
    EXPECT_EQ(on("round", {"--open"}).status, 3) << "one is open";
    const Ran early = on("round", {"--close"});
    EXPECT_EQ(early.status, 3);
    EXPECT_THAT(early.err, HasSubstr("A-RACE"));
    EXPECT_EQ(decide({"--machine", "A-RACE", "--accept"}), 0);
    EXPECT_EQ(decide({"--machine", "C-SHAKE", "--defer", "2026-06-01", "stop in June", "--by", "kim"}), 0);
    EXPECT_EQ(decide({"--machine", "D-MUTE", "--unseen", "--reason", "no node fitted yet"}), 0);
    EXPECT_EQ(decide({"--leave-block"}), 3) << "before its sample was opened";
    EXPECT_EQ(decide({"--machine", "B-SOUND", "--opened"}), 0);
    EXPECT_EQ(decide({"--leave-block"}), 0);
    const Ran closed = on("round", {"--close", "--by", "k\nim"});
    EXPECT_EQ(closed.status, 0) << closed.err;
    EXPECT_THAT(closed.out, HasSubstr(" by k?im.\n"));
    EXPECT_EQ(decide({"--machine", "A-RACE", "--accept"}), 3) << "no round is open";
    const Json kept = jsonOf("round", {"--kept"});
    EXPECT_FALSE(kept["kept"]["closed_at"].is_null());
    ASSERT_EQ(kept["kept"]["decisions"].size(), 2u);
    EXPECT_EQ(kept["kept"]["decisions"][1]["defer_to"], "2026-06-01");
    EXPECT_EQ(kept["kept"]["decisions"][1]["by"], "kim");
    EXPECT_EQ(kept["machines"].dump(), opened["machines"].dump()) << "a kept round never changes";
}

TEST_F(RoundCommand, DecisionsThatARoundDoesNotAskForAreRefusedOneByOne) {
    open();
    const Ran ran =
        on("decide", {"--machine", "A-RACE", "--machine", "B-SOUND", "--machine", "NO-SUCH", "--accept"});
    EXPECT_EQ(ran.status, 1);
    EXPECT_EQ(ran.out, "A-RACE accept\n");
    ASSERT_EQ(ran.errLines().size(), 2u) << ran.err;
    EXPECT_THAT(ran.errLines()[0], HasSubstr("B-SOUND"));
    EXPECT_THAT(ran.errLines()[1], HasSubstr("NO-SUCH"));
    EXPECT_EQ(decide({"--machine", "A-RACE", "--defer", "2026-05-01", "earlier than the round"}), 1);
    EXPECT_EQ(decide({"--machine", "A-RACE", "--dispute", "   "}), 1);
}

TEST_F(RoundCommand, ReasonsMayHoldAnyText) {
    open();
    const std::string reason = "it's \"quiet\"; DROP TABLE decision;\n<b>\xff</b>";
    EXPECT_EQ(decide({"--machine", "A-RACE", "--dispute", reason}), 0);
    const Ran ran = on("round", {"--kept", "--json"});
    EXPECT_TRUE(isUtf8(ran.out));
    const Json json = Json::parse(ran.out, nullptr, false);
    ASSERT_TRUE(json.is_object());
    EXPECT_THAT(json["kept"]["decisions"][0]["reason"].get<std::string>(), HasSubstr("DROP TABLE"));
    EXPECT_EQ(on("check", {"--deep"}).status, 0);
}

TEST_F(RoundCommand, WrongUsageIsTwoAndNoFleetIsThree) {
    const std::vector<std::vector<std::string>> wrong{
        {"round"},
        {"round", fleet_, "--open", "--close"},
        {"round", fleet_, "--kept", "--until", kUntil},
        {"decide", fleet_},
        {"decide", fleet_, "--accept"},
        {"decide", fleet_, "--machine", "A-RACE"},
        {"decide", fleet_, "--machine", "A-RACE", "--accept", "--opened"},
        {"decide", fleet_, "--machine", "A-RACE", "--defer", "2026-06-01"},
        {"decide", fleet_, "--machine", "A-RACE", "--leave-block"},
        {"decide", fleet_, "--machine", "A-RACE", "--accept", "--reason", "why"},
        {"feedback", fleet_, "--machine", "A-RACE"},
        {"feedback", fleet_, "--machine", "A-RACE", "--fault", "unbalance", "--outcome", "maybe"},
        {"event", fleet_},
        {"event", fleet_, "--machine", "A-RACE"},
        {"event", fleet_, "--machine", "A-RACE", "--kind", "repair", "--time", "yesterday"},
        {"event", fleet_, "--machine", "A-RACE", "--kind", "repair", "--file", "x.json"},
        {"jobs", fleet_, "--state", "done"},
        {"jobs", fleet_, "--id", "1", "--state", "finished"},
        {"jobs", fleet_, "--finding", "1"}};
    for (const auto& arguments : wrong) {
        const Ran ran = run(arguments);
        EXPECT_EQ(ran.status, 2) << arguments[0] << " " << arguments.size();
        EXPECT_EQ(ran.out, "");
        EXPECT_NE(ran.err, "");
    }
    for (const std::vector<std::string>& arguments : {std::vector<std::string>{"round", at("nosuch.fettle")},
                                                      {"decide", at("nosuch.fettle"), "--leave-block"},
                                                      {"jobs", at("nosuch.fettle")}})
        EXPECT_EQ(run(arguments).status, 3) << arguments[0];
    EXPECT_EQ(on("round", {"--until", "next week"}).status, 3);
    EXPECT_EQ(on("round", {"--kept"}).status, 3) << "none was opened yet";
    EXPECT_EQ(on("round", {"--close"}).status, 3);
}

TEST_F(RoundCommand, AnUnknownCommandIsNamed) {
    const Ran ran = run({"rond", fleet_});
    EXPECT_EQ(ran.status, 2);
    EXPECT_THAT(ran.err, HasSubstr("unknown command \"rond\""));
    EXPECT_EQ(run({}).status, 2);
}

TEST_F(RoundCommand, ConfirmedReportsAreCounted) {
    for (const char* outcome : {"confirmed", "not_found"})
        EXPECT_EQ(on("feedback", {"--machine", "A-RACE", "--fault", "bearing_inner_race", "--at", "driver DE",
                                  "--outcome", outcome, "--code", "fatigue"})
                      .status,
                  0);
    EXPECT_THAT(on("round", {"--until", kUntil}).out, HasSubstr("1 of 2 confirmed here so far"));
    EXPECT_EQ(on("feedback", {"--machine", "NO-SUCH", "--fault", "x", "--outcome", "confirmed"}).status, 3);
}

TEST_F(RoundCommand, AReportIsCheckedAndStandsOnce) {
    const auto report = [&](const std::string& fault, const std::string& place, const std::string& time) {
        return on("feedback", {"--machine", "A-RACE", "--fault", fault, "--at", place, "--outcome",
                               "confirmed", "--time", time, "--by", "kim"});
    };
    const std::string time = "2026-05-11T08:00:00Z";
    EXPECT_THAT(report("gremlins", "driver DE", time).err, HasSubstr("no fault key"));
    EXPECT_THAT(report("unbalance", "moon DE", time).err, HasSubstr("no place of A-RACE"));
    EXPECT_THAT(report("unbalance", "driver", "2999-01-01T00:00:00Z").err, HasSubstr("in the future"));
    EXPECT_EQ(report("unbalance", "driver ZZ", time).status, 3);
    EXPECT_THAT(report("bearing_inner_race", "driver DE", time).out, HasSubstr("1 of 1 confirmed"));
    const Ran twice = report("bearing_inner_race", "driver DE", "2026-05-11T09:00:00Z");
    EXPECT_EQ(twice.status, 0);
    EXPECT_THAT(twice.err, HasSubstr("stands once"));
    EXPECT_THAT(twice.out, HasSubstr("1 of 1 confirmed"));
    EXPECT_THAT(report("bearing_inner_race", "driver DE", "2026-05-12T09:00:00Z").out,
                HasSubstr("2 of 2 confirmed"));
}

TEST_F(RoundCommand, AnEventHasAPlaceATimeAndForANoteWords) {
    const std::vector<std::string> note{"--machine", "A-RACE", "--kind", "note"};
    const auto with = [&](std::vector<std::string> more) {
        more.insert(more.begin(), note.begin(), note.end());
        return on("event", more);
    };
    EXPECT_THAT(with({"--text", " "}).err, HasSubstr("needs words"));
    EXPECT_THAT(with({"--text", "hot", "--at", "moon"}).err, HasSubstr("no place of A-RACE"));
    EXPECT_THAT(with({"--text", "hot", "--time", "2999-01-01T00:00:00Z"}).err, HasSubstr("in the future"));
    EXPECT_EQ(with({"--text", "hot", "--at", "driver DE"}).status, 0);
}

TEST_F(RoundCommand, AJobNeedsAFindingAndWorkDoneIsNotDraftedAgain) {
    EXPECT_EQ(on("jobs").out, "no jobs\n");
    ASSERT_EQ(on("register", {"--by-hand", "B-SOUND", "--note", "the operators ask"}).status, 0);
    EXPECT_THAT(on("jobs", {"--machine", "B-SOUND", "--finding", "1"}).err, HasSubstr("has no finding"));
    const std::string id =
        std::to_string(jsonOf("jobs", {"--machine", "A-RACE", "--finding", "1"})["id"].get<int>());
    EXPECT_EQ(on("jobs", {"--id", id, "--state", "done"}).status, 0);
    EXPECT_THAT(on("jobs", {"--id", id, "--state", "drafted"}).err, HasSubstr("cannot be drafted again"));
    EXPECT_EQ(on("jobs", {"--revise", id}).status, 0);
}

TEST_F(RoundCommand, EventsComeOutAsTheyWentInAndOnce) {
    made::write(at("events.json"), R"([
      { "machine": "A-RACE", "time": "2026-05-06T08:00:00Z", "kind": "greasing", "at": "driver DE", "text": "12 g" },
      { "machine": "D-MUTE", "time": "2026-05-01T08:00:00Z", "kind": "low_battery", "at": null, "text": "=2+3" } ])");
    EXPECT_EQ(on("event", {"--file", at("events.json"), "--by", "kim"}).status, 0);
    EXPECT_EQ(on("event", {"--file", at("events.json"), "--by", "kim"}).status, 0) << "alike, so not doubled";
    ASSERT_EQ(on("export", {"events", "-o", at("out.json")}).status, 0);
    const Json out = Json::parse(made::contentOf(at("out.json")), nullptr, false);
    ASSERT_EQ(out.size(), 2u);
    EXPECT_EQ(out[1]["text"], "12 g");
    EXPECT_EQ(out[1]["by"], "kim");
    EXPECT_EQ(listedIn(jsonOf("round", {"--until", kUntil}), "D-MUTE")["unseen_reason"], "low_battery");
    EXPECT_EQ(on("event", {"--machine", "A-RACE", "--kind", "repair", "--time", "2026-05-08T10:00:00Z",
                           "--text", "new bearing"})
                  .status,
              0);
    EXPECT_EQ(on("event", {"--machine", "A-RACE", "--kind", "party"}).status, 3);
    EXPECT_EQ(on("event", {"--machine", "NO-SUCH", "--kind", "repair"}).status, 3);
}

TEST_F(RoundCommand, EventsThatAreNoneAreRefusedWithTheirPlace) {
    made::write(at("events.json"), R"([
      { "machine": "A-RACE", "time": "06.05.2026", "kind": "greasing" },
      { "machine": "NO-SUCH", "time": "2026-05-06T08:00:00Z", "kind": "greasing" },
      { "machine": "A-RACE", "time": "2026-05-06T08:00:00Z", "kind": "greasing" }, 7 ])");
    const Ran ran = on("event", {"--file", at("events.json")});
    EXPECT_EQ(ran.status, 1);
    EXPECT_EQ(ran.out, "1 event taken\n");
    ASSERT_EQ(ran.errLines().size(), 3u) << ran.err;
    EXPECT_THAT(ran.errLines()[0], HasSubstr("/0/time"));
    EXPECT_THAT(ran.errLines()[1], HasSubstr("NO-SUCH"));
    made::write(at("events.json"), R"({ "machine": "A-RACE" })");
    EXPECT_EQ(on("event", {"--file", at("events.json")}).status, 3);
    EXPECT_EQ(on("event", {"--file", at("nosuch.json")}).status, 3);
}

TEST_F(RoundCommand, AJobIsDraftedFromTheSheetChangedAndReplaced) {
    open();
    const Json job = jsonOf("jobs", {"--machine", "A-RACE", "--finding", "1"});
    EXPECT_EQ(job["findings"][0], "bearing_inner_race @ driver DE");
    EXPECT_EQ(job["state"], "drafted");
    EXPECT_EQ(job["urgency"], "plan");
    EXPECT_LT(job["order_parts_by"].get<std::string>(), job["run_until"].get<std::string>());
    const std::string id = std::to_string(job["id"].get<int>());
    EXPECT_EQ(jsonOf("jobs", {"--id", id, "--state", "issued", "--work-order", "WO-1"})["state"], "issued");
    const Json next = jsonOf("jobs", {"--revise", id, "--planned-stop", "2026-06-01"});
    EXPECT_EQ(next["revision"], 2);
    EXPECT_EQ(next["replaces"], job["id"]);
    EXPECT_EQ(jsonOf("jobs", {})["jobs"].size(), 2u);
    EXPECT_THAT(jsonOf("sheet", {"--machine", "A-RACE"})["machine"]["job"].get<std::string>(),
                HasSubstr("revision 2"));
    EXPECT_EQ(on("jobs", {"--id", "99", "--state", "done"}).status, 3);
    EXPECT_EQ(on("jobs", {"--id", id, "--planned-stop", "soon"}).status, 3);
    EXPECT_EQ(on("jobs", {"--machine", "B-SOUND", "--finding", "1"}).status, 3);
}

}  // namespace
}  // namespace fettle::cli_test
