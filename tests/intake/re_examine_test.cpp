// Weighing again. Source: the project's contract of `re-examine` (where the raw recording is kept; the rest
// keeps its engine version).
#include <gmock/gmock.h>

#include "core/intake/weight_changes.h"
#include "tests/intake/fleet_content.h"
#include "tests/intake/intake_fixture.h"

namespace fettle::intake_test {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;

Hypothesis weighed(const char* fault, std::optional<double> weight) {
    Hypothesis h;
    h.fault = fault;
    h.at = "driver DE";
    h.weightDban = weight;
    return h;
}

TEST(WeightChanges, WhatMattersAndMoved) {
    Examination before, after;
    before.considered = {weighed("a", 31), weighed("b", 12), weighed("c", 2), weighed("d", 15),
                         weighed("e", 9)};
    after.considered = {weighed("a", 12.4), weighed("b", 12.9), weighed("c", 6), weighed("e", 10.5),
                        weighed("f", 40)};
    EXPECT_THAT(weightChanges(before, after),
                ElementsAre("a @ driver DE: 31 -> 12", "e @ driver DE: 9 -> 10",
                            "f @ driver DE: not named -> 40", "d @ driver DE: 15 -> not named"));
}

TEST(WeightChanges, NamedWithoutAWeight) {
    Examination before, after;
    before.considered = after.considered = {weighed("unbalance", std::nullopt)};
    before.findings = before.considered;
    EXPECT_THAT(weightChanges(before, after), ElementsAre("unbalance @ driver DE: named -> not named"));
    EXPECT_TRUE(weightChanges(before, before).empty());
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
    // As if another engine had weighed it, and found other weights.
    void weighedByAnother(const RecordingEntry& entry, const std::string& json) {
        NewRecording old;
        old.machine = entry.machine;
        old.recording = fleet_->recordings().recording(entry.id).value();
        old.running = "running";
        old.engine = "0.0.1 old";
        old.examinationJson = json;
        const auto replaced = fleet_->recordings().replaceExamination(entry.id, old);
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
    EXPECT_THAT(report.changed,
                Contains(HasSubstr("T-1 2026-05-02T06:20:00Z bearing_outer_race @ driver DE: 1 -> ")));
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
    EXPECT_THAT(report.changed, Contains(HasSubstr("bearing_outer_race @ driver DE: ")));
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
    ASSERT_EQ(report.refused.size(), 3u);
    EXPECT_THAT(report.refused[0], HasSubstr("has Q"));
    EXPECT_EQ(contentOf(*fleet_), before);
}

TEST_F(ReExamineTest, UnknownTag) {
    const auto report = reExamine(*fleet_, "X-9", options_);
    ASSERT_FALSE(report);
    EXPECT_EQ(report.error().kind, ErrorKind::NotFound);
}

TEST_F(ReExamineTest, CancelledAndCarriedOn) {
    for (const RecordingEntry& entry : entriesOf("T-1"))
        weighedByAnother(entry, fleet_->recordings().examinationJson(entry.id).value());
    options_.threads = 1;
    options_.progress = [&](std::size_t, std::size_t, std::string_view) { options_.cancel.cancel(); };
    const ReExamineReport first = again();
    EXPECT_TRUE(first.cancelled);
    EXPECT_EQ(first.weighed, 1u);
    options_.cancel = {};
    options_.progress = {};
    const ReExamineReport second = again();
    EXPECT_EQ(second.alreadyCurrent, 1u);
    EXPECT_EQ(second.weighed, 2u);
    expectClean();
}

}  // namespace
}  // namespace fettle::intake_test
