#include "core/store/spectrum_spans.h"

#include <gmock/gmock.h>

#include "core/store/migrate.h"
#include "core/store/packed_recording.h"
#include "tests/store/store_fixture.h"

namespace fettle {
namespace {

constexpr auto kVelocity = WaterfallKind::Velocity;

class SpectrumSpansTest : public StoreTest {
  protected:
    // A floor, and one line of one spectrum above it.
    NewRecording peaked(const std::string& time, std::uint64_t seed, std::size_t line, float height,
                        float floor = 0.01f) {
        NewRecording one = newRecording(machine_, time, seed, 64);
        one.spectra.clear();
        std::vector<float> lines(800, floor);
        lines[line] = height;
        one.spectra.push_back({"x", "M-DE", kVelocity, 1000, lines});
        return one;
    }
    std::int64_t channel() {
        const auto channels = fleet_->trends().channels(machine_).value();
        for (const ChannelEntry& entry : channels)
            if (entry.name == "x") return entry.id;
        return 0;
    }
    TrendStore::Spans spans(std::size_t columns) {
        const auto found =
            fleet_->trends().spans(channel(), kVelocity, Instant::min(), Instant::max(), columns);
        EXPECT_TRUE(found) << found.error().sentence();
        return *found;
    }
    void run(const std::string& sql) {
        auto database = Database::open(path_, Access::ReadWrite);
        ASSERT_TRUE(database);
        const auto done = (*database)->script(sql);
        ASSERT_TRUE(done) << done.error().sentence();
    }
    // As a program before left it: without spans, the last step not yet taken.
    void goBackToStepThree() {
        fleet_.reset();
        const std::string old = folder_ / "old.fettle";
        const std::vector<Migration> three(migrations().begin(), migrations().begin() + 3);
        {
            auto before = Database::open(old, Access::Create);
            ASSERT_TRUE((*before)->script("PRAGMA application_id=" + std::to_string(kApplicationId)));
            ASSERT_TRUE(migrate(**before, three));
            ASSERT_TRUE((*before)->script("PRAGMA foreign_keys=OFF; ATTACH '" + path_ +
                                          "' AS n;"
                                          "DELETE FROM meta; INSERT INTO meta SELECT * FROM n.meta;"
                                          "UPDATE meta SET value='3' WHERE key='min_reader';"));
            for (const char* table : {"machine", "description", "channel", "recording", "recording_channel",
                                      "waveform", "trend", "spectrum", "hypothesis", "weight", "examination"})
                ASSERT_TRUE(
                    (*before)->script(std::string("INSERT INTO ") + table + " SELECT * FROM n." + table));
        }
        path_ = old;
        reopen();
        ASSERT_EQ(fleet_->outcome(), OpenOutcome::Upgraded);
    }
};

TEST_F(SpectrumSpansTest, BeginAtWholeMultiplesOfTheirLength) {
    EXPECT_EQ(spanStart(at("2026-05-04T07:59:59Z"), 1), at("2026-05-04T04:00:00Z"));
    EXPECT_EQ(spanStart(at("2026-05-04T08:00:00Z"), 1), at("2026-05-04T08:00:00Z"));
    EXPECT_EQ(spanStart(at("2026-05-04T23:59:59Z"), 2), at("2026-05-04T00:00:00Z"));
    EXPECT_EQ(spanStart(at("1969-12-31T23:00:00Z"), 1), at("1969-12-31T20:00:00Z"));
}

// Each cell of the result is at least every cell it shares a frequency with.
TEST_F(SpectrumSpansTest, LinesOfAnotherCountRaiseAllTheyCover) {
    std::string lines = "\x01\x02\x03\x04";
    raiseLines(lines, "\x03\x01");
    EXPECT_EQ(lines, "\x03\x03\x03\x04");
    raiseLines(lines, std::string("\0\0\0\0\0\x09", 6));
    EXPECT_EQ(lines, "\x03\x03\x03\x03\x04\x09");
    std::string high = "\x01";
    raiseLines(high, "\xff");
    EXPECT_EQ(high, "\xff");
}

// Put in with the newest first and one late: no peak of a single spectrum is lost, and each day and each four
// hours hold nothing else.
TEST_F(SpectrumSpansTest, TheLargestOfEveryLineWhateverTheOrder) {
    ASSERT_TRUE(fleet_->recordings().putAll({peaked("2026-05-05T13:20:00Z", 1, 7, 1),
                                             peaked("2026-05-04T06:20:00Z", 2, 100, 2),
                                             peaked("2026-05-04T07:20:00Z", 3, 101, 3)}));
    ASSERT_TRUE(fleet_->recordings().put(peaked("2026-05-04T06:40:00Z", 4, 500, 4)));  // late
    const auto days = spans(0);
    EXPECT_EQ(days.each, std::chrono::hours(24));
    EXPECT_EQ(days.spectra, 4u);
    ASSERT_EQ(days.spans.size(), 2u);
    EXPECT_EQ(days.spans[0].from, at("2026-05-04T00:00:00Z"));
    EXPECT_EQ(days.spans[0].until, at("2026-05-05T00:00:00Z"));
    EXPECT_EQ(days.spans[0].spectra, 3u);
    EXPECT_EQ(fleet_->recordings().entry(days.spans[0].loudest)->time, at("2026-05-04T06:40:00Z"));
    EXPECT_EQ(days.spans[0].at, at("2026-05-04T06:40:00Z"));
    const auto hours = spans(1000);
    EXPECT_EQ(hours.each, std::chrono::hours(4));
    ASSERT_EQ(hours.spans.size(), 2u);
    EXPECT_EQ(hours.spans[1].from, at("2026-05-05T12:00:00Z"));
    const auto spectra = fleet_->trends().spectra(channel(), kVelocity, Instant::min(), Instant::max());
    std::vector<float> largest(800, 0);
    for (std::size_t i = 0; i < 3; ++i)
        for (std::size_t line = 0; line < 800; ++line)
            largest[line] = std::max(largest[line], (*spectra)[i].lines[line]);
    EXPECT_EQ(days.spans[0].lines, largest);
    EXPECT_EQ(hours.spans[0].lines, largest);
    EXPECT_EQ(hours.spans[1].lines, (*spectra)[3].lines);
    EXPECT_TRUE(fleet_->trends().spans(channel() + 9, kVelocity, {}, Instant::max(), 9)->spans.empty());
    expectClean();
}

TEST_F(SpectrumSpansTest, WhatIsMeasuredAnotherWayHasARowOfItsOwn) {
    auto wide = peaked("2026-05-04T06:40:00Z", 2, 100, 2);
    wide.spectra[0].topHz = 2000;
    ASSERT_TRUE(fleet_->recordings().putAll({peaked("2026-05-04T06:20:00Z", 1, 100, 1), wide}));
    const auto days = spans(0);
    ASSERT_EQ(days.spans.size(), 2u);
    EXPECT_EQ(days.spans[0].topHz, 1000);
    EXPECT_EQ(days.spans[1].topHz, 2000);
    expectClean();
}

// Examined again without the peak: it is gone from the spans as well.
TEST_F(SpectrumSpansTest, AReplacedSpectrumLeavesNothingBehind) {
    ASSERT_TRUE(fleet_->recordings().putAll(
        {peaked("2026-05-04T06:20:00Z", 1, 100, 5), peaked("2026-05-04T06:40:00Z", 2, 200, 1)}));
    ASSERT_TRUE(
        fleet_->recordings().replaceExamination(1, packComputed(peaked("2026-05-04T06:20:00Z", 1, 300, 2))));
    const auto days = spans(0);
    ASSERT_EQ(days.spans.size(), 1u);
    EXPECT_EQ(days.spans[0].spectra, 2u);
    EXPECT_LT(days.spans[0].lines[100], 0.02f);
    EXPECT_GT(days.spans[0].lines[200], 0.9f);
    EXPECT_GT(days.spans[0].lines[300], 1.9f);
    expectClean();
}

// Thinned: the days stay as they were, also when one that is left is examined again.
TEST_F(SpectrumSpansTest, ThinnedDaysKeepTheirLargest) {
    ASSERT_TRUE(fleet_->recordings().putAll(
        {peaked("2026-05-04T06:20:00Z", 1, 100, 5), peaked("2026-05-04T06:40:00Z", 2, 200, 1)}));
    run("DELETE FROM spectrum WHERE recording=1");
    EXPECT_GT(spans(0).spans[0].lines[100], 4.8f);
    ASSERT_TRUE(
        fleet_->recordings().replaceExamination(2, packComputed(peaked("2026-05-04T06:40:00Z", 2, 300, 2))));
    const auto days = spans(0);
    EXPECT_GT(days.spans[0].lines[100], 4.8f);
    EXPECT_GT(days.spans[0].lines[300], 1.9f);
    EXPECT_EQ(days.spans[0].spectra, 2u);
    expectClean();
}

// An older file opens at once; its spans are read from the spectra, and are the same once they are built.
TEST_F(SpectrumSpansTest, AnOlderFileIsReadAsIfItHadSpans) {
    std::vector<NewRecording> all;
    for (int i = 1; i <= 9; ++i)
        all.push_back(peaked("2026-05-0" + std::to_string(1 + i / 3) + "T0" + std::to_string(i) + ":20:00Z",
                             std::uint64_t(i), std::size_t(i), 1));
    ASSERT_TRUE(fleet_->recordings().putAll(all));
    const auto before = spans(1000);
    goBackToStepThree();
    const auto read = spans(1000);
    ASSERT_EQ(read.spans.size(), before.spans.size());
    ASSERT_TRUE(fleet_->trends().buildSpans());
    const auto built = spans(1000);
    ASSERT_EQ(built.spans.size(), before.spans.size());
    for (std::size_t i = 0; i < before.spans.size(); ++i) {
        EXPECT_EQ(read.spans[i].lines, before.spans[i].lines);
        EXPECT_EQ(built.spans[i].lines, before.spans[i].lines);
        EXPECT_EQ(built.spans[i].spectra, before.spans[i].spectra);
    }
    expectClean();
}

TEST_F(SpectrumSpansTest, AnOlderSeriesIsBuiltWhenItIsNextWritten) {
    ASSERT_TRUE(fleet_->recordings().putAll(
        {peaked("2026-05-04T06:20:00Z", 1, 100, 5), peaked("2026-05-04T06:40:00Z", 2, 200, 1)}));
    goBackToStepThree();
    auto database = Database::open(path_, Access::ReadWrite);
    EXPECT_FALSE((*database)->script("DELETE FROM spectrum WHERE recording=1"));  // not before it is built
    ASSERT_TRUE(fleet_->recordings().put(peaked("2026-05-04T07:00:00Z", 3, 300, 2)));
    EXPECT_TRUE((*database)->script("DELETE FROM spectrum WHERE recording=1"));
    const auto days = spans(0);
    ASSERT_EQ(days.spans.size(), 1u);
    EXPECT_EQ(days.spans[0].spectra, 3u);
    EXPECT_GT(days.spans[0].lines[100], 4.8f);
    EXPECT_GT(days.spans[0].lines[300], 1.9f);
}

TEST_F(SpectrumSpansTest, CheckSeesSpansThatSayLess) {
    ASSERT_TRUE(fleet_->recordings().putAll(
        {peaked("2026-05-04T06:20:00Z", 1, 100, 5), peaked("2026-05-05T06:40:00Z", 2, 200, 1)}));
    run("UPDATE spectrum_span SET lines = zeroblob(800) WHERE level=1 AND loudest=1;"
        "UPDATE spectrum_span SET spectra = 0 WHERE level=1 AND loudest=2;"
        "DELETE FROM spectrum_span WHERE level=2 AND loudest=2");
    const auto faults = fleet_->check(true).value();
    EXPECT_THAT(faults, testing::Contains(testing::HasSubstr("below a spectrum that is kept")));
    EXPECT_THAT(faults, testing::Contains(testing::HasSubstr("fewer spectra than are kept")));
    EXPECT_THAT(faults, testing::Contains(testing::HasSubstr("are missing")));
    EXPECT_EQ(faults.size(), 3u);
}

}  // namespace
}  // namespace fettle
