// Why: the phase of a shaft order is the shaft's angle. Followed from the first order up, each one says it
// finer than the one before, far finer than spectra of short pieces can. Source: phase demodulation without a
// tachometer, Bonnardot et al., MSSP 19 (2005) 766-785 (from memory). Of the phase only those cosines are
// kept that stand out of its own noise. Units: Hz of the shaft, seconds. Thread: pure.
#pragma once

#include <span>
#include <vector>

#include "core/dsp/orders.h"

namespace fettle {

struct FollowedPhase {
    std::vector<ShaftAngle::SpeedSample> samples;  // at even times over the record
    int orders = 0;                                // that were strong enough to be followed
    double swingTurns = 0;                         // r.m.s. of the angle about that of an even speed
};

// Started from `rough`, one sample at least. `mainsHz`: orders beside an even multiple of it are passed over.
// Where no order can be followed the samples are those of `rough`.
FollowedPhase followPhase(std::span<const double> signal, double sampleRateHz,
                          const std::vector<ShaftAngle::SpeedSample>& rough, double mainsHz);

}  // namespace fettle
