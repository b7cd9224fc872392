#include "core/simulate/resonator.h"

#include <cmath>

#include "core/simulate/exact_math.h"

namespace fettle::sim {

namespace {
constexpr double kRadians = 6.283185307179586;
constexpr double kStiffShare = 0.4;  // of a mode's frequency: below, stiffness holds the housing still

struct Pole {
    double re, im, decay;  // decay per sample, in exponents
};

Pole poleOf(const Mode& mode, double rateHz) {
    const double decay = kRadians * mode.hz * mode.damping / rateHz;
    const double turns = mode.hz * std::sqrt(1 - mode.damping * mode.damping) / rateHz;
    const double radius = exact::exponential(-decay);
    return {radius * exact::cosine(turns), radius * exact::sine(turns), decay};
}
}  // namespace

std::vector<double> ring(const std::vector<Impact>& impacts, const Mode& mode, double rateHz,
                         std::size_t samples) {
    std::vector<double> out(samples);
    const Pole pole = poleOf(mode, rateHz);
    const double turns = mode.hz * std::sqrt(1 - mode.damping * mode.damping) / rateHz;
    double re = 0, im = 0;
    std::size_t next = 0;
    for (std::size_t i = 0; i < samples; ++i) {
        const double turned = re * pole.re - im * pole.im;
        im = re * pole.im + im * pole.re;
        re = turned;
        for (; next < impacts.size() && impacts[next].sample <= double(i); ++next) {
            const double since = double(i) - impacts[next].sample;
            const double size =
                impacts[next].strength * mode.weight * exact::exponential(-pole.decay * since);
            re += size * exact::cosine(turns * since);
            im += size * exact::sine(turns * since);
        }
        out[i] = im;
    }
    blockBelow(kStiffShare * mode.hz, rateHz, out);
    return out;
}

std::vector<double> ringingNoise(const Mode& mode, double rateHz, std::size_t samples, RandomStream chance) {
    std::vector<double> out(samples);
    const Pole pole = poleOf(mode, rateHz);
    const double power = pole.re * pole.re + pole.im * pole.im;
    const double sigma = std::sqrt(1 - power);  // real and imaginary part driven alike: each of variance 1
    const std::vector<double> drive = chance.normals(2 * samples + 2);
    double re = drive[0], im = drive[1];
    for (std::size_t i = 0; i < samples; ++i) {
        const double turned = re * pole.re - im * pole.im + sigma * drive[2 * i + 2];
        im = re * pole.im + im * pole.re + sigma * drive[2 * i + 3];
        re = turned;
        out[i] = im;
    }
    blockBelow(kStiffShare * mode.hz, rateHz, out);
    return out;
}

void blockBelow(double hz, double rateHz, std::vector<double>& signal) {
    const double keep = exact::exponential(-kRadians * hz / rateHz), gain = (1 + keep) / 2;
    for (int pass = 0; pass < 2; ++pass) {
        double before = 0, y = 0;
        for (double& value : signal) {
            y = gain * (value - before) + keep * y;
            before = value;
            value = y;
        }
    }
}

void applyMount(double hz, double damping, double rateHz, std::vector<double>& signal) {
    if (hz <= 0 || hz > 0.48 * rateHz) return;
    const double half = hz / rateHz / 2;
    const double tangent = exact::sine(half) / exact::cosine(half), square = tangent * tangent;
    const double norm = 1 + 2 * damping * tangent + square;
    const double b0 = square / norm, a1 = 2 * (square - 1) / norm,
                 a2 = (1 - 2 * damping * tangent + square) / norm;
    double x1 = signal.empty() ? 0 : signal[0], x2 = x1, y1 = x1, y2 = x1;
    for (double& value : signal) {
        const double x = value;
        const double y = b0 * (x + 2 * x1 + x2) - a1 * y1 - a2 * y2;
        x2 = x1;
        x1 = x;
        y2 = y1;
        y1 = y;
        value = y;
    }
}

}  // namespace fettle::sim
