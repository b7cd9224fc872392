// The commands `import` and `re-examine` as a user meets them. Source of statuses and of "each refusal one
// line": the project's contract.
#include <gmock/gmock.h>

#include "tests/cli/run_program.h"
#include "tests/intake/intake_fixture.h"

namespace fettle::intake_test {
namespace {

using made::run;
using testing::ElementsAre;
using testing::HasSubstr;

class CommandTest : public IntakeTest {
  protected:
    void SetUp() override {
        IntakeTest::SetUp();
        fleet_.reset();  // the program opens it
    }
    void sendThree() {
        sendNoise("a", {.time = "2026-05-01T06:20:00Z"}, 1);
        sendNoise("b", {.time = "2026-05-02T06:20:00Z"}, 2);
        sendNoise("c", {.time = "2026-05-03T06:20:00Z"}, 3);
    }
};

TEST_F(CommandTest, SummaryAndStatusZero) {
    sendThree();
    const auto first = run({"import", path_, in_});
    EXPECT_EQ(first.status, 0) << first.err;
    EXPECT_EQ(first.out, "3 stored, 0 already there, 0 late, 0 refused, 0 parked\n");
    EXPECT_EQ(first.err, "");
    const auto second = run({"import", path_, in_, "--threads", "1", "--batch", "1"});
    EXPECT_EQ(second.status, 0);
    EXPECT_EQ(second.out, "0 stored, 3 already there, 0 late, 0 refused, 0 parked\n");
}

// Once for all files that share it, on stderr and in the JSON.
TEST_F(CommandTest, WhatShouldBeLookedAtIsTold) {
    for (const char* name : {"a", "b"}) {
        Said said;
        said.time = std::string("2026-05-0") + (name[0] == 'a' ? "1" : "2") + "T06:20:00Z";
        sendNoise(name, said, std::uint64_t(name[0]));
        Json sidecar = sidecarOf(said);
        sidecar["channels"] = Json::parse(R"([ { "name": "x" }, { "name": "q", "unit": "g" } ])");
        ASSERT_TRUE(disk_.writeSafely(in_ + "/" + name + ".json", sidecar.dump()));
    }
    const auto ran = run({"import", path_, in_, "--json"});
    EXPECT_EQ(ran.status, 0) << ran.err;
    EXPECT_THAT(ran.err,
                HasSubstr("a.wav: channel \"x\" of T-1 is whole numbers without a scale: full scale is "
                          "taken for 1 g (and 1 more)\n"));
    EXPECT_THAT(ran.err, HasSubstr("channel \"q\" of T-1 is not in the description"));
    const Json json = Json::parse(ran.out, nullptr, false);
    ASSERT_EQ(json["warnings"].size(), 2u);
    EXPECT_EQ(json["warnings"][0]["files"], 2);
}

TEST_F(CommandTest, EachRefusalIsOneLine) {
    sendThree();
    sendNoise("d\nsplit", {.machine = "X-9\n"}, 4);
    sendNoise("e", {.time = "1970-01-01T00:00:00Z"}, 5);
    const auto ran = run({"import", path_, in_, in_ + "/nosuch.wav"});
    EXPECT_EQ(ran.status, 1);
    EXPECT_EQ(ran.out, "3 stored, 0 already there, 0 late, 2 refused, 1 parked\n");
    const auto lines = ran.errLines();
    ASSERT_EQ(lines.size(), 3u) << ran.err;
    EXPECT_THAT(lines[0], testing::StartsWith("refused: " + in_ + "/nosuch.wav"));
    EXPECT_THAT(lines[1], HasSubstr("/machine: is \"X-9?\", which is not in the register"));
    EXPECT_THAT(lines[2], testing::StartsWith("parked: " + in_ + "/e.wav: e.json /time: "));
}

TEST_F(CommandTest, JsonHasStableKeys) {
    sendThree();
    sendNoise("d", {.machine = "X-9"}, 4);
    const auto ran = run({"import", path_, in_, "--json"});
    EXPECT_EQ(ran.status, 1);
    const auto json = parseJson(ran.out, "out");
    ASSERT_TRUE(json) << json.error().sentence();
    std::vector<std::string> keys;
    for (const auto& [key, value] : json->items())
        keys.push_back(key);
    EXPECT_THAT(keys, ElementsAre("schema", "engine", "found", "stored", "already", "late", "answered",
                                  "refused", "parked", "passed_over", "tables", "levels", "levels_already",
                                  "level_rows_refused", "cancelled", "refusals", "warnings"));
    EXPECT_EQ((*json)["stored"], 3);
    EXPECT_EQ((*json)["refusals"][0]["path"], in_ + "/d.wav");
    EXPECT_EQ((*json)["refusals"][0]["place"], "/machine");
    EXPECT_EQ((*json)["refusals"][0]["kind"], "refused");
}

TEST_F(CommandTest, ToldPathsAreThoseThatAreIn) {
    sendThree();
    sendNoise("d", {.machine = "X-9"}, 4);
    const auto ran = run({"import", path_, in_, "--tell-acknowledged"});
    EXPECT_EQ(ran.out, in_ + "/a.wav\n" + in_ + "/b.wav\n" + in_ + "/c.wav\n");
    EXPECT_THAT(ran.err, HasSubstr("3 stored"));
}

TEST_F(CommandTest, WrongUsageAndCouldNotRun) {
    EXPECT_EQ(run({"import", path_}).status, 2);
    EXPECT_EQ(run({"import", path_, in_, "--json", "--tell-acknowledged"}).status, 2);
    EXPECT_EQ(run({"import", path_, in_, "--threads", "0"}).status, 2);
    const auto missing = run({"import", folder_ / "nosuch.fettle", in_});
    EXPECT_EQ(missing.status, 3);
    EXPECT_EQ(missing.errLines().size(), 1u);
    EXPECT_EQ(run({"re-examine", path_, "--machine", "X-9"}).status, 3);
}

TEST_F(CommandTest, FollowCountsTablesOfLevels) {
    RealFileSystem disk;
    ASSERT_TRUE(disk.makeFolders(in_));
    ASSERT_TRUE(disk.writeSafely(in_ + "/walk.csv",
                                 "time,machine,point,direction,quantity,unit,value\n"
                                 "2026-05-04T06:20:00Z,T-1,P,H,velocity,mm/s,2.5\n"
                                 "2026-05-05T06:20:00Z,T-1,P,H,velocity,mm/s,2.6\n"));
    const auto ran = run({"follow", path_, in_, "--once", "--settle", "0", "--wait", "0"});
    EXPECT_EQ(ran.status, 0) << ran.err;
    EXPECT_EQ(ran.out, "0 stored, 0 already there, 0 late, 0 refused, 0 parked, 2 levels of 1 table\n");
}

TEST_F(CommandTest, ReExamineSaysWhatItDid) {
    sendThree();
    run({"import", path_, in_});
    EXPECT_EQ(run({"re-examine", path_, "--report"}).status, 3) << "there was no run";
    const auto nothing = run({"re-examine", path_});
    EXPECT_EQ(nothing.status, 0);
    EXPECT_EQ(nothing.out,
              "0 weighed again, 3 already by this engine, 0 without their waveform keep their verdict\n");
    const std::string table = folder_ / "changes.csv";
    const auto all = run({"re-examine", path_, "--machine", "T-1", "--all", "--csv", table});
    EXPECT_EQ(all.status, 0) << all.err;
    EXPECT_THAT(all.out, testing::StartsWith("3 weighed again, 0 already by this engine, "));
    EXPECT_THAT(all.out, HasSubstr("no verdict changed by 3 decibans or more\n"));
    EXPECT_EQ(made::contentOf(table),
              "machine,time,file,fault,at,change,old_urgency,new_urgency,old_dban,new_dban,old_engine,"
              "new_engine\r\n");
    EXPECT_EQ(run({"re-examine", path_, "--report"}).status, 0);
    EXPECT_EQ(run({"re-examine", path_, "--all", "--csv", path_}).status, 3) << "the fleet file is left";
}

}  // namespace
}  // namespace fettle::intake_test
