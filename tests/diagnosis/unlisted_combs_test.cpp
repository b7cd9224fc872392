// A comb that nobody described claims its lines: no described bearing lives on them.
#include "core/diagnosis/unlisted_combs.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/diagnosis/phantoms.h"
#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

// The motor with a defect in a bearing that its description does not have: the plate is of another size.
Machine wronglyDescribed() {
    return made::machineOf(R"({ "tag": "T-1", "service": "test motor", "mains_hz": 50, "support": "rigid",
        "driver": { "power_kw": 75, "poles": 4, "rated_rpm": 1484,
          "bearings": { "DE": { "rolling_elements": 13, "element_mm": 15, "pitch_mm": 118.0 } } },
        "points": [ { "id": "P", "at": "driver DE", "mount": "bearing_housing", "fixing": "stud", "channels": [
            { "name": "x", "quantity": "acceleration", "unit": "g", "direction": "horizontal" },
            { "name": "z", "quantity": "acceleration", "unit": "g", "direction": "axial" } ] } ] })");
}

PreparedRecording preparedWrongly(const Machine& machine, std::uint64_t seed) {
    const auto setup = made::with(made::setupOf(made::motor(), seed), "bearing_outer_race", "driver DE", 0.9);
    return prepare(machine, made::made(setup).recording, {});
}

TEST(UnlistedCombs, TheCombIsFoundAndDescribedBearingsKeepNoneOfItsLines) {
    const Machine machine = wronglyDescribed();
    for (const std::uint64_t seed : {5u, 6u, 7u}) {
        const PreparedRecording prepared = preparedWrongly(machine, seed);
        std::vector<ChannelEvidence> evidence = prepared.evidence;
        const auto all = weighBearings(machine, prepared, askBearings(machine, prepared), evidence, {});
        ASSERT_EQ(all.unknown.size(), 1u);
        EXPECT_GE(*all.unknown[0].weightDban, 20) << seed;
        // BPFO of the true bearing: 9 / 2 x (1 - 25 / 120) (textbook kinematics).
        EXPECT_THAT(all.unknown[0].best.variant, ::testing::HasSubstr("3.5")) << seed;
        for (const Weighed& described : all.described)
            EXPECT_LT(described.now.weightDban, 20) << seed;
    }
}

// A weight after claims is never more than before: a smaller e-value is still one.
TEST(UnlistedCombs, ClaimsOnlyLower) {
    const Machine machine = wronglyDescribed();
    const PreparedRecording prepared = preparedWrongly(machine, 8);
    std::vector<ChannelEvidence> before = prepared.evidence, after = prepared.evidence;
    const AskedBearings asked = askBearings(machine, prepared);
    const auto alone = explainAway(asked.hypotheses, before, prepared.rates, {});
    const auto all = weighBearings(machine, prepared, asked, after, {});
    for (std::size_t i = 0; i < alone.size(); ++i)
        EXPECT_LE(all.described[i].now.weightDban, alone[i].now.weightDban) << i;
}

}  // namespace
}  // namespace fettle
