// What months tell: warning before a failure, what a greasing did, whose line it is, how the list did. Each
// on a history made by hand and worked out on paper.
#include "core/fleet/grease.h"
#include "core/fleet/neighbours.h"
#include "core/fleet/reliability.h"
#include "core/fleet/round_desk.h"
#include "core/fleet/time_machine.h"
#include "tests/fleet/made_history.h"

namespace fettle::fleet_test {
namespace {

using testing::HasSubstr;

class History : public MadeHistory {
  protected:
    static Heard spalled() {
        Heard heard;
        heard.raceDban = 40;
        return heard;
    }
};

TEST_F(History, TheFirstDayOnTheListAndTheDaysOfWarning) {
    hearDays("FN-01", "2026-03-02", "2026-04-07", {});
    hearDays("FN-01", "2026-04-08", "2026-04-30", spalled());
    hearDays("FN-02", "2026-03-02", "2026-04-30", {});
    tell("FN-01", "2026-05-01T09:00:00Z", "part", "driver DE", "new bearing");
    const auto warnings = warningsOf(*fleet_, "FN-01", "");
    ASSERT_TRUE(warnings) << warnings.error().sentence();
    ASSERT_EQ(warnings->size(), 1u);
    const FirstListed& result = warnings->front().result;
    ASSERT_TRUE(result.first);
    // One recording of seven at 40 decibans, of eight hypotheses: 40 - 8.5 - 9 = 22, of two machines 13 are
    // asked.
    EXPECT_EQ(dateOfDay(result.first->day), "2026-04-08");
    EXPECT_EQ(result.daysBefore, 23);
    EXPECT_EQ(result.roundsListed, result.roundsAsked);
    EXPECT_THAT(result.first->words, HasSubstr("by evidence"));
}

TEST_F(History, WeeksOfWhichVerdictsWereThinnedAreCounted) {
    hearDays("FN-01", "2026-03-02", "2026-04-30", {});
    const auto untouched = warningsOf(*fleet_, "FN-01", "2026-04-05");
    ASSERT_TRUE(untouched) << untouched.error().sentence();
    EXPECT_EQ(untouched->front().weeksThinned, 0);
    // The tenth day, 11 March: of the weeks back from 4 April that of 8 to 14 March.
    const auto thinned = fleet_->together([&]() -> Status {
        const auto run = fleet_->retention().beginRun("test", "one");
        if (!run) return fail(run.error());
        const std::vector<Thinning> list{{10, {true, true, true}}};
        return fleet_->retention().thin(*run, list);
    });
    ASSERT_TRUE(thinned) << thinned.error().sentence();
    const auto asked = warningsOf(*fleet_, "FN-01", "2026-04-05");
    ASSERT_TRUE(asked) << asked.error().sentence();
    EXPECT_EQ(asked->front().weeksAsked, 5);
    EXPECT_EQ(asked->front().weeksThinned, 1);
}

TEST_F(History, AMachineThatWasNeverListedHadNoWarning) {
    hearDays("FN-01", "2026-03-02", "2026-04-07", {});
    const auto asked = warningsOf(*fleet_, "FN-01", "2026-04-05");
    ASSERT_TRUE(asked);
    EXPECT_FALSE(asked->front().result.first);
    EXPECT_FALSE(warningsOf(*fleet_, "FN-01", ""));  // no failure to ask before
}

TEST_F(History, AGreasingThatQuietsADryBearing) {
    Heard dry;
    dry.highBandG = 0.3;
    hearDays("FN-01", "2026-03-02", "2026-03-31", dry);
    hearDays("FN-01", "2026-04-02", "2026-04-30", {});
    tell("FN-01", "2026-04-01T08:00:00Z", "greasing", "driver", "30 g");
    const auto heard = greasingsHeard(*fleet_, "FN-01");
    ASSERT_TRUE(heard);
    ASSERT_EQ(heard->size(), 1u);
    EXPECT_EQ(heard->front().where, "P x");
    EXPECT_EQ(heard->front().witness.course, GreaseCourse::WasDry) << heard->front().witness.words;
}

TEST_F(History, TheLineOfTheFanNextDoor) {
    Heard with, without, stopped;
    with.lineHz = 31.3;
    stopped.running = "stopped";
    // FN-02 stands two days of every six.
    std::string date = "2026-03-02";
    for (int i = 0; i < 48; ++i, date = datePlus(date, 1).value()) {
        const bool stands = i % 6 >= 4;
        hear("FN-01", date, stands ? without : with);
        hear("FN-02", date, stands ? stopped : without);
    }
    const auto found = whoseLine(*fleet_, {"FN-01", 31.3, "", 182, false});
    ASSERT_TRUE(found) << found.error().sentence();
    EXPECT_EQ(found->there, 32u);
    ASSERT_EQ(found->machines.size(), 2u);
    EXPECT_EQ(found->machines[0].words, "leaves with FN-02 in 8 of 8 stops");
    EXPECT_LT(found->machines[0].chance, 1e-3);  // 2 of 16 choose 8
    EXPECT_EQ(found->machines[1].words, "no stop of the machine itself tells");
}

TEST_F(History, TheListBesideItsPromise) {
    hearDays("FN-01", "2026-04-01", "2026-04-30", spalled());
    hearDays("FN-02", "2026-04-01", "2026-04-30", {});
    const auto round = openRound(*fleet_, "2026-04-30");
    ASSERT_TRUE(round);
    const auto report = [&](const std::string& tag, const std::string& outcome) {
        ASSERT_TRUE(fleet_->log().addFeedback(
            {0, tag, "bearing_outer_race", "driver DE", outcome, "", "", "t", at("2026-05-04T08:00:00Z")}));
    };
    ASSERT_TRUE(markOpened(*fleet_, round->entry.id, "FN-02"));
    report("FN-01", "confirmed");
    const auto record = siteReliability(*fleet_);
    ASSERT_TRUE(record);
    EXPECT_EQ(record->list.listings, 1u);
    EXPECT_EQ(record->list.confirmed, 1u);
    EXPECT_EQ(record->list.meanNotFound, 0);
    EXPECT_EQ(record->list.sampleMachines, 1u);
    EXPECT_EQ(record->list.sampleHadSomething, 0u);
    report("FN-02", "confirmed");  // the list had missed it
    EXPECT_EQ(siteReliability(*fleet_)->list.sampleHadSomething, 1u);
    EXPECT_EQ(siteRecord(*fleet_, "bearing_outer_race")->confirmed, 2u);
    EXPECT_EQ(siteRecord(*fleet_, "unbalance")->opened, 0u);
}

}  // namespace
}  // namespace fettle::fleet_test
