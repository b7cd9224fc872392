// `fettle-cli phantoms FLEET`: the false-alarm curve on what a fleet file keeps raw.
// Source of the bound: Markov's inequality for e-values (Vovk and Wang, Ann. Statist. 49 (2021) 1736-1754).
#include "tests/cli/site_fixture.h"

namespace fettle {
namespace {

using cli_test::run;
using cli_test::Site;
using ::testing::HasSubstr;

TEST_F(Site, PhantomsOfAFleetAreWeighedOnEveryMachineThatRan) {
    const Json json = jsonOf("phantoms", {"--per-recording", "10", "--per-machine", "2"});
    ASSERT_EQ(json["curves"].size(), 4u);
    for (const Json& curve : json["curves"]) {
        EXPECT_EQ(curve["recordings"], 3) << "one cluster a machine; D-MUTE never sent one";
        EXPECT_LE(curve["phantoms"], 60);
        EXPECT_GT(curve["phantoms"], 30);
    }
}

TEST_F(Site, CurvesFallAndMeetTheSharesOfTheTable) {
    const Json json = jsonOf("phantoms", {"--per-recording", "50"});
    for (const Json& curve : json["curves"]) {
        const auto& fall = curve["share_at_least_dban"];
        ASSERT_EQ(fall.size(), 41u);
        for (std::size_t w = 1; w < fall.size(); ++w)
            EXPECT_LE(fall[w], fall[w - 1]);
        for (const Json& share : curve["shares"])
            EXPECT_EQ(fall[std::size_t(share["at_dban"].get<double>())], share["share"]);
    }
    EXPECT_THAT(on("phantoms", {"--per-recording", "5", "--curve"}).out, HasSubstr("outer-race defect"));
}

TEST_F(Site, PhantomsSayWhatTheyWant) {
    EXPECT_EQ(run({"phantoms", recordings(), recordings()}).status, 2);
    EXPECT_EQ(run({"phantoms", at("nosuch.fettle")}).status, 3);
}

}  // namespace
}  // namespace fettle
