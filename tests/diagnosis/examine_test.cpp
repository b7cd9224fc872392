// One machine's recordings together.
// Source: the arithmetic mean of e-values is an e-value under any dependence (Vovk and Wang, Ann. Statist. 49
// (2021) 1736-1754, sec. 3).
#include "core/diagnosis/examine.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>

#include "core/exchange/examination_json.h"
#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

using ::testing::HasSubstr;

Examination examined(const Machine& machine, const std::vector<RecordingPtr>& recordings,
                     ExamineOptions options = {}) {
    const auto result = examine(machine, recordings, options);
    EXPECT_TRUE(result) << (result ? "" : result.error().sentence());
    return result ? *result : Examination{};
}

// A week in which the fault shows on some days.
std::vector<RecordingPtr> week() {
    std::vector<RecordingPtr> all;
    for (const double severity : {0.75, 0.0, 0.5, 0.0, 0.65}) {
        auto setup = made::setupOf(made::motor(), 500 + all.size(), 4);
        all.push_back(made::made(made::with(setup, "bearing_outer_race", "driver DE", severity)).recording);
    }
    return all;
}

const Hypothesis* find(const Examination& e, const std::string& fault, const std::string& at) {
    for (const Hypothesis& h : e.considered)
        if (h.fault == fault && h.at == at) return &h;
    return nullptr;
}

double sumOf(const Hypothesis& h) {
    double sum = h.best.searchDban + h.meanDban;
    for (const LineRow& row : h.best.rows)
        sum += row.weightDban;
    return sum;
}

TEST(Examine, TheWeightOfAWeekIsOfTheMeanEValue) {
    const Machine machine = made::motor();
    const auto recordings = week();
    const Examination together = examined(machine, recordings);
    std::map<std::pair<std::string, std::string>, std::vector<double>> alone;
    for (const RecordingPtr& one : recordings)
        for (const Hypothesis& h : examined(machine, {one}).considered)
            if (h.weightDban) alone[{h.fault, h.at}].push_back(*h.weightDban);
    ASSERT_EQ(alone.size(), 8u + 1u);  // four elements of two bearings, and a bearing nobody described
    for (const auto& [key, weights] : alone) {
        ASSERT_EQ(weights.size(), recordings.size());
        double e = 0;
        for (const double dban : weights)
            e += std::pow(10, dban / 10) / double(weights.size());
        const Hypothesis* h = find(together, key.first, key.second);
        ASSERT_NE(h, nullptr);
        EXPECT_NEAR(*h->weightDban, 10 * std::log10(e), 1e-9) << key.first;
        EXPECT_EQ(h->recordingCount, weights.size());
        const auto strongest = std::max_element(weights.begin(), weights.end());
        EXPECT_EQ(h->recording, std::size_t(strongest - weights.begin())) << key.first;
        EXPECT_NEAR(h->best.weightDban, *strongest, 1e-12);
        EXPECT_NEAR(sumOf(*h), *h->weightDban, 1e-9) << "the row of the mean closes the sum";
        EXPECT_LE(h->meanDban, 0);
    }
    const Hypothesis* outer = find(together, "bearing_outer_race", "driver DE");
    EXPECT_EQ(outer->recording, 0u);
    EXPECT_LT(outer->meanDban, -1);
}

TEST(Examine, OneRecordingHasNoRowOfTheMean) {
    const Examination e = examined(made::motor(), {week()[0]});
    for (const Hypothesis& h : e.considered) {
        EXPECT_EQ(h.meanDban, 0);
        if (h.weightDban) {
            EXPECT_NEAR(sumOf(h), *h.weightDban, 1e-9);
        }
    }
}

// A recording on which nothing can be weighed neither helps nor dilutes.
TEST(Examine, ARecordingTooShortDoesNotDilute) {
    const Machine machine = made::motor();
    auto brief = made::setupOf(machine, 600, 0.2);
    const auto two = examined(machine, {week()[0], made::made(brief).recording});
    const auto one = examined(machine, {week()[0]});
    EXPECT_EQ(find(two, "bearing_outer_race", "driver DE")->weightDban,
              find(one, "bearing_outer_race", "driver DE")->weightDban);
    EXPECT_EQ(two.recordings.size(), 2u);
    EXPECT_FALSE(two.blind.empty());
}

