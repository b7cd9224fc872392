// What would change a verdict, on simulated recordings whose truth is known: the arithmetic is held against
// the rows themselves, the calibrator f(p) = kappa p^(kappa - 1) of Vovk and Wang, Ann. Statist. 49 (2021),
// section 2, and the kinematics of Randall and Antoni, MSSP 25 (2011), eq. 1-4.
#include "core/fleet/what_would_change.h"

#include <gmock/gmock.h>

#include <cmath>

#include "core/diagnosis/examine.h"
#include "core/fleet/rival_lines.h"
#include "core/machine/severity_limits.h"
#include "tests/diagnosis/made_recordings.h"

namespace fettle {
namespace {

struct Examined {
    Machine machine;
    Examination examination;
    UrgencyTable urgency;

    static const Examined& faulty() {
        static const Examined one = of("bearing_inner_race", "driver DE", 0.8);
        return one;
    }
    static const Examined& shaking() {
        static const Examined one = of("unbalance", "driver", 1);
        return one;
    }
    static Examined of(const std::string& fault, const std::string& at, double severity) {
        Examined made;
        made.machine = made::machineOf(made::motorText());
        const auto setup = made::with(made::setupOf(made.machine, 7, 4), fault, at, severity);
        auto examined = examine(made.machine, {made::made(setup).recording});
        EXPECT_TRUE(examined) << (examined ? "" : examined.error().sentence());
        made.examination = std::move(*examined);
        made.urgency = UrgencyTable::load().value();
        return made;
    }
    const Hypothesis& finding() const { return examination.findings.at(0); }
    WhatWouldChange change(const Hypothesis& h) const {
        return whatWouldChange(machine, examination, h, urgency);
    }
};

TEST(WhatWouldChange, ALineTakenAwayLeavesTheSumOfTheOtherRows) {
    const Hypothesis& h = Examined::faulty().finding();
    ASSERT_EQ(h.fault, "bearing_inner_race");
    const WhatWouldChange change = Examined::faulty().change(h);
    std::size_t found = 0;
    for (const LineRow& row : h.best.rows) {
        if (row.state != LineState::Found) continue;
        ++found;
        double others = h.best.searchDban + h.meanDban;
        for (const LineRow& other : h.best.rows)
            if (&other != &row) others += other.weightDban;
        const auto line = std::find_if(change.lines.begin(), change.lines.end(),
                                       [&](const LineLoss& l) { return l.name == row.name; });
        ASSERT_NE(line, change.lines.end()) << row.name;
        EXPECT_NEAR(line->without, others, 1e-9) << row.name;
        EXPECT_NEAR(line->ifAbsent, others + 10 * std::log10(1 - row.w + 0.15 * row.w), 1e-9) << row.name;
    }
    EXPECT_EQ(change.lines.size(), found);
    EXPECT_GE(found, 3u);
}

TEST(WhatWouldChange, TheHeaviestLinesGoneTakeItBelowAFindingAndOneLessDoesNot) {
    const Hypothesis& h = Examined::faulty().finding();
    const WhatWouldChange change = Examined::faulty().change(h);
    ASSERT_TRUE(change.linesToLose);
    double left = *h.weightDban;
    for (std::size_t i = 0; i + 1 < *change.linesToLose; ++i)
        left -= change.lines[i].dban;
    EXPECT_GE(left, 20);
    EXPECT_LT(left - change.lines[*change.linesToLose - 1].dban, 20);
    EXPECT_FALSE(change.gain);
}

// What is missing is put into the calibrator, and comes out again.
TEST(WhatWouldChange, ThePeakThatIsMissingToAFindingBringsJustThat) {
    const Examined& examined = Examined::faulty();
    Hypothesis h = examined.finding();
    LineRow absent;
    absent.name = "a line";
    absent.w = 0.8;
    absent.state = LineState::Absent;
    absent.weightDban = 10 * std::log10(1 - 0.85 * 0.8);
    h.best.rows = {absent};
    h.weightDban = 8;
    const WhatWouldChange change = examined.change(h);
    ASSERT_TRUE(change.gain && change.gain->oneIn);
    EXPECT_DOUBLE_EQ(change.gain->missingDban, 12);
    const double p = 1 / *change.gain->oneIn;
    const double e = 1 - 0.8 + 0.8 * 0.15 * std::pow(p, -0.85);
    EXPECT_NEAR(8 - absent.weightDban + 10 * std::log10(e), 20, 1e-9);
    h.weightDban = -60;
    EXPECT_FALSE(examined.change(h).gain->oneIn) << "no view has so many positions";
}

// A wrong speed and another slip draw the line at the same frequency.
TEST(WhatWouldChange, TheSpeedErrorAndTheSlipItAsksForDrawTheSameLine) {
    const Examined& examined = Examined::faulty();
    const Hypothesis& h = examined.finding();
    const WhatWouldChange change = examined.change(h);
    ASSERT_TRUE(change.speed);
    const BearingPlace& place =
        *std::find_if(examined.machine.bearings.begin(), examined.machine.bearings.end(),
                      [](const BearingPlace& b) { return b.at == "driver DE"; });
    bool any = false;
    for (const BearingVariant& v : place.bearing.variants) {
        const double n = v.rollingElements, phi = v.orders.ftf;
        const double measured = n * (1 - phi * (1 + h.best.cageShift));
        const double low = (1 + change.speed->low) * n * (1 - phi * (1 - 0.012));
        const double high = (1 + change.speed->high) * n * (1 - phi * (1 + 0.012));
        any |= std::abs(low - measured) < 1e-9 && std::abs(high - measured) < 1e-9;
    }
    EXPECT_TRUE(any);
    EXPECT_LT(change.speed->low, change.speed->high);
    EXPECT_GE(change.speed->known, 0);
}

TEST(WhatWouldChange, TheZoneChangesAtTheBoundariesOfItsOwnLimits) {
    const Examined& examined = Examined::shaking();
    const auto& all = examined.examination.considered;
    const auto h = std::find_if(all.begin(), all.end(), [](const Hypothesis& one) {
        return one.severity.kind == "zone" && one.severity.level;
    });
    ASSERT_NE(h, all.end());
    const WhatWouldChange change = examined.change(*h);
    ASSERT_FALSE(change.levels.empty());
    for (const LevelStep& step : change.levels) {
        EXPECT_EQ(step.up, step.level >= step.now);
        EXPECT_NE(step.value, h->severity.value);
        EXPECT_EQ(step.unit, "mm/s");
    }
    const bool worst = h->severity.value == "D";
    EXPECT_EQ(change.levels.front().up, !worst);
    if (!worst) {
        EXPECT_DOUBLE_EQ(change.levels.front().level, *h->severity.limit);
    }
}

// The mean of n e-values with the strongest taken out is the mean of the others.
TEST(WhatWouldChange, TheWeekWithoutItsStrongestRecordingIsTheMeanOfTheOthers) {
    Hypothesis h;
    h.fault = "bearing_outer_race";
    h.recordingCount = 3;
    const double strongest = 40, second = 25, third = 10;
    const auto e = [](double dban) { return std::pow(10.0, dban / 10); };
    h.weightDban = 10 * std::log10((e(strongest) + e(second) + e(third)) / 3);
    h.meanDban = *h.weightDban - strongest;
    const WhatWouldChange change = Examined::faulty().change(h);
    ASSERT_TRUE(change.withoutStrongest);
    EXPECT_NEAR(*change.withoutStrongest, 10 * std::log10((e(second) + e(third)) / 2), 1e-6);
}

TEST(WhatWouldChange, TheNextStageCountsTheLinesThatAreMissing) {
    const Examined& examined = Examined::faulty();
    Hypothesis h = examined.finding();
    h.severity = {"stage", "early", {}, {}, "", ""};
    h.best.rows.clear();
    for (int i = 0; i < 3; ++i) {
        LineRow row;
        row.state = LineState::Found;
        row.carrier = i < 2;
        h.best.rows.push_back(row);
    }
    const WhatWouldChange change = examined.change(h);
    ASSERT_TRUE(change.stage);
    EXPECT_EQ(change.stage->value, "developed");
    EXPECT_EQ(change.stage->carriers, 2);
    EXPECT_EQ(change.stage->sidebands, 1);
    EXPECT_EQ(change.stage->urgency, examined.urgency.urgencyOf({"stage", "developed", {}, {}, "", ""}, "B"));
    h.severity.value = "late";
    EXPECT_FALSE(examined.change(h).stage);
}

// Two faults of one bearing that share one line: that line is told as shared, the other decides.
TEST(RivalLines, SharedLinesAndThoseThatDecideAreParted) {
    Examination e;
    RecordingFacts facts;
    facts.speed.rpm = 1500;
    facts.channels.push_back({"x", "P", "radial", "acceleration", 6400, 25600});  // 4 s: lines 0.25 Hz apart
    e.recordings = {facts};
    const auto line = [](const char* name, double hz, LineState state, double dban) {
        LineRow row;
        row.name = name;
        row.expectedHz = row.foundHz = hz;
        row.state = state;
        row.weightDban = dban;
        row.w = 0.8;
        return row;
    };
    Hypothesis a;
    a.fault = "bearing_outer_race";
    a.at = "driver DE";
    a.weightDban = 30;
    a.best.rows = {line("a1", 100, LineState::Found, 12), line("a2", 200, LineState::Found, 9),
                   line("a3", 300, LineState::Absent, -3)};
    Hypothesis b = a;
    b.fault = "bearing_inner_race";
    b.best.rows = {line("b1", 100.4, LineState::Found, 10), line("b2", 150, LineState::Absent, -4),
                   line("b3", 250, LineState::Found, 5)};
    a.rivals = {{"bearing_inner_race", "driver DE or NDE", 11, kClaimedFromRival},
                {"looseness", "driver", 0, ""}};
    e.findings = {a};
    e.considered = {a, b};
    const auto rivals = rivalLines(e, e.findings[0]);
    ASSERT_EQ(rivals.size(), 2u);
    ASSERT_TRUE(rivals[0].known);
    EXPECT_THAT(rivals[0].shared, testing::ElementsAre("a1"));
    EXPECT_DOUBLE_EQ(rivals[0].sharedDban, 12);
    EXPECT_THAT(rivals[0].own, testing::ElementsAre("a2"));
    EXPECT_DOUBLE_EQ(rivals[0].ownDban, 9);
    EXPECT_THAT(rivals[0].against, testing::ElementsAre("b2"));
    EXPECT_THAT(rivals[0].forIt, testing::ElementsAre("b3"));
    EXPECT_FALSE(rivals[1].known);
    e.considered[1].best.rows[0].expectedHz = e.considered[1].best.rows[0].foundHz = 100.6;
    EXPECT_TRUE(rivalLines(e, e.findings[0])[0].shared.empty()) << "more than two lines apart";
}

}  // namespace
}  // namespace fettle
