// Why: the mains is a clock and a ruler that every recording of an energised motor carries. Its frequency, or
// an inverter's output, is read from stray flux, else from 2 x mains in the vibration where that is parted
// from the shaft orders. Beside the grid it shows whether the stated sample rate is true; beside the shaft,
// slip. Units: Hz in the recording's clock; uncertainties are half-widths.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/diagnosis/placed_lines.h"
#include "core/diagnosis/view.h"
#include "core/machine/machine.h"

namespace fettle {

struct Mains {
    double hz = 0, plusMinusHz = 0;
    bool measured = false;  // in this recording; else only stated
    bool output = false;    // an inverter's output, not the grid
    std::string from;       // "flux" | "2 x mains in vibration" | "given" | "nameplate"
    bool leads = false;     // in flux: by far the strongest line there is
};

// As stated: the sidecar's output frequency, else the nameplate's.
Mains statedMains(const Machine& machine, const Recording& recording, const WeighingSettings& settings);
// The strongest line within 6 % of the grid's frequency, or anywhere in an inverter's range.
std::optional<Mains> mainsInFlux(const Machine& machine, const Recording& recording,
                                 const std::vector<FluxView>& flux);
// A line above the shaft order that would coincide with 2 x mains without slip, as far as slip allows: where
// a grid may be, or, as a clock up to 2.5 % off would move it, one that stands alone with 4 x mains beside
// it. `shaftHz` as found in this recording; machines on the grid only.
std::optional<Mains> mainsInVibration(const Machine& machine, const std::vector<ChannelViews>& views,
                                      double shaftHz);

// What the mains says of the sample rate. A grid's own frequency is within 0.4 % of its name in an
// interconnected network (50 +- 0.2 Hz: from memory of European operating rules), a crystal within 0.01 %:
// beyond 0.1 % it is told, beyond 0.4 % the clock is at fault and the rate is corrected.
struct ClockCheck {
    double error = 0;  // stated over true rate, minus 1
    bool told = false, corrected = false;
    std::string detail;
};
ClockCheck checkClock(const Machine& machine, const Mains& mains);

// Slips by nature: a cage or a wound rotor.
bool slips(const Machine& machine);
// Synchronous less shaft speed at rated load, Hz of the shaft; nothing without rated speed or poles.
std::optional<double> ratedSlipHz(const Machine& machine);

}  // namespace fettle
