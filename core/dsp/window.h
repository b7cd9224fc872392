// Why: every level read from a spectrum depends on the window: its gain sets a line's height, its noise
// bandwidth sets the level of noise and the sum of a band. So they are computed from the samples of the very
// window that was used. Source: Harris, On the use of windows for harmonic analysis with the discrete Fourier
// transform, Proc. IEEE 66 (1978) 51-83, table 1 and the figures of merit before it. Flat top: terms as in
// SciPy's `flattop`. Units: bins are multiples of sample rate / length. Shapes: n weights, all finite.
// Thread: any.
#pragma once

#include <cstddef>
#include <span>
#include <string_view>

#include "core/dsp/fft.h"

namespace fettle {

enum class WindowKind {
    Rectangular,
    Hann,
    Hamming,         // 0.54, 0.46
    Blackman,        // 0.42, 0.5, 0.08
    BlackmanHarris,  // four terms, -92 dB: 0.35875, 0.48829, 0.14128, 0.01168
    FlatTop          // five terms, a lone line reads right within 0.01 dB; not made for noise
};

// Periodic: one period of n samples, for spectra. Symmetric: first and last weight alike, for filters.
enum class WindowForm { Periodic, Symmetric };

std::string_view windowName(WindowKind kind);
// Cosine terms a0, a1 .. of w[i] = a0 - a1 cos(2 pi i / n) + a2 cos(4 pi i / n) - ...
std::span<const double> windowTerms(WindowKind kind);

FftVector<double> makeWindow(WindowKind kind, std::size_t n, WindowForm form = WindowForm::Periodic);
// The same for terms of the caller's own. A window of one sample is 1.
FftVector<double> cosineWindow(std::span<const double> terms, std::size_t n, WindowForm form);

// All below need a window with a sum above zero.

// Height of a line on a bin, as a share of the height without a window.
double coherentGain(std::span<const double> window);
// Equivalent noise bandwidth in bins: 1 for the rectangular window.
double noiseBandwidthBins(std::span<const double> window);
// Height of a line that lies `bins` off the bin it is read at, as a share of its height on the bin.
double windowResponse(std::span<const double> window, double bins);
// Loss in dB, above 0, of a line half way between two bins.
double scallopingLossDb(std::span<const double> window);
// Correlation of the noise in two windows `hop` samples apart.
double overlapCorrelation(std::span<const double> window, std::size_t hop);
// How many independent averages `averages` overlapping ones are worth; 1 / sqrt of it is the random error of
// a power. Source: Welch, IEEE Trans. Audio Electroacoustics 15 (1967) 70-73.
double effectiveAverages(std::span<const double> window, std::size_t hop, std::size_t averages);

}  // namespace fettle
