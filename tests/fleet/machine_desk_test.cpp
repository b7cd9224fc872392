// One machine asked for: its week as one examination, a recording's spectra, the history of a weight. The
// mean of e-values is an e-value whatever their dependence (Vovk and Wang, Ann. Statist. 49 (2021), section
// 3).
#include "core/fleet/machine_desk.h"

#include <cmath>

#include "tests/fleet/small_site.h"

namespace fettle::fleet_test {
namespace {

using intake_test::at;

class MachineDesk : public SmallSite {
  protected:
    const Instant from_ = at("2026-05-04T00:00:00Z"), until_ = at("2026-05-10T23:59:59Z");
};

TEST_F(MachineDesk, AWeekIsTheMeanOfItsRecordings) {
    const auto span = examinationOfSpan(*fleet_, "A-RACE", from_, until_);
    ASSERT_TRUE(span && *span) << (span ? "" : span.error().sentence());
    const Examination& week = (*span)->examination;
    ASSERT_EQ((*span)->recordingIds.size(), 3u);
    ASSERT_EQ(week.recordings.size(), 3u);
    ASSERT_FALSE(week.findings.empty());
    const Hypothesis& h = week.findings[0];
    double e = 0, strongest = -1000;
    std::size_t best = 0;
    for (std::size_t i = 0; i < 3; ++i) {
        const auto one = examinationOf(*fleet_, (*span)->recordingIds[i]);
        ASSERT_TRUE(one);
        for (const Hypothesis& part : one->considered) {
            if (part.fault != h.fault || part.at != h.at) continue;
            e += std::pow(10, *part.weightDban / 10) / 3;
            if (*part.weightDban > strongest) strongest = *part.weightDban, best = i;
        }
    }
    EXPECT_NEAR(*h.weightDban, 10 * std::log10(e), 1e-9);
    EXPECT_EQ(h.recording, best);
    double sum = h.best.searchDban + h.meanDban;
    for (const LineRow& row : h.best.rows)
        sum += row.weightDban;
    EXPECT_NEAR(sum, *h.weightDban, 1e-9);
}

TEST_F(MachineDesk, ASpanWithoutARunningRecordingIsNone) {
    const auto none = examinationOfSpan(*fleet_, "D-MUTE", from_, until_);
    ASSERT_TRUE(none);
    EXPECT_FALSE(*none);
    EXPECT_FALSE(examinationOfSpan(*fleet_, "NO-SUCH", from_, until_));
    EXPECT_FALSE(examinationOf(*fleet_, 12345));
}

TEST_F(MachineDesk, TheHistoryOfAWeightIsThatOfTheExaminations) {
    const auto history = weightHistory(*fleet_, "A-RACE", "bearing_inner_race", "driver DE", from_, until_);
    ASSERT_TRUE(history);
    ASSERT_EQ(history->size(), 3u);
    for (const WeightAt& w : *history) {
        const auto one = examinationOf(*fleet_, w.recording);
        ASSERT_TRUE(one);
        for (const Hypothesis& h : one->considered) {
            if (h.fault != "bearing_inner_race" || h.at != "driver DE") continue;
            EXPECT_EQ(*h.weightDban, w.weightDban);
        }
    }
    EXPECT_TRUE(std::is_sorted(history->begin(), history->end(),
                               [](const WeightAt& a, const WeightAt& b) { return a.time < b.time; }));
    const auto either =
        weightHistory(*fleet_, "A-RACE", "bearing_inner_race", "driver DE or NDE", from_, until_);
    EXPECT_GE(either->size(), history->size());
    EXPECT_TRUE(weightHistory(*fleet_, "A-RACE", "no_such_fault", "driver DE", from_, until_)->empty());
}

TEST_F(MachineDesk, TheSpectrumOfAFindingShowsItsLineWhereTheRowsSay) {
    const auto span = examinationOfSpan(*fleet_, "A-RACE", from_, until_);
    ASSERT_TRUE(span && *span);
    const Hypothesis& h = (*span)->examination.findings[0];
    const RecordingFacts& facts = (*span)->examination.recordings[h.recording];
    const auto detail = detailOf(*fleet_, (*span)->recordingIds[h.recording],
                                 facts.channels[h.best.channel].name, h.best.view);
    ASSERT_TRUE(detail) << detail.error().sentence();
    ASSERT_GT(detail->envelope.dfHz, 0);
    for (const LineRow& row : h.best.rows) {
        if (row.state != LineState::Found || row.aboveFloorDb < 15) continue;
        const auto bin = std::size_t(row.foundHz / detail->envelope.dfHz + 0.5);
        ASSERT_LT(bin, detail->envelope.values.size());
        EXPECT_NEAR(detail->envelope.values[bin], row.aboveFloorDb, 0.5) << row.name;
    }
    EXPECT_FALSE(detailOf(*fleet_, 12345, "x", ""));
    EXPECT_FALSE(detailOf(*fleet_, (*span)->recordingIds[0], "no such channel", ""));
}

TEST_F(MachineDesk, OnlyRunningRecordingsSpeakForAMachine) {
    EXPECT_TRUE(isRunning("running"));
    EXPECT_TRUE(isRunning("running_unloaded"));
    EXPECT_TRUE(isRunning("unsteady"));
    for (const char* other :
         {"stopped", "energised_not_turning", "turning_unpowered", "run_up_or_down", "unknown", ""})
        EXPECT_FALSE(isRunning(other)) << other;
}

// A slip-ring motor at 4 % slip whose load swings: the speed moves by more than 3 % within a recording. Its
// lines are read against shaft angle and count; the same machine at a standstill does not.
TEST_F(MachineDesk, AnUnsteadyMachineSpeaksAStandingOneDoesNot) {
    std::string text = made::motorText();
    text.replace(text.find("1484"), 4, "1440");
    const auto machine = std::make_shared<const Machine>(made::machineOf(text));
    std::vector<OneWeighed> week;
    std::size_t unsteady = 0;
    for (const std::uint64_t seed : {1u, 2u, 3u, 4u}) {
        auto setup = made::with(made::setupOf(*machine, seed, 10), "bearing_inner_race", "driver DE", 0.75);
        setup.operation.load = 0.8;
        setup.operation.loadSwing = 0.8;
        auto one = examine(*machine, {made::made(setup).recording});
        ASSERT_TRUE(one);
        const std::string state = one->recordings[0].running;
        unsteady += state == "unsteady";
        week.push_back({std::int64_t(seed), Instant{}, state, std::move(*one)});
    }
    auto still = made::setupOf(*machine, 9);
    still.operation.turning = still.operation.energised = false;
    auto stopped = examine(*machine, {made::made(still).recording});
    ASSERT_TRUE(stopped);
    const std::string state = stopped->recordings[0].running;
    EXPECT_EQ(state, "stopped");
    week.push_back({9, Instant{}, state, std::move(*stopped)});
    EXPECT_GT(unsteady, 0u);
    std::erase_if(week, [](const OneWeighed& one) { return one.running == "running"; });
    const auto span = joinRunning(machine, std::move(week));
    ASSERT_TRUE(span && *span);
    EXPECT_EQ((*span)->recordingIds.size(), unsteady);
    ASSERT_FALSE((*span)->examination.findings.empty());
    EXPECT_EQ((*span)->examination.findings[0].fault, "bearing_inner_race");
}

}  // namespace
}  // namespace fettle::fleet_test
