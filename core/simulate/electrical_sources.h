// Why: what the supply does to frame and stray field: twice mains, slots, slip, broken bars, eccentric air
// gap, inverter. Source: broken bars (1 +- 2ks) f1 and mixed eccentricity f1 +- fr: W. T. Thomson and M.
// Fenger, IEEE Ind. Appl. Mag. 7(4) (2001) 26-34 (from memory). Slot lines R fr +- f1 (field), R fr, R fr +-
// 2 f1 (frame): common practice, no source.
#pragma once

#include "core/simulate/scene.h"

namespace fettle::sim {

void addSoundElectrics(Scene& scene);  // while energised and turning
Status addRotorBars(Scene& scene, const Condition& condition);
Status addAirGap(Scene& scene, const Condition& condition);
Status addTwiceMains(Scene& scene, const Condition& condition);
Status addSupplyUnbalance(Scene& scene, const Condition& condition);

}  // namespace fettle::sim
