// A trial in the fleet file, from plan to closing, on months made by hand (made_history.h): one recording a
// day with the levels and weights told here, so that every figure can be worked out on paper.
#include "core/fleet/trial_desk.h"

#include "core/fleet/balance_desk.h"
#include "core/fleet/trial_reading.h"
#include "tests/fleet/made_history.h"

namespace fettle::fleet_test {
namespace {

using namespace std::chrono_literals;
using testing::HasSubstr;

Heard onceOf(double mmS) {
    Heard heard;
    heard.order1MmS = mmS;
    return heard;
}
Heard raceOf(double dban) {
    Heard heard;
    heard.raceDban = dban;
    return heard;
}

class TrialDesk : public MadeHistory {
  protected:
    // 20 days at 0.5 mm/s at 1x (a tenth up and down), then a mass: 2 mm/s.
    void hearMass() {
        for (int day = 1; day <= 20; ++day)
            hear("FN-01", date(day), onceOf(day % 2 ? 0.45 : 0.55));
        for (int day = 22; day <= 28; ++day)
            hear("FN-01", date(day), onceOf(2));
    }
    static std::string date(int day) {
        return "2026-03-" + std::string(day < 10 ? "0" : "") + std::to_string(day);
    }

    Trial mass() {
        Trial trial;
        trial.name = "10 g at the fan";
        trial.machine = "FN-01";
        trial.change.at = "driver";
        trial.change.point = "P";
        trial.change.channel = "x";
        trial.change.massG = 10;
        trial.change.radiusMm = 100;
        trial.change.rotorKg = 60;
        trial.change.angleDeg = 0;
        trial.beforeFrom = at("2026-03-01T00:00:00Z");
        return promised(trial);
    }
    Trial promised(Trial trial) {
        const auto plan = trialPlan(*fleet_, "FN-01", trial.beforeFrom);
        EXPECT_TRUE(plan) << plan.error().sentence();
        TrialGround known = groundOf(*plan, trial.change);
        known.seconds = 4;  // the recordings made here hold no waveform to speak of
        trial.expectation = expectedOf(trial.change, *plan->machine, known);
        TrialPromise asked;
        asked.within = 5;
        trial.promise = promisedOf(trial.change, trial.expectation, asked);
        trial.precautions = trialCautions(trial.change.kind);
        trial.stopAt = "4.5 mm/s";
        trial.responsible = "A. Fitter";
        return trial;
    }
    std::int64_t begun(const Trial& trial) {
        const auto id = keepTrial(*fleet_, 0, trial);
        EXPECT_TRUE(id) << id.error().sentence();
        const auto started = startTrial(*fleet_, *id, "ida", at("2026-03-21T05:00:00Z"));
        EXPECT_TRUE(started) << started.error().sentence();
        return *id;
    }
};

TEST_F(TrialDesk, PlansOnWhatWasMeasured) {
    hearMass();
    const auto plan = trialPlan(*fleet_, "FN-01");
    ASSERT_TRUE(plan) << plan.error().sentence();
    EXPECT_EQ(plan->newest, at("2026-03-28T06:00:00Z"));
    EXPECT_NEAR(*plan->ground.driverRpm, 1484, 1e-9);
    EXPECT_THAT(plan->places, testing::Contains("driver DE"));
    ASSERT_EQ(plan->channels.size(), 1u);
    EXPECT_EQ(plan->channels[0].recordings, 14u);  // 14 to 28 March but the 21st
    const auto earlier = trialPlan(*fleet_, "FN-01", at("2026-03-01T00:00:00Z"));
    EXPECT_EQ(earlier->channels[0].recordings, 27u);
}

// t of 2 mm/s against 20 values of 0.45 and 0.55 (+-0.87 dB about 0.4975, drift of 1 dB added): 12 dB over a
// spread of 1.37 dB: beyond what 20 recordings can carry, 21^-3.
TEST_F(TrialDesk, AMassIsToldByTheThirdRecording) {
    hearMass();
    const auto id = begun(mass());
    const auto changed = tellChange(*fleet_, id, at("2026-03-21T06:00:00Z"), at("2026-03-21T12:00:00Z"));
    ASSERT_TRUE(changed) << changed.error().sentence();
    const auto result = trialResult(*fleet_, *changed);
    ASSERT_TRUE(result) << result.error().sentence();
    EXPECT_EQ(result->before, 20u);
    EXPECT_EQ(result->after, 7u);
    EXPECT_EQ(result->toldAfter, 3);
    EXPECT_EQ(*result->toldAt, at("2026-03-24T06:00:00Z"));
    EXPECT_EQ(result->falseBefore, 0u);
    EXPECT_NEAR(*result->onceAfterMmS, 2, 1e-12);
    EXPECT_NEAR(*result->weightAfterDban, mostChangeDban(20), 1e-9);
    EXPECT_EQ(result->outcome, "passed") << result->verdict;
}

TEST_F(TrialDesk, AMassThatMovesNothingFails) {
    for (int day = 1; day <= 28; ++day)
        if (day != 21) hear("FN-01", date(day), onceOf(day % 2 ? 0.45 : 0.55));
    const auto id = begun(mass());
    const auto changed = tellChange(*fleet_, id, at("2026-03-21T06:00:00Z"), at("2026-03-21T12:00:00Z"));
    const auto result = trialResult(*fleet_, *changed);
    EXPECT_EQ(result->outcome, "failed");
    EXPECT_FALSE(result->toldAfter);
}

TEST_F(TrialDesk, ABearingIsFollowedByItsWeight) {
    hearDays("FN-01", "2026-03-01", "2026-03-20", raceOf(-3));
    hearDays("FN-01", "2026-03-22", "2026-03-28", raceOf(31));
    Trial trial;
    trial.name = "race";
    trial.machine = "FN-01";
    trial.change.kind = TrialKind::Bearing;
    trial.change.follows = TrialFollows::Weight;
    trial.change.at = "driver DE";
    trial.change.fault = "bearing_outer_race";
    trial.beforeFrom = at("2026-03-01T00:00:00Z");
    const auto id = begun(promised(trial));
    const auto changed = tellChange(*fleet_, id, at("2026-03-20T12:00:00Z"), at("2026-03-21T12:00:00Z"));
    const auto result = trialResult(*fleet_, *changed);
    EXPECT_EQ(result->outcome, "passed") << result->verdict;
    EXPECT_NEAR(*result->weightBeforeDban, -3, 1e-9);
    EXPECT_NEAR(*result->weightAfterDban, 31, 1e-9);
}

TEST_F(TrialDesk, APromiseIsFrozenAndAClosedTrialNeverChanges) {
    hearMass();
    const auto id = begun(mass());
    Trial other = trialOf(*fleet_, id)->trial;
    other.promise.leastDban = 5;
    const auto refused = keepTrial(*fleet_, id, other);
    ASSERT_FALSE(refused);
    EXPECT_THAT(refused.error().sentence(), HasSubstr("does not change any more"));
    other = trialOf(*fleet_, id)->trial;
    other.remarks = "guard refitted";
    EXPECT_TRUE(keepTrial(*fleet_, id, other));
    EXPECT_FALSE(startTrial(*fleet_, id, "", at("2026-03-22T05:00:00Z")));

    ASSERT_TRUE(tellChange(*fleet_, id, at("2026-03-21T06:00:00Z"), at("2026-03-21T12:00:00Z")));
    const auto closed = closeTrial(*fleet_, id, at("2026-03-25T00:00:00Z"), "mass taken out");
    ASSERT_TRUE(closed) << closed.error().sentence();
    ASSERT_TRUE(closed->closedAt && closed->trial.result);
    EXPECT_EQ(closed->trial.result->after, 3u);  // 22 to 24 March
    const std::string verdict = closed->trial.result->verdict;
    hear("FN-01", "2026-03-29", onceOf(9));
    EXPECT_EQ(trialResult(*fleet_, *trialOf(*fleet_, id))->verdict, verdict);
    EXPECT_FALSE(closeTrial(*fleet_, id, at("2026-03-29T00:00:00Z"), ""));
    EXPECT_FALSE(tellChange(*fleet_, id, at("2026-03-21T06:00:00Z"), at("2026-03-21T13:00:00Z")));
}

TEST_F(TrialDesk, NothingIsStartedWithoutPromiseAndCautions) {
    hearMass();
    Trial trial = mass();
    trial.precautions.pop_back();
    const auto id = keepTrial(*fleet_, 0, trial);
    ASSERT_TRUE(id);
    const auto refused = startTrial(*fleet_, *id, "ida", at("2026-03-21T05:00:00Z"));
    ASSERT_FALSE(refused);
    EXPECT_THAT(refused.error().sentence(), HasSubstr("cautions"));
    trial.precautions = trialCautions(TrialKind::Mass);
    trial.stopAt.clear();
    EXPECT_THAT(startLacks(trial), testing::ElementsAre(HasSubstr("stopped")));
    const auto early = tellChange(*fleet_, *id, at("2026-03-21T06:00:00Z"), at("2026-03-21T12:00:00Z"));
    ASSERT_FALSE(early);
    EXPECT_THAT(early.error().sentence(), HasSubstr("promise comes before the change"));
}

TEST_F(TrialDesk, AChangeBeforeThePromiseIsSaid) {
    hearMass();
    const auto id = begun(mass());
    const auto changed = tellChange(*fleet_, id, at("2026-03-20T12:00:00Z"), at("2026-03-21T04:00:00Z"));
    EXPECT_THAT(trialResult(*fleet_, *changed)->notes, testing::Contains(HasSubstr("after the fact")));
}

TEST_F(TrialDesk, ListsSpansWhoseRecordingsAreKept) {
    hearMass();
    const auto id = begun(mass());
    ASSERT_TRUE(keepTrial(*fleet_, 0, mass()));  // a plan stands on nothing yet
    ASSERT_TRUE(tellChange(*fleet_, id, at("2026-03-21T06:00:00Z"), at("2026-03-21T12:00:00Z")));
    const auto spans = trialSpans(*fleet_, at("2026-03-28T12:00:00Z"));
    ASSERT_TRUE(spans);
    ASSERT_EQ(spans->size(), 2u);
    EXPECT_EQ((*spans)[0].machine, "FN-01");
    EXPECT_EQ((*spans)[0].until, at("2026-03-21T06:00:00Z"));
    EXPECT_EQ((*spans)[1].until, at("2026-03-28T12:00:00Z"));
    EXPECT_EQ(trialsOf(*fleet_, "FN-01")->size(), 2u);
    EXPECT_TRUE(trialsOf(*fleet_, "FN-02")->empty());
}

// Rao, Mechanical Vibrations, one plane (inputs from memory; per gram in the place of per ounce): 2.436154536
// a gram, here at a radius of 100 mm.
TEST_F(TrialDesk, AClosedBalancingLendsItsCoefficient) {
    hearMass();
    BalanceJob job = proposedJob(*trialPlan(*fleet_, "FN-01")->machine, "driver");
    job.machine = "FN-01";
    job.name = "spring";
    job.cautionsRead = true;
    job.rotor.rpm = 1484;
    fitToMethod(job);
    job.sensors[0].channel = "P x";
    job.planes[0].radiusMm = 100;
    job.initial.sensors = {{{10, 40}}};
    job.trials[0].trial = Polar{4, 65};
    job.trials[0].sensors = {{{6, 110}}};
    ASSERT_TRUE(keepBalance(*fleet_, 0, job, true));
    const auto plan = trialPlan(*fleet_, "FN-01", at("2026-03-01T00:00:00Z"));
    ASSERT_TRUE(plan) << plan.error().sentence();
    ASSERT_EQ(plan->ground.influences.size(), 1u);
    EXPECT_NEAR(plan->ground.influences[0].mmSPerGmm, 2.436154536 / 100, 1e-9);
    const Trial trial = promised(mass());
    EXPECT_THAT(trial.expectation.how, HasSubstr("the balancing \"spring\" of"));
    EXPECT_NEAR(*trial.expectation.moveHighMmS, 1.15 * 24.36154536, 1e-6);  // 1000 g mm
}

TEST(TrialWeight, TakesFiveUsualValues) {
    EXPECT_FALSE(weightAgainst({1, 1, 1, 1}, 5));
    EXPECT_FALSE(weightAgainst({1, 1, 1, 1, 1}, 0));
    EXPECT_LT(*weightAgainst({1, 1.1, 0.9, 1, 1.05, 0.95}, 1), 0);
}

}  // namespace
}  // namespace fettle::fleet_test
