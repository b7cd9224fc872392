// Why: what an electrical fault draws hangs on the supply's frequency, and slip on its difference from the
// shaft's: 0.1 Hz of mains is 3 of 16 r/min, so both are read from the same record. Flux is uncalibrated and
// depends on place, frame metal and nearby cables: only ratios to the carrier count, and only at one spot.
// Units: Hz. Thread: pure.
#pragma once

#include <vector>

#include "core/diagnosis/prepare.h"

namespace fettle {

struct SupplyLines {
    double hz = 0, plusMinusHz = 0;     // mains or inverter output; 0: not known
    std::vector<const FluxView*> flux;  // of the channels at the driver
};

SupplyLines supplyLinesOf(const Machine& machine, const PreparedRecording& prepared);

// Power of a line at `hz` in a Blackman-Harris spectrum, freed of where it lies between two steps.
double linePower(const Spectrum& sharp, double hz);
// A cage to break: no wound rotor, no magnets.
bool hasCage(const Machine& machine);

}  // namespace fettle
