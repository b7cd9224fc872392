// Why: the outline of a vibration and its instantaneous phase, from one channel without a reference.
// Source: Marple, Computing the discrete-time analytic signal via FFT, IEEE Trans. Signal Proc. 47 (1999)
// 2600-2603; the same as SciPy's `hilbert`. The record is taken as one turn of a loop: the ends feel each
// other. Shapes: as many samples out as in. Units: the signal's. Thread: any.
#pragma once

#include <span>

#include "core/dsp/fft.h"

namespace fettle {

// Real part: the signal; imaginary part: its Hilbert transform.
FftVector<std::complex<double>> analyticSignal(std::span<const double> signal);
FftVector<double> hilbertEnvelope(std::span<const double> signal);

}  // namespace fettle
