// The commands that look back, as a user meets them: jobs verified, reports summed up, warning before a
// failure, greasings heard, whose line it is. Source of the statuses: the project's contract (run_program.h).
#include "tests/cli/site_fixture.h"

namespace fettle::cli_test {
namespace {

using testing::HasSubstr;

class LookBack : public Site {
  protected:
    void SetUp() override {
        Site::SetUp();
        ASSERT_EQ(on("round", {"--open", "--until", kUntil}).status, 0);
        ASSERT_EQ(on("jobs", {"--machine", "C-SHAKE", "--finding", "1"}).status, 0);
    }
};

TEST_F(LookBack, AJobThatIsDoneIsAskedWhen) {
    const Ran done = on("jobs", {"--id", "1", "--state", "done"});
    EXPECT_EQ(done.status, 0);
    EXPECT_THAT(done.err, HasSubstr("when was it done?"));
    EXPECT_THAT(on("jobs", {"--verify"}).out, HasSubstr("not known when"));
    EXPECT_EQ(on("jobs", {"--id", "1", "--on", "2026-05-06"}).status, 0);
    EXPECT_THAT(on("event", {"--machine", "C-SHAKE", "--list"}).out, HasSubstr("job 1 done"));
    const Json v = jsonOf("jobs", {"--verify"})["verifications"][0];
    EXPECT_EQ(v["done_on"], "2026-05-06");
    EXPECT_EQ(v["state"], "collecting") << v["words"];  // one recording since, on 7 May
    EXPECT_EQ(v["moments_before"], 1);                  // of 5 May: the day of the work may hold both
    EXPECT_EQ(v["moments_after"], 1);
    EXPECT_EQ(v["outcome"], nullptr);
}

TEST_F(LookBack, TakenForVerifiedTooEarlyIsSaid) {
    ASSERT_EQ(on("jobs", {"--id", "1", "--state", "done", "--on", "2026-05-06"}).status, 0);
    const Ran early = on("jobs", {"--id", "1", "--state", "verified"});
    EXPECT_EQ(early.status, 0);
    EXPECT_THAT(early.err, HasSubstr("before verification is over"));
}

TEST_F(LookBack, AVerifiedJobKeepsItsOutcome) {
    ASSERT_EQ(on("jobs", {"--id", "1", "--state", "done", "--on", "2026-05-04"}).status, 0);
    ASSERT_EQ(on("jobs", {"--id", "1", "--state", "verified"}).status, 0);
    EXPECT_THAT(on("event", {"--machine", "C-SHAKE", "--list"}).out,
                HasSubstr("job 1 verified, not comparable: It was not recorded running"));
}

TEST_F(LookBack, ABadDayChangesNothing) {
    const Ran ran = on("jobs", {"--id", "1", "--state", "done", "--on", "6 May"});
    EXPECT_EQ(ran.status, 3);
    EXPECT_EQ(ran.errLines().size(), 1u);
    EXPECT_THAT(on("jobs").out, HasSubstr("drafted"));
    EXPECT_EQ(on("jobs", {"--verify", "--state", "done", "--id", "1"}).status, 2);
    EXPECT_EQ(on("jobs", {"--verify", "--id", "7"}).status, 3);
}

TEST_F(LookBack, ReportsAreSummedUp) {
    EXPECT_THAT(on("feedback", {"--summary"}).out, HasSubstr("no finding was reported on yet"));
    const std::vector<std::string> report{
        "--machine", "A-RACE",    "--fault", "bearing_inner_race",  "--at", "driver DE",
        "--outcome", "confirmed", "--time",  "2026-05-12T08:00:00Z"};
    EXPECT_EQ(on("feedback", report).status, 0);
    const Json all = jsonOf("feedback", {"--summary"});
    EXPECT_EQ(all["site"]["confirmed"], 1);
    EXPECT_EQ(all["site"]["confirmed_of_opened"]["rate"], nullptr);  // one answer gives no rate
    EXPECT_EQ(all["list"]["confirmed"], 1);
    EXPECT_EQ(all["list"]["promised_chance_share"], 0.1);
    EXPECT_EQ(on("feedback", {"--machine", "A-RACE"}).status, 2);
}

TEST_F(LookBack, TheDaysOfWarningBeforeADay) {
    const Json all = jsonOf("round", {"--first-listed", "C-SHAKE", "--before", "2026-05-08"});
    ASSERT_EQ(all["failures"].size(), 1u);
    EXPECT_EQ(all["failures"][0]["day"], "2026-05-08");
    EXPECT_GE(all["failures"][0]["days_before"], 1);
    EXPECT_EQ(on("round", {"--first-listed", "NONE"}).status, 3);
}

TEST_F(LookBack, WhoseLineIsAskedOfTheFleet) {
    // The unbalanced one shakes at its shaft's 24.7 Hz; nobody has stopped.
    const Json all = jsonOf("whose-line", {"--machine", "C-SHAKE", "--hz", "24.7"});
    EXPECT_EQ(all["recordings"], 3);
    EXPECT_EQ(all["there"], 3);
    for (const Json& one : all["machines"])
        EXPECT_EQ(one["stops"], 0);
    EXPECT_EQ(on("whose-line", {"--machine", "C-SHAKE", "--hz", "99999"}).status, 3);
}

}  // namespace
}  // namespace fettle::cli_test
