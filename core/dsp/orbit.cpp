#include "core/dsp/orbit.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/base/units.h"
#include "core/dsp/integrate.h"

namespace fettle {

namespace {

using Pointer = std::complex<double>;

constexpr int kStepsATurn = 360;
constexpr double kLineShare = 0.02;  // minor over major axis below which no sense of turning is told

double micrometresPerG(double hz) {
    const double omega = kTwoPi * hz;
    return kStandardGravity * 1e6 / (omega * omega);
}

double meanOf(std::span<const double> values) {
    double sum = 0;
    for (const double value : values)
        sum += value;
    return values.empty() ? 0 : sum / double(values.size());
}

}  // namespace

Pointer displacementAt(std::span<const double> accelerationG, double sampleRateHz, double hz) {
    const std::size_t n = accelerationG.size();
    if (n < 4 || !(hz > 0) || 2 * hz >= sampleRateHz) return 0;
    const double mean = meanOf(accelerationG), step = kTwoPi * hz / sampleRateHz;
    Pointer sum = 0;
    double weight = 0;
    for (std::size_t i = 0; i < n; ++i) {
        const double w = 0.5 - 0.5 * std::cos(kTwoPi * double(i) / double(n));
        sum += w * (accelerationG[i] - mean) * std::polar(1.0, -step * double(i));
        weight += w;
    }
    return -micrometresPerG(hz) * 2.0 * sum / weight;
}

Ellipse ellipseOf(Pointer first, Pointer second) {
    const Pointer i(0, 1);
    const Pointer forward = (first + i * second) / 2.0;
    const Pointer backward = (std::conj(first) + i * std::conj(second)) / 2.0;
    Ellipse ellipse;
    ellipse.majorUm = std::abs(forward) + std::abs(backward);
    ellipse.minorUm = std::abs(std::abs(forward) - std::abs(backward));
    double angle = (std::arg(forward) + std::arg(backward)) / 2 * 180 / std::numbers::pi;
    angle = std::fmod(angle + 360, 180);
    ellipse.angleDeg = angle > 180 - 1e-9 ? 0 : angle;
    if (ellipse.minorUm > kLineShare * ellipse.majorUm)
        ellipse.turns = std::abs(forward) > std::abs(backward) ? 1 : -1;
    return ellipse;
}

OrbitPath orbitOfOrders(std::span<const double> firstG, std::span<const double> secondG, double sampleRateHz,
                        double shaftHz, std::span<const int> orders) {
    OrbitPath path;
    if (!(shaftHz > 0) || firstG.size() < 4 || firstG.size() != secondG.size()) return path;
    path.first.assign(kStepsATurn + 1, 0);
    path.second.assign(kStepsATurn + 1, 0);
    for (const int order : orders) {
        const Pointer first = displacementAt(firstG, sampleRateHz, order * shaftHz);
        const Pointer second = displacementAt(secondG, sampleRateHz, order * shaftHz);
        for (int step = 0; step <= kStepsATurn; ++step) {
            const Pointer turned = std::polar(1.0, kTwoPi * order * step / kStepsATurn);
            path.first[std::size_t(step)] += float((first * turned).real());
            path.second[std::size_t(step)] += float((second * turned).real());
        }
    }
    return path;
}

OrbitPath orbitUnfiltered(std::span<const double> firstG, std::span<const double> secondG,
                          double sampleRateHz, double shaftHz, double cornerHz, int turns) {
    OrbitPath path;
    const std::size_t n = firstG.size();
    if (n < 16 || n != secondG.size() || !(shaftHz > 0) || !(sampleRateHz > 0)) return path;
    const auto first = displacementSignal(firstG, sampleRateHz, cornerHz);
    const auto second = displacementSignal(secondG, sampleRateHz, cornerHz);
    const auto wanted = std::min(n, std::size_t(std::ceil(turns * sampleRateHz / shaftHz)) + 1);
    const auto from = std::ptrdiff_t((n - wanted) / 2), until = from + std::ptrdiff_t(wanted);
    path.first.assign(first.begin() + from, first.begin() + until);
    path.second.assign(second.begin() + from, second.begin() + until);
    return path;
}

}  // namespace fettle
