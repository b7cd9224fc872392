// Why: a small line beside a large one (a slip sideband 50 dB below the shaft's order, 1 Hz away) drowns in
// the skirt of a Hann window. The four-term Blackman-Harris window has none above -92 dB; it is wide instead:
// two lines are parted from 8 steps on. As a window of cosines is a convolution of neighbouring bins, it is
// had from the plain transform of the record without a pass over the samples. Source: Harris, Proc. IEEE 66
// (1978) 51-83, section on the Blackman-Harris window. Shapes: lines from 0 to topHz, step rate / n; Power
// (mean square of a sine on the line), unit squared of the signal; float accuracy. Thread: any.
#pragma once

#include <span>

#include "core/dsp/fft.h"
#include "core/dsp/spectrum.h"

namespace fettle {

// From the n / 2 + 1 bins of an even n samples whose mean was removed.
Spectrum sharpSpectrum(const FftVector<std::complex<float>>& bins, double sampleRateHz, double topHz);
// Of the record cut to a quick length, its mean removed; fewer than 16 samples give no lines.
Spectrum sharpSpectrum(std::span<const double> signal, double sampleRateHz, double topHz);

}  // namespace fettle
