// Why: much of what stays unseen follows from the description and from which points recorded at all: a
// machine behind the coupling, a direction nobody measured, a shaft slower than the sensor reads, the
// sensor's own noise, bearings that nobody described. It is a matter of the span of recordings, not of each.
// Sources: directions as in common textbooks; noise of an accelerometer in velocity by v = a / (2 pi f), so
// that a density A gives A / (2 pi) sqrt(1/f1 - 1/f2); thresholds: common practice, no source. Thread: pure.
#pragma once

#include <vector>

#include "core/diagnosis/examination.h"
#include "core/machine/machine.h"

namespace fettle {

// All with `machineWide` set. Nothing where no point of the machine recorded vibration.
std::vector<BlindSpot> blindByMachine(const Machine& machine, const std::vector<RecordingFacts>& recordings);

// r.m.s. velocity in mm/s that noise of a density in g over the root of a hertz makes between two
// frequencies.
double noiseMmS(double gPerRtHz, double lowHz, double highHz);

}  // namespace fettle
