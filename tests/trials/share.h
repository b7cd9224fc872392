// Why: no share and no rate is printed without its interval. Sources: E. B. Wilson, J. Am. Stat. Assoc. 22
// (1927) 209-212 (share); F. Garwood, Biometrika 28 (1936) 437-442 (exact interval of a Poisson mean). 95 %.
// Thread: pure.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace fettle::trials {

struct Interval {
    double low = 0, high = 1;
};

inline constexpr double kZ95 = 1.959963985;

// `independent`: trials as good as independent, at most n.
inline Interval shareInterval(double hits, double n, double independent) {
    if (n <= 0 || independent <= 0) return {};
    const double share = hits / n, z2 = kZ95 * kZ95 / independent;
    const double middle = (share + z2 / 2) / (1 + z2);
    const double half =
        kZ95 / (1 + z2) * std::sqrt(share * (1 - share) / independent + z2 / (4 * independent));
    return {std::max(0.0, middle - half), std::min(1.0, middle + half)};
}
inline Interval shareInterval(double hits, double n) {
    return shareInterval(hits, n, n);
}

// P(N <= n) for a Poisson count of this mean.
inline double poissonAtMost(std::size_t n, double mean) {
    double term = std::exp(-mean), sum = term;
    for (std::size_t i = 1; i <= n; ++i)
        sum += term *= mean / double(i);
    return sum;
}

// Of the mean behind `n` events.
inline Interval countInterval(std::size_t n) {
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
