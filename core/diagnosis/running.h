// Why: a stopped machine has no verdict, and its records must not pass for healthy ones.
// States: stopped energised_not_turning turning_unpowered run_up_or_down running running_unloaded unsteady
// unknown. Flux tells whether the motor is energised, and its own turning where the record is long enough;
// vibration whether anything shakes, and the high band whether this machine does: a floor carries a
// neighbour's shaft orders, hardly its hiss. Unloaded: less than an eighth of the rated slip. Common
// practice, no source.
// Unsteady: the speed moved by more than 3 % and was followed; such a machine runs
// (core/fleet/machine_desk.h), but what is read beside the mains is not, nor are the measures that are
// compared over weeks.
#pragma once

#include <string>

#include "core/diagnosis/prepare.h"

namespace fettle {

// From levels, the shaft comb and (where there is one) the flux channel; a given speed turns what shakes.
std::string runningState(const Machine& machine, const PreparedRecording& prepared);

}  // namespace fettle
