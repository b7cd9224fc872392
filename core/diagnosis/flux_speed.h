// Why: stray flux tells this motor's own speed, whatever shakes the floor: a rotor that is never quite
// central draws lines at f1 - fr and f1 + fr, a cage draws slip sidebands at f1 +- 2 s f1. Source: W. T.
// Thomson and M. Fenger, IEEE Ind. Appl. Mag. 7(4) (2001) 26-34 (from memory). Blind for two poles, where f1
// - fr is the slip itself, below 1 Hz, and f1 + fr stands beside 2 f1; slip sidebands there need a record of
// some 8 / (2 s f1) seconds. Units: Hz of the shaft in the recording's clock, half-widths.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/diagnosis/mains.h"

namespace fettle {

inline constexpr const char* kSlipSidebands = "slip sidebands in flux";

// Slip sidebands are a reading to confirm another with: those nearest the carrier may be hidden by it, and
// the next pair then passes for them.
struct SpeedReading {
    std::string from;  // "f1 +- fr in flux" | "slip sidebands in flux" | "synchronous with the mains in flux"
    double hz = 0, plusMinusHz = 0;
};

// Readings between two shaft frequencies; none where the mains was not read from flux.
std::vector<SpeedReading> speedInFlux(const Machine& machine, const std::vector<FluxView>& flux,
                                      const Mains& mains, double leastHz, double mostHz);

}  // namespace fettle
