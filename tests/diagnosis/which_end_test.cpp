// The same bearing at both ends of a motor: one point cannot tell them apart, a week of two points may.
// Source: impacts lose more than half on their way to the other end (common practice, no source; so does the
// simulator).
#include "core/diagnosis/which_end.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/diagnosis/examine.h"
#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

using ::testing::HasSubstr;

// Points at one or both ends; `nde`: the bearing there.
Machine twoEnds(bool bothPoints,
                const std::string& nde = R"("rolling_elements": 9, "element_mm": 25, "pitch_mm": 120.0)") {
    const std::string channels =
        R"("mount": "bearing_housing", "channels": [ { "name": "x", "direction": "horizontal" },
        { "name": "z", "direction": "axial" } ])";
    return made::machineOf(
        R"({ "tag": "T-3", "mains_hz": 50, "support": "rigid", "driver": { "power_kw": 75,
        "poles": 4, "rated_rpm": 1484, "bearings": {
          "DE": { "rolling_elements": 9, "element_mm": 25, "pitch_mm": 120.0 }, "NDE": { )" +
        nde + R"( } } }, "points": [ { "id": "M-DE", "at": "driver DE", )" + channels + "}" +
        (bothPoints ? R"(, { "id": "M-NDE", "at": "driver NDE", )" + channels + "}" : "") + " ] }");
}

// Recordings of different points and lengths, as a week brings them.
std::vector<RecordingPtr> weekOf(const Machine& machine, const std::string& at, double severity,
                                 const std::vector<double>& lengths = {4, 2, 4}) {
    std::vector<RecordingPtr> week;
    for (std::size_t point = 0; point < machine.points.size(); ++point)
        for (std::size_t i = 0; i < lengths.size(); ++i) {
            auto setup = made::setupOf(machine, 10 * point + i + 1, lengths[i]);
            setup.point = point;
            week.push_back(made::made(made::with(setup, "bearing_outer_race", at, severity)).recording);
        }
    return week;
}

const Hypothesis* strongest(const Examination& e) {
    for (const Hypothesis& h : e.findings)
        if (h.fault == "bearing_outer_race") return &h;
    return nullptr;
}

std::size_t outerRaces(const Examination& e) {
    return std::size_t(std::count_if(e.findings.begin(), e.findings.end(),
                                     [](const Hypothesis& h) { return h.fault == "bearing_outer_race"; }));
}

TEST(WhichEnd, LevelsOfTwoPointsTellOverAWeek) {
    const Machine machine = twoEnds(true);
    for (const double severity : {0.5, 0.9})
        for (const char* at : {"driver DE", "driver NDE"}) {
            const auto e = examine(machine, weekOf(machine, at, severity));
            ASSERT_TRUE(e);
            const Hypothesis* found = strongest(*e);
            ASSERT_NE(found, nullptr) << at;
            EXPECT_EQ(found->at, at) << severity << " " << found->sentence;
            EXPECT_EQ(outerRaces(*e), 1u);
            EXPECT_EQ(found->recordingCount, 6u);
            EXPECT_THAT(found->sentence, HasSubstr("times as high"));
        }
}

TEST(WhichEnd, OnePointOrdersForBoth) {
    const Machine machine = twoEnds(false);
    const auto e = examine(machine, weekOf(machine, "driver NDE", 0.75));
    ASSERT_TRUE(e);
    const Hypothesis* found = strongest(*e);
    ASSERT_NE(found, nullptr);
    EXPECT_EQ(found->at, "driver DE or NDE");
    EXPECT_THAT(found->sentence, HasSubstr("order for both"));
    EXPECT_THAT(found->sentence, HasSubstr("a reading at NDE"));
}

// BPFO 3.5625 and 3.5269, 1 %, 0.87 Hz apart: one second does not part them, sixteen do.
TEST(WhichEnd, ALongRecordingSpeaksForTheShortOnesOfItsWeek) {
    const Machine machine =
        twoEnds(false, R"("rolling_elements": 9, "element_mm": 25.95, "pitch_mm": 120.0)");
    const auto e = examine(machine, weekOf(machine, "driver NDE", 0.75, {1, 1, 16, 16}));
    ASSERT_TRUE(e);
    const Hypothesis* found = strongest(*e);
    ASSERT_NE(found, nullptr);
    EXPECT_EQ(found->at, "driver NDE");
    EXPECT_EQ(found->recordingCount, 4u);
    EXPECT_THAT(found->sentence, HasSubstr("at the orders of NDE"));
    EXPECT_EQ(outerRaces(*e), 1u) << found->sentence;
}

// 0.17 % apart: slip alone makes more, so no length of recording parts them.
TEST(WhichEnd, WhatSlipHidesNoLengthTells) {
    const Machine machine =
        twoEnds(false, R"("rolling_elements": 9, "element_mm": 25.165, "pitch_mm": 120.0)");
    const auto e = examine(machine, weekOf(machine, "driver NDE", 0.75, {2, 16}));
    ASSERT_TRUE(e);
    const Hypothesis* found = strongest(*e);
    ASSERT_NE(found, nullptr);
    EXPECT_EQ(found->at, "driver DE or NDE");
    EXPECT_EQ(outerRaces(*e), 1u);
}

// Ten times the signal swings ten times as far.
TEST(WhichEnd, TheSwingIsInProportion) {
    const Machine machine = twoEnds(false);
    auto recording = made::made(made::with(made::setupOf(machine), "bearing_outer_race", "driver DE", 0.75));
    const auto levelOf = [&] {
        const auto e = examine(machine, {recording.recording});
        return e ? strongest(*e)->best.levelG : 0;
    };
    const double once = levelOf();
    EXPECT_GT(once, 0);
    for (Channel& channel : recording.recording->channels)
        for (double& x : channel.samples)
            x *= 10;
    EXPECT_NEAR(levelOf() / once, 10, 0.01);
}

// A healthy week decides for no end.
TEST(WhichEnd, NothingFoundNothingDecided) {
    const Machine machine = twoEnds(true);
    std::vector<RecordingPtr> week;
    for (std::size_t point = 0; point < 2; ++point) {
        auto setup = made::setupOf(machine, point + 1);
        setup.point = point;
        week.push_back(made::made(setup).recording);
    }
    const auto e = examine(machine, week);
    ASSERT_TRUE(e);
    EXPECT_TRUE(e->findings.empty());
    for (const Hypothesis& h : e->considered) {
        if (h.weightDban) {
            EXPECT_NE(h.at, "driver DE") << h.fault;
        }
    }
}

}  // namespace
}  // namespace fettle
