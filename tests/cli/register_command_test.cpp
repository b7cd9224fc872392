// `fettle-cli new`, `register`, `check`, `backup`: a fleet file, its machines, whether it is whole.
#include <fstream>

#include "tests/cli/site_fixture.h"

namespace fettle::cli_test {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

TEST(NewCommand, MakesAFleetFileOnceAndNeverOverOne) {
    const ScratchFolder folder;
    const std::string path = folder / "a.fettle";
    const Ran made = run({"new", path, "--site", "Hollin Edge", "--time-zone", "Europe/London"});
    EXPECT_EQ(made.status, 0) << made.err;
    const std::string bytes = made::contentOf(path);
    EXPECT_FALSE(bytes.empty());
    const Ran again = run({"new", path});
    EXPECT_EQ(again.status, 3);
    EXPECT_THAT(again.err, HasSubstr(path));
    EXPECT_EQ(made::contentOf(path), bytes);
}

TEST(NewCommand, RefusesZonesSharesAndFoldersThatAreNone) {
    const ScratchFolder folder;
    EXPECT_EQ(run({"new", folder / "a.fettle", "--time-zone", "Middle/Earth"}).status, 2);
    EXPECT_EQ(run({"new", folder / "a.fettle", "--alpha", "2"}).status, 2);
    EXPECT_EQ(run({"new"}).status, 2);
    EXPECT_EQ(run({"new", folder / "no/such/folder/a.fettle"}).status, 3);
    EXPECT_EQ(run({"new", folder.path()}).status, 3);
    EXPECT_FALSE(std::filesystem::exists(folder / "a.fettle"));
}

TEST(NewCommand, AnyNameOfAFileIsTaken) {
    const ScratchFolder folder;
    for (const std::string name : {"with space.fettle", "quote'and\"double.fettle", "$(touch oops).fettle",
                                   "umlaut \xc3\xa4.fettle"}) {
        const Ran ran = run({"new", folder / name});
        EXPECT_EQ(ran.status, 0) << name << ran.err;
        EXPECT_TRUE(std::filesystem::exists(folder / name)) << name;
        EXPECT_EQ(run({"check", folder / name, "--deep"}).status, 0) << name;
    }
}

TEST_F(Site, RegisterSaysWhatBecameOfEachMachine) {
    made::write(at("new.json"), description("N-1"));
    EXPECT_EQ(on("register", {at("new.json")}).out, "N-1 added\n");
    EXPECT_EQ(on("register", {at("new.json")}).out, "N-1 unchanged\n");
    std::string changed = description("N-1");
    changed.replace(changed.find("1484"), 4, "1480");
    made::write(at("new.json"), changed);
    EXPECT_EQ(on("register", {at("new.json"), "--from", "2026-05-06", "--note", "new motor"}).out,
              "N-1 changed from 2026-05-06\n");
}

TEST_F(Site, RegisterRefusesWhatIsNoDescriptionAndTakesTheRest) {
    made::write(at("good.json"), description("N-1"));
    made::write(at("broken.json"), R"({ "tag": "N-2", "mains_hz": 50, "driver": { "poles": "four" } })");
    made::write(at("text.json"), "no JSON at all");
    made::write(at("empty.json"), "[]");
    for (const char* bad : {"broken.json", "text.json", "empty.json", "nosuch.json"}) {
        const Ran ran = on("register", {at(bad), at("good.json")});
        EXPECT_EQ(ran.status, 1) << bad;
        EXPECT_THAT(ran.out, HasSubstr("N-1")) << bad;
        for (const std::string& line : ran.errLines()) {
            EXPECT_THAT(line, HasSubstr(bad));
            EXPECT_THAT(line, HasSubstr("refused"));
        }
        EXPECT_EQ(ran.errLines().size(), std::string(bad) == "broken.json" ? 2u : 1u) << ran.err;
    }
    EXPECT_THAT(on("register", {at("broken.json")}).err, HasSubstr("/driver/poles"));
    EXPECT_EQ(on("register", {at("good.json"), "--from", "yesterday"}).status, 1);
}

TEST_F(Site, RegisterSaysOfATableThatItHasNoRows) {
    made::write(at("head.csv"), "tag,mains_hz\n");
    const Ran ran = on("register", {at("head.csv")});
    EXPECT_EQ(ran.status, 1);
    EXPECT_THAT(ran.err, HasSubstr("head.csv"));
    EXPECT_THAT(ran.err, HasSubstr("has no rows"));
}

// Who mends a file wants to mend it once: every place that is wrong, each once, up to 20.
TEST_F(Site, RegisterTellsAllThatIsWrongWithAFile) {
    Json machine = Json::parse(description("N-1"));
    machine["criticality"] = "Z";
    machine["driver"]["poles"] = "four";
    machine["driver"].erase("rated_rpm");
    machine["points"][0]["channels"][1]["name"] = "x";
    made::write(at("bad.json"), machine.dump());
    const auto lines = on("register", {at("bad.json")}).errLines();
    ASSERT_EQ(lines.size(), 3u);
    EXPECT_THAT(lines[0], HasSubstr("/criticality"));
    EXPECT_THAT(lines[1], HasSubstr("/driver/poles"));
    EXPECT_THAT(lines[2], HasSubstr("/points/0/channels/1/name"));
    for (int i = 0; i < 40; ++i)
        machine["points"][0]["node"].push_back({{"id", "n"}, {"from", "soon"}});
    made::write(at("bad.json"), machine.dump());
    EXPECT_EQ(on("register", {at("bad.json")}).errLines().size(), 20u);
}

TEST_F(Site, RegisterComesOutAsAListThatGoesInAgain) {
    std::string changed = description("A-RACE");
    changed.replace(changed.find("1484"), 4, "1480");
    made::write(at("changed.json"), changed);
    ASSERT_EQ(on("register", {at("changed.json"), "--from", "2026-05-06", "--note", "new motor"}).status, 0);
    ASSERT_EQ(on("export", {"register", "-o", at("all.json")}).status, 0);
    const Json all = Json::parse(made::contentOf(at("all.json")), nullptr, false);
    ASSERT_TRUE(all.is_array());
    ASSERT_EQ(all.size(), 5u);
    const std::string other = at("other.fettle");
    ASSERT_EQ(run({"new", other}).status, 0);
    const Ran ran = run({"register", other, at("all.json")});
    EXPECT_EQ(ran.status, 0) << ran.err;
    EXPECT_THAT(ran.out, HasSubstr("A-RACE changed from 2026-05-06"));
    ASSERT_EQ(run({"export", other, "register", "-o", at("again.json")}).status, 0);
    EXPECT_EQ(made::contentOf(at("again.json")), made::contentOf(at("all.json")));
}

// Neither what holds now nor what held before is touched, and a machine that was sold stays sold.
TEST_F(Site, ARegisterThatComesBackToItsOwnFleetChangesNothing) {
    ASSERT_EQ(on("export", {"register", "-o", at("older.json")}).status, 0);
    std::string changed = description("A-RACE");
    changed.replace(changed.find("1484"), 4, "1480");
    made::write(at("changed.json"), changed);
    ASSERT_EQ(on("register", {at("changed.json"), "--from", "2026-05-06", "--note", "new motor"}).status, 0);
    ASSERT_EQ(on("register", {"--remove", "D-MUTE", "--on", "2026-05-01", "--note", "sold"}).status, 0);
    const auto part = [&](const std::string& what) {
        EXPECT_EQ(on("export", {what, "-o", at("part.json")}).status, 0);
        return made::contentOf(at("part.json"));
    };
    const std::string before = part("register") + part("machines");
    ASSERT_EQ(on("export", {"register", "-o", at("own.json")}).status, 0);
    ASSERT_EQ(on("export", {"register", "-o", at("own.csv")}).status, 0);
    for (const char* file : {"own.json", "older.json", "own.csv"}) {
        const Ran ran = on("register", {at(file)});
        EXPECT_EQ(ran.status, 0) << ran.err;
        EXPECT_THAT(ran.out, HasSubstr("A-RACE unchanged\n")) << file;
        EXPECT_THAT(ran.out, Not(HasSubstr(" changed"))) << file;
        EXPECT_EQ(part("register") + part("machines"), before) << file;
    }
}

TEST_F(Site, RegisterPutsOnTheListByHandAndTakesOutOfService) {
    EXPECT_EQ(on("register", {"--by-hand", "B-SOUND", "--note", "operators ask"}).status, 0);
    EXPECT_THAT(jsonOf("round", {"--until", kUntil}).dump(), HasSubstr("operators ask"));
    EXPECT_EQ(on("register", {"--off-hand", "B-SOUND"}).status, 0);
    EXPECT_THAT(jsonOf("round", {"--until", kUntil}).dump(), Not(HasSubstr("operators ask")));
    EXPECT_EQ(on("register", {"--remove", "D-MUTE", "--on", "2026-05-01", "--note", "scrapped"}).status, 0);
    EXPECT_THAT(on("round", {"--until", kUntil}).out, Not(HasSubstr("D-MUTE")));
    EXPECT_EQ(on("register", {"--by-hand", "NO-SUCH"}).status, 3);
}

TEST_F(Site, RegisterWrongUsageIsTwo) {
    made::write(at("good.json"), description("N-1"));
    const std::vector<std::vector<std::string>> wrong{
        {},
        {"--remove", "D-MUTE"},
        {"--remove", "D-MUTE", "--on", "2026-05-01", at("good.json")},
        {"--by-hand", "A-RACE", "--off-hand", "A-RACE"},
        {at("good.json"), "--colour"}};
    for (const auto& more : wrong) {
        const Ran ran = on("register", more);
        EXPECT_EQ(ran.status, 2) << more.size();
        EXPECT_EQ(ran.out, "");
        EXPECT_NE(ran.err, "");
    }
    EXPECT_EQ(run({"register", at("nosuch.fettle"), at("good.json")}).status, 3);
}

TEST_F(Site, CheckIsCleanAndDamageIsSaid) {
    EXPECT_EQ(on("check").out, "clean\n");
    const Ran deep = on("check", {"--deep"});
    EXPECT_EQ(deep.status, 0) << deep.out << deep.err;
    EXPECT_THAT(jsonOf("check", {"--deep"})["problems"], IsEmpty());
    const std::string whole = made::contentOf(fleet_);
    std::string damaged = whole;
    for (std::size_t i = whole.size() / 2; i < whole.size() / 2 + 20000; ++i)
        damaged[i] = char(damaged[i] ^ 0x5a);
    made::write(at("damaged.fettle"), damaged);
    const Ran ran = run({"check", at("damaged.fettle"), "--deep"});
    EXPECT_EQ(ran.status, 1) << ran.err;
    EXPECT_NE(ran.out, "") << "problems, one a line";
    EXPECT_EQ(run({"check", at("damaged.fettle")}).status, 1) << "without --deep as well";
    EXPECT_THAT(ran.out, Not(HasSubstr("clean")));
    EXPECT_EQ(made::contentOf(at("damaged.fettle")), damaged) << "a damaged file is never changed";
    made::write(at("text.fettle"), "this is no fleet file");
    EXPECT_EQ(run({"check", at("text.fettle")}).status, 3);
    EXPECT_EQ(run({"check", at("nosuch.fettle")}).status, 3);
    EXPECT_FALSE(std::filesystem::exists(at("nosuch.fettle")));
    EXPECT_EQ(run({"check"}).status, 2);
}

TEST_F(Site, BackupIsTheSameFleetAndGoesOverNothing) {
    const std::string copy = at("copy.fettle");
    const Ran ran = on("backup", {copy});
    EXPECT_EQ(ran.status, 0) << ran.err;
    EXPECT_EQ(run({"check", copy, "--deep"}).status, 0);
    EXPECT_EQ(run({"round", copy, "--until", kUntil}).out, on("round", {"--until", kUntil}).out);
    const std::string bytes = made::contentOf(copy);
    EXPECT_EQ(on("backup", {copy}).status, 3);
    EXPECT_EQ(made::contentOf(copy), bytes);
    EXPECT_EQ(on("backup", {at("no/such/folder/copy.fettle")}).status, 3);
    EXPECT_EQ(on("backup").status, 2);
}

TEST_F(Site, AnImportThatFindsNothingSaysWhereToLook) {
    std::filesystem::create_directories(at("empty/deeper"));
    const Ran ran = on("import", {at("empty")});
    EXPECT_EQ(ran.status, 0);
    EXPECT_THAT(ran.err, testing::HasSubstr("no recordings found in " + at("empty")));
    EXPECT_THAT(ran.err, testing::HasSubstr("--recursive looks into its folders"));
    const Ran deep = on("import", {at("empty"), "--recursive"});
    EXPECT_THAT(deep.err, testing::Not(testing::HasSubstr("--recursive")));
    const Ran own = on("import", {fleet_});
    EXPECT_EQ(own.status, 1);
    EXPECT_THAT(own.err, testing::HasSubstr("is the fleet file"));
}

}  // namespace
}  // namespace fettle::cli_test
