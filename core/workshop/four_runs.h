// Why: without a once-per-turn mark there is no phase, yet the amounts of four runs tell the mass: one run as
// it is, three with the same trial mass at three places (not needed at equal steps). About the place of each
// trial on a circle of the initial amount one draws a circle of that run's amount; the three meet in one
// point, whose direction is the correction's place and whose distance is the trial's effect. Here the point
// is found by least squares, and how far the circles miss it is said: a miss over a tenth of the initial
// amount is warned of, over a quarter is refused (common practice, no source). Source: construction of the
// four-run method, from memory; it follows from the law of cosines. Amounts in the sensor's unit, masses in
// grams, places in the frame of phasor.h. Thread: pure. Errors: Invalid; place "run 2" (the initial is run
// 0).
#pragma once

#include <span>
#include <vector>

#include "core/base/result.h"
#include "core/workshop/phasor.h"

namespace fettle {

inline constexpr double kWarnMissShare = 0.1, kMostMissShare = 0.25;
inline constexpr double kLeastStepDegrees = 30;  // between two trial places

struct AmountRun {
    double degrees = 0;  // where the trial mass sat
    double amount = 0;   // of the vibration then
};

struct FourRunResult {
    Phasor correction;     // grams
    Phasor effect;         // where the circles meet, in the sensor's unit
    double perGram = 0;    // unit a gram, without a phase
    double missShare = 0;  // how far the circles miss the point, r.m.s., share of the initial amount
};

// Three runs or more.
Result<FourRunResult> fromFourRuns(double initial, double trialG, std::span<const AmountRun> runs);

}  // namespace fettle