TEST(Examine, OneThreadAndTwoTellTheSame) {
    const Machine machine = made::motor();
    const auto recordings = week();
    ExamineOptions one, two, many;
    two.threads = 2;
    many.threads = 16;  // more than recordings
    const std::string single = toJson(examined(machine, recordings, one)).dump();
    EXPECT_EQ(single, toJson(examined(machine, recordings, two)).dump());
    EXPECT_EQ(single, toJson(examined(machine, recordings, many)).dump());
    EXPECT_EQ(single, toJson(examined(machine, recordings, one)).dump());
}

TEST(Examine, EveryHypothesisIsConsideredAndFindingsAreThoseOf20DecibansFirst) {
    const Examination e = examined(made::motor(), week());
    std::set<std::pair<std::string, std::string>> once;
    for (const Hypothesis& h : e.considered)
        EXPECT_TRUE(once.insert({h.fault, h.at}).second) << h.fault << " at " << h.at << " twice";
    for (const char* fault : {"bearing_outer_race", "bearing_inner_race", "bearing_rolling_element",
                              "bearing_cage", "bearing_dry_or_worn"})
        for (const char* at : {"driver DE", "driver NDE"})
            EXPECT_TRUE(once.count({fault, at})) << fault;
    for (const char* fault : {"unbalance", "misalignment", "looseness", "bearing_unknown", "rotor_bar",
                              "electrical_2x_mains", "air_gap", "supply_unbalance"})
        EXPECT_TRUE(once.count({fault, "driver"})) << fault;
    ASSERT_FALSE(e.findings.empty());
    for (std::size_t i = 0; i < e.findings.size(); ++i) {
        const Hypothesis& h = e.findings[i];
        EXPECT_TRUE(!h.weightDban || *h.weightDban >= 20);
        if (i > 0) {
            EXPECT_GE(e.findings[i - 1].weightDban, h.weightDban) << "those without a weight last";
        }
        EXPECT_NE(h.sentence, "");
        EXPECT_NE(h.urgency, "");
        EXPECT_NE(h.provedOn, "");
    }
    const auto strong = std::count_if(e.considered.begin(), e.considered.end(), [](const Hypothesis& h) {
        return h.weightDban && *h.weightDban >= 20;
    });
    const auto found = std::count_if(e.findings.begin(), e.findings.end(),
                                     [](const Hypothesis& h) { return h.weightDban.has_value(); });
    EXPECT_EQ(found, strong);
}

TEST(Examine, AFindingHasAStageNotAZone) {
    const Examination e = examined(made::motor(), {week()[0]});
    ASSERT_FALSE(e.findings.empty());
    EXPECT_EQ(e.findings[0].severity.kind, "stage");
    EXPECT_THAT(e.findings[0].severity.value, ::testing::AnyOf("early", "developed", "late"));
}

// Severity is how bad, weight is whether: a machine of more importance is more urgent, not more likely at
// fault.
TEST(Examine, CriticalityChangesUrgencyNeverTheWeight) {
    Machine important = made::motor(), spare = made::motor();
    important.criticality = "A";
    spare.criticality = "C";
    const auto a = examined(important, {week()[0]}), c = examined(spare, {week()[0]});
    EXPECT_EQ(a.findings.at(0).weightDban, c.findings.at(0).weightDban);
}

TEST(Examine, TheJointSpeedIsTheSurest) {
    const Examination e = examined(made::motor(), week());
    ASSERT_TRUE(e.speed.rpm);
    for (const RecordingFacts& r : e.recordings)
        if (r.speed.rpm) {
            EXPECT_LE(e.speed.plusMinusRpm, r.speed.plusMinusRpm);
        }
}

TEST(Examine, WithoutARecordingOrWhenCancelledItSaysSo) {
    const auto none = examine(made::motor(), {});
    ASSERT_FALSE(none);
    EXPECT_THAT(none.error().rule, HasSubstr("no recording"));
    ExamineOptions options;
    options.cancel.cancel();
    const auto stopped = examine(made::motor(), week(), options);
    ASSERT_FALSE(stopped);
    EXPECT_EQ(stopped.error().kind, ErrorKind::Cancelled);
}

TEST(Examine, TellsHowFarItIs) {
    std::vector<std::size_t> done;
    ExamineOptions options;
    options.progress = [&](std::size_t d, std::size_t total, std::string_view) {
        EXPECT_EQ(total, 5u);
        done.push_back(d);
    };
    options.threads = 2;
    examined(made::motor(), week(), options);
    EXPECT_EQ(done, (std::vector<std::size_t>{1, 2, 3, 4, 5}));
}

}  // namespace
}  // namespace fettle
