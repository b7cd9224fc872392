// Why: a count of rare events is told with its interval. Source: F. Garwood, Biometrika 28 (1936) 437-442
// (exact interval of a Poisson mean). Thread: pure.
#pragma once

#include <cmath>
#include <cstddef>

namespace fettle::trials {

struct Interval {
    double low = 0, high = 0;
};

// P(N <= n) for a Poisson count of this mean.
inline double poissonAtMost(std::size_t n, double mean) {
    double term = std::exp(-mean), sum = term;
    for (std::size_t i = 1; i <= n; ++i)
        sum += term *= mean / double(i);
    return sum;
}

// 95 % interval of the mean behind `n` events.
inline Interval garwood(std::size_t n) {
    const auto solve = [](std::size_t count, double probability) {
        double low = 0, high = 10 + 4 * double(count);
        for (int i = 0; i < 100; ++i) {
            const double middle = (low + high) / 2;
            (poissonAtMost(count, middle) > probability ? low : high) = middle;
        }
        return low;
    };
    return {n == 0 ? 0 : solve(n - 1, 0.975), solve(n, 0.025)};
}

}  // namespace fettle::trials
