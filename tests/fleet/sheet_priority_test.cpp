// The priority of a job and the findings that stand beside the one a sheet is about. Truth: two faults that
// the simulator put into one machine. Numbers: resources/tables/job_dates.json (common practice, no source).
#include "core/fleet/job_desk.h"
#include "core/fleet/sheet_content.h"
#include "tests/fleet/small_site.h"

namespace fettle::fleet_test {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

class SheetPriority : public SmallSite {
  protected:
    // `more`: keys of the description before the driver.
    void describe(const std::string& tag, const std::string& more) {
        std::string text = description(tag);
        text.insert(text.find("\"driver\":"), more);
        ASSERT_TRUE(fleet_->machines().put(text, tag));
    }
    SheetContent sheetOf(const std::string& tag, std::size_t finding = 0) {
        auto sheet = sheetContent(*fleet_, {tag, finding, {}, ""});
        EXPECT_TRUE(sheet) << (sheet ? "" : sheet.error().sentence());
        return sheet ? std::move(*sheet) : SheetContent{};
    }
    // A raced bearing and an unbalance in one machine.
    void sendBoth(const std::string& tag) {
        for (int day = 5; day <= 7; ++day) {
            auto setup = made::setupOf(made::machineOf(description(tag)), std::uint64_t(day), 4);
            setup = made::with(setup, "bearing_inner_race", "driver DE", 0.8);
            setup = made::with(setup, "unbalance", "driver", 1);
            const auto sent = intake_test::sent(setup);
            intake_test::Said said;
            said.machine = tag;
            said.time = "2026-05-0" + std::to_string(day) + "T08:20:00Z";
            said.scale = sent.scale;
            intake_test::send(folder_ / "both", tag + std::to_string(day), sent.wav, said);
        }
        ImportOptions options;
        options.now = intake_test::kNow;
        const auto report = import(*fleet_, RealFileSystem(), {folder_ / "both"}, options);
        ASSERT_TRUE(report && report->stored == 3);
    }
};

TEST_F(SheetPriority, ADefaultIsNotToldAsGiven) {
    opened();
    EXPECT_EQ(sheetOf("C-SHAKE").urgency, "act");
    EXPECT_EQ(sheetOf("C-SHAKE").priority, "1 of 4 (1 is first; by urgency)");
}

TEST_F(SheetPriority, FollowsCriticalityAndStandbyWhereTheyAreGiven) {
    describe("C-SHAKE", R"("criticality": "C", "standby": true, )");
    opened();
    EXPECT_EQ(sheetOf("C-SHAKE").priority, "3 of 4 (1 is first; by urgency, criticality C, standby there)");
}

TEST_F(SheetPriority, AMachineWithoutStandbyStaysWhereItIs) {
    describe("C-SHAKE", R"("criticality": "A", "standby": false, )");
    opened();
    EXPECT_EQ(sheetOf("C-SHAKE").priority, "1 of 4 (1 is first; by urgency, criticality A, no standby)");
}

TEST_F(SheetPriority, TheOtherFindingsStandOnTheSheetWithUrgencyAndDate) {
    sendBoth("D-MUTE");
    const KeptRound kept = opened();
    const RoundMachine& both = machineIn(kept.list, "D-MUTE");
    ASSERT_GE(both.findings.size(), 2u);
    for (std::size_t number = 1; number <= both.findings.size(); ++number) {
        const SheetContent sheet = sheetOf("D-MUTE", number);
        ASSERT_EQ(sheet.otherFindings.size(), both.findings.size() - 1);
        std::size_t other = 0;
        for (std::size_t i = 1; i <= both.findings.size(); ++i) {
            if (i == number) continue;
            const std::string& words = sheet.otherFindings[other++];
            EXPECT_THAT(words, StartsWith(std::to_string(i) + ". "));
            EXPECT_THAT(words, HasSubstr(": " + both.findings[i - 1].finding.urgency));
            EXPECT_THAT(words, HasSubstr("2026")) << "not without a day";
        }
    }
}

// Of a bearing in a developed stage and a level in zone D the level is due first: a job for the bearing takes
// the bearing's day (job_dates.json).
TEST_F(SheetPriority, AJobForOneFindingIsDueOnThatFindingsDay) {
    sendBoth("D-MUTE");
    opened();
    const auto draft = jobDraft(*fleet_, "D-MUTE");
    ASSERT_TRUE(draft) << draft.error().sentence();
    ASSERT_GE(draft->findings.size(), 2u);
    std::size_t later = 0;
    std::string soonest = "9";
    for (std::size_t number = 1; number <= draft->findings.size(); ++number) {
        const SheetContent sheet = sheetOf("D-MUTE", number);
        const auto job = draftedJob(*draft, {number});
        ASSERT_TRUE(job);
        EXPECT_EQ(job->runUntil, sheet.ownDue);
        if (!sheet.ownDue.empty()) soonest = std::min(soonest, sheet.ownDue);
        later += sheet.ownDue > sheet.dates.at(1).date;
    }
    EXPECT_GE(later, 1u) << "else nothing was tried";
    EXPECT_EQ(draftedJob(*draft, {1, 2})->runUntil, soonest);
}

}  // namespace
}  // namespace fettle::fleet_test
