// Why: what joins the shafts: gear mesh modulated by both wheels, a cracked tooth, belts.
// Source: R. B. Randall, Vibration-based Condition Monitoring (Wiley 2011), sec. 2.2 and 5.3 (mesh as
// amplitude and phase modulated harmonics; from memory). Belt order pi x pulley / length: geometry.
#pragma once

#include "core/simulate/scene.h"

namespace fettle::sim {

void addSoundDriveTrain(Scene& scene);
Status addGearWear(Scene& scene, const Condition& condition);  // at a gear id; on top of the sound mesh
Status addGearTooth(Scene& scene,
                    const Condition& condition);  // at a gear id; a tooth of the wheel on its `from` shaft
Status addBeltWear(Scene& scene, const Condition& condition);  // at a belt id

}  // namespace fettle::sim
