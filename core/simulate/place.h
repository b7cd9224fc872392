// Why: how much of a source reaches a sensor depends on what lies between them: the same housing, a coupling,
// a belt. The shares are rough figures of the trade (common practice, no source): shaft-rate forces travel,
// impacts hardly do. Errors: a place the machine does not have.
#pragma once

#include <string>

#include "core/base/result.h"
#include "core/machine/machine.h"

namespace fettle::sim {

// `at` in the grammar of the machine description, its component the housing it sits in: a gear's is the box
// named after it, a belt's and the driver shaft's the driver.
Result<Place> placeOf(const Machine& machine, const std::string& at);

struct PathGain {
    double low = 1;   // forces at shaft rate, below about 1 kHz
    double high = 1;  // impacts and noise
};
PathGain pathGain(const Machine& machine, const Place& from, const Place& to);

}  // namespace fettle::sim
