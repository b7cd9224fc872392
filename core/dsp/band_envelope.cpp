#include "core/dsp/band_envelope.h"

#include <algorithm>
#include <cmath>

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

void hannPower(const FftVector<std::complex<float>>& bins, std::size_t count, std::vector<float>& power) {
    const std::size_t last = bins.size() - 1;
    power.resize(std::min(count, bins.size()));
    for (std::size_t k = 1; k < std::min(power.size(), last); ++k) {
        const float re = 0.5f * bins[k].real() - 0.25f * (bins[k - 1].real() + bins[k + 1].real());
        const float im = 0.5f * bins[k].imag() - 0.25f * (bins[k - 1].imag() + bins[k + 1].imag());
        power[k] = re * re + im * im;
    }
    // At either end the neighbour beyond is the conjugate of the one before.
    const auto edge = [&](std::size_t k, std::size_t neighbour) {
        const float re = 0.5f * (bins[k].real() - bins[neighbour].real());
        power[k] = re * re;
    };
    if (!power.empty()) edge(0, 1);
    if (power.size() > last) edge(last, last - 1);
}

void prewhiten(FftVector<std::complex<float>>& halfSpectrum) {
    for (auto& bin : halfSpectrum) {
        const float magnitude = std::sqrt(bin.real() * bin.real() + bin.imag() * bin.imag());
        bin *= magnitude > 0 ? 1 / magnitude : 0;
    }
}

const std::vector<float>& BandEnvelope::spectrum(const FftVector<std::complex<float>>& halfSpectrum,
                                                 double df, const Band& band, double topHz) {
    power_.clear();
    const auto first = static_cast<std::size_t>(std::ceil(band.lowHz / df));
    const std::size_t last = std::min(static_cast<std::size_t>(band.highHz / df), halfSpectrum.size());
    if (last <= first + 2) return power_;
    const std::size_t width = last - first, size = quickSizeAtLeast(2 * width);
    shifted_.resize(size);
    std::copy_n(halfSpectrum.begin() + std::ptrdiff_t(first), width, shifted_.begin());
    std::fill(shifted_.begin() + std::ptrdiff_t(width), shifted_.end(), 0.0f);
    inverseComplex(shifted_, analytic_);

    envelope_.resize(size);
    for (std::size_t i = 0; i < size; ++i) {
        const float re = analytic_[i].real(), im = analytic_[i].imag();
        envelope_[i] = re * re + im * im;
    }
    forwardReal(envelope_, bins_);
    bins_[0] = 0;
    const double top = std::min(topHz, kUsedWidth * double(width) * df);
    hannPower(bins_, static_cast<std::size_t>(top / df) + 1, power_);
    return power_;
}

}  // namespace fettle
