// Why: the simulator is measured with means of its own, a sum of products at one frequency, so that it does
// not vouch for the engine nor the engine for it.
#pragma once

#include <cmath>
#include <cstdint>
#include <numbers>
#include <string>
#include <vector>

#include "core/simulate/simulation.h"

namespace fettle::sim::probe {

// Samples of a channel in its unit, as stored; empty where there is none of that name.
inline std::vector<double> valuesOf(const SimulatedRecording& recording, const std::string& name) {
    std::vector<double> values;
    const double steps = double(std::int64_t(1) << (recording.bits - 1));
    for (const auto& channel : recording.channels)
        if (channel.name == name)
            for (const std::int32_t sample : channel.samples)
                values.push_back(sample / steps * channel.scale);
    return values;
}

// Peak amplitude of a sine at `hz`, by a Hann-weighted sum; 2/sum of weights makes a sine read its own peak.
inline double peakAt(const std::vector<double>& values, double rateHz, double hz) {
    double re = 0, im = 0, weights = 0;
    const double n = double(values.size());
    for (std::size_t i = 0; i < values.size(); ++i) {
        const double weight = 0.5 - 0.5 * std::cos(2 * std::numbers::pi * (double(i) + 0.5) / n);
        const double angle = 2 * std::numbers::pi * hz * double(i) / rateHz;
        re += weight * values[i] * std::cos(angle);
        im += weight * values[i] * std::sin(angle);
        weights += weight;
    }
    return 2 * std::hypot(re, im) / weights;
}

struct Found {
    double hz = 0, peak = 0;
};

// The strongest line within `around` +- `reach`, in steps of a tenth of a bin.
inline Found strongest(const std::vector<double>& values, double rateHz, double around, double reach) {
    Found best;
    const double step = rateHz / double(values.size()) / 10;
    for (double hz = around - reach; hz <= around + reach; hz += step)
        if (const double peak = peakAt(values, rateHz, hz); peak > best.peak) best = {hz, peak};
    return best;
}

inline double meanOf(const std::vector<double>& values) {
    double sum = 0;
    for (const double value : values)
        sum += value;
    return sum / double(values.size());
}

inline double momentOf(const std::vector<double>& values, int order) {
    const double mean = meanOf(values);
    double sum = 0;
    for (const double value : values)
        sum += std::pow(value - mean, order);
    return sum / double(values.size());
}

inline double rmsOf(const std::vector<double>& values) {
    return std::sqrt(momentOf(values, 2));
}
inline double kurtosisOf(const std::vector<double>& values) {
    return momentOf(values, 4) / (momentOf(values, 2) * momentOf(values, 2));
}

// Squares of the change from sample to sample: follows the envelope of a high band and leaves shaft orders
// behind.
inline std::vector<double> liveliness(const std::vector<double>& values) {
    std::vector<double> squares(values.size() - 1);
    for (std::size_t i = 0; i + 1 < values.size(); ++i)
        squares[i] = (values[i + 1] - values[i]) * (values[i + 1] - values[i]);
    const double mean = meanOf(squares);
    for (double& value : squares)
        value -= mean;
    return squares;
}

}  // namespace fettle::sim::probe
