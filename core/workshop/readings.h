// Why: a mass is computed from differences of readings, so readings that do not repeat give masses that are
// made up. Several readings of one run are averaged as arrows; where they differ among themselves by more
// than 10 % of their mean, or by more than 10 degrees, the machine (or the hand) is not steady and nothing is
// computed: warm up, look for looseness, resonance, load, belts. Limits: common practice, no source. Thread:
// pure. Errors: Invalid with the figure that was too large; the place is the caller's.
#pragma once

#include <span>

#include "core/base/result.h"
#include "core/workshop/phasor.h"

namespace fettle {

inline constexpr double kMostScatterShare = 0.10;
inline constexpr double kMostScatterDegrees = 10;

struct MeanReading {
    Phasor mean;
    double amount = 0;                            // mean of the amounts
    double scatterShare = 0, scatterDegrees = 0;  // largest less smallest; share of the mean amount
    std::size_t count = 0;
};

// How far they lie apart, whatever it is. At least one reading.
MeanReading averaged(std::span<const Phasor> readings);
Result<MeanReading> steadyMean(std::span<const Phasor> readings);
// Of amounts alone, where there is no phase.
Result<MeanReading> steadyAmount(std::span<const double> amounts);

}  // namespace fettle
