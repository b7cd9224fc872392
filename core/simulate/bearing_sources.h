// Why: rolling bearings: struck defects that ring the housing, a dry bearing that only hisses.
// Source: R. B. Randall and J. Antoni, MSSP 25 (2011) 485-520, sec. 2.
#pragma once

#include "core/simulate/scene.h"

namespace fettle::sim {

Status addOuterRace(Scene& scene, const Condition& condition);
Status addInnerRace(Scene& scene, const Condition& condition);
Status addRollingElement(Scene& scene, const Condition& condition);
Status addCage(Scene& scene, const Condition& condition);
Status addDryBearing(Scene& scene, const Condition& condition);

// g peak of one impact at its own housing.
double impactPeakG(double severity);

}  // namespace fettle::sim
