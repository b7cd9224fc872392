#include "core/dsp/analytic.h"

#include <algorithm>

namespace fettle {

FftVector<std::complex<double>> analyticSignal(std::span<const double> signal) {
    const std::size_t n = signal.size();
    const FftVector<double> real(signal.begin(), signal.end());
    FftVector<std::complex<double>> bins, analytic;
    forwardReal(real, bins);
    for (std::size_t k = 0; k < bins.size(); ++k) {
        const bool edge = k == 0 || 2 * k == n;
        bins[k] *= (edge ? 1 : 2) / double(n);
    }
    bins.resize(n);
    inverseComplex(bins, analytic);
    return analytic;
}

FftVector<double> hilbertEnvelope(std::span<const double> signal) {
    const auto analytic = analyticSignal(signal);
    FftVector<double> envelope(analytic.size());
    std::transform(analytic.begin(), analytic.end(), envelope.begin(),
                   [](const auto& z) { return std::abs(z); });
    return envelope;
}

}  // namespace fettle
