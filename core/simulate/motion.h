// Why: every line of a machine hangs on two clocks, the supply and the driver's shaft. Both are laid down
// once a recording, sample by sample, with slip from load and with wander, so that all sources agree with
// each other. Units: turns (revolutions or cycles) at each sample instant of the true clock; Hz are means
// over the recording.
#pragma once

#include <vector>

#include "core/machine/machine.h"
#include "core/simulate/random_stream.h"

namespace fettle::sim {

struct Operation;

struct Motion {
    double trueRateHz = 0;
    std::vector<double> supplyTurns;  // cycles of the mains or of the inverter's output
    std::vector<double> driverTurns;
    double supplyHz = 0, driverHz = 0, slip = 0;
    std::vector<double> shaftRatios;  // true speeds over the driver's, belt creep included

    std::size_t samples() const { return driverTurns.size(); }
    double shaftHz(std::size_t shaft) const { return driverHz * shaftRatios.at(shaft); }
};

// Speed = synchronous x (1 - rated slip x slipFactor x load). A cageless driver has no slip.
Motion makeMotion(const Machine& machine, const Operation& operation, double trueRateHz, std::size_t samples,
                  RandomStream chance);

// The driver's speed in Hz at rated output, 50 Hz grids and 4 poles where nothing is known.
double ratedShaftHz(const Machine& machine);

}  // namespace fettle::sim
