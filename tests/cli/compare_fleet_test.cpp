// `fettle-cli compare DIR --fleet FLEET`: what a person would have been shown beside what was put in. Truth:
// the scenario's own stories.
#include "tests/cli/site_fixture.h"

namespace fettle::cli_test {
namespace {

using testing::HasSubstr;
using testing::Not;

TEST(CompareFleet, TheListIsHeldAgainstTheStories) {
    const ScratchFolder folder;
    const std::string sample = folder / "sample", fleet = folder / "a.fettle";
    const std::string scenario = std::string(FETTLE_SOURCE_DIR) + "/sample_fleet";
    for (const char* tag : {"KL-BL-01", "CR-DF-02"}) {
        const std::string one = folder / std::string(tag);
        ASSERT_EQ(run({"sample", one, "--machine", tag, "--weeks", "1", "--scenario", scenario}).status, 0);
        const bool first = !std::filesystem::exists(fleet);
        ASSERT_EQ(run({"new", fleet}).status, first ? 0 : 3);
        ASSERT_EQ(run({"register", fleet, one + "/machines/" + tag + ".json"}).status, 0);
        const Ran in = run({"import", fleet, one + "/recordings", "--recursive"});
        ASSERT_LE(in.status, 1) << in.err;
        const Ran ran = run({"compare", one, "--fleet", fleet});
        EXPECT_EQ(ran.status, 0) << ran.err;
        EXPECT_THAT(ran.out, HasSubstr(tag));
        EXPECT_THAT(ran.out, HasSubstr("false findings: 0"));
    }
    const Ran faulty = run({"compare", folder / "KL-BL-01", "--fleet", fleet});
    EXPECT_THAT(faulty.out, HasSubstr("hit          story  bearing_inner_race @ driver DE"));
    EXPECT_THAT(faulty.out, Not(HasSubstr("CR-DF-02"))) << "no story is told of a machine of another folder";
    EXPECT_THAT(run({"compare", folder / "CR-DF-02", "--fleet", fleet}).out, HasSubstr("quiet"));
    EXPECT_EQ(run({"compare", folder / "KL-BL-01", "--fleet", folder / "nosuch.fettle"}).status, 3);
    EXPECT_EQ(run({"compare", folder / "KL-BL-01", "--fleet", fleet, "--days", "3"}).status, 2);
    const Ran weeks = run({"compare", folder / "KL-BL-01", "--fleet", fleet, "--every-week"});
    EXPECT_EQ(weeks.status, 0) << weeks.err;
    EXPECT_THAT(weeks.out, HasSubstr("1 machine-weeks"));
}

}  // namespace
}  // namespace fettle::cli_test
