// Why: what this sensor, band, record length and mounting could not see is said aloud, with the cure.
#pragma once

#include <vector>

#include "core/diagnosis/hypotheses.h"

namespace fettle {

std::vector<BlindSpot> blindSpots(const Machine& machine, const PreparedRecording& prepared,
                                  const AskedBearings& asked, const WeighingSettings& settings);

}  // namespace fettle
