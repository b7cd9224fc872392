// Why: what the medium and the surroundings do: blade pass, cavitation, rough flow, the machine's own hiss, a
// neighbour. Source: common practice, no source.
#pragma once

#include "core/simulate/scene.h"

namespace fettle::sim {

void addSoundFlow(Scene& scene);   // blade pass, while turning
void addSoundFloor(Scene& scene);  // broadband of running, through the point's own housing
Status addBladePass(Scene& scene, const Condition& condition);
Status addCavitation(Scene& scene, const Condition& condition);
Status addRoughFlow(Scene& scene, const Condition& condition);
Status addNeighbour(Scene& scene, const Condition& condition);  // runs whether this machine does or not

}  // namespace fettle::sim
