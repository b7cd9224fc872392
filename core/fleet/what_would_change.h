// Why: a verdict is worth as much as it takes to overturn it. All of it is computed from what was weighed and
// from the rules that graded it, nothing is canned: what each found line carries, how many would have to be
// gone, what is missing to a finding or to the next urgency, at which level a zone changes, which error of
// the speed would move the lines beyond what slip explains, how much hangs on the strongest recording.
// A line taken away leaves exactly the sum of the other rows: the fit that is shown, not weighed anew, where
// other shifts and views might lead. Source: the calibrator of Vovk and Wang, Ann. Statist.
// 49 (2021), section 2; kinematics of Randall and Antoni, MSSP 25 (2011), eq. 1-4. Units: decibans; relative
// errors without unit; levels in the severity's unit. Thread: pure.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/diagnosis/examination.h"
#include "core/diagnosis/settings.h"
#include "core/diagnosis/urgency.h"
#include "core/machine/machine.h"

namespace fettle {

// A found line: the weight had it been left out, and had it been absent.
struct LineLoss {
    std::string name;
    double dban = 0, without = 0, ifAbsent = 0;
};

// Of what is no finding: the absent line that would add most, and how rare its peak would have to be.
struct LineGain {
    std::string name;
    double missingDban = 0;       // to a finding
    std::optional<double> oneIn;  // positions of its view, of which no other may be as high; empty: no
                                  // single line can bring so much
};

// What the next stage asks for.
struct StageStep {
    std::string value, urgency;                          // "developed", "plan"
    int carriers = 0, sidebands = 0, velocityLines = 0;  // still missing, of each
};

// A level at which the grade changes.
struct LevelStep {
    std::string value, urgency;  // what it becomes beyond: "C", "plan"
    double level = 0, now = 0;
    std::string unit;
    bool up = true;  // reached by rising
};

// Relative errors of the shaft's speed at which the lines would ask for more slip than bearings have.
struct SpeedReach {
    double low = 0, high = 0;
    double known = 0;  // to which the speed is known
};

struct WhatWouldChange {
    std::optional<double> weightDban;
    double findingDban = 20;
    std::vector<LineLoss> lines;             // the heaviest first
    std::optional<std::size_t> linesToLose;  // so many of the heaviest have to go before it is no finding
    std::optional<LineGain> gain;
    std::optional<StageStep> stage;
    std::vector<LevelStep> levels;
    std::optional<SpeedReach> speed;
    std::optional<double> withoutStrongest;  // weight of the span without its strongest recording
};

WhatWouldChange whatWouldChange(const Machine& machine, const Examination& examination,
                                const Hypothesis& hypothesis, const UrgencyTable& urgency,
                                const WeighingSettings& settings = {});

}  // namespace fettle
