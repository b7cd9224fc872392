// Why: a sensor is part of what is measured: its mounting rings, its noise hides, its range clips, its bits
// round. Units: scene signals in g (flux in shares of full scale) in, integers of `bits` out.
#pragma once

#include "core/simulate/scene.h"

namespace fettle::sim {

// Everything between the machine's surface and the stored integers, all channels of the scene.
std::vector<SimulatedChannel> measure(Scene& scene);

// Clipped to the range, rounded to the nearest step, halves to even.
std::vector<std::int32_t> quantised(const std::vector<double>& values, double range, int bits);

}  // namespace fettle::sim
