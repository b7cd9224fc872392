// A comb of a bearing nobody described is found, paid for, and never outranks the lines of a described one.
// Bound: P(weight >= 10 decibans) <= 1 in 10 by Markov's inequality for an e-value (Vovk and Wang 2021).
#include "core/diagnosis/unknown_bearing.h"

#include <gmock/gmock.h>

#include "tests/diagnosis/examined.h"
#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

using testing::HasSubstr;

// The motor of made_recordings.h as its owner would describe it who never read the plates.
Machine undescribed() {
    return made::machineOf(R"({ "tag": "T-1", "service": "test motor", "mains_hz": 50, "support": "rigid",
        "driver": { "power_kw": 75, "poles": 4, "rated_rpm": 1484 },
        "points": [ { "id": "P", "at": "driver DE", "mount": "bearing_housing", "channels": [
            { "name": "x", "quantity": "acceleration", "unit": "g", "direction": "horizontal" },
            { "name": "z", "quantity": "acceleration", "unit": "g", "direction": "axial" } ] } ] })");
}

const Hypothesis* unknownIn(const Examination& e) {
    for (const Hypothesis& h : e.considered)
        if (h.fault == "bearing_unknown") return &h;
    return nullptr;
}

TEST(UnknownBearing, ACombOfABearingNobodyDescribedIsFound) {
    // BPFO 3.562, BPFI 5.438 of the bearing the simulator has.
    const struct {
        const char* fault;
        double order;
    } cases[] = {{"bearing_outer_race", 3.562}, {"bearing_inner_race", 5.438}};
    for (const auto& one : cases) {
        const auto made = made::made(made::with(made::setupOf(made::motor()), one.fault, "driver DE", 0.9));
        const Examination e = made::examined(undescribed(), made.recording);
        const Hypothesis* h = unknownIn(e);
        ASSERT_NE(h, nullptr);
        EXPECT_GE(h->weightDban.value_or(-99), 20) << one.fault;
        ASSERT_FALSE(h->best.rows.empty());
        EXPECT_NEAR(h->best.rows[0].order / one.order, 1, 0.02) << one.fault;
        EXPECT_THAT(h->sentence, HasSubstr("not described"));
        EXPECT_THAT(h->why, HasSubstr("2 %"));
    }
}

TEST(UnknownBearing, RowsAndSearchAddUp) {
    const auto made =
        made::made(made::with(made::setupOf(made::motor()), "bearing_outer_race", "driver DE", 0.9));
    const Examination e = made::examined(undescribed(), made.recording);
    const Hypothesis* h = unknownIn(e);
    ASSERT_NE(h, nullptr);
    double sum = h->best.searchDban;
    for (const LineRow& row : h->best.rows)
        sum += row.weightDban;
    EXPECT_NEAR(sum, *h->weightDban, 1e-9);
    EXPECT_LT(h->best.searchDban, -10) << "a search over all orders is paid";
}

TEST(UnknownBearing, TheLinesOfADescribedBearingAreNotUnknown) {
    for (const char* fault : {"bearing_outer_race", "bearing_inner_race"}) {
        const auto made = made::made(made::with(made::setupOf(made::motor()), fault, "driver DE", 0.75));
        const Examination e = made::examined(made::motor(), made.recording);
        ASSERT_FALSE(e.findings.empty());
        EXPECT_EQ(e.findings[0].fault, fault);
        EXPECT_LT(unknownIn(e)->weightDban.value_or(0), 10) << fault;
    }
}

TEST(UnknownBearing, NoiseAndSoundOrLooseMachinesHaveNone) {
    int ten = 0;
    constexpr int kRecords = 60;
    for (int seed = 0; seed < kRecords; ++seed) {
        const auto recording = made::recordingOf(made::noise(25600, 0.1, std::uint64_t(seed)), 12800, 1484);
        ten += unknownIn(made::examined(undescribed(), recording))->weightDban.value_or(0) >= 10;
    }
    EXPECT_LE(ten, kRecords / 10);
    for (const char* fault : {"unbalance", "looseness", "misalignment"})
        for (std::uint64_t seed = 1; seed <= 3; ++seed) {
            const auto made =
                made::made(made::with(made::setupOf(undescribed(), seed), fault, "driver", 0.9));
            EXPECT_LT(unknownIn(made::examined(undescribed(), made.recording))->weightDban.value_or(0), 20)
                << fault << " " << seed;
        }
}

// A neighbour's shaft a little slower draws a comb at nearly whole orders.
TEST(UnknownBearing, ANeighboursShaftOrdersAreLeftOut) {
    auto setup = made::with(made::setupOf(undescribed()), "neighbour", "", 1);
    setup.conditions.back().rpm = 1468;
    setup.conditions.back().levelMmS = 2;
    EXPECT_LT(unknownIn(made::examined(undescribed(), made::made(setup).recording))->weightDban.value_or(0),
              20);
}

}  // namespace
}  // namespace fettle
