// What plots and waterfalls show is what was weighed: levels of sines known beforehand, and the very rows of
// a finding found again in the view it names.
#include "core/diagnosis/detail.h"

#include <gtest/gtest.h>

#include "core/diagnosis/combine.h"
#include "core/diagnosis/examine.h"
#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

// ISO 80000-3: v = a / (2 pi f). A sine of 2 mm/s r.m.s. at 123.4 Hz reads 2 mm/s on its line.
TEST(Detail, ASineOfKnownVelocityReadsItsVelocityAndItsAcceleration) {
    const std::size_t n = 40000;
    const double rate = 10000, hz = 123.5;
    const auto recording = made::recordingOf(
        made::sum(made::sine(made::peakG(2, hz), hz, rate, n), made::noise(n, 1e-4, 3)), rate, 1484);
    const auto detail = detailOf(made::motor(), recording, "x", "");
    ASSERT_TRUE(detail) << detail.error().sentence();
    const auto k = std::size_t(hz / detail->velocity.dfHz + 0.5);
    EXPECT_NEAR(detail->velocity.values.at(k), 2, 0.02);
    EXPECT_NEAR(detail->plain.values.at(k), made::peakG(2, hz) / std::sqrt(2.0), 1e-3);
    EXPECT_EQ(detail->samples.size(), n);
    EXPECT_EQ(detail->unit, "g");
}

TEST(Detail, EveryFoundLineStandsInTheViewItsFindingNames) {
    const Machine machine = made::motor();
    const auto recording =
        made::made(made::with(made::setupOf(machine, 11), "bearing_outer_race", "driver DE", 0.75)).recording;
    const auto examination = examine(machine, {recording});
    ASSERT_TRUE(examination);
    ASSERT_FALSE(examination->findings.empty());
    const Hypothesis& finding = examination->findings.front();
    const auto detail = detailOf(machine, recording, "", finding.best.view);
    ASSERT_TRUE(detail) << detail.error().sentence();
    int looked = 0;
    for (const LineRow& row : finding.best.rows) {
        if (row.state == LineState::LeftOut) continue;
        const auto k = std::size_t(row.foundHz / detail->envelope.dfHz + 0.5);
        EXPECT_NEAR(detail->envelope.values.at(k), row.aboveFloorDb, 0.01) << row.name;
        ++looked;
    }
    EXPECT_GT(looked, 5);
}

TEST(Detail, WhatTheRecordingHasNotIsNotFound) {
    const auto recording = made::recordingOf(made::noise(20000, 0.1, 1), 5000, 1484);
    EXPECT_EQ(detailOf(made::motor(), recording, "y", "").error().kind, ErrorKind::NotFound);
    EXPECT_EQ(detailOf(made::motor(), recording, "x", "envelope 1-2 Hz").error().kind, ErrorKind::NotFound);
    for (const std::size_t samples : {std::size_t(0), std::size_t(1), std::size_t(7)})
        EXPECT_TRUE(detailOf(made::motor(), made::recordingOf(made::noise(samples, 0.1, 1), 5000), "", ""));
}

// A line one bin wide is still there after the reduction, at its full height, whatever the cell.
TEST(WaterfallLines, EverySingleBinSurvives) {
    for (const std::size_t bin : {1u, 777u, 1600u, 3999u}) {
        std::vector<float> values(4000, 0.01F);
        values[bin] = 5;
        double top = 1000;
        const auto cells = largestInCells(values, 0.25, top, 800);
        ASSERT_EQ(cells.size(), 800u);
        EXPECT_EQ(top, 1000);
        const auto cell = std::size_t(double(bin) * 0.25 / top * 800);
        EXPECT_EQ(cells[cell], 5) << bin;
        EXPECT_EQ(std::count(cells.begin(), cells.end(), 5.0F), 1) << bin;
    }
}

TEST(WaterfallLines, FewerValuesThanCellsAreKeptAsTheyAre) {
    double top = 1000;
    const auto cells = largestInCells({1, 2, 3, 4, 5}, 10, top, 800);
    EXPECT_EQ(cells, (std::vector<float>{1, 2, 3, 4, 5}));
    EXPECT_EQ(top, 50);
}

TEST(WaterfallLines, OfARecordingShowTheUnbalanceAtItsLevel) {
    const Machine machine = made::motor();
    const auto recording = made::recordingOf(
        made::sum(made::sine(made::peakG(4, 24.75), 24.75, 10000, 40000), made::noise(40000, 1e-3, 2)), 10000,
        1485);
    const auto examined = examineRecording(machine, recording);
    ASSERT_TRUE(examined);
    ASSERT_EQ(examined->waterfalls.size(), 3u);
    const WaterfallLines& velocity = examined->waterfalls[0];
    EXPECT_EQ(velocity.kind, "velocity");
    const auto cell = std::size_t(24.75 / velocity.topHz * double(velocity.lines.size()));
    EXPECT_NEAR(velocity.lines.at(cell), 4, 0.05);
    ASSERT_EQ(examined->extras.size(), 1u);
    EXPECT_NEAR(*examined->extras[0].highBandG, 1e-3 * std::sqrt(0.8), 1e-4);  // white noise above 1 of 5 kHz
    EXPECT_NEAR(*examined->extras[0].peakG, made::peakG(4, 24.75), 5e-3);
}

// A fault by pattern that one recording of several names is not named for all of them.
TEST(Combine, AMinorityDoesNotNameAShaftFault) {
    const Machine fan = made::fanSet();
    const auto loud = made::made(made::with(made::setupOf(fan), "unbalance", "driver", 0.9)).recording;
    const auto quiet = made::made(made::setupOf(fan, 5)).recording;
    const auto names = [](const Examination& e) {
        return std::any_of(e.findings.begin(), e.findings.end(),
                           [](const Hypothesis& h) { return h.fault == "unbalance"; });
    };
    const auto alone = examine(fan, {loud});
    ASSERT_TRUE(alone && names(*alone));
    const auto minority = examine(fan, {quiet, loud, quiet});
    ASSERT_TRUE(minority);
    EXPECT_FALSE(names(*minority));
    const auto majority = examine(fan, {loud, quiet, loud});
    ASSERT_TRUE(majority);
    EXPECT_TRUE(names(*majority));
}

TEST(Combine, RefusesNothing) {
    EXPECT_FALSE(combine(made::motor(), {}));
}

}  // namespace
}  // namespace fettle
