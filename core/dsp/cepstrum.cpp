#include "core/dsp/cepstrum.h"

#include <algorithm>
#include <cmath>

namespace fettle {

namespace {

constexpr double kZeroBin = 1e-15;  // of the largest magnitude

// Transforms, replaces each bin by replace(bin, magnitude, smallest magnitude that counts), transforms back.
template <class Replace>
FftVector<double> throughBins(std::span<const double> signal, Replace replace) {
    const FftVector<double> real(signal.begin(), signal.end());
    FftVector<std::complex<double>> bins;
    forwardReal(real, bins);
    double largest = 0;
    for (const auto& bin : bins)
        largest = std::max(largest, std::abs(bin));
    FftVector<double> out(signal.size());
    if (largest == 0) return out;
    for (auto& bin : bins)
        bin = replace(bin, std::abs(bin), kZeroBin * largest) / double(signal.size());
    inverseReal(bins, signal.size(), out);
    return out;
}

}  // namespace

FftVector<double> realCepstrum(std::span<const double> signal) {
    return throughBins(signal, [](std::complex<double>, double magnitude, double least) {
        return std::complex<double>(std::log(std::max(magnitude, least)));
    });
}

FftVector<double> cepstrumPrewhitened(std::span<const double> signal) {
    return throughBins(signal, [](std::complex<double> bin, double magnitude, double least) {
        return magnitude > least ? bin / magnitude : std::complex<double>(0);
    });
}

}  // namespace fettle
