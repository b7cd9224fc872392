// The measured false-alarm curve.
// Sources: Markov's inequality for e-values (Vovk and Wang, Ann. Statist. 49 (2021) 1736-1754): 10 decibans
// by chance in at most one of ten; Wilson, JASA 22 (1927) 209-212 (interval); Kish, Survey Sampling (1965)
// (clusters).
#include "core/diagnosis/phantoms.h"

#include <gtest/gtest.h>

#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

std::vector<RecordingPtr> soundRecordings(std::size_t count) {
    std::vector<RecordingPtr> all;
    for (std::size_t i = 0; i < count; ++i) {
        auto setup = made::setupOf(made::motor(), 300 + i, 2);
        setup.operation.load = 0.5 + 0.1 * double(i % 5);
        all.push_back(made::made(setup).recording);
    }
    return all;
}

PhantomResult measured(const Machine& machine, const std::vector<RecordingPtr>& recordings,
                       const PhantomOptions& options) {
    const auto result = measurePhantoms(machine, recordings, options);
    EXPECT_TRUE(result);
    return result ? *result : PhantomResult{};
}

const PhantomShare& at10(const PhantomCurve& curve) {
    return curve.shares.at(0);
}

TEST(Phantoms, OnSoundMachinesKeepTheBound) {
    const auto recordings = soundRecordings(8);
    for (const std::uint64_t seed : {1u, 2u, 3u}) {
        PhantomOptions options;
        options.perRecording = 100;
        options.seed = seed;
        const PhantomResult result = measured(made::motor(), recordings, options);
        ASSERT_EQ(result.curves.size(), 4u);
        EXPECT_TRUE(result.skipped.empty());
        for (const PhantomCurve& curve : result.curves) {
            EXPECT_EQ(curve.recordings, 8u);
            EXPECT_GT(curve.trials, 700u);
            EXPECT_LE(at10(curve).share, 0.1) << curve.fault << " seed " << seed;
            EXPECT_LT(curve.largestDban, 60) << curve.fault;
        }
    }
}

TEST(Phantoms, IntervalsHoldTheirShareAndClustersWidenThem) {
    auto recordings = soundRecordings(6);
    // One recording in six full of a comb nobody listed: hits come in one cluster.
    auto setup = made::with(made::setupOf(made::motor(), 400, 2), "bearing_outer_race", "driver DE", 0.75);
    recordings.push_back(made::made(setup).recording);
    const Machine without =
        made::machineOf(R"({ "tag": "T-1", "mains_hz": 50, "driver": { "power_kw": 75, "poles": 4,
        "rated_rpm": 1484 }, "points": [ { "id": "P", "at": "driver DE",
        "channels": [ { "name": "x" }, { "name": "z" } ] } ] })");
    PhantomOptions options;
    options.perRecording = 200;
    const PhantomResult result = measured(without, recordings, options);
    int hits = 0;
    for (const PhantomCurve& curve : result.curves)
        for (const PhantomShare& share : curve.shares) {
            EXPECT_LE(share.low, share.share);
            EXPECT_GE(share.high, share.share);
            EXPECT_GE(share.low, 0);
            EXPECT_LE(share.high, 1);
            EXPECT_DOUBLE_EQ(share.share, double(share.reached) / double(curve.trials));
            EXPECT_NEAR(share.bound, std::pow(10, -share.atDban / 10), 1e-12);
            hits += share.reached > 0;
            // Wilson's half-width of independent trials, by hand; clusters can only widen it.
            const double n = double(curve.trials), p = share.share, z = 1.96;
            const double plain = z / (1 + z * z / n) * std::sqrt(p * (1 - p) / n + z * z / (4 * n * n));
            EXPECT_GE(share.high - share.share, plain * 0.99 - std::abs(p - 0.5) * z * z / n);
        }
    ASSERT_GT(hits, 0);
    const PhantomShare& outer = at10(result.curves[0]);
    const double n = double(result.curves[0].trials), p = outer.share;
    EXPECT_GT(outer.high - outer.low, 2 * 2 * 1.96 * std::sqrt(p * (1 - p) / n))
        << "all hits are of one recording";
}

// A phantom whose lines may be a bearing's own is not chance: with the bearing in the description the
// phantoms near it are not drawn; without it they are, and weigh.
TEST(Phantoms, NearTheMachinesOwnOrdersAreNotDrawn) {
    // 6206 of the table of common sizes: 9 elements of 9.525 mm on 46 mm, BPFO 3.57, as near it as its
    // sisters are.
    const auto machineWith = [](const std::string& bearings) {
        return made::machineOf(
            R"({ "tag": "T-1", "mains_hz": 50, "driver": { "power_kw": 75, "poles": 4, "rated_rpm": 1484,
            "bearings": {)" +
            bearings +
            R"(} }, "points": [ { "id": "P", "at": "driver DE",
            "channels": [ { "name": "x" }, { "name": "z" } ] } ] })");
    };
    const Machine known =
        machineWith(R"("DE": { "rolling_elements": 9, "element_mm": 9.525, "pitch_mm": 46 })");
    const auto made = made::made(made::with(made::setupOf(known, 5), "bearing_outer_race", "driver DE", 0.8));
    PhantomOptions options;
    options.perRecording = 1500;
    options.settings.claimStopsDban = 1e9;  // nothing is explained away: only what is drawn differs
    const auto shareWith = [&](const Machine& machine) {
        return measured(machine, {made.recording}, options).curves[0].shares.at(2).share;  // at 30 decibans
    };
    const double unknownBearing = shareWith(machineWith("")), knownBearing = shareWith(known);
    EXPECT_GT(unknownBearing, 0.05);
    EXPECT_LT(knownBearing,
              0.5 * unknownBearing);  // what is left fits a multiple of the true rate on a foreign shaft
}

TEST(Phantoms, AreTheSameForOneSeedOnAnyNumberOfThreads) {
    const auto recordings = soundRecordings(3);
    PhantomOptions options;
    options.perRecording = 30;
    const PhantomResult one = measured(made::motor(), recordings, options);
    options.threads = 3;
    const PhantomResult three = measured(made::motor(), recordings, options);
    options.seed = 2;
    const PhantomResult other = measured(made::motor(), recordings, options);
    bool differs = false;
    for (std::size_t i = 0; i < one.curves.size(); ++i) {
        EXPECT_EQ(one.curves[i].largestDban, three.curves[i].largestDban);
        EXPECT_EQ(one.curves[i].shares[0].reached, three.curves[i].shares[0].reached);
        differs |= one.curves[i].largestDban != other.curves[i].largestDban;
    }
    EXPECT_TRUE(differs);
}

TEST(Phantoms, RecordingsOnWhichNothingCanBeWeighedAreNamed) {
    auto brief = made::setupOf(made::motor(), 9, 0.2);
    const auto made = made::made(brief);
    const PhantomResult result = measured(made::motor(), {made.recording}, {});
    ASSERT_EQ(result.skipped.size(), 1u);
    EXPECT_NE(result.skipped[0].find(made.recording->file), std::string::npos);
    EXPECT_EQ(result.curves.at(0).trials, 0u);
    PhantomOptions cancelled;
    cancelled.cancel.cancel();
    const auto stopped = measurePhantoms(made::motor(), {made.recording}, cancelled);
    ASSERT_FALSE(stopped);
    EXPECT_EQ(stopped.error().kind, ErrorKind::Cancelled);
}

}  // namespace
}  // namespace fettle
