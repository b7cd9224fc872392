#include "core/dsp/window.h"

#include <array>
#include <cmath>
#include <complex>
#include <numeric>

#include "core/base/units.h"

namespace fettle {

namespace {

constexpr std::array<double, 1> kRectangular{1};
constexpr std::array<double, 2> kHann{0.5, 0.5};
constexpr std::array<double, 2> kHamming{0.54, 0.46};
constexpr std::array<double, 3> kBlackman{0.42, 0.5, 0.08};
constexpr std::array<double, 4> kBlackmanHarris{0.35875, 0.48829, 0.14128, 0.01168};
constexpr std::array<double, 5> kFlatTop{0.21557895, 0.41663158, 0.277263158, 0.083578947, 0.006947368};

// a0 - a1 cos(angle) + a2 cos(2 angle) - ..., by Clenshaw's recurrence: one cosine a sample.
double cosineSum(std::span<const double> terms, double angle) {
    const double c = -std::cos(angle);
    double above = 0, sum = 0;
    for (std::size_t i = terms.size(); i-- > 1;) {
        const double next = terms[i] + 2 * c * sum - above;
        above = sum;
        sum = next;
    }
    return terms[0] + c * sum - above;
}

double sumOf(std::span<const double> values) {
    return std::accumulate(values.begin(), values.end(), 0.0);
}

double sumOfSquares(std::span<const double> values) {
    return std::inner_product(values.begin(), values.end(), values.begin(), 0.0);
}

}  // namespace

std::string_view windowName(WindowKind kind) {
    switch (kind) {
        case WindowKind::Rectangular:
            return "rectangular";
        case WindowKind::Hann:
            return "Hann";
        case WindowKind::Hamming:
            return "Hamming";
        case WindowKind::Blackman:
            return "Blackman";
        case WindowKind::BlackmanHarris:
            return "Blackman-Harris";
        case WindowKind::FlatTop:
            break;
    }
    return "flat top";
}

std::span<const double> windowTerms(WindowKind kind) {
    switch (kind) {
        case WindowKind::Rectangular:
            return kRectangular;
        case WindowKind::Hann:
            return kHann;
        case WindowKind::Hamming:
            return kHamming;
        case WindowKind::Blackman:
            return kBlackman;
        case WindowKind::BlackmanHarris:
            return kBlackmanHarris;
        case WindowKind::FlatTop:
            break;
    }
    return kFlatTop;
}

FftVector<double> makeWindow(WindowKind kind, std::size_t n, WindowForm form) {
    return cosineWindow(windowTerms(kind), n, form);
}

FftVector<double> cosineWindow(std::span<const double> terms, std::size_t n, WindowForm form) {
    FftVector<double> window(n, 1.0);
    if (n < 2 || terms.empty()) return window;
    const std::size_t period = form == WindowForm::Periodic ? n : n - 1;
    for (std::size_t i = 0; i <= period / 2; ++i) {
        window[i] = cosineSum(terms, kTwoPi * double(i) / double(period));
        if (period - i < n) window[period - i] = window[i];
    }
    return window;
}

double coherentGain(std::span<const double> window) {
    return sumOf(window) / double(window.size());
}

double noiseBandwidthBins(std::span<const double> window) {
    const double sum = sumOf(window);
    return double(window.size()) * sumOfSquares(window) / (sum * sum);
}

double windowResponse(std::span<const double> window, double bins) {
    std::complex<double> sum = 0;
    for (std::size_t i = 0; i < window.size(); ++i)
        sum += window[i] * std::polar(1.0, -kTwoPi * bins * double(i) / double(window.size()));
    return std::abs(sum) / sumOf(window);
}

double scallopingLossDb(std::span<const double> window) {
    return -20 * std::log10(windowResponse(window, 0.5));
}

double overlapCorrelation(std::span<const double> window, std::size_t hop) {
    if (hop >= window.size()) return 0;
    const auto later = window.subspan(hop);
    return std::inner_product(later.begin(), later.end(), window.begin(), 0.0) / sumOfSquares(window);
}

double effectiveAverages(std::span<const double> window, std::size_t hop, std::size_t averages) {
    double spread = 1;
    for (std::size_t q = 1; q < averages && q * hop < window.size(); ++q) {
        const double correlation = overlapCorrelation(window, q * hop);
        spread += 2 * (1 - double(q) / double(averages)) * correlation * correlation;
    }
    return double(averages) / spread;
}

}  // namespace fettle
