// Why: open records come from bench accelerometers; a fleet is heard through cheap nodes. This puts a record
// through such a node: lower rate with a soft filter that lets some fold back, the resonance of a magnet, the
// noise of a MEMS element, a clock that runs wrong, 16 bits of 16 g. Units: Hz, g; rates in samples a second.
// Errors: a channel that is not in g, or is slower than the node. Thread: pure. Source of the response of a
// mounted mass to its base: any textbook on vibration (transmissibility of one degree of freedom).
#pragma once

#include <cstdint>

#include "core/base/result.h"
#include "core/signal/recording.h"

namespace fettle {

struct NodeGrade {
    double rateHz = 6400;     // as stated
    double noisePerRtHz = 0;  // g/sqrt(Hz)
    double mountHz = 0;       // resonance of the mounting; 0: none in reach
    double mountDamping = 0.04;
    double clockError = 0;     // true rate = stated x (1 + clockError)
    double aliasShare = 0.05;  // of what lies above half the rate, that folds back
};

Result<RecordingPtr> throughNode(const Recording& recording, const NodeGrade& node, std::uint64_t seed);

}  // namespace fettle
