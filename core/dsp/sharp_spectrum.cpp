#include "core/dsp/sharp_spectrum.h"

#include <algorithm>
#include <cmath>

#include "core/dsp/statistics.h"

namespace fettle {

namespace {

constexpr std::size_t kFewestSamples = 16;

// Bins below 0 Hz are the conjugates of those above; beyond the last likewise.
std::complex<double> binAt(const FftVector<std::complex<float>>& bins, std::ptrdiff_t k) {
    const auto last = std::ptrdiff_t(bins.size()) - 1;
    if (k < 0) return std::conj(std::complex<double>(bins[std::size_t(-k)]));
    if (k > last) return std::conj(std::complex<double>(bins[std::size_t(2 * last - k)]));
    return std::complex<double>(bins[std::size_t(k)]);
}

double noiseBandwidthOf(std::span<const double> terms) {
    double sum = terms[0] * terms[0];
    for (std::size_t t = 1; t < terms.size(); ++t)
        sum += terms[t] * terms[t] / 2;
    return sum / (terms[0] * terms[0]);
}

}  // namespace

Spectrum sharpSpectrum(const FftVector<std::complex<float>>& bins, double sampleRateHz, double topHz) {
    Spectrum spectrum;
    spectrum.window = WindowKind::BlackmanHarris;
    spectrum.segments = 1;
    if (bins.size() < kFewestSamples / 2) return spectrum;
    const std::span<const double> terms = windowTerms(WindowKind::BlackmanHarris);
    spectrum.noiseBandwidthBins = noiseBandwidthOf(terms);
    spectrum.transformSize = 2 * (bins.size() - 1);
    spectrum.stepHz = sampleRateHz / double(spectrum.transformSize);
    const auto count = std::min(bins.size(), std::size_t(std::max(0.0, topHz) / spectrum.stepHz) + 1);
    const double sum = terms[0] * double(spectrum.transformSize);
    for (std::size_t k = 0; k < count; ++k) {
        std::complex<double> value = terms[0] * binAt(bins, std::ptrdiff_t(k));
        for (std::size_t t = 1; t < terms.size(); ++t) {
            const auto at = std::ptrdiff_t(k), off = std::ptrdiff_t(t);
            const double half = (t % 2 ? -0.5 : 0.5) * terms[t];
            value += half * (binAt(bins, at - off) + binAt(bins, at + off));
        }
        spectrum.values.push_back(std::norm(value) * (spectrum.isEdge(k) ? 1 : 2) / (sum * sum));
    }
    return spectrum;
}

Spectrum sharpSpectrum(std::span<const double> signal, double sampleRateHz, double topHz) {
    if (signal.size() < kFewestSamples) return {};
    const auto part = signal.first(quickSizeAtMost(signal.size()));
    const double offset = mean(part);
    FftVector<float> samples(part.size());
    std::transform(part.begin(), part.end(), samples.begin(),
                   [offset](double x) { return float(x - offset); });
    FftVector<std::complex<float>> bins;
    forwardReal(samples, bins);
    return sharpSpectrum(bins, sampleRateHz, topHz);
}

}  // namespace fettle
