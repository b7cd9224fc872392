// Why: a p-value is one only if it is uniform where nothing is wrong; this measures how far a sample is from
// that. Source: Kolmogorov-Smirnov statistic; for n above 40 its 0.1 % critical value is 1.95 / sqrt(n)
// (standard tables, from memory). Thread: pure functions.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <random>
#include <vector>

namespace fettle::made {

// What the power of noise is distributed as, of mean 1.
inline std::vector<float> exponential(std::size_t n, std::uint64_t seed) {
    std::mt19937_64 bits(seed);
    std::exponential_distribution<float> draw(1);
    std::vector<float> power(n);
    for (float& value : power)
        value = draw(bits);
    return power;
}

// Largest distance between the sample's distribution and the uniform one on 0 .. 1.
inline double distanceFromUniform(std::vector<double> sample) {
    std::sort(sample.begin(), sample.end());
    const double n = double(sample.size());
    double most = 0;
    for (std::size_t i = 0; i < sample.size(); ++i)
        most = std::max({most, std::abs(sample[i] - double(i) / n), std::abs(double(i + 1) / n - sample[i])});
    return most;
}

inline double oneInAThousand(std::size_t n) {
    return 1.95 / std::sqrt(double(n));
}

struct MeanWithError {
    double mean = 0, error = 0;  // standard error of the mean
};

inline MeanWithError meanOf(const std::vector<double>& sample) {
    double sum = 0, squares = 0;
    for (const double value : sample)
        sum += value;
    const double n = double(sample.size()), mean = sum / n;
    for (const double value : sample)
        squares += (value - mean) * (value - mean);
    return {mean, std::sqrt(squares / (n - 1) / n)};
}

}  // namespace fettle::made
