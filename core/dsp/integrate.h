// Why: severity limits are in mm/s r.m.s. and um, sensors give g. Integration divides by frequency, so
// everything slow (drift, gravity, sensor noise) would swamp the result: a lower corner is part of every call
// and of what is printed. Source: a sine's acceleration is 2 pi f times its velocity; 10 to 1000 Hz r.m.s. as
// in ISO 20816-1:2016; g: ISO 80000-3. Units: acceleration in g in, velocity in mm/s or displacement in um
// out; same kind of amplitude as in. Thread: any.
#pragma once

#include <span>

#include "core/dsp/spectrum.h"

namespace fettle {

// Every line of a spectrum in g divided by its own 2 pi f. Lines below cornerHz, and the line at 0 Hz, are
// zero.
Spectrum velocitySpectrum(const Spectrum& accelerationG, double cornerHz);
Spectrum displacementSpectrum(const Spectrum& accelerationG, double cornerHz);

// The spectrum the levels below stand on: the whole record in one Hann-windowed transform, mean removed.
Spectrum accelerationSpectrum(std::span<const double> accelerationG, double sampleRateHz);

// r.m.s. between two frequencies as in bandRms. lowHz > 0.
double velocityRms(const Spectrum& accelerationG, double lowHz, double highHz);
double velocityRms(std::span<const double> accelerationG, double sampleRateHz, double lowHz, double highHz);
double displacementRms(const Spectrum& accelerationG, double lowHz, double highHz);
double displacementRms(std::span<const double> accelerationG, double sampleRateHz, double lowHz,
                       double highHz);

// Velocity against time, through one transform without a window; everything below cornerHz is cut off. The
// record is taken as one turn of a loop: where its ends do not meet, about one period of the corner at either
// end is unsure.
FftVector<double> velocitySignal(std::span<const double> accelerationG, double sampleRateHz, double cornerHz);
FftVector<double> displacementSignal(std::span<const double> accelerationG, double sampleRateHz,
                                     double cornerHz);

}  // namespace fettle
