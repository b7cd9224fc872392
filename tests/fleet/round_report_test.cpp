// The round for those who plan the work, over the small site whose truth is known: what asks for work in its
// order and in the words of the sheets, what does not, who was not seen and whose matter that is.
#include "core/fleet/round_report.h"

#include "core/fleet/sheet_content.h"
#include "tests/fleet/small_site.h"

namespace fettle::fleet_test {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

class RoundReportTest : public SmallSite {
  protected:
    RoundReport report(const std::string& today = "2026-05-12") {
        auto made = roundReport(*fleet_, {{}, today});
        EXPECT_TRUE(made) << (made ? "" : made.error().sentence());
        return made ? std::move(*made) : RoundReport{};
    }
    void decideOn(const std::string& machine, DecisionKind kind, const std::string& reason = "",
                  const std::string& to = "") {
        const auto round = fleet_->rounds().openOne();
        ASSERT_TRUE(round && *round);
        ASSERT_TRUE(decide(*fleet_, (*round)->id, {0, machine, reason, to, "me", kind, Instant{}}));
    }
    static std::vector<std::string> tags(const std::vector<ReportJob>& work) {
        std::vector<std::string> all;
        for (const ReportJob& job : work)
            all.push_back(job.tag);
        return all;
    }
};

TEST_F(RoundReportTest, WorkStandsInItsOrderInTheWordsOfTheSheets) {
    opened();
    const RoundReport told = report();
    ASSERT_THAT(tags(told.work), ElementsAre("C-SHAKE", "A-RACE"));  // act before plan
    EXPECT_EQ(told.act, 1u);
    EXPECT_EQ(told.plan, 1u);
    for (const ReportJob& job : told.work) {
        const auto sheet = sheetContent(*fleet_, {job.tag, 1, {}, "2026-05-12"});
        ASSERT_TRUE(sheet);
        EXPECT_EQ(job.firstLine, sheet->firstLine);
        EXPECT_EQ(job.doBy, sheet->dates.at(1).date);
        EXPECT_EQ(job.stopAtOnceIf, sheet->stopAtOnceIf);
        EXPECT_EQ(job.howBad, sheet->howBad);
        EXPECT_EQ(job.decided, "not decided yet");
    }
    EXPECT_TRUE(told.work[1].firm);  // lines of a bearing, weighed and graded
    EXPECT_FALSE(told.work[0].firm);
    EXPECT_EQ(told.work[0].place, 1);
    EXPECT_THAT(told.state, HasSubstr("still open: 0 of 2 listed decided"));
}

TEST_F(RoundReportTest, WhatTheEngineerDoesNotBelieveAsksForNoWork) {
    opened();
    decideOn("A-RACE", DecisionKind::Dispute, "the bearing was changed");
    decideOn("C-SHAKE", DecisionKind::Defer, "stop in June", "2026-06-01");
    RoundReport told = report();
    EXPECT_THAT(told.work, IsEmpty());
    ASSERT_EQ(told.disputed.size(), 1u);
    EXPECT_EQ(told.disputed[0].words, "disputed: the bearing was changed");
    ASSERT_EQ(told.deferred.size(), 1u);
    EXPECT_EQ(told.deferred[0].words, "put off to 1 June 2026: stop in June");
    decideOn("A-RACE", DecisionKind::Accept);
    told = report();
    ASSERT_THAT(tags(told.work), ElementsAre("A-RACE"));
    EXPECT_EQ(told.work[0].decided, "accepted");
}

// That it is the first round stands in the head, not in every row.
TEST_F(RoundReportTest, TheFirstRoundIsSaidOnce) {
    opened();
    const RoundReport told = report();
    for (const ReportJob& job : told.work) {
        EXPECT_THAT(job.changed, testing::StartsWith("Level "));
        EXPECT_THAT(job.changed, testing::Not(HasSubstr("irst round")));
    }
    EXPECT_FALSE(told.changes);
}

// Hours and heads of the sheets, summed up by hand.
TEST_F(RoundReportTest, APlannerIsToldPeopleAndHoursAndTheirSums) {
    opened();
    const RoundReport told = report();
    double low = 0, high = 0;
    for (const ReportJob& job : told.work) {
        double jobLow = 0;
        for (std::size_t i = 1; i <= 1 + job.moreFindings; ++i) {
            const auto sheet = sheetContent(*fleet_, {job.tag, i, {}, "2026-05-12"});
            ASSERT_TRUE(sheet);
            if (sheet->urgency != "act" && sheet->urgency != "plan") continue;
            jobLow += *sheet->need.heads * *sheet->need.hoursLow;
            high += *sheet->need.heads * *sheet->need.hoursHigh;
        }
        EXPECT_EQ(job.effort.personHoursLow, jobLow) << job.tag;
        EXPECT_NE(job.effort.trades, "");
        low += jobLow;
    }
    ASSERT_EQ(told.byUrgency.size(), 2u);
    EXPECT_EQ(told.byUrgency[0].of, "act");
    EXPECT_THAT(told.byUrgency[0].places, ElementsAre(1));
    EXPECT_EQ(told.byUrgency[0].personHoursLow + told.byUrgency[1].personHoursLow, low);
    EXPECT_EQ(told.byUrgency[0].personHoursHigh + told.byUrgency[1].personHoursHigh, high);
    ASSERT_EQ(told.byArea.size(), 1u);
    EXPECT_THAT(told.byArea[0].places, ElementsAre(1, 2));
    EXPECT_EQ(told.byArea[0].firstDay, std::min(told.work[0].doBy, told.work[1].doBy));
}

TEST(ReportEffort, AddsUpAndTakesTheGravestStandstill) {
    ReportEffort effort;
    addEffort({"running, guards fitted", "electrician", 1, 1, 2, {}, {}, "", "", ""}, effort);
    EXPECT_EQ(effort.standstill, "running");
    addEffort({"running; stopped for the feet", "electrician", 2, 3, 4, {}, {}, "", "", ""}, effort);
    EXPECT_EQ(effort.standstill, "partly");
    addEffort({"stopped, isolated", "fitter", {}, {}, {}, {}, {}, "", "", ""}, effort);
    EXPECT_EQ(effort.standstill, "stopped");
    EXPECT_EQ(effort.trades, "electrician; fitter");
    EXPECT_EQ(effort.heads, 2);
    EXPECT_EQ(effort.hoursLow, 4);
    EXPECT_EQ(effort.personHoursHigh, 2 + 8);
    EXPECT_EQ(effort.findings, 3u);
}

TEST(ReportEffort, NamesEachTradeOnce) {
    ReportEffort effort;
    addEffort({"stopped", "mechanical fitter", 1, 1, 2, {}, {}, "", "", ""}, effort);
    addEffort({"stopped", "qualified electrician; mechanical fitter", 1, 1, 2, {}, {}, "", "", ""}, effort);
    EXPECT_EQ(effort.trades, "mechanical fitter; qualified electrician");
}

TEST_F(RoundReportTest, TheUnseenStandWithTheirReasonAndWhoseMatterItIs) {
    opened();
    const RoundReport told = report();
    ASSERT_EQ(told.notSeen.size(), 2u);
    for (const ReportUnseen& one : told.notSeen) {
        EXPECT_EQ(one.whose, "whoever keeps the sensors");
        EXPECT_NE(one.words, "");
        EXPECT_FALSE(one.answered);
    }
    EXPECT_THAT(told.leaveWords, HasSubstr("1 machine is on leave"));
}

TEST_F(RoundReportTest, AnOldRoundSaysSoAndItsDatesHavePassed) {
    opened();
    const RoundReport told = report("2026-11-26");
    EXPECT_THAT(told.ageNote, HasSubstr("200 days old"));
    EXPECT_TRUE(told.work.at(0).overdue);
    EXPECT_EQ(report("2026-05-12").ageNote, "");
}

TEST_F(RoundReportTest, WhatCouldNotBeSeenIsCountedOverTheListedMachines) {
    opened();
    const RoundReport told = report();
    ASSERT_FALSE(told.blind.empty());
    for (const ReportBlind& one : told.blind) {
        EXPECT_GE(one.blind + one.somewhere, 1u);
        EXPECT_LE(one.blind + one.somewhere, one.of);
        EXPECT_LE(one.of, 2u);
        EXPECT_NE(one.cure, "") << one.fault;
    }
    // One radial sensor without flux: an uneven air gap shows nowhere, and flux would cure it.
    const auto gap = std::find_if(told.blind.begin(), told.blind.end(),
                                  [](const ReportBlind& one) { return one.fault == "air_gap"; });
    ASSERT_NE(gap, told.blind.end());
    EXPECT_EQ(gap->blind, 2u);
    EXPECT_EQ(gap->somewhere, 0u);
    EXPECT_THAT(gap->cure, HasSubstr("flux"));
    EXPECT_FALSE(told.limits.empty());
    EXPECT_THAT(told.promise, HasSubstr("at most 1 in 10"));
}

TEST_F(RoundReportTest, WithoutARoundItIsADraftOfTheWeek) {
    const RoundReport told = report();
    EXPECT_THAT(told.state, HasSubstr("a draft"));
    EXPECT_THAT(tags(told.work), ElementsAre("C-SHAKE", "A-RACE"));
    EXPECT_FALSE(told.changes);
}

TEST_F(RoundReportTest, ChangesAreThoseSinceTheRoundBefore) {
    const auto first = openRound(*fleet_, "2026-04-12");
    ASSERT_TRUE(first) << first.error().sentence();
    for (const RoundMachine& machine : first->list.machines) {
        const bool unseen = machine.urgency == "unseen";
        EXPECT_TRUE(!unseen || answerUnseen(*fleet_, first->entry.id, machine.tag, "silent", "me"));
        EXPECT_TRUE(!machine.inSample || markOpened(*fleet_, first->entry.id, machine.tag));
    }
    ASSERT_TRUE(acceptLeave(*fleet_, first->entry.id, "me"));
    ASSERT_TRUE(closeRound(*fleet_, first->entry.id, "me"));
    const KeptRound second = opened();
    const RoundReport told = report();
    ASSERT_TRUE(told.changes);
    EXPECT_EQ(told.changes->beforeUntil, "2026-04-12");
    EXPECT_EQ(told.changes->count(RoundMove::CameOn), 2u);  // A-RACE and C-SHAKE were silent in April
    const auto both = compareKept(*fleet_, first->entry.id, second.entry.id);
    ASSERT_TRUE(both);
    EXPECT_EQ(toJson(*both), toJson(*told.changes));
}

TEST_F(RoundReportTest, TheCsvHasARowForEachMachineWithWork) {
    opened();
    const std::string csv = reportCsv(report());
    EXPECT_EQ(std::count(csv.begin(), csv.end(), '\n'), 3);
    EXPECT_THAT(csv, HasSubstr("\"1\",\"C-SHAKE\""));
    EXPECT_THAT(csv, HasSubstr("\"2\",\"A-RACE\""));
    EXPECT_THAT(csv, HasSubstr("\"person_hours_low\",\"person_hours_high\"\r\n"));
}

}  // namespace
}  // namespace fettle::fleet_test
