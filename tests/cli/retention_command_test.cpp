// The command as a user meets it: nothing is changed without --apply, what is changed is told, wrong settings
// are wrong usage.
#include "tests/cli/site_fixture.h"
#include "tests/exchange/schema_check.h"
#include "tests/store/older_form.h"

namespace fettle::cli_test {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

class RetentionCommand : public Site {
  protected:
    void expectFits(const Json& answer) {
        const Json schema = Json::parse(
            made::contentOf(std::string(FETTLE_SOURCE_DIR) + "/resources/schemas/retention.schema.json"));
        const made::SchemaCheck check(schema);
        EXPECT_THAT(check.faultsOf(answer), IsEmpty());
        EXPECT_THAT(check.untoldKeysOf(answer), IsEmpty());
    }
    // The site has three days of recordings: shorter than what is shipped.
    const std::vector<std::string> one_{"--set", "waveforms.all=1", "--set", "waveforms.daily=0"};
    std::vector<std::string> with(std::vector<std::string> more) const {
        more.insert(more.begin(), one_.begin(), one_.end());
        return more;
    }
    // A second one of B-SOUND on the first day, so that one of two goes.
    void sendAnother() {
        const auto sent = intake_test::sent(made::setupOf(made::machineOf(description("B-SOUND")), 9, 1));
        intake_test::Said said;
        said.machine = "B-SOUND";
        said.time = "2026-05-05T01:20:00Z";
        said.scale = sent.scale;
        intake_test::send(at("more"), "another", sent.wav, said);
        const Ran ran = on("import", {at("more")});
        ASSERT_EQ(ran.status, 0) << ran.err;
    }
    std::size_t written() {
        const std::string folder = at("out");
        std::filesystem::remove_all(folder);
        const Ran ran = on("export", {"recordings", "-o", folder});
        EXPECT_EQ(ran.status, 0) << ran.err;
        std::size_t count = 0;
        for (const auto& entry : std::filesystem::recursive_directory_iterator(folder))
            count += entry.path().extension() == ".wav";
        return count;
    }
};

TEST_F(RetentionCommand, ListsAndChangesNothing) {
    const Ran ran = on("retention", with({}));
    EXPECT_EQ(ran.status, 0) << ran.err;
    EXPECT_THAT(ran.out, HasSubstr("waveforms: all for 1 day, then one a week\n"));
    EXPECT_THAT(ran.out, HasSubstr("nothing was changed: --apply carries it out"));
    EXPECT_THAT(ran.out, HasSubstr("a machine's year at the rate of its last 30 days"));
    EXPECT_EQ(written(), 9u);
    EXPECT_THAT(on("retention").out, HasSubstr("waveforms: all for 2 days, then one a day for 90 days"))
        << "what was only listed is not kept";
}

TEST_F(RetentionCommand, TheSiteAsItIsLosesNothing) {
    const Json plan = jsonOf("retention", {});
    expectFits(plan);
    for (const char* kind : {"waveforms", "spectra", "examinations"})
        EXPECT_EQ(plan["plan"]["total"][kind]["goes"]["recordings"], 0) << kind;
    const Json done = jsonOf("retention", {"--apply"});
    expectFits(done);
    EXPECT_EQ(done["done"]["taken"]["waveforms"]["recordings"], 0);
    EXPECT_EQ(written(), 9u);
}

TEST_F(RetentionCommand, AppliedItKeepsItsRulesAndIsClean) {
    sendAnother();
    ASSERT_EQ(written(), 10u);
    const Json done = jsonOf("retention", with({"--apply", "--by", "A. Person"}));
    expectFits(done);
    EXPECT_EQ(done["done"]["taken"]["waveforms"]["recordings"], 1);
    EXPECT_EQ(written(), 9u);
    EXPECT_THAT(on("export", {"recordings", "-o", at("again")}).out,
                HasSubstr("1 whose waveform was thinned by retention, last on 20"));
    EXPECT_EQ(on("check", {"--deep"}).status, 0);
    EXPECT_THAT(on("retention").out, HasSubstr("waveforms: all for 1 day, then one a week\n"));
    const Json again = jsonOf("retention", {"--apply"});
    EXPECT_EQ(again["done"]["taken"]["waveforms"]["recordings"], 0);
}

TEST_F(RetentionCommand, AppliedItListsWhatThePreviewListed) {
    sendAnother();
    const Json before = jsonOf("retention", one_);
    const Json done = jsonOf("retention", with({"--apply"}));
    EXPECT_EQ(done["plan"], before["plan"]);
    EXPECT_EQ(done["done"]["taken"]["waveforms"], before["plan"]["total"]["waveforms"]["goes"]);
    const Ran again = on("retention", {"--apply"});
    EXPECT_THAT(again.out,
                AllOf(HasSubstr("  stays  "), HasSubstr("waveforms of 0 recordings, 0 kB taken away")));
    EXPECT_LT(again.out.find("  stays  "), again.out.find("taken away"));
    EXPECT_THAT(again.out, Not(HasSubstr("nothing was changed")));
}

TEST_F(RetentionCommand, AllThreeAtOnce) {
    sendAnother();
    const Json done = jsonOf("retention", with({"--apply", "--compact"}));
    expectFits(done);
    EXPECT_EQ(done["done"]["taken"]["waveforms"]["recordings"], 1);
    EXPECT_TRUE(done.contains("compacted"));
    EXPECT_THAT(on("retention").out, HasSubstr("waveforms: all for 1 day, then one a week\n"));
}

TEST_F(RetentionCommand, WordsThatWouldDoNothingAreRefused) {
    const std::string before = made::contentOf(fleet_);
    for (const auto& words :
         {with({"--compact"}), {"--by", "A. Person"}, {"--compact", "--by", "A. Person"}}) {
        const Ran ran = on("retention", words);
        EXPECT_EQ(ran.status, 2) << ran.out;
        EXPECT_THAT(ran.err, HasSubstr("--apply"));
        EXPECT_THAT(ran.out, IsEmpty());
    }
    EXPECT_EQ(made::contentOf(fleet_), before);
}

// The fleet file as programs before wrote it: the list needs no table that came since, and upgrades nothing.
TEST_F(RetentionCommand, AFileOfAnOlderFormIsListedAsItIs) {
    for (const int form : {1, 2, 3}) {
        const std::string older = at("form" + std::to_string(form) + ".fettle");
        store_test::copyOfForm(form, fleet_, older);
        const std::string before = made::contentOf(older);
        const Ran ran = run({"retention", older, "--json"});
        ASSERT_EQ(ran.status, 0) << ran.err;
        EXPECT_THAT(ran.err, HasSubstr("made by an older program (file form " + std::to_string(form)));
        EXPECT_EQ(made::contentOf(older), before);
        const Json listed = Json::parse(ran.out)["plan"];
        ASSERT_EQ(run({"retention", older, "--apply"}).status, 0);
        const Json upgraded = Json::parse(run({"retention", older, "--json"}).out)["plan"];
        EXPECT_EQ(listed["total"], upgraded["total"]) << form;
        EXPECT_GT(listed["total"]["waveforms"]["stays"]["recordings"], 0);
    }
}

TEST_F(RetentionCommand, WrongSettingsAreWrongUsage) {
    for (const char* wrong : {"waveforms=3", "waveforms.all=x", "pictures.all=3", "examinations.all=2"}) {
        const Ran ran = on("retention", {"--set", wrong, "--apply"});
        EXPECT_EQ(ran.status, 2) << wrong;
        EXPECT_EQ(ran.errLines().size(), 1u) << wrong;
    }
    EXPECT_EQ(written(), 9u);
}

TEST_F(RetentionCommand, Compacts) {
    const Json done = jsonOf("retention", {"--compact"});
    expectFits(done);
    EXPECT_LE(done["compacted"]["bytes_after"].get<std::int64_t>(),
              done["compacted"]["bytes_before"].get<std::int64_t>());
    EXPECT_EQ(on("check", {"--deep"}).status, 0);
}

TEST_F(RetentionCommand, AFileThatIsNotThereCouldNotRun) {
    const Ran ran = run({"retention", at("none.fettle")});
    EXPECT_EQ(ran.status, 3);
    EXPECT_THAT(ran.out, IsEmpty());
}

}  // namespace
}  // namespace fettle::cli_test
