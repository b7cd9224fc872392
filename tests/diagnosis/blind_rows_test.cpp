// Each reason once, and no fault key passed over in silence. Which faults a machine can have follows from its
// description (a machine without a belt has no belt fault).
#include "core/diagnosis/blind_rows.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "core/diagnosis/examine.h"
#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

using testing::ElementsAre;

TEST(BlindRows, OneReasonHidesManyFaultsAndPlaces) {
    const auto rows = blindRows({{"looseness", "driver", "no vertical channel", "a vertical reading"},
                                 {"belt", "B1", "length not known", "enter it"},
                                 {"soft_foot", "driver", "no vertical channel", "a vertical reading"},
                                 {"looseness", "driven", "no vertical channel", "a vertical reading"}});
    ASSERT_EQ(rows.size(), 2u);
    EXPECT_THAT(rows[0].faults, ElementsAre("looseness", "soft_foot"));
    EXPECT_THAT(rows[0].places, ElementsAre("driver", "driven"));
    EXPECT_EQ(blindWhat(rows[0]), "looseness, soft foot at driver, driven");
    EXPECT_EQ(blindWhat(rows[0], [](const std::string& at) { return at == "driver" ? "motor" : at; }),
              "looseness, soft foot at motor, driven");
}

TEST(BlindRows, WhatIsCuredAlikeAtOnePlaceStandsTogether) {
    const auto rows = blindRows({{"bearing_outer_race", "driver DE", "BPFO hidden", "8 s or more"},
                                 {"bearing_cage", "driver DE", "FTF hidden", "8 s or more"},
                                 {"bearing_cage", "driver NDE", "FTF hidden too", "8 s or more"},
                                 {"", "driver DE", "noise", "8 s or more"}});
    ASSERT_EQ(rows.size(), 3u);
    EXPECT_EQ(rows[0].why, "BPFO hidden; FTF hidden");
    EXPECT_EQ(blindWhat(rows[2]), "driver DE");
}

TEST(BlindRows, TheLongestRecordingCuresTheShorterOnesToo) {
    const auto rows =
        blindRows({{"bearing_outer_race", "driver DE", "BPFO hidden", "a recording of 8 s or more"},
                   {"bearing_cage", "driver DE", "FTF hidden", "a recording of 32 s or more"},
                   {"belt", "driver DE", "rate hidden", "enter it"}});
    ASSERT_EQ(rows.size(), 2u);
    EXPECT_EQ(rows[0].cure, "a recording of 32 s or more");
}

TEST(BlindRows, EachFaultHasAPlainNameAndOneRow) {
    EXPECT_EQ(faultKeys().size(), 25u);  // 26 of the schema but "sensor"
    EXPECT_EQ(std::set<std::string>(faultKeys().begin(), faultKeys().end()).size(), 25u);
}

FaultSight::State stateOf(const Machine& machine, const Examination& e, const std::string& fault) {
    for (const FaultSight& sight : faultSights(machine, e))
        if (sight.fault == fault) return sight.state;
    ADD_FAILURE() << fault;
    return FaultSight::State::Seen;
}

// A motor with a fan, points on both, no inverter, gear or belt.
TEST(BlindRows, EveryFaultIsSeenBlindOrNoConcern) {
    const Machine machine = made::fanSet();
    auto setup = made::setupOf(machine);
    const auto motor = made::made(setup).recording;
    const auto alone = examine(machine, {motor});
    ASSERT_TRUE(alone);
    using State = FaultSight::State;
    for (const char* fault : {"belt", "gear_mesh", "gear_tooth", "bearing_current", "cavitation"})
        EXPECT_EQ(stateOf(machine, *alone, fault), State::NoConcern) << fault;
    EXPECT_EQ(stateOf(machine, *alone, "unbalance"), State::Seen);
    EXPECT_EQ(stateOf(machine, *alone, "bearing_outer_race"), State::BlindSomewhere);  // the fan's
    EXPECT_EQ(stateOf(machine, *alone, "overheating"), State::Blind);
    setup.point = 1;
    const auto both = examine(machine, {motor, made::made(setup).recording});
    ASSERT_TRUE(both);
    EXPECT_EQ(stateOf(machine, *both, "bearing_outer_race"), State::Seen);
    // Nothing that concerns the machine is neither weighed, nor measured, nor followed, nor blind.
    for (const FaultSight& sight : faultSights(machine, *alone)) {
        if (sight.state != State::Seen) continue;
        const bool asked = std::any_of(alone->considered.begin(), alone->considered.end(),
                                       [&](const Hypothesis& h) { return h.fault == sight.fault; });
        EXPECT_TRUE(asked || sight.fault == "overheating") << sight.fault;
    }
}

}  // namespace
}  // namespace fettle
