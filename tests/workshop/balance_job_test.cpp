// A balancing job as a whole: a linear rotor whose coefficients are known is "measured", the job has to take
// its unbalance away. Published figures: Rao's examples and the turbine rotor of ISO 1940-1, as in the tests
// of the methods.
#include "core/workshop/balance_job.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/workshop/balance_solve.h"
#include "core/workshop/grams.h"

namespace fettle {
namespace {

BalanceRun read(std::vector<Polar> bySensor, std::optional<Polar> trial = {}) {
    BalanceRun run;
    run.trial = trial;
    for (const Polar& one : bySensor)
        run.sensors.push_back({{one.amount, one.degrees}});
    return run;
}

BalanceJob grindingWheel() {
    BalanceJob job;
    job.machine = "K-1";
    job.name = "wheel";
    job.cautionsRead = true;
    job.rotor.massKg = 60;
    job.rotor.rpm = 1500;
    fitToMethod(job);
    job.planes[0].radiusMm = 150;
    job.initial = read({{10, 40}});
    job.trials = {read({{6, 110}}, Polar{4, 65})};
    return job;
}

BalanceJob turbine() {
    BalanceJob job;
    job.method = BalanceMethod::TwoPlanes;
    job.cautionsRead = true;
    job.rotor.massKg = 3600;
    job.rotor.rpm = 3000;
    job.rotor.grade = 2.5;
    fitToMethod(job);
    job.planes[0].fromCentreMm = 1500;
    job.planes[1].fromCentreMm = 900;
    job.planes[0].radiusMm = job.planes[1].radiusMm = 400;
    job.initial = read({{8.5, 60}, {6.5, 205}});
    job.trials = {read({{6, 125}, {4.5, 230}}, Polar{10, 270}), read({{6, 35}, {10.5, 160}}, Polar{12, 180})};
    return job;
}

bool has(const BalanceAnswer& answer, BalanceRemark::Kind kind, const std::string& place) {
    return std::any_of(answer.remarks.begin(), answer.remarks.end(), [&](const BalanceRemark& remark) {
        return remark.kind == kind && remark.place == place;
    });
}

std::string wordsOf(const BalanceAnswer& answer) {
    std::string all;
    for (const BalanceRemark& remark : answer.remarks)
        all += remark.place + ": " + remark.words + "\n";
    return all;
}

TEST(BalanceJob, OnePlaneByRao) {
    const BalanceAnswer answer = solveBalance(grindingWheel());
    ASSERT_TRUE(answer.solved) << wordsOf(answer);
    EXPECT_TRUE(answer.remarks.empty()) << wordsOf(answer);
    EXPECT_NEAR(answer.planes[0].toFit.amount, 4.104829907, 1e-6);
    EXPECT_NEAR(answer.planes[0].toFit.degrees, 100.35156, 1e-4);
    EXPECT_NEAR(answer.sensors[0].predicted->amount, 0, 1e-9);
    EXPECT_NEAR(answer.planes[0].initialGmm, 4.104829907 * 150, 1e-3);
}

TEST(BalanceJob, TwoPlanesByRaoAndTheStandardsRotor) {
    const BalanceAnswer answer = solveBalance(turbine());
    ASSERT_TRUE(answer.solved) << wordsOf(answer);
    EXPECT_NEAR(answer.planes[0].toFit.amount, 10.0561387, 1e-6);
    EXPECT_NEAR(answer.planes[0].toFit.degrees, 325.5548, 1e-4);
    EXPECT_NEAR(answer.planes[1].toFit.amount, 5.877361663, 1e-6);
    EXPECT_NEAR(answer.planes[1].toFit.degrees, 68.255934, 1e-4);
    EXPECT_NEAR(*answer.permissibleGmm, 28647.9, 0.05);
    EXPECT_NEAR(*answer.offsetUm, 7.95774715, 1e-7);
    EXPECT_NEAR(*answer.planes[0].permissibleGmm, 10743, 0.5);
    EXPECT_NEAR(*answer.planes[1].permissibleGmm, 17905, 0.5);
}

// Left on, the masses to fit come on top of them.
TEST(BalanceJob, TrialMassesLeftOnAreCountedIn) {
    BalanceJob job = grindingWheel();
    job.trialMasses = TrialMasses::LeftOn;
    const BalanceAnswer answer = solveBalance(job);
    ASSERT_TRUE(answer.solved);
    const Phasor whole = phasorOf(answer.planes[0].toFit) + phasorOf({4, 65});
    EXPECT_NEAR(polarOf(whole).amount, 4.104829907, 1e-6);
    EXPECT_NEAR(answer.sensors[0].predicted->amount, 0, 1e-9);
}

// Whoever counts places with the rotation and reads leads finds the same spot on the rotor.
TEST(BalanceJob, EitherSenseOfAnglesFindsTheSameSpot) {
    BalanceJob mirrored = grindingWheel();
    mirrored.convention = {Counted::WithRotation, PhaseIs::Lead};
    mirrored.initial = read({{10, 320}});
    mirrored.trials = {read({{6, 250}}, Polar{4, 295})};
    const BalanceAnswer answer = solveBalance(mirrored);
    ASSERT_TRUE(answer.solved);
    EXPECT_NEAR(answer.planes[0].toFit.degrees, 360 - 100.35156, 1e-4);
}

TEST(BalanceJob, CheckRunTellsTheResidualAgainstTheGrade) {
    BalanceJob job = grindingWheel();
    job.check = read({{0.5, 200}});
    BalanceAnswer answer = solveBalance(job);
    // 0.5 / 2.436154536 of a gram at 150 mm.
    EXPECT_NEAR(*answer.planes[0].residualGmm, 0.5 / 2.436154536 * 150, 1e-6);
    EXPECT_TRUE(*answer.withinGrade);
    ASSERT_TRUE(answer.planes[0].trim);
    job.rotor.massKg = 0.5;
    job.rotor.grade = 0.4;
    answer = solveBalance(job);
    EXPECT_FALSE(*answer.withinGrade);
    job.check = read({{12, 200}});
    EXPECT_TRUE(has(solveBalance(job), BalanceRemark::Kind::Doubt, "/check/sensors/0"));
}

TEST(BalanceJob, FourRunsFindTheWheelsMassWithoutPhase) {
    BalanceJob job = grindingWheel();
    job.method = BalanceMethod::FourRuns;
    const Phasor v0 = phasorOf({10, 40}), alpha = phasorOf({2.436154536, 119.64844});
    job.trials.clear();
    for (const double place : {0.0, 110.0, 230.0})
        job.trials.push_back(read({{std::abs(v0 + alpha * phasorOf({4, place})), 0}}, Polar{4, place}));
    const BalanceAnswer answer = solveBalance(job);
    ASSERT_TRUE(answer.solved) << wordsOf(answer);
    EXPECT_NEAR(answer.planes[0].toFit.amount, 4.104829907, 1e-5);
    EXPECT_NEAR(answer.planes[0].toFit.degrees, 100.35156, 1e-3);
    EXPECT_NEAR(*answer.perGram(0, 0), 2.436154536, 1e-5);
    job.trials[2].trial->amount = 5;
    EXPECT_TRUE(has(solveBalance(job), BalanceRemark::Kind::Refusal, "/trials/2/trial"));
}

TEST(BalanceJob, SavedCoefficientsNeedNoTrialAndWarn) {
    const auto saved = influenceToSave(grindingWheel(), "2026-05-10");
    ASSERT_TRUE(saved);
    BalanceJob later = grindingWheel();
    later.saved = *saved;
    later.planes[0].radiusMm = 300;  // twice the radius, half the mass
    later.initial = read({{5, 130}});
    later.initial.rpm = 1400;
    fitToMethod(later);
    const BalanceAnswer answer = solveBalance(later);
    ASSERT_TRUE(answer.solved) << wordsOf(answer);
    EXPECT_NEAR(answer.planes[0].toFit.amount, 5 / 2.436154536 / 2, 1e-6);
    EXPECT_TRUE(has(answer, BalanceRemark::Kind::Doubt, "/saved"));
    EXPECT_TRUE(has(answer, BalanceRemark::Kind::Doubt, "/initial/rpm")) << wordsOf(answer);
}

TEST(BalanceJob, WhatIsMissingAndWhatIsRefusedStandsAtItsPlace) {
    BalanceJob job;
    fitToMethod(job);
    BalanceAnswer answer = solveBalance(job);
    EXPECT_FALSE(answer.solved);
    EXPECT_FALSE(answer.refused());
    for (const char* place : {"/rotor/mass_kg", "/rotor/rpm", "/planes/0/radius_mm", "/initial/sensors/0",
                              "/trials/0/trial", "/trials/0/sensors/0", "/cautions_read"})
        EXPECT_TRUE(has(answer, BalanceRemark::Kind::Missing, place)) << place;
    job = grindingWheel();
    job.initial.sensors[0] = {{10, 40.0}, {10, 55.0}};
    answer = solveBalance(job);
    EXPECT_TRUE(answer.refused());
    EXPECT_TRUE(has(answer, BalanceRemark::Kind::Refusal, "/initial/sensors/0"));
    job = grindingWheel();
    job.trials[0].sensors[0] = {{10.2, 42.0}};
    EXPECT_TRUE(has(solveBalance(job), BalanceRemark::Kind::Refusal, "/trials/0"));
    job = grindingWheel();
    job.trials[0].trial->amount = 400;  // the advice is 15.9 g
    EXPECT_TRUE(has(solveBalance(job), BalanceRemark::Kind::Doubt, "/trials/0/trial"));
}

TEST(BalanceJob, ExistingMassesAreJoined) {
    BalanceJob job = grindingWheel();
    job.planes[0].existing = {{{2, 280.35156}, 150}};  // opposite to the correction
    const BalanceAnswer answer = solveBalance(job);
    ASSERT_TRUE(answer.planes[0].instead);
    EXPECT_NEAR(answer.planes[0].instead->amount, 2.104829907, 1e-5);
}

TEST(BalanceJob, ComesBackFromItsDocument) {
    BalanceJob job = turbine();
    job.name = "T \"1\"";
    job.convention = {Counted::WithRotation, PhaseIs::Lead};
    job.trialMasses = TrialMasses::LeftOn;
    job.planes[1].places = {12, 7.5, {3, 4}, 250, 5};
    job.planes[0].existing = {{{12, 30}, 390}};
    job.sensors[0].channel = "M-DE x";
    job.rotor.clockwise = false;
    job.check = read({{1, 2}, {3, 4}});
    job.check->rpm = 2990;
    const auto back = readBalance(balanceJson(job), "job 1");
    ASSERT_TRUE(back) << back.error().sentence();
    EXPECT_EQ(balanceJson(*back), balanceJson(job));
    EXPECT_EQ(back->planes[1].places.taken, (std::vector<int>{3, 4}));
    BalanceJob later = grindingWheel();
    later.saved = influenceToSave(grindingWheel(), "2026-05-10");
    fitToMethod(later);
    const auto again = readBalance(balanceJson(later), "job 2");
    ASSERT_TRUE(again) << again.error().sentence();
    EXPECT_LT(std::abs(again->saved->influence.perGram[0] - later.saved->influence.perGram[0]), 1e-12);
}

TEST(BalanceJob, DocumentsThatAreNoneAreRefusedWithTheirPlace) {
    EXPECT_FALSE(readBalance("", "a"));
    EXPECT_EQ(readBalance("{\"schema\": 2}", "a").error().kind, ErrorKind::Unsupported);
    const std::string text = balanceJson(grindingWheel());
    const auto spoiled = [&](const std::string& from, const std::string& to) {
        std::string other = text;
        other.replace(other.find(from), from.size(), to);
        return readBalance(other, "a");
    };
    EXPECT_EQ(spoiled("\"one_plane\"", "\"nine_planes\"").error().place, "/method");
    EXPECT_EQ(spoiled("\"radius_mm\": 150.0", "\"radius_mm\": -1").error().place, "/planes/0/radius_mm");
    EXPECT_EQ(spoiled("\"amount\": 10.0", "\"amount\": \"x\"").error().place,
              "/initial/sensors/0/readings/0/amount");
}

// What the description of a fan suggests: speed by the train's ratio, grade of fans, a place a blade.
TEST(BalanceJob, IsProposedFromTheMachine) {
    Machine machine;
    machine.tag = "F-7";
    machine.driver.ratedRpm = 1480;
    machine.driver.shaftHeightMm = 280;
    machine.shafts = {{"motor", "driver", 1, 0}, {"fan", "driven", 0.5, 0}};
    machine.driven = {"fan", 12, true};
    const BalanceJob motor = proposedJob(machine, "driver"), fan = proposedJob(machine, "driven");
    EXPECT_EQ(motor.rotor.grade, 2.5);
    EXPECT_EQ(fan.rotor.grade, 6.3);
    EXPECT_EQ(fan.rotor.rpm, 740);
    EXPECT_EQ(fan.planes[0].places.count, 12);
}

// Triangle inequality: what a mass of known size made of the level bounds what a gram does.
TEST(Grams, HoldTheTrueMassWhicheverWayTheRestPoints) {
    const double perGram = 0.02, fitted = 250;
    for (const double restDegrees : {0.0, 60.0, 120.0, 180.0}) {
        const Phasor rest = phasorOf({0.7, restDegrees}), before = rest + perGram * fitted;
        const auto known = perGramOfKnownMass(std::abs(before), std::abs(rest), fitted);
        ASSERT_TRUE(known);
        EXPECT_LE(known->low, perGram + 1e-12);
        EXPECT_GE(known->high, perGram - 1e-12);
        for (const double addedDegrees : {0.0, 90.0, 200.0}) {
            const double level = std::abs(rest + perGram * phasorOf({310, addedDegrees}));
            const MassInterval mass = massOf(level, *known, std::abs(rest));
            EXPECT_LE(mass.low, 310 + 1e-9);
            EXPECT_GE(mass.high, 310 - 1e-9);
        }
    }
    EXPECT_FALSE(perGramOfKnownMass(5, 4, 250));
    EXPECT_FALSE(perGramOfKnownMass(5, 1, 0));
    EXPECT_EQ(massOf(3, {}, 0).grams, 0);
    EXPECT_NEAR(massOf(6.2, perGramOfJob(0.02), 0).grams, 310, 1e-9);
}

}  // namespace
}  // namespace fettle
