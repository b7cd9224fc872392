// Why: what this sensor, band, record length and mounting could not see is said aloud, with the cure. Two
// sorts: what one recording could not show (a carrier on a shaft order, too few turns), and what follows from
// description and points alone (blind_machine.h), told anew of every span of recordings. Thread: pure.
#pragma once

#include <string>
#include <vector>

#include "core/diagnosis/hypotheses.h"

namespace fettle {

// Whether a blind spot of `spots` hides this fault: "bearing" stands for the four elements.
bool faultsMeet(const std::string& fault, const std::string& spots);

// Of one recording, the first sort.
std::vector<BlindSpot> blindSpots(const Machine& machine, const PreparedRecording& prepared,
                                  const AskedBearings& asked, const WeighingSettings& settings);

// Of all parts of one machine's recordings, both sorts, each fault and place said once, as the longest
// recording has it. What another part saw in full (a measure or a weight of it, and no blind spot) is not
// blind: short wide and long narrow recordings make up for each other.
std::vector<BlindSpot> jointBlindSpots(const Machine& machine, const std::vector<Examination>& parts);

}  // namespace fettle
