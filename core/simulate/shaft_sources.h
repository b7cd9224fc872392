// Why: forces that turn with a shaft: unbalance, misalignment, looseness, and the residue of them every
// machine has. Source: common practice (radial 1x; axial and 2x of a coupling; harmonics and half orders of a
// loose foot), no source for the shares. A rotating force grows with speed squared and answers through the
// support's mobility.
#pragma once

#include "core/simulate/scene.h"

namespace fettle::sim {

// Residual 1x and its harmonics, driver and driven.
void addSoundShafts(Scene& scene);

Status addUnbalance(Scene& scene, const Condition& condition);
Status addMisalignment(Scene& scene, const Condition& condition);
Status addLooseness(Scene& scene, const Condition& condition);

// Fourier coefficients, cosine and sine, of half orders 1..count (0.5x, 1x, ...) of the velocity of a machine
// whose foot lifts: its displacement is a sine with a weaker half-speed one, cut off at `stop` of the sine's
// peak, so that the velocity jumps where the foot lands. 1x is scaled to 1.
struct HalfOrder {
    double cosine = 0, sine = 0;
};
std::vector<HalfOrder> truncatedMotion(double stop, std::size_t count);

}  // namespace fettle::sim
