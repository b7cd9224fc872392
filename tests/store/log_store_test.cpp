#include "core/store/log_store.h"

#include <gmock/gmock.h>

#include "tests/store/store_fixture.h"

namespace fettle {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

class LogStoreTest : public StoreTest {
  protected:
    LogStore& log() { return fleet_->log(); }
};

TEST_F(LogStoreTest, EventsOldestFirstAndOnce) {
    const Event late{
        0, "KL-ID-01", at("2026-05-04T10:00:00Z"), "greasing", "driver DE", "15 g, lithium", "R. Hale"};
    Event early = late;
    early.time = at("2026-05-01T10:00:00Z");
    early.kind = "repair";
    const auto id = log().addEvent(late).value();
    ASSERT_TRUE(log().addEvent(early));
    EXPECT_EQ(log().addEvent(late).value(), id);
    ASSERT_TRUE(fleet_->machines().put(machineJson("B"), "b.json"));
    Event other = late;
    other.machine = "B";
    ASSERT_TRUE(log().addEvent(other));
    const auto events = log().events("KL-ID-01").value();
    ASSERT_EQ(events.size(), 2u);
    EXPECT_EQ(events[0].kind, "repair");
    EXPECT_EQ(events[1].id, id);
    EXPECT_EQ(events[1].time, late.time);
    EXPECT_EQ(events[1].at, "driver DE");
    EXPECT_EQ(events[1].text, "15 g, lithium");
    EXPECT_EQ(events[1].by, "R. Hale");
    EXPECT_EQ(log().events("")->size(), 3u);
    EXPECT_TRUE(log().events("nobody")->empty());
}

TEST_F(LogStoreTest, AnEventNeedsAKnownMachineAndKind) {
    Event event{0, "nobody", at("2026-05-04T10:00:00Z"), "note", "", "", ""};
    EXPECT_EQ(log().addEvent(event).error().kind, ErrorKind::NotFound);
    event.machine = "KL-ID-01";
    event.kind = "party";
    EXPECT_THAT(log().addEvent(event).error().sentence(), HasSubstr("is \"party\", must be one of repair, "));
}

TEST_F(LogStoreTest, FeedbackIsKeptAsSaid) {
    Feedback said;
    said.machine = "KL-ID-01";
    said.fault = "bearing_outer_race";
    said.at = "driver DE";
    said.outcome = "confirmed";
    said.code = "fatigue, subsurface";
    said.text = "spall of 8 mm";
    said.by = "planner";
    said.time = at("2026-06-01T08:00:00Z");
    ASSERT_TRUE(log().addFeedback(said));
    const auto all = log().feedback().value();
    ASSERT_EQ(all.size(), 1u);
    EXPECT_EQ(
        std::tie(all[0].machine, all[0].fault, all[0].at, all[0].outcome, all[0].code, all[0].text, all[0].by,
                 all[0].time),
        std::tie(said.machine, said.fault, said.at, said.outcome, said.code, said.text, said.by, said.time));
    said.outcome = "perhaps";
    EXPECT_EQ(log().addFeedback(said).error().kind, ErrorKind::Invalid);
    said.outcome = "not_found";
    said.machine = "nobody";
    EXPECT_EQ(log().addFeedback(said).error().kind, ErrorKind::NotFound);
}

TEST_F(LogStoreTest, AJobGoesThroughItsStates) {
    Job job;
    job.machine = "KL-ID-01";
    job.findings = {"bearing_outer_race @ driver DE", "unbalance @ \"driven\""};
    job.urgency = "plan";
    job.orderPartsBy = "2026-05-28";
    job.runUntil = "2026-06-12";
    job.createdAt = at("2026-05-04T10:00:00Z");
    job.id = log().putJob(job).value();
    job.state = "issued";
    job.workOrder = "4711";
    EXPECT_EQ(log().putJob(job).value(), job.id);
    Job second = job;
    second.id = 0;
    second.revision = 2;
    second.replaces = job.id;
    ASSERT_TRUE(log().putJob(second));
    const auto jobs = log().jobs("KL-ID-01").value();
    ASSERT_EQ(jobs.size(), 2u);
    EXPECT_EQ(jobs[0].state, "issued");
    EXPECT_EQ(jobs[0].workOrder, "4711");
    EXPECT_EQ(jobs[0].findings, job.findings);
    EXPECT_EQ(jobs[0].orderPartsBy, "2026-05-28");
    EXPECT_EQ(jobs[0].runUntil, "2026-06-12");
    EXPECT_EQ(jobs[0].plannedStop, "");
    EXPECT_EQ(jobs[0].createdAt, job.createdAt);
    EXPECT_EQ(jobs[0].replaces, std::nullopt);
    EXPECT_EQ(jobs[1].replaces, job.id);
    EXPECT_EQ(jobs[1].revision, 2);
    EXPECT_EQ(log().jobs()->size(), 2u);
    job.id = 99;
    EXPECT_EQ(log().putJob(job).error().kind, ErrorKind::NotFound);
    job.state = "lost";
    EXPECT_EQ(log().putJob(job).error().kind, ErrorKind::Invalid);
    job.state = "done";
    job.runUntil = "soon";
    EXPECT_EQ(log().putJob(job).error().kind, ErrorKind::Invalid);
}

TEST_F(LogStoreTest, ARefusalIsCountedUpNotDoubled) {
    Refusal refusal{
        0,  "in/a.wav", "byte 44", "ends after 3 of 5 frames", "refused", at("2026-05-04T10:00:00Z"),
        {}, 1,          false};
    refusal.lastSeen = refusal.firstSeen;
    ASSERT_TRUE(log().putRefusal(refusal));
    refusal.firstSeen = refusal.lastSeen = at("2026-05-05T10:00:00Z");
    ASSERT_TRUE(log().putRefusal(refusal));
    refusal.path = "in/b.wav";
    refusal.rule = "no machine is named";
    refusal.kind = "parked";
    ASSERT_TRUE(log().putRefusal(refusal));
    const auto all = log().refusals().value();
    ASSERT_EQ(all.size(), 2u);
    EXPECT_EQ(all[0].times, 2);
    EXPECT_EQ(all[0].firstSeen, at("2026-05-04T10:00:00Z"));
    EXPECT_EQ(all[0].lastSeen, at("2026-05-05T10:00:00Z"));
    EXPECT_EQ(all[1].kind, "parked");
    ASSERT_TRUE(log().answerRefusal(all[0].id));
    EXPECT_EQ(log().refusals()->size(), 1u);
    EXPECT_EQ(log().refusals(true)->size(), 2u);
    ASSERT_TRUE(log().clearRefusal("in/a.wav"));
    EXPECT_EQ(log().refusals(true)->size(), 1u);
    EXPECT_EQ(log().answerRefusal(all[0].id).error().kind, ErrorKind::NotFound);
}

// What was wrong with a file before is no longer what is wrong with it; nobody has seen to the new reason.
TEST_F(LogStoreTest, AnotherReasonTakesThePlaceOfTheOldOne) {
    const Instant time = at("2026-05-04T10:00:00Z"), later = at("2026-05-05T10:00:00Z");
    ASSERT_TRUE(log().putRefusal({0, "in/a.wav", "byte 44", "ends early", "refused", time, time, 1, false}));
    ASSERT_TRUE(log().putRefusal({0, "in/b.wav", "byte 44", "ends early", "refused", time, time, 1, false}));
    ASSERT_TRUE(log().answerRefusal(log().refusals()->front().id));
    ASSERT_TRUE(log().putRefusal({0, "in/a.wav", "/time", "no time", "parked", later, later, 1, false}));
    const auto all = log().refusals(true).value();
    ASSERT_EQ(all.size(), 2u);
    EXPECT_EQ(all[0].path, "in/b.wav") << "another file's refusal stays";
    EXPECT_EQ(all[1].rule, "no time");
    EXPECT_EQ(all[1].times, 1);
    EXPECT_EQ(log().refusals()->size(), 2u);
}

// A file name need not be UTF-8; what is kept always is.
TEST_F(LogStoreTest, APathOfOtherBytesIsKeptReadable) {
    const Instant time = at("2026-05-04T10:00:00Z");
    ASSERT_TRUE(log().putRefusal({0, "in/M\xfcller.wav", "", "rule", "refused", time, time, 1, false}));
    EXPECT_EQ(log().refusals()->front().path, "in/M?ller.wav");
    expectClean();
}

}  // namespace
}  // namespace fettle
