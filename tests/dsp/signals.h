// Why: the fixed signals whose numbers other programs have published for these tests, and the plain ones
// (sine, noise) physics is checked on. x, y and u are built from integers, so they are the same bits
// everywhere.
#pragma once

#include <cmath>
#include <cstdint>
#include <random>
#include <vector>

#include "core/base/units.h"

namespace fettle::signals {

inline constexpr double kRateHz = 1024;  // of x and y

// ((7 n^2 + 3 n + 1) mod 31 - 15) / 16, 256 samples
inline std::vector<double> x() {
    std::vector<double> out;
    for (int n = 0; n < 256; ++n)
        out.push_back(((7 * n * n + 3 * n + 1) % 31 - 15) / 16.0);
    return out;
}

// x with a sine of amplitude 2 on bin 25
inline std::vector<double> y() {
    std::vector<double> out = x();
    for (std::size_t n = 0; n < out.size(); ++n)
        out[n] += 2 * std::sin(kTwoPi * 100 * double(n) / kRateHz);
    return out;
}

// Even noise in -0.5 .. 0.5 from a linear congruential generator, 4096 samples at 4096 Hz
inline std::vector<double> u() {
    std::vector<double> out;
    std::uint32_t state = 1;
    for (int i = 0; i < 4096; ++i) {
        state = 1664525u * state + 1013904223u;
        out.push_back(state / 4294967296.0 - 0.5);
    }
    return out;
}

// A tick every 1/32 s that rings at 1000 Hz, in a little of u; 4096 samples at 4096 Hz
inline std::vector<double> ticks() {
    std::vector<double> out = u();
    for (double& value : out)
        value *= 0.05;
    for (std::size_t start = 0; start < out.size(); start += 128)
        for (std::size_t m = 0; m < 64; ++m)
            out[start + m] += std::exp(-0.1 * double(m)) * std::sin(kTwoPi * 1000 * double(m) / 4096);
    return out;
}

inline std::vector<double> sine(double amplitude, double hz, double rateHz, std::size_t n, double phase = 0) {
    std::vector<double> out(n);
    for (std::size_t i = 0; i < n; ++i)
        out[i] = amplitude * std::sin(kTwoPi * hz * double(i) / rateHz + phase);
    return out;
}

inline std::vector<double> normalNoise(double sigma, std::size_t n, unsigned start = 1) {
    std::mt19937_64 bits(start);
    std::normal_distribution<double> normal(0, sigma);
    std::vector<double> out(n);
    for (double& value : out)
        value = normal(bits);
    return out;
}

}  // namespace fettle::signals
