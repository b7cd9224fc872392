// Intervals: SciPy 1.10.1, binomtest(k, n).proportion_ci(0.95, "wilson"). The bookkeeping of listings,
// answers and the sample is worked out by hand from the rules in reliability.h.
#include "core/round/reliability.h"

#include <gtest/gtest.h>

namespace fettle {
namespace {

TEST(Share, IntervalAsWilsonsScore) {
    struct Row {
        std::size_t hits, of;
        double low, high;
    };
    for (const Row& row :
         {Row{14, 20, 0.4810271816464766, 0.8545227551323957}, Row{0, 24, 0.0, 0.1379762046749802},
          Row{1, 24, 0.0073934561655057685, 0.2024180647865594}, Row{20, 20, 0.8388748419471808, 1.0},
          Row{1, 1, 0.20654931437723745, 1.0}}) {
        const Share share = shareOf(row.hits, row.of);
        EXPECT_NEAR(share.low, row.low, 1e-9) << row.hits << " of " << row.of;
        EXPECT_NEAR(share.high, row.high, 1e-9) << row.hits << " of " << row.of;
    }
    EXPECT_EQ(shareOf(0, 0).low, 0);
    EXPECT_EQ(shareOf(0, 0).high, 1);
}

TEST(Share, ARateIsToldFrom20AnswersOn) {
    EXPECT_EQ(shareWords(shareOf(14, 19)), "14 of 19, too few to give a rate");
    EXPECT_EQ(shareWords(shareOf(14, 20)), "14 of 20, 70 % (95 % interval 48 to 85 %)");
}

Answer answer(const std::string& machine, const std::string& outcome, int day,
              const std::string& fault = "bearing_outer_race", const std::string& at = "driver DE") {
    return {machine, fault, at, outcome, day};
}

TEST(FaultRecord, WhatWasNotOpenedIsNoAnswer) {
    const std::vector<Answer> answers{answer("A", "confirmed", 1), answer("B", "not_found", 2),
                                      answer("C", "another_fault", 3), answer("D", "not_opened", 4),
                                      answer("E", "confirmed", 5, "unbalance")};
    const auto records = faultRecords(answers);
    ASSERT_EQ(records.size(), 2U);
    EXPECT_EQ(records[0].fault, "bearing_outer_race");
    EXPECT_EQ(records[0].confirmedOfOpened().hits, 1U);
    EXPECT_EQ(records[0].confirmedOfOpened().of, 3U);
    EXPECT_EQ(records[0].notOpened, 1U);
    EXPECT_EQ(siteRecordOf(answers).confirmedOfOpened().of, 4U);
}

KeptEntry listed(const std::string& machine) {
    KeptEntry entry{machine, true, false, {}};
    entry.findings.push_back({"bearing_outer_race", "driver DE"});
    return entry;
}

// Week i holds days 7 i to 7 i + 6.
KeptWeek week(int index, std::vector<KeptEntry> entries) {
    return {7 * index, 7 * index + 6, 0.1, std::move(entries)};
}

TEST(ListRecord, AListingRunsOverRoundsAndIsAnsweredOnce) {
    const std::vector<KeptWeek> weeks{week(0, {listed("A")}), week(1, {listed("A"), listed("B")}),
                                      week(2, {listed("B")}), week(3, {listed("C")})};
    const std::vector<Answer> answers{answer("A", "confirmed", 12), answer("B", "not_found", 30)};
    const ListRecord record = listRecord(weeks, answers);
    EXPECT_EQ(record.listings, 3U);
    EXPECT_EQ(record.entries, 5U);
    EXPECT_EQ(record.confirmed, 1U);
    EXPECT_EQ(record.notFound, 1U);
    EXPECT_EQ(record.answered(), 2U);
    // Of the answered entries nothing was found behind 0 of 1, 1 of 2 and 1 of 1.
    EXPECT_EQ(record.roundsAnswered, 3U);
    EXPECT_DOUBLE_EQ(record.meanNotFound, 0.5);
}

TEST(ListRecord, AnotherFaultConfirmedIsNotTheOneListed) {
    const std::vector<KeptWeek> weeks{week(0, {listed("A")})};
    const std::vector<Answer> other{answer("A", "confirmed", 5, "unbalance", "driven")};
    EXPECT_EQ(listRecord(weeks, other).anotherFault, 1U);
    const std::vector<Answer> placeless{answer("A", "confirmed", 5, "bearing_outer_race", "")};
    EXPECT_EQ(listRecord(weeks, placeless).confirmed, 1U);
}

TEST(ListRecord, AnAnswerBelongsToTheListingBeforeIt) {
    // Listed in weeks 0 and 5: the report of day 20 answers the first, that of day 40 the second.
    const std::vector<KeptWeek> weeks{week(0, {listed("A")}), week(1, {}), week(5, {listed("A")})};
    const std::vector<Answer> answers{answer("A", "not_found", 20), answer("A", "confirmed", 40)};
    const ListRecord record = listRecord(weeks, answers);
    EXPECT_EQ(record.listings, 2U);
    EXPECT_EQ(record.notFound, 1U);
    EXPECT_EQ(record.confirmed, 1U);
    const std::vector<Answer> late{answer("A", "confirmed", 7 * 5 + 6 + 91)};
    EXPECT_EQ(listRecord(weeks, late).answered(), 0U);
}

TEST(ListRecord, TheSampleMeasuresWhatTheListMisses) {
    const KeptEntry a{"A", false, true, {}}, b{"B", false, true, {}}, c{"C", false, false, {}};
    const std::vector<KeptWeek> weeks{week(0, {a, b, c})};
    const std::vector<Answer> answers{answer("A", "confirmed", 6 + 28), answer("B", "confirmed", 6 + 29),
                                      answer("C", "confirmed", 3)};
    const ListRecord record = listRecord(weeks, answers);
    EXPECT_EQ(record.sampleMachines, 2U);
    EXPECT_EQ(record.sampleHadSomething, 1U);
    EXPECT_EQ(record.listings, 0U);
}

TEST(ListRecord, AMachineOpenedInManyRoundsIsOne) {
    const KeptEntry a{"A", false, true, {}};
    const std::vector<KeptWeek> weeks{week(0, {a}), week(1, {a}), week(2, {a})};
    const ListRecord record = listRecord(weeks, std::vector{answer("A", "another_fault", 2)});
    EXPECT_EQ(record.sampleOpenings, 3U);
    EXPECT_EQ(record.missed().of, 1U);
    EXPECT_EQ(record.missed().hits, 1U);
}

}  // namespace
}  // namespace fettle
