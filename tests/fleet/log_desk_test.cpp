// Jobs, the planner's report, the history of a machine and tables of events, on months made by hand.
#include "core/fleet/event_table.h"
#include "core/fleet/history.h"
#include "core/fleet/job_desk.h"
#include "core/fleet/planner_return.h"
#include "core/fleet/reliability.h"
#include "core/store/database.h"
#include "core/store/day.h"
#include "tests/fleet/made_history.h"

namespace fettle::fleet_test {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

class LogDeskTest : public MadeHistory {
  protected:
    Job kept(const std::string& tag, const std::string& stop = "", const std::string& state = "issued") {
        Job job;
        job.machine = tag;
        job.findings = {"bearing_outer_race @ driver DE or NDE"};
        job.state = state;
        job.urgency = "plan";
        job.plannedStop = stop;
        return keepDraft(*fleet_, job, {}).value();
    }
};

TEST_F(LogDeskTest, DatesAndUrgencyOfAJobAreTheSoonestAndTheGravest) {
    const JobDraft draft{"FN-01",
                         "fan",
                         "2026-05-10",
                         {{"unbalance @ driven", "", "", "watch", "2026-06-01", "2026-07-01", "", {}},
                          {"bearing_outer_race @ driver DE", "", "", "act", "", "2026-06-01", "", {}}}};
    const auto job = draftedJob(draft, {1, 2});
    ASSERT_TRUE(job) << job.error().sentence();
    EXPECT_EQ(job->urgency, "act");
    EXPECT_EQ(job->orderPartsBy, "2026-06-01");
    EXPECT_EQ(job->runUntil, "2026-06-01");
    EXPECT_EQ(job->findings.size(), 2u);
    EXPECT_EQ(draftedJob(draft, {1})->urgency, "watch");
    EXPECT_FALSE(draftedJob(draft, {3}));
    EXPECT_FALSE(draftedJob({"FN-02", "", "", {}}, {1}));
}

TEST_F(LogDeskTest, AJobKeepsEveryStepAndWorkDoneBeginsItsVerification) {
    const Job job = kept("FN-01");
    JobMove step;
    step.state = "scheduled";
    step.plannedStop = "2026-03-10";
    step.text = "agreed with the kiln";
    ASSERT_TRUE(moveJob(*fleet_, job.id, step));
    JobMove done;
    done.state = "done";
    done.on = "2026-03-10";
    done.kind = "part";
    done.text = "bearing 6316 C3 fitted";
    ASSERT_TRUE(moveJob(*fleet_, job.id, done));
    const auto detail = jobDetail(*fleet_, job.id);
    ASSERT_TRUE(detail) << detail.error().sentence();
    ASSERT_EQ(detail->steps.size(), 3u);
    EXPECT_THAT(detail->steps[1].text, HasSubstr("agreed with the kiln; planned stop 2026-03-10"));
    ASSERT_TRUE(detail->verification && detail->verification->done);
    EXPECT_EQ(detail->verification->doneOn, "2026-03-10");
    EXPECT_THAT(detail->verification->done->words, HasSubstr("part: job"));
    const auto events = fleet_->log().events("FN-01").value();
    ASSERT_EQ(events.size(), 1u);
    EXPECT_EQ(events[0].kind, "part");
    JobMove back;
    back.state = "drafted";
    EXPECT_THAT(moveJob(*fleet_, job.id, back).error().sentence(), HasSubstr("cannot be drafted again"));
    done.on = "some day";
    EXPECT_FALSE(moveJob(*fleet_, job.id, done));
    done.on = "2026-03-09";
    ASSERT_TRUE(moveJob(*fleet_, job.id, done)) << "another day of the same work";
    EXPECT_EQ(jobDetail(*fleet_, job.id)->verification->doneOn, "2026-03-09");
    JobMove close;
    close.state = "closed";
    ASSERT_TRUE(moveJob(*fleet_, job.id, close));
    EXPECT_THAT(moveJob(*fleet_, job.id, done).error().sentence(),
                HasSubstr("is closed and cannot be done again"));
    EXPECT_EQ(fleet_->log().events("FN-01")->size(), 2u) << "no work is told twice";
}

TEST_F(LogDeskTest, WorkDoneAndItsStepAreKeptTogetherOrNotAtAll) {
    const Job job = kept("FN-01");
    JobMove done;
    done.state = "finished";  // no state of a job
    done.on = "2026-03-10";
    EXPECT_FALSE(moveJob(*fleet_, job.id, done));
    EXPECT_TRUE(fleet_->log().events("FN-01")->empty());
    EXPECT_EQ(fleet_->jobs().get(job.id)->state, "issued");
    done.state = "done";
    ASSERT_TRUE(moveJob(*fleet_, job.id, done));
    EXPECT_EQ(fleet_->log().events("FN-01")->size(), 1u);
    EXPECT_EQ(fleet_->jobs().get(job.id)->state, "done");
}

TEST_F(LogDeskTest, AReportWithoutItsPlaceInTheHistoryIsNotKept) {
    PlannerReturn half;
    half.machine = "FN-01";
    half.finding = {"bearing_outer_race", "driver DE"};
    half.outcome = "confirmed";
    half.on = dateIn("UTC", nowUtc()).value();
    auto other = Database::open(folder_ / "site.fettle", Access::ReadWrite).value();
    ASSERT_TRUE(
        other->script("CREATE TRIGGER no_more BEFORE INSERT ON event BEGIN SELECT RAISE(ABORT, 'no'); END"));
    EXPECT_FALSE(keepReturn(*fleet_, half, {}));
    EXPECT_TRUE(fleet_->log().feedback()->empty());
    ASSERT_TRUE(other->script("DROP TRIGGER no_more"));
    ASSERT_TRUE(keepReturn(*fleet_, half, {}));
    EXPECT_EQ(fleet_->log().feedback()->size(), 1u);
}

TEST_F(LogDeskTest, ARevisionReplacesAndTheReplacedJobNoLongerMoves) {
    const Job job = kept("FN-01");
    JobMove why;
    why.text = "coupling as well";
    const auto next = reviseJob(*fleet_, job.id, why);
    ASSERT_TRUE(next) << next.error().sentence();
    EXPECT_EQ(next->revision, 2);
    EXPECT_EQ(next->state, "drafted");
    EXPECT_EQ(next->replaces, job.id);
    JobMove move;
    move.state = "closed";
    EXPECT_THAT(moveJob(*fleet_, job.id, move).error().sentence(), HasSubstr("was replaced by job"));
    EXPECT_FALSE(reviseJob(*fleet_, job.id, why));
}

TEST_F(LogDeskTest, OverdueJobsComeFirstAndReplacedOnesLast) {
    const Job late = kept("FN-01", "2026-05-01"), soon = kept("FN-02", "2026-06-01");
    const Job over = kept("FN-01", "2026-04-01", "closed"), old = kept("FN-02", "2026-04-01");
    const Job next = reviseJob(*fleet_, old.id, {}).value();
    const auto rows = jobRows(*fleet_, "", "2026-05-10");
    ASSERT_TRUE(rows) << rows.error().sentence();
    std::vector<std::int64_t> order;
    for (const JobRow& row : *rows)
        order.push_back(row.job.id);
    EXPECT_THAT(order, ElementsAre(next.id, late.id, soon.id, over.id, old.id));
    EXPECT_TRUE((*rows)[0].overdue && (*rows)[1].overdue);
    EXPECT_FALSE((*rows)[2].overdue || (*rows)[3].overdue || (*rows)[4].overdue);
    EXPECT_EQ((*rows)[4].replacedBy, next.id);
    EXPECT_EQ(jobRows(*fleet_, "FN-01", "2026-05-10")->size(), 2u);
}

TEST_F(LogDeskTest, TheReturnHalfCountsAtOnceAndStandsInTheHistoryWithItsPhotographs) {
    const Job job = kept("FN-01");
    PlannerReturn half;
    half.job = job.id;
    half.machine = "FN-01";
    half.finding = jobFinding(job.findings[0]);
    half.outcome = "confirmed";
    half.codes = {"VIB vibration", "fatigue"};
    half.text = "spall of 8 mm";
    half.hours = 12.5;
    half.partKept = true;
    half.partTag = "117";
    half.alignmentAfter = "0.03 mm, 0.02 mm/100 mm";
    half.on = dateIn("UTC", nowUtc()).value();
    const auto done = keepReturn(*fleet_, half, {{"ring.jpg", "\xFF\xD8\xFF\xE0 ring"}});
    ASSERT_TRUE(done) << done.error().sentence();
    const auto record = siteReliability(*fleet_).value();
    EXPECT_EQ(record.site.confirmed, 1u);
    const auto history = machineHistory(*fleet_, "FN-01").value();
    ASSERT_EQ(history.size(), 1u);
    EXPECT_EQ(history[0].event.kind, "inspection");
    EXPECT_THAT(history[0].event.text,
                testing::AllOf(HasSubstr("confirmed"), HasSubstr("spall of 8 mm"), HasSubstr("12.5"),
                               HasSubstr("tag 117"), HasSubstr("alignment after: 0.03 mm")));
    ASSERT_EQ(history[0].photos.size(), 1u);
    EXPECT_EQ(jobDetail(*fleet_, job.id)->reports.size(), 1u)
        << "one end of \"driver DE or NDE\" is of the job";
    EXPECT_TRUE(keepReturn(*fleet_, half, {})->already);
    half.outcome = "another_fault";
    half.text = "";
    EXPECT_THAT(keepReturn(*fleet_, half, {}).error().sentence(), HasSubstr("which other fault"));
    half.text = "a loose foot";
    EXPECT_FALSE(keepReturn(*fleet_, half, {{"notes.txt", "no picture"}}));
    EXPECT_EQ(fleet_->log().feedback()->size(), 1u) << "a refused picture leaves nothing behind";
}

TEST_F(LogDeskTest, ACorrectionIsANoteUnderWhatItCorrects) {
    const Event greased{0, "FN-01", at("2026-03-01T08:00:00Z"), "greasing", "driver DE", "20 g", "kim"};
    ASSERT_TRUE(fleet_->log().addEvent(greased));
    Event other = greased;
    other.at = "driver NDE";
    ASSERT_TRUE(fleet_->log().addEvent(other));
    const Event note{0,      "FN-01", at("2026-03-02T08:00:00Z"),
                     "note", "",      correctionText(greased, "40 g: both strokes"),
                     "kim"};
    ASSERT_TRUE(fleet_->log().addEvent(note));
    const auto history = machineHistory(*fleet_, "FN-01").value();
    ASSERT_EQ(history.size(), 2u);
    EXPECT_TRUE(history[0].corrections.empty()) << "the other end's stays";
    ASSERT_EQ(history[1].corrections.size(), 1u);
    EXPECT_EQ(history[1].event.text, "20 g") << "what was said stays";
    EXPECT_EQ(correctionWords(history[1].corrections[0]), "40 g: both strokes");
    EXPECT_FALSE(history[1].heard.empty());
}

TEST_F(LogDeskTest, EventsComeInFromACsvAndWhatBreaksARuleIsNamedWithItsLine) {
    const std::string table =
        "time;machine;kind;at;text;colour\r\n"
        "2026-03-01;FN-01;greasing;driver DE;\"20 g; lithium\";red\r\n"
        "2026-03-02T06:00:00Z;FN-02;repair;;'=new seal;\r\n"
        "03.02.2026;FN-02;repair;;;\r\n"
        "2026-03-02;NO-SUCH;repair;;;\r\n"
        "2026-03-02;FN-02;party;;;";
    const auto done = takeEvents(*fleet_, table, "grease.csv", "kim", nowUtc());
    ASSERT_TRUE(done) << done.error().sentence();
    EXPECT_EQ(done->taken, 2u);
    ASSERT_EQ(done->refusals.size(), 3u);
    EXPECT_THAT(done->refusals[0].sentence(), testing::AllOf(HasSubstr("grease.csv"), HasSubstr("line 4")));
    EXPECT_THAT(done->refusals[1].sentence(), HasSubstr("NO-SUCH"));
    EXPECT_THAT(done->warnings, ElementsAre(HasSubstr("colour")));
    const auto events = fleet_->log().events("").value();
    ASSERT_EQ(events.size(), 2u);
    EXPECT_EQ(events[0].time, at("2026-03-01T23:59:59Z")) << "the end of the site's day";
    EXPECT_EQ(events[0].text, "20 g; lithium");
    EXPECT_EQ(events[1].text, "=new seal");
    EXPECT_EQ(events[1].by, "kim");
    EXPECT_EQ(takeEvents(*fleet_, table, "grease.csv", "kim", nowUtc())->taken, 2u);
    EXPECT_EQ(fleet_->log().events("")->size(), 2u) << "not doubled";
    EXPECT_THAT(takeEvents(*fleet_, "machine,kind\nFN-01,repair\n", "x.csv", "", nowUtc()).error().sentence(),
                HasSubstr("no column \"time\""));
    EXPECT_FALSE(takeEvents(*fleet_, "", "x.csv", "", nowUtc()));
}

// 0xFC is a small u with two dots in ISO 8859-1 and nothing in UTF-8.
TEST_F(LogDeskTest, LettersThatAreNoUtf8AreRefusedWithTheirPlace) {
    const auto done = takeEvents(*fleet_,
                                 "machine,time,kind,text\n"
                                 "FN-01,2026-03-01,note,L\xfc"
                                 "fter\nFN-01,2026-03-02,note,L\xc3\xbc"
                                 "fter\n",
                                 "x.csv", "kim", nowUtc());
    ASSERT_TRUE(done) << done.error().sentence();
    EXPECT_EQ(done->taken, 1u);
    ASSERT_EQ(done->refusals.size(), 1u);
    EXPECT_THAT(done->refusals[0].sentence(), HasSubstr("line 2, column 4: is not plain UTF-8 text"));
    EXPECT_EQ(fleet_->log().events("FN-01")->at(0).text,
              "L\xc3\xbc"
              "fter");
    EXPECT_THAT(takeEvents(*fleet_, "machine,time,kind,bem\xe4\n", "x.csv", "", nowUtc()).error().sentence(),
                HasSubstr("line 1, column 4"));
}

TEST_F(LogDeskTest, BeforeAndAfterOfAnEventIsJudgedAsAJobIs) {
    Heard bad;
    bad.velocityMmS = 4.5;
    bad.raceDban = 60;
    hearDays("FN-01", "2026-01-05", "2026-02-20", {});
    hearDays("FN-01", "2026-02-21", "2026-03-09", bad);
    hearDays("FN-01", "2026-03-11", "2026-03-31", {});
    tell("FN-01", "2026-03-10T12:00:00Z", "part", "driver DE", "bearing fitted");
    const auto events = fleet_->log().events("FN-01").value();
    const auto found = compareAround(*fleet_, events.back());
    ASSERT_TRUE(found) << found.error().sentence();
    ASSERT_TRUE(found->verdict);
    EXPECT_EQ(found->verdict->outcome, CureOutcome::Cured) << found->verdict->reason;
    ASSERT_EQ(found->figures.findings.size(), 1u) << "what stood out before is what it is about";
    EXPECT_GT(found->figures.findings[0].weightBefore.value_or(0), 20);
    EXPECT_LT(found->figures.findings[0].weightAfter.value_or(99), 10);
    ASSERT_FALSE(found->figures.levels.empty());
    EXPECT_NEAR(found->figures.levels[0].before.value_or(0), 4.5, 1e-9);
    EXPECT_NEAR(found->figures.levels[0].after.value_or(0), 1, 1e-9);
}

}  // namespace
}  // namespace fettle::fleet_test
