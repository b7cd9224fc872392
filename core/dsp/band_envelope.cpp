#include "core/dsp/band_envelope.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace fettle {

namespace {
constexpr double kTreeLow = 0.02, kTreeHigh = 0.48;  // of the sample rate
constexpr double kUsedWidth = 0.9;                   // of a band: the rest of its envelope spectrum is skirt
}  // namespace

std::vector<Band> bandTree(double sampleRateHz, double narrowestHz) {
    const double low = kTreeLow * sampleRateHz, width = (kTreeHigh - kTreeLow) * sampleRateHz;
    std::vector<Band> bands;
    for (const int parts : {1, 3, 6, 12}) {
        if (parts > 1 && width / parts < narrowestHz) break;
        for (int i = 0; i < parts; ++i)
            bands.push_back({low + width * i / parts, low + width * (i + 1) / parts, parts});
    }
    return bands;
}

void prewhiten(FftVector<std::complex<float>>& halfSpectrum) {
    for (auto& bin : halfSpectrum) {
        const float magnitude = std::sqrt(bin.real() * bin.real() + bin.imag() * bin.imag());
        if (magnitude > 0) bin /= magnitude;
    }
}

const FftVector<float>& BandEnvelope::hann(std::size_t n) {
    FftVector<float>& table = hann_[n];
    if (table.empty()) {
        table.resize(n);
        for (std::size_t i = 0; i < n; ++i)
            table[i] = static_cast<float>(0.5 - 0.5 * std::cos(2 * std::numbers::pi * double(i) / double(n)));
    }
    return table;
}

const std::vector<float>& BandEnvelope::spectrum(const FftVector<std::complex<float>>& halfSpectrum, double df,
                                                 const Band& band, double topHz) {
    const auto first = static_cast<std::size_t>(std::ceil(band.lowHz / df));
    const std::size_t last = std::min(static_cast<std::size_t>(band.highHz / df), halfSpectrum.size());
    power_.clear();
    if (last <= first + 2) return power_;
    const std::size_t width = last - first, size = quickSizeAtLeast(2 * width);
    shifted_.assign(size, {});
    std::copy_n(halfSpectrum.begin() + std::ptrdiff_t(first), width, shifted_.begin());
    inverseComplex(shifted_, analytic_);

    envelope_.resize(size);
    double sum = 0;
    for (std::size_t i = 0; i < size; ++i) {
        const float re = analytic_[i].real(), im = analytic_[i].imag();
        envelope_[i] = re * re + im * im;
        sum += envelope_[i];
    }
    const auto mean = static_cast<float>(sum / double(size));
    const FftVector<float>& window = hann(size);
    for (std::size_t i = 0; i < size; ++i) envelope_[i] = (envelope_[i] - mean) * window[i];
    forwardReal(envelope_, bins_);

    const double top = std::min(topHz, kUsedWidth * double(width) * df);
    power_.resize(std::min(static_cast<std::size_t>(top / df) + 1, bins_.size()));
    for (std::size_t k = 0; k < power_.size(); ++k)
        power_[k] = bins_[k].real() * bins_[k].real() + bins_[k].imag() * bins_[k].imag();
    return power_;
}

}  // namespace fettle
