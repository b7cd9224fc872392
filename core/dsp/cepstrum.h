// Why: families of evenly spaced lines become single peaks (real cepstrum); setting every magnitude to 1
// takes away gear and rotor tones and resonances alike and leaves what is impulsive (cepstrum pre-whitening).
// Source: Bogert, Healy and Tukey, Proc. Symp. Time Series Analysis (1963) 209-243; Borghesani et al.,
// Application of cepstrum pre-whitening for the diagnosis of bearing faults, MSSP 36 (2013) 370-384. Shapes:
// as many samples out as in; quefrency of sample i is i / sample rate, in seconds. Thread: any. A bin below
// 1e-15 of the largest is rounding noise and counts as zero.
#pragma once

#include <span>

#include "core/dsp/fft.h"

namespace fettle {

// Inverse transform of ln |X|. A zero bin is taken at the 1e-15 level; a signal of zeros gives zeros.
FftVector<double> realCepstrum(std::span<const double> signal);
// Inverse transform of X / |X|; zero bins stay zero.
FftVector<double> cepstrumPrewhitened(std::span<const double> signal);

}  // namespace fettle
