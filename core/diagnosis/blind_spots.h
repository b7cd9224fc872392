// Why: what this sensor, band, record length and mounting could not see is said aloud, with the cure.
#pragma once

#include <vector>

#include "core/diagnosis/hypotheses.h"

namespace fettle {

std::vector<BlindSpot> blindSpots(const Machine& machine, const PreparedRecording& prepared,
                                  const AskedBearings& asked, const WeighingSettings& settings);

// Those of several parts of one machine's recordings, each fault and place said once. What another part saw
// in full (a measure of it, and no blind spot) is not blind: short wide and long narrow recordings make up
// for each other.
std::vector<BlindSpot> jointBlindSpots(const std::vector<Examination>& parts);

}  // namespace fettle
