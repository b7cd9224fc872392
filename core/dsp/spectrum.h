// Why: one picture of a signal by frequency that always says what its numbers are. A line's height, a band's
// sum and a noise level are three different readings of the same lines; mixing them up overstates a band by
// up to a half. Source: periodogram and average over segments as in Welch, IEEE Trans. Audio Electroacoustics
// 15 (1967) 70-73; scaling, one-sidedness and the bias of the median (Allen et al., Phys. Rev. D 85 (2012)
// 122006, appendix B) as in SciPy 1.10. Shapes: n samples give n / 2 + 1 lines, line k at k x stepHz,
// one-sided: each line holds both signs of frequency. Errors: none; a signal without samples gives a spectrum
// without values. Sample rates are > 0. Thread: any.
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <vector>

#include "core/dsp/window.h"

namespace fettle {

// What a line's value is, with `unit` the unit of the signal.
enum class SpectrumKind {
    Amplitude,  // peak of a sine on the line, unit
    Rms,        // r.m.s. of a sine on the line, unit
    Power,      // mean square of a sine on the line, unit squared
    Density     // mean square per hertz, unit squared / Hz
};

struct Spectrum {
    SpectrumKind kind = SpectrumKind::Power;
    double stepHz = 0;  // between lines
    std::vector<double> values;
    WindowKind window = WindowKind::Rectangular;
    double noiseBandwidthBins = 1;  // of the window; in hertz times stepHz
    std::string unit;               // of the signal: "g", "mm/s"
    std::size_t transformSize = 0;  // samples a segment
    std::size_t segments = 0;       // how many were averaged

    double frequencyHz(std::size_t line) const { return stepHz * double(line); }
    double topHz() const { return stepHz * double(transformSize) / 2; }
    // Zero hertz, and half the sample rate where a line stands there: these have one sign of frequency only.
    bool isEdge(std::size_t line) const { return line == 0 || 2 * line == transformSize; }
};

enum class AverageOver { Mean, Median };  // Median: one knock in the record does not lift the floor

struct SpectrumOptions {
    WindowKind window = WindowKind::Hann;
    SpectrumKind kind = SpectrumKind::Power;
    bool removeMean = true;  // of each segment, before the window
    std::string unit = {};
    // Of welch only:
    std::size_t segment = 4096;  // samples; a shorter signal is taken whole
    double overlap = 0.5;        // share of a segment, 0 <= overlap < 1
    AverageOver average = AverageOver::Mean;
};

// One transform of the whole signal.
Spectrum periodogram(std::span<const double> signal, double sampleRateHz,
                     const SpectrumOptions& options = {});
// Average over segments; samples after the last whole segment are left out.
Spectrum welch(std::span<const double> signal, double sampleRateHz, const SpectrumOptions& options = {});

Spectrum converted(const Spectrum& spectrum, SpectrumKind kind);
// "g peak", "g r.m.s.", "g²", "(mm/s)²/Hz"
std::string valueUnit(const Spectrum& spectrum);

// r.m.s. of what lies between two frequencies, any kind of spectrum. A line stands for the cell half a step
// to either side and counts with the share of it inside, so adjoining bands add up in power and the whole
// gives the signal's r.m.s. (of the windowed signal, over the window's own mean square).
double bandRms(const Spectrum& spectrum, double lowHz, double highHz);

}  // namespace fettle
