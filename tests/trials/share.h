// Why: no share and no rate is printed without its interval. Source: E. B. Wilson, J. Am. Stat. Assoc. 22
// (1927) 209-212 (share); Byar's approximation to the exact Poisson limits, in N. E. Breslow and N. E. Day,
// Statistical Methods in Cancer Research II (1987), section 2.3 (count). 95 %.
#pragma once

#include <algorithm>
#include <cmath>

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

inline Interval countInterval(double count) {
    const auto bound = [](double c, double z) {
        return c <= 0 ? 0 : c * std::pow(1 - 1 / (9 * c) + z / (3 * std::sqrt(c)), 3);
    };
    return {bound(count, -kZ95), bound(count + 1, kZ95)};
}

}  // namespace fettle::trials
