#include "core/dsp/integrate.h"

#include <algorithm>

#include "core/base/units.h"

namespace fettle {

namespace {

// A spectrum times a factor of frequency, in the signal's unit; zero below the corner.
template <class Factor>
Spectrum scaled(const Spectrum& from, double cornerHz, const char* unit, Factor factor) {
    Spectrum out = from;
    out.unit = unit;
    const bool squared = from.kind == SpectrumKind::Power || from.kind == SpectrumKind::Density;
    for (std::size_t k = 0; k < out.values.size(); ++k) {
        const double hz = from.frequencyHz(k);
        const double by = k == 0 || hz < cornerHz ? 0 : factor(Hertz(hz));
        out.values[k] *= squared ? by * by : by;
    }
    return out;
}

// Only the lines that reach into what lies below hz.
Spectrum upTo(const Spectrum& from, double hz) {
    const double count = std::clamp(hz / from.stepHz + 2, 0.0, double(from.values.size()));
    return {from.kind,
            from.stepHz,
            {from.values.begin(), from.values.begin() + std::ptrdiff_t(count)},
            from.window,
            from.noiseBandwidthBins,
            from.unit,
            from.transformSize,
            from.segments};
}

// The lowest line of which part lies above lowHz is the lowest that counts.
double cornerFor(const Spectrum& spectrum, double lowHz) {
    return lowHz - spectrum.stepHz / 2;
}

// Every bin of the whole record times a factor of its frequency; nothing below the corner.
template <class Factor>
FftVector<double> integrated(std::span<const double> accelerationG, double sampleRateHz, double cornerHz,
                             Factor factor) {
    const std::size_t n = accelerationG.size();
    const FftVector<double> signal(accelerationG.begin(), accelerationG.end());
    FftVector<std::complex<double>> bins;
    forwardReal(signal, bins);
    for (std::size_t k = 0; k < bins.size(); ++k) {
        const double hz = sampleRateHz * double(k) / double(n);
        const bool kept = k > 0 && hz >= cornerHz && 2 * k != n;
        bins[k] *= kept ? factor(Hertz(hz)) / double(n) : 0.0;  // the inverse transform wants 1 / n
    }
    FftVector<double> out;
    inverseReal(bins, n, out);
    return out;
}

}  // namespace

Spectrum velocitySpectrum(const Spectrum& accelerationG, double cornerHz) {
    return scaled(accelerationG, cornerHz, "mm/s", [](Hertz at) { return velocityMmPerS(1, at); });
}

Spectrum displacementSpectrum(const Spectrum& accelerationG, double cornerHz) {
    return scaled(accelerationG, cornerHz, "um",
                  [](Hertz at) { return displacementUm(velocityMmPerS(1, at), at); });
}

Spectrum accelerationSpectrum(std::span<const double> accelerationG, double sampleRateHz) {
    return periodogram(accelerationG, sampleRateHz, {.window = WindowKind::Hann, .unit = "g"});
}

double velocityRms(const Spectrum& accelerationG, double lowHz, double highHz) {
    if (accelerationG.values.empty()) return 0;
    return bandRms(velocitySpectrum(upTo(accelerationG, highHz), cornerFor(accelerationG, lowHz)), lowHz,
                   highHz);
}

double velocityRms(std::span<const double> accelerationG, double sampleRateHz, double lowHz, double highHz) {
    return velocityRms(accelerationSpectrum(accelerationG, sampleRateHz), lowHz, highHz);
}

double displacementRms(const Spectrum& accelerationG, double lowHz, double highHz) {
    if (accelerationG.values.empty()) return 0;
    return bandRms(displacementSpectrum(upTo(accelerationG, highHz), cornerFor(accelerationG, lowHz)), lowHz,
                   highHz);
}

double displacementRms(std::span<const double> accelerationG, double sampleRateHz, double lowHz,
                       double highHz) {
    return displacementRms(accelerationSpectrum(accelerationG, sampleRateHz), lowHz, highHz);
}

FftVector<double> velocitySignal(std::span<const double> accelerationG, double sampleRateHz,
                                 double cornerHz) {
    // v = a / (2 pi i f)
    return integrated(accelerationG, sampleRateHz, cornerHz,
                      [](Hertz at) { return std::complex<double>(0, -velocityMmPerS(1, at)); });
}

FftVector<double> displacementSignal(std::span<const double> accelerationG, double sampleRateHz,
                                     double cornerHz) {
    // d = a / (2 pi i f)^2
    return integrated(accelerationG, sampleRateHz, cornerHz, [](Hertz at) {
        return std::complex<double>(-displacementUm(velocityMmPerS(1, at), at));
    });
}

}  // namespace fettle
