// The influence method, the circles of four runs and readings, against published examples and physics.
// Inputs of the two examples of S. S. Rao, Mechanical Vibrations (grinding wheel, turbine rotor) are from
// memory; their results were computed apart from this program (NumPy), and agree with the printed ones.
#include <gtest/gtest.h>

#include <cmath>

#include "core/workshop/four_runs.h"
#include "core/workshop/influence.h"
#include "core/workshop/phasor.h"
#include "core/workshop/readings.h"

namespace fettle {
namespace {

Phasor at(double amount, double degrees) {
    return phasorOf({amount, degrees});
}

void expectPolar(Phasor phasor, double amount, double degrees, double near) {
    EXPECT_NEAR(polarOf(phasor).amount, amount, near);
    EXPECT_NEAR(degreesBetween(degrees, polarOf(phasor).degrees), 0, near * 100);
}

TEST(OnePlane, GrindingWheelOfRao) {
    const Phasor initial[] = {at(10, 40)};
    const TrialRun trials[] = {{at(4, 65), {at(6, 110)}}};
    const auto influence = influenceOf(initial, trials, TrialMasses::Removed);
    ASSERT_TRUE(influence);
    expectPolar(influence->perGram[0], 2.436154536, 119.64844, 1e-6);
    const auto masses = massesAgainst(*influence, initial);
    ASSERT_TRUE(masses);
    expectPolar((*masses)[0], 4.104829907, 100.35156, 1e-6);
    EXPECT_LT(std::abs(predicted(*influence, initial, *masses)[0]), 1e-12);
}

TEST(OnePlane, AnotherCaseComputedApart) {
    const Phasor initial[] = {at(5, 30)};
    const TrialRun trials[] = {{at(10, 0), {at(4, 100)}}};
    const auto influence = influenceOf(initial, trials, TrialMasses::Removed);
    ASSERT_TRUE(influence);
    expectPolar(influence->perGram[0], 0.5226776661, 164.01669, 1e-6);
    expectPolar((*massesAgainst(*influence, initial))[0], 9.566125213, 45.983307, 1e-6);
}

// Every phase shifted alike (a pick-up moved) leaves the mass; its place stays as well, because the mark did.
TEST(OnePlane, ANewPlaceOfThePickUpChangesNothing) {
    for (const double shift : {17.0, 123.0, 300.0}) {
        const Phasor initial[] = {at(10, 40 + shift)};
        const TrialRun trials[] = {{at(4, 65), {at(6, 110 + shift)}}};
        const auto influence = influenceOf(initial, trials, TrialMasses::Removed);
        ASSERT_TRUE(influence);
        expectPolar((*massesAgainst(*influence, initial))[0], 4.104829907, 100.35156, 1e-6);
    }
}

TEST(OnePlane, ATrialThatChangedNothingIsRefused) {
    const Phasor initial[] = {at(10, 40)};
    const TrialRun same[] = {{at(4, 65), {at(10, 40)}}}, little[] = {{at(4, 65), {at(10.5, 45)}}};
    EXPECT_FALSE(influenceOf(initial, same, TrialMasses::Removed));
    const auto refused = influenceOf(initial, little, TrialMasses::Removed);
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().place, "run 1");
    EXPECT_NE(refused.error().rule.find("20 %"), std::string::npos) << refused.error().rule;
}

const Phasor kTurbine[] = {at(8.5, 60), at(6.5, 205)};
const TrialRun kTurbineTrials[] = {{at(10, 270), {at(6, 125), at(4.5, 230)}},
                                   {at(12, 180), {at(6, 35), at(10.5, 160)}}};

TEST(TwoPlanes, TurbineRotorOfRao) {
    const auto influence = influenceOf(kTurbine, kTurbineTrials, TrialMasses::Removed);
    ASSERT_TRUE(influence);
    const Phasor published[] = {{0.2446303666, -0.7691458619},
                                {-0.0554093548, 0.3266464428},
                                {0.0700181293, 0.2998456372},
                                {0.3313143252, -0.5281858505}};
    for (int i = 0; i < 4; ++i)
        EXPECT_LT(std::abs(influence->perGram[std::size_t(i)] - published[i]), 1e-9) << i;
    const auto masses = massesAgainst(*influence, kTurbine);
    ASSERT_TRUE(masses);
    // Weights to add; the unbalance itself lies opposite, at 145.5548 and 248.2559 degrees.
    expectPolar((*masses)[0], 10.0561387, 325.5548, 1e-6);
    expectPolar((*masses)[1], 5.877361663, 68.255934, 1e-6);
    for (const Phasor& left : predicted(*influence, kTurbine, *masses))
        EXPECT_LT(std::abs(left), 1e-12);
}

// The same rotor with the first weight left on during the second trial run gives the same coefficients.
TEST(TwoPlanes, TrialMassesLeftOnGiveTheSame) {
    const auto removed = influenceOf(kTurbine, kTurbineTrials, TrialMasses::Removed);
    ASSERT_TRUE(removed);
    TrialRun second = kTurbineTrials[1];
    for (std::size_t s = 0; s < 2; ++s)
        second.vibration[s] += removed->at(s, 0) * kTurbineTrials[0].mass;
    const TrialRun trials[] = {kTurbineTrials[0], second};
    const auto leftOn = influenceOf(kTurbine, trials, TrialMasses::LeftOn);
    ASSERT_TRUE(leftOn);
    for (std::size_t i = 0; i < 4; ++i)
        EXPECT_LT(std::abs(leftOn->perGram[i] - removed->perGram[i]), 1e-12);
}

TEST(TwoPlanes, PlanesThatWorkAlikeAreRefused) {
    Influence alike{2, {at(1, 10), at(2, 40), at(3, 50), at(6, 80)}};
    EXPECT_TRUE(std::isinf(conditionOf(alike)));
    EXPECT_FALSE(massesAgainst(alike, kTurbine));
    alike.perGram[3] = at(6.2, 81);
    EXPECT_GT(conditionOf(alike), kMostCondition);
    EXPECT_FALSE(massesAgainst(alike, kTurbine));
}

// Of matrices whose singular values are known: a turned scaled identity, and [1 1; 1 -1] evened out.
TEST(TwoPlanes, ConditionOfKnownMatrices) {
    EXPECT_NEAR(conditionOf({2, {at(2, 30), 0, 0, at(5, 200)}}), 1, 1e-12);
    EXPECT_NEAR(conditionOf({2, {1, 1, 1, -1}}), 1, 1e-12);
    // (1 c; c 1) with equal rows and columns: (1 + c) / (1 - c).
    EXPECT_NEAR(conditionOf({2, {1, 0.5, 0.5, 1}}), 3, 1e-12);
    EXPECT_EQ(conditionOf({1, {at(3, 20)}}), 1);
}

// Amounts as a linear rotor gives them: |V0 + alpha T|.
std::vector<AmountRun> runsOf(Phasor v0, Phasor alpha, double trial, const std::vector<double>& places) {
    std::vector<AmountRun> runs;
    for (const double degrees : places)
        runs.push_back({degrees, std::abs(v0 + alpha * at(trial, degrees))});
    return runs;
}

TEST(FourRuns, FindWhatAPhaseWouldHaveFound) {
    for (const std::vector<double>& places :
         {std::vector<double>{0, 120, 240}, {0, 90, 180}, {10, 100, 250}, {355, 45, 200}})
        for (const double phase : {0.0, 77.0, 211.0})
            for (const double strength : {0.2, 1.0, 3.0}) {
                const Phasor v0 = at(6.2, 33), alpha = at(strength * 6.2 / 20, phase);
                const auto found = fromFourRuns(6.2, 20, runsOf(v0, alpha, 20, places));
                ASSERT_TRUE(found) << strength << " " << phase;
                EXPECT_LT(std::abs(found->correction + v0 / alpha), 1e-6 * std::abs(v0 / alpha));
                EXPECT_NEAR(found->perGram, std::abs(alpha), 1e-8);
                EXPECT_LT(found->missShare, 1e-8);
            }
}

TEST(FourRuns, CirclesThatMissAreSaidAndRefused) {
    std::vector<AmountRun> runs = runsOf(at(6.2, 33), at(0.2, 77), 20, {0, 120, 240});
    const auto sound = fromFourRuns(6.2, 20, runs);
    ASSERT_TRUE(sound);
    runs[1].amount *= 1.3;
    const auto doubtful = fromFourRuns(6.2, 20, runs);
    ASSERT_TRUE(doubtful);
    EXPECT_GT(doubtful->missShare, 0.05);
    runs[1].amount *= 2;
    EXPECT_FALSE(fromFourRuns(6.2, 20, runs));
}

TEST(FourRuns, PlacesTooNearAndTrialsThatDoNothingAreRefused) {
    const auto near = fromFourRuns(6, 20, runsOf(at(6, 0), at(0.2, 50), 20, {0, 20, 200}));
    ASSERT_FALSE(near);
    EXPECT_EQ(near.error().place, "run 2");
    EXPECT_FALSE(fromFourRuns(6, 20, runsOf(at(6, 0), at(0.001, 50), 20, {0, 120, 240})));
    EXPECT_FALSE(fromFourRuns(0, 20, runsOf(at(6, 0), at(0.2, 50), 20, {0, 120, 240})));
    EXPECT_FALSE(fromFourRuns(6, 20, runsOf(at(6, 0), at(0.2, 50), 20, {0, 120})));
}

// Limits as the trade has them (common practice, no source): 10 %, 10 degrees.
TEST(Readings, ThatScatterAreRefused) {
    const Phasor steady[] = {at(5.0, 359), at(5.2, 3), at(4.9, 1)};
    const auto mean = steadyMean(steady);
    ASSERT_TRUE(mean);
    EXPECT_NEAR(mean->scatterDegrees, 4, 1e-9);
    EXPECT_NEAR(mean->scatterShare, 0.3 / (15.1 / 3), 1e-9);
    EXPECT_NEAR(polarOf(mean->mean).degrees, 1.02, 0.05);
    const Phasor amounts[] = {at(5, 0), at(5.6, 0)}, phases[] = {at(5, 355), at(5, 6)};
    EXPECT_NE(steadyMean(amounts).error().rule.find("11 %"), std::string::npos);
    EXPECT_NE(steadyMean(phases).error().rule.find("11 degrees"), std::string::npos);
    EXPECT_FALSE(steadyMean({}));
}

// A mass turning with the shaft pulls the housing towards it: seen by a sensor at the top, the pull peaks
// when the mass is at the top. The mark sits at 0; a mass counted `place` degrees against the rotation
// reaches the top so many degrees of turning after the mark does.
TEST(Angles, AMassCountedAgainstTheRotationLagsByItsPlace) {
    const AngleConvention usual{}, other{Counted::WithRotation, PhaseIs::Lead};
    for (const double place : {0.0, 40.0, 200.0}) {
        EXPECT_NEAR(degreesBetween(place, polarOf(massPhasor({1, place}, usual)).degrees), 0, 1e-9);
        // The same spot counted with the rotation, its vibration read as a lead.
        EXPECT_LT(std::abs(massPhasor({1, 360 - place}, other) - massPhasor({1, place}, usual)), 1e-12);
        EXPECT_LT(std::abs(vibrationPhasor({1, 360 - place}, other) - vibrationPhasor({1, place}, usual)),
                  1e-12);
        EXPECT_NEAR(massAsCounted(massPhasor({3, place}, other), other).degrees, place, 1e-9);
    }
    EXPECT_EQ(turned(-30), 330);
    EXPECT_EQ(turned(720), 0);
    EXPECT_NEAR(degreesBetween(350, 10), 20, 1e-12);
}

}  // namespace
}  // namespace fettle
