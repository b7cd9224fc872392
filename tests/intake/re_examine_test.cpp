// Weighing again. Source: the project's contract of `re-examine` (where the raw recording is kept; the rest
// keeps its engine version).
#include <fmt/format.h>
#include <gmock/gmock.h>

#include "core/intake/re_examination_report.h"
#include "core/intake/re_examine.h"
#include "core/intake/verdict_changes.h"
#include "core/store/database.h"
#include "core/store/packed_recording.h"
#include "tests/intake/fleet_content.h"
#include "tests/intake/intake_fixture.h"

namespace fettle::intake_test {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

Hypothesis weighed(const char* fault, std::optional<double> weight) {
    Hypothesis h;
    h.fault = fault;
    h.at = "driver DE";
    h.weightDban = weight;
    return h;
}

// "31 watch -> 12 -": weights in whole decibans.
std::string sideOf(const std::optional<double>& weight, const std::string& urgency) {
    return fmt::format("{} {}", weight ? fmt::format("{:.0f}", *weight) : "-",
                       urgency.empty() ? "-" : urgency);
}
std::vector<std::string> wordsOf(const std::vector<VerdictChange>& changes) {
    std::vector<std::string> words;
    for (const VerdictChange& c : changes)
        words.push_back(c.fault + " " + sideOf(c.oldDban, c.oldUrgency) + " -> " +
                        sideOf(c.newDban, c.newUrgency));
    return words;
}

TEST(VerdictChanges, WhatMattersAndMoved) {
    Examination before, after;
    before.considered = {weighed("a", 31), weighed("b", 12), weighed("c", 2), weighed("d", 15),
                         weighed("e", 9)};
    after.considered = {weighed("a", 12.4), weighed("b", 12.9), weighed("c", 6), weighed("e", 10.5),
                        weighed("f", 40)};
    EXPECT_THAT(wordsOf(verdictChanges(before, after)),
                ElementsAre("a 31 - -> 12 -", "e 9 - -> 10 -", "f - - -> 40 -", "d 15 - -> - -"));
}

TEST(VerdictChanges, NamedAndUrgency) {
    Examination before, after;
    before.considered = after.considered = {weighed("unbalance", std::nullopt), weighed("rub", 25)};
    before.findings = before.considered;
    before.findings[0].urgency = "watch";
    before.findings[1].urgency = "plan";
    after.findings = {before.findings[1]};
    after.findings[0].urgency = "act";
    EXPECT_THAT(wordsOf(verdictChanges(before, after)),
                ElementsAre("unbalance - watch -> - -", "rub 25 plan -> 25 act"));
    EXPECT_TRUE(verdictChanges(before, before).empty());
}

TEST(VerdictChanges, KindsInTheOrderOfTheirWorth) {
    const auto change = [](std::optional<double> from, const char* was, std::optional<double> to,
                           const char* is) { return VerdictChange{"rub", "driver", from, to, was, is}; };
    EXPECT_EQ(kindOf(change(5, "", 30, "plan"), 3), ChangeKind::Appeared);
    EXPECT_EQ(kindOf(change(30, "plan", 5, ""), 3), ChangeKind::Vanished);
    EXPECT_EQ(kindOf(change(30, "watch", 30, "act"), 3), ChangeKind::Raised);
    EXPECT_EQ(kindOf(change(30, "act", 30, "leave"), 3), ChangeKind::Lowered);
    EXPECT_EQ(kindOf(change(30, "plan", 26, "plan"), 3), ChangeKind::Moved);
    EXPECT_EQ(kindOf(change(30, "plan", 26, "plan"), 5), std::nullopt);
}

class ReExamineTest : public IntakeTest {
  protected:
    void SetUp() override {
        IntakeTest::SetUp();
        auto setup = made::with(made::setupOf(made::motor(), 3, 2), "bearing_outer_race", "driver DE", 0.75);
        for (int i = 0; i < 3; ++i) {
            setup.seed = 20 + i;
            const Sent node = sent(setup);
            Said said;
            said.time = "2026-05-0" + std::to_string(i + 1) + "T06:20:00Z";
            node.tell(said);
            send(in_, "r" + std::to_string(i), node.wav, said);
        }
        ASSERT_EQ(taken().stored, 3u);
    }
    ReExamineReport again(const std::string& tag = "") {
        const auto report = reExamine(*fleet_, tag, options_);
        EXPECT_TRUE(report) << (report ? "" : report.error().sentence());
        return report ? *report : ReExamineReport{};
    }
    ChangedVerdict worstOf(const std::string& fault) {
        const auto difference = differenceOf(*fleet_);
        EXPECT_TRUE(difference) << (difference ? "" : difference.error().sentence());
        if (difference)
            for (const ChangedVerdict& verdict : difference->verdicts)
                if (verdict.fault == fault) return verdict;
        ADD_FAILURE() << "nothing of " << fault;
        return {};
    }
    // As if another engine had weighed it, and found other weights.
    void weighedByAnother(const RecordingEntry& entry, const std::string& json) {
        NewRecording old;
        old.machine = entry.machine;
        old.recording = fleet_->recordings().recording(entry.id).value();
        old.running = "running";
        old.engine = "0.0.1 old";
        old.examinationJson = json;
        const auto replaced = fleet_->recordings().replaceExamination(entry.id, packComputed(old));
        ASSERT_TRUE(replaced) << replaced.error().sentence();
    }
};

TEST_F(ReExamineTest, WhatThisEngineWeighedIsPassedOver) {
    const auto before = contentOf(*fleet_);
    const ReExamineReport report = again();
    EXPECT_EQ(report.weighed, 0u);
    EXPECT_EQ(report.alreadyCurrent, 3u);
    EXPECT_EQ(contentOf(*fleet_), before);
}

// Everything computed is as it was after the import, bit for bit.
TEST_F(ReExamineTest, BringsBackWhatImportMade) {
    const auto before = contentOf(*fleet_);
    const auto entries = entriesOf("T-1");
    std::string json = fleet_->recordings().examinationJson(entries[1].id).value();
    const std::string key = "\"weight_dban\":";
    for (std::size_t at = json.find(key); at != json.npos; at = json.find(key, at + 1)) {
        const std::size_t from = at + key.size(), to = json.find_first_of(",}", from);
        if (json.compare(from, 4, "null") != 0) json.replace(from, to - from, "1");
    }
    weighedByAnother(entries[1], json);
    EXPECT_NE(contentOf(*fleet_), before);
    const ReExamineReport report = again("T-1");
    EXPECT_EQ(report.weighed, 1u);
    EXPECT_EQ(report.alreadyCurrent, 2u);
    EXPECT_EQ(report.changed, 1u);
    const ChangedVerdict verdict = worstOf("bearing_outer_race");
    EXPECT_EQ(verdict.machine, "T-1");
    EXPECT_EQ(verdict.at, "driver DE");
    EXPECT_EQ(verdict.worst, ChangeKind::Moved);
    EXPECT_EQ(verdict.example.recording, entries[1].id);
    EXPECT_EQ(verdict.example.oldEngine, "0.0.1 old");
    EXPECT_EQ(verdict.example.change.oldDban, 1.0);
    EXPECT_GT(verdict.example.change.newDban.value_or(0), 20);
    EXPECT_EQ(contentOf(*fleet_), before);
    EXPECT_EQ(again().alreadyCurrent, 3u);
    expectClean();
}

// A corrected bearing: the old verdict was weighed on orders that the machine has not.
TEST_F(ReExamineTest, AfterACorrectionWhenAskedFor) {
    std::string corrected = made::motorText();
    corrected.replace(corrected.find("\"rolling_elements\": 9"), 21, "\"rolling_elements\": 14");
    ASSERT_TRUE(fleet_->machines().put(corrected, "machine.json"));
    EXPECT_EQ(again().weighed, 0u);
    options_.evenCurrent = true;
    const ReExamineReport report = again();
    EXPECT_EQ(report.weighed, 3u);
    EXPECT_EQ(report.changed, 3u);
    const ReExaminationDifference difference = differenceOf(*fleet_).value();
    EXPECT_EQ(difference.weighed, 3u);
    ASSERT_EQ(difference.machines.size(), 1u);
    EXPECT_EQ(difference.machines[0].name, "T-1");
    const ChangedVerdict verdict = worstOf("bearing_outer_race");
    EXPECT_EQ(verdict.counts.all(), 3u);
    EXPECT_EQ(verdict.worst, ChangeKind::Vanished);
    EXPECT_EQ(verdict.example.change.newUrgency, "");
    // A second run weighs them all once more, and finds what the first one left.
    EXPECT_EQ(again().weighed, 3u);
    EXPECT_TRUE(differenceOf(*fleet_).value().verdicts.empty());
}

// Thinned recordings keep the verdict, and the engine, they were weighed with.
TEST_F(ReExamineTest, WithoutItsWaveformAVerdictStays) {
    const auto entries = entriesOf("T-1");
    for (const RecordingEntry& entry : entries)
        weighedByAnother(entry, fleet_->recordings().examinationJson(entry.id).value());
    auto database = Database::open(path_, Access::ReadWrite);
    ASSERT_TRUE(database);
    ASSERT_TRUE((*database)->run("DELETE FROM waveform WHERE recording=?", entries[0].id));
    const ReExamineReport report = again();
    EXPECT_EQ(report.weighed, 2u);
    EXPECT_EQ(report.withoutWaveform, 1u);
    EXPECT_EQ(fleet_->recordings().entry(entries[0].id)->engine, "0.0.1 old");
    EXPECT_EQ(fleet_->recordings().entry(entries[1].id)->engine, WeighingSettings().engine());
}

// A recording that no longer fits its description stays as it was weighed.
TEST_F(ReExamineTest, WhatNoLongerFitsIsTold) {
    const auto before = contentOf(*fleet_);
    std::string renamed = made::motorText();
    renamed.replace(renamed.find("\"id\": \"P\""), 9, "\"id\": \"Q\"");
    ASSERT_TRUE(fleet_->machines().put(renamed, "machine.json"));
    options_.evenCurrent = true;
    const ReExamineReport report = again();
    EXPECT_EQ(report.weighed, 0u);
    EXPECT_FALSE(report.run) << "a run that weighed nothing is none";
    ASSERT_EQ(report.refused.size(), 3u);
    EXPECT_THAT(report.refused[0], HasSubstr("has Q"));
    EXPECT_EQ(contentOf(*fleet_), before);
}

TEST_F(ReExamineTest, UnknownTag) {
    const auto report = reExamine(*fleet_, "X-9", options_);
    ASSERT_FALSE(report);
    EXPECT_EQ(report.error().kind, ErrorKind::NotFound);
}

// In one run; also where this engine weighed what it weighs again.
TEST_F(ReExamineTest, CancelledAndCarriedOn) {
    options_.evenCurrent = true;
    options_.threads = 1;
    options_.progress = [&](std::size_t, std::size_t, std::string_view) { options_.cancel.cancel(); };
    const ReExamineReport first = again();
    EXPECT_TRUE(first.cancelled);
    EXPECT_EQ(first.weighed, 1u);
    EXPECT_FALSE(differenceOf(*fleet_)->run.finished);
    options_.cancel = {};
    options_.progress = {};
    const ReExamineReport second = again();
    EXPECT_EQ(second.alreadyCurrent, 1u);
    EXPECT_EQ(second.weighed, 2u);
    EXPECT_EQ(second.run, first.run);
    EXPECT_TRUE(differenceOf(*fleet_)->run.finished);
    EXPECT_EQ(differenceOf(*fleet_)->weighed, 3u);
    expectClean();
}

}  // namespace
}  // namespace fettle::intake_test
