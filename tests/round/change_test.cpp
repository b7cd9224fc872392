// Entries by change: listed beside the evidence, never within its promise, with the days they stand on,
// causes by what was added, and nothing where nothing matters. Expected places from the rules of ISO
// 13373-3:2015 (signatures, cited by title) and common practice, no source.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "core/diagnosis/fault_family.h"
#include "core/round/change_findings.h"
#include "core/round/change_groups.h"
#include "tests/round/made_weeks.h"

namespace fettle {
namespace {

using namespace made;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using ::testing::UnorderedElementsAre;

// 60 days about `was`, half a decibel either way, then a week at `now`.
FollowedChange followed(Followed quantity, const std::string& direction, double was, double now, MattersBy by,
                        int history = 60, const std::string& at = "driver DE") {
    std::vector<RunValue> values;
    for (int day = lastDay() - history - 6; day <= lastDay(); ++day) {
        RunValue one;
        one.time = startOfDay(day) + std::chrono::hours(6);
        one.running = "running";
        one.speedRpm = 1484;
        const bool week = day > lastDay() - 7;
        const double swing = day % 2 ? 0.5 : -0.5;
        one.value = quantity == Followed::TemperatureRise ? (week ? now : was) + swing
                                                          : (week ? now : was) * std::pow(10, swing / 20);
        values.push_back(one);
    }
    FollowedChange change;
    change.quantity = quantity;
    change.name = followedName(quantity);
    change.at = at;
    change.point = "M-DE";
    change.channel = direction.substr(0, 1);
    change.direction = direction;
    change.unit = quantity == Followed::TemperatureRise ? "K" : quantity == Followed::HighBand ? "g" : "mm/s";
    change.week = changeOfWeek(values, std::nullopt, lastDay() - 6, lastDay(),
                               quantity == Followed::TemperatureRise ? Scale::Linear : Scale::Decibels, by);
    return change;
}

const MattersBy kLine{1.4, 2.8, true, 6}, kLevel{1.4, 2.8, false, 6}, kNoLimit{{}, {}, false, 6},
    kHeat{{}, {}, false, 10};

std::vector<FollowedChange> shaft(double one, double two, double three, double axialOne, double level) {
    return {followed(Followed::Order1, "horizontal", 0.4, one, kLine),
            followed(Followed::Order2, "horizontal", 0.1, two, kLine),
            followed(Followed::Order3, "horizontal", 0.05, three, kLine),
            followed(Followed::Order1, "axial", 0.1, axialOne, kLine),
            followed(Followed::Velocity, "horizontal", 0.8, level, kLevel)};
}

MachineWeek changed(std::vector<FollowedChange> changes) {
    MachineWeek week = plain("A");
    week.changes = std::move(changes);
    return week;
}

TEST(ChangeEntry, GrownUnbalanceIsListedByChangeWithItsDays) {
    const RoundMachine m = alone(changed(shaft(2.0, 0.1, 0.05, 0.1, 2.15)));
    EXPECT_EQ(m.listedBy, ListedBy::Change);
    EXPECT_EQ(m.urgency, "watch");
    ASSERT_FALSE(m.findings.empty());
    const RoundFinding& f = m.findings[0];
    EXPECT_EQ(f.finding.fault, "unbalance");
    EXPECT_EQ(f.finding.at, "driver");
    EXPECT_GE(f.finding.weightDban.value_or(0), 20);
    EXPECT_GT(f.causeShare.value_or(0), 0.5);
    ASSERT_TRUE(f.change);
    EXPECT_EQ(f.change->quantity, "1x");
    EXPECT_NEAR(f.change->was, 0.4, 0.03);
    EXPECT_NEAR(f.change->now, 2.0, 0.15);
    EXPECT_EQ(f.change->baselineDays, 42);
    EXPECT_EQ(f.change->baselineFrom, lastDay() - 66);
    EXPECT_NEAR(f.change->since.value_or(0), lastDay() - 6, 1);
    EXPECT_THAT(f.finding.sentence, HasSubstr("rose from"));
    EXPECT_THAT(f.finding.sentence, HasSubstr("42 days from"));
    EXPECT_THAT(f.finding.sentence, HasSubstr("near 1484 r/min"));
    EXPECT_THAT(m.baseline, HasSubstr("42 days from"));
}

// e-BH knows nothing of it: the machine's weight and the list's need stay as they were.
TEST(ChangeEntry, StaysOutsideTheListsShare) {
    const RoundList without = round({plain("A"), plain("B")});
    MachineWeek week = changed(shaft(2.0, 0.1, 0.05, 0.1, 2.15));
    const RoundList with = round({week, plain("B")});
    EXPECT_EQ(machine(with, "A").weightDban, machine(without, "A").weightDban);
    EXPECT_EQ(with.listNeedsDban, without.listNeedsDban);
    EXPECT_EQ(machine(with, "B").listedBy, ListedBy::None);
}

TEST(ChangeEntry, WhatWasAddedNamesTheCause) {
    const auto first = [](const std::vector<FollowedChange>& changes) {
        const RoundMachine m = alone(changed(changes));
        return m.findings.empty() ? std::string("none") : m.findings[0].finding.fault;
    };
    EXPECT_EQ(first(shaft(0.9, 1.4, 0.5, 0.8, 2.2)), "misalignment");
    EXPECT_EQ(first(shaft(2.0, 0.15, 0.06, 0.15, 2.2)), "unbalance");
    auto loose = shaft(1.2, 0.6, 0.6, 0.2, 2.4);
    for (const char* name : {"orders 4-10", "half orders"}) {
        FollowedChange one = followed(Followed::Measure, "horizontal", 0.05, 0.9, kLine);
        one.fault = "looseness";
        one.name = name;
        loose.push_back(one);
    }
    EXPECT_EQ(first(loose), "looseness");
}

TEST(ChangeEntry, WhatDoesNotMatterIsNotListed) {
    EXPECT_THAT(alone(changed(shaft(0.06, 0.02, 0.01, 0.02, 0.2))).findings,
                Not(IsEmpty()));  // a fall by 12 dB
    std::vector<FollowedChange> small = {followed(Followed::Order1, "horizontal", 0.02, 0.12, kLine),
                                         followed(Followed::Velocity, "horizontal", 0.8, 1.1, kLevel)};
    EXPECT_THAT(alone(changed(small)).findings, IsEmpty());
    EXPECT_EQ(alone(changed(small)).urgency, "leave");
}

TEST(ChangeEntry, AFallNamesNoMechanicalFault) {
    const RoundMachine m = alone(changed({followed(Followed::Order1, "horizontal", 2.0, 0.5, kLine)}));
    ASSERT_EQ(m.findings.size(), 1u);
    EXPECT_EQ(m.findings[0].finding.fault, "sensor");
    EXPECT_THAT(m.findings[0].finding.sentence, HasSubstr("fell from"));
    EXPECT_EQ(m.urgency, "watch");
}

TEST(ChangeEntry, ARaisedHighBandWithoutABearingLineIsDryOrWornAndNeverAnElement) {
    const std::vector<FollowedChange> up = {followed(Followed::HighBand, "horizontal", 0.1, 0.3, kNoLimit),
                                            followed(Followed::HighBand, "axial", 0.1, 0.3, kNoLimit)};
    const RoundMachine m = alone(changed(up));
    ASSERT_EQ(m.findings.size(), 1u);
    EXPECT_EQ(m.findings[0].finding.fault, "bearing_dry_or_worn");
    EXPECT_EQ(m.findings[0].finding.at, "driver DE");
    EXPECT_EQ(m.findings[0].finding.severity.kind, "stage");
    EXPECT_FALSE(m.findings[0].causeShare);
    MachineWeek known = changed(up);
    known = with(known, {staged("bearing_outer_race", "driver DE", 60, "developed")});
    known.changes = up;
    for (const RoundFinding& f : alone(known).findings)
        EXPECT_NE(f.finding.fault, "bearing_dry_or_worn");
}

TEST(ChangeEntry, AHotterFrameIsOverheatingInKelvin) {
    const RoundMachine m = alone(changed({followed(Followed::TemperatureRise, "horizontal", 30, 46, kHeat)}));
    ASSERT_EQ(m.findings.size(), 1u);
    const Hypothesis& h = m.findings[0].finding;
    EXPECT_EQ(h.fault, "overheating");
    EXPECT_EQ(h.severity.kind, "kelvin");
    EXPECT_EQ(h.severity.value, "raised");
    EXPECT_NEAR(h.severity.level.value_or(0), 46, 1);
    EXPECT_THAT(h.sentence, HasSubstr("not judged by it"));
    EXPECT_THAT(alone(changed({followed(Followed::TemperatureRise, "horizontal", 30, 38, kHeat)})).findings,
                IsEmpty());
}

TEST(ChangeEntry, WithoutABaselineNothingIsWeighedAndTheMissingDaysAreTold) {
    std::vector<FollowedChange> fresh = {followed(Followed::Order1, "horizontal", 0.4, 3, kLine, 9)};
    const RoundMachine m = alone(changed(fresh));
    EXPECT_THAT(m.findings, IsEmpty());
    EXPECT_THAT(m.baseline, HasSubstr("no baseline: 9 of 14 days"));
    EXPECT_THAT(m.baseline, HasSubstr("5 more needed"));
}

// Zone and change of one machine are one finding with both.
TEST(ChangeEntry, AZonesCauseTakesTheChangeUp) {
    MachineWeek week = plain("A");
    week = with(week, {cause("unbalance", "C", 3.4, 0.9)});
    week.changes = shaft(3.2, 0.1, 0.05, 0.1, 3.4);
    const RoundMachine m = alone(inZone(week, "C", 3.4, 4.5));
    EXPECT_EQ(m.listedBy, ListedBy::Change);
    EXPECT_EQ(m.urgency, "plan");
    int unbalances = 0;
    for (const RoundFinding& f : m.findings)
        if (f.finding.fault == "unbalance") {
            ++unbalances;
            EXPECT_TRUE(f.change);
            EXPECT_EQ(f.finding.severity.value, "C");
            EXPECT_TRUE(f.causeShare);
            EXPECT_GE(f.finding.weightDban.value_or(0), 20);
        }
    EXPECT_EQ(unbalances, 1);
}

// 1x rose from 0.4 to 3.2 of 3.4 mm/s and nothing else did: nearly all of the level was added, and what was
// added is unbalance, whatever a pattern that holds the sound machine's lines looks like.
TEST(ChangeEntry, WhatWasAddedNamesTheCauseOfALevelThatWasMostlyAdded) {
    MachineWeek week = with(plain("A"), {cause("looseness", "C", 3.4, 0.9)});
    week.changes = shaft(3.2, 0.1, 0.05, 0.1, 3.4);
    const RoundMachine m = alone(inZone(week, "C", 3.4, 4.5));
    ASSERT_EQ(m.findings.size(), 1u);
    EXPECT_EQ(m.findings[0].finding.fault, "unbalance");
    EXPECT_EQ(m.findings[0].finding.severity.value, "C");
    EXPECT_THAT(m.findings[0].finding.sentence, HasSubstr("single recording looks like looseness"));
}

// 2x grew beside a level that was there before: the level's cause stands, the change is its evidence.
TEST(ChangeEntry, ALevelThatWasThereBeforeKeepsItsCause) {
    MachineWeek week = with(plain("A"), {cause("unbalance", "C", 3.4, 0.9)});
    week.changes = {followed(Followed::Order2, "horizontal", 0.1, 0.9, kLine),
                    followed(Followed::Order1, "horizontal", 3.2, 3.2, kLine),
                    followed(Followed::Velocity, "horizontal", 3.3, 3.4, kLevel)};
    const RoundMachine m = alone(inZone(week, "C", 3.4, 4.5));
    ASSERT_EQ(m.findings.size(), 1u);
    EXPECT_EQ(m.findings[0].finding.fault, "unbalance");
    EXPECT_THAT(m.findings[0].finding.sentence, HasSubstr("2x at M-DE"));
}

FollowedChange measure(const std::string& fault, const std::string& name, const std::string& unit, double was,
                       double now, const std::string& at) {
    FollowedChange one =
        followed(Followed::Measure, "horizontal", was, now, unit == "mm/s" ? kLine : kNoLimit, 60, at);
    one.fault = fault;
    one.name = name;
    one.unit = unit;
    return one;
}

// Blade pass added 2.0 of the 2.1 mm/s (in power) by which the level rose: one entry, not two.
TEST(ChangeEntry, ALevelThatAFamilysLinesExplainIsNoEntryBesideThem) {
    std::vector<FollowedChange> changes = {
        followed(Followed::Velocity, "horizontal", 0.8, 2.25, kLevel),
        measure("blade_pass", "blade pass 1-2 x", "mm/s", 0.2, 2.0, "driven")};
    const RoundMachine m = alone(changed(changes));
    ASSERT_EQ(m.findings.size(), 1u);
    EXPECT_EQ(m.findings[0].finding.fault, "blade_pass");
    changes[0] = followed(Followed::Velocity, "horizontal", 0.8, 4.5, kLevel);
    EXPECT_EQ(alone(changed(changes)).findings.size(), 2u);
}

// The level rose by 3 mm/s and no order of the shaft with it: something else shakes, and no shaft fault is
// named for it.
TEST(ChangeEntry, ALevelThatNoShaftOrderExplainsHasNoNamedCause) {
    const RoundMachine m = alone(changed({followed(Followed::Order1, "horizontal", 0.4, 0.45, kLine),
                                          followed(Followed::Velocity, "horizontal", 0.8, 3.2, kLevel)}));
    ASSERT_EQ(m.findings.size(), 1u);
    EXPECT_EQ(m.findings[0].finding.fault, "");
    EXPECT_THAT(m.findings[0].finding.sentence, HasSubstr("cause is not named"));
}

// Collapsing bubbles swing with the blades, a bearing's friction does not; common textbooks, from memory.
TEST(ChangeEntry, ThePumpsNoiseIsCavitationOnlyWhereItSwingsWithItsBlades) {
    const auto faults = [](double swing) {
        MachineWeek week =
            changed({measure("cavitation", "floor 2-4.0 kHz", "dB", 10, 24, "driven"),
                     measure("cavitation", kBladeSwing, "dB", 3, swing, "driven"),
                     followed(Followed::HighBand, "horizontal", 0.05, 0.25, kNoLimit, 60, "driven DE")});
        std::vector<std::string> names;
        for (const RoundFinding& f : alone(week).findings)
            names.push_back(f.finding.fault);
        return names;
    };
    EXPECT_THAT(faults(20), ElementsAre("cavitation"));
    EXPECT_THAT(faults(3), ElementsAre("bearing_dry_or_worn"));
}

// Both are told: a spalled bearing of a box does not hide the tooth beside it.
TEST(ChangeEntry, ABearingOfTheBoxDoesNotHideItsGear) {
    MachineWeek week = with(plain("A"), {staged("bearing_outer_race", "G1 box DE", 60, "developed")});
    week.changes = {measure("gear_tooth", "sidebands of S1 beside mesh", "dB", 6, 20, "G1")};
    std::vector<std::string> names;
    for (const RoundFinding& f : alone(week).findings)
        names.push_back(f.finding.fault);
    EXPECT_THAT(names, UnorderedElementsAre("bearing_outer_race", "gear_tooth"));
}

// The mean of e-values over a point's channels: one of three loses 4.8 decibans.
TEST(ChangeGroups, ChannelsOfAPointAreOneQuestion) {
    const std::vector<FollowedChange> changes = {followed(Followed::Order1, "horizontal", 0.4, 2, kLine),
                                                 followed(Followed::Order1, "vertical", 0.4, 0.4, kLine),
                                                 followed(Followed::Order1, "axial", 0.4, 0.4, kLine)};
    const auto groups = changeGroups(changes);
    ASSERT_EQ(groups.size(), 1u);
    EXPECT_EQ(groups[0].members.size(), 3u);
    EXPECT_EQ(groups[0].strongest, &changes[0]);
    EXPECT_NEAR(groups[0].weightDban, changes[0].week.change->weightDban - 10 * std::log10(3.0), 0.1);
}

}  // namespace
}  // namespace fettle
