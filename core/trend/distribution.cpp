#include "core/trend/distribution.h"

#include <cmath>
#include <numbers>

namespace fettle {

namespace {

constexpr double kTiny = 1e-300, kAccuracy = 1e-15;
constexpr int kMostTerms = 500;

// The even or odd coefficient number `term` of the continued fraction, 26.5.8.
double coefficient(double a, double b, double x, int term) {
    const double m = term / 2;
    if (term % 2 == 0) return m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
    return -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
}

double awayFromZero(double value) {
    return std::abs(value) < kTiny ? kTiny : value;
}

// By Lentz's forward method.
double betaFraction(double a, double b, double x) {
    double c = 1, d = 0, value = 1;
    for (int term = 1; term <= kMostTerms; ++term) {
        const double next = coefficient(a, b, x, term);
        d = 1 / awayFromZero(1 + next * d);
        c = awayFromZero(1 + next / c);
        value *= c * d;
        if (std::abs(c * d - 1) < kAccuracy) break;
    }
    return 1 / value;
}

// I_x(a, b) where x < (a + 1) / (a + b + 2): there the fraction converges fast.
double betaLower(double a, double b, double x) {
    return std::pow(x, a) * std::pow(1 - x, b) / (a * std::beta(a, b)) * betaFraction(a, b, x);
}

double betaRegular(double a, double b, double x) {
    if (x <= 0) return 0;
    if (x >= 1) return 1;
    return x < (a + 1) / (a + b + 2) ? betaLower(a, b, x) : 1 - betaLower(b, a, 1 - x);
}

template <class Rising>
double solved(Rising rising, double wanted, double low, double high) {
    for (int i = 0; i < 200 && high - low > 1e-14 * (1 + std::abs(low)); ++i) {
        const double middle = (low + high) / 2;
        (rising(middle) < wanted ? low : high) = middle;
    }
    return (low + high) / 2;
}

// Density of the ratio of a sample's spread to the true one, `degrees` degrees of freedom.
double spreadDensity(double ratio, double degrees) {
    if (ratio <= 0) return 0;
    const double half = degrees / 2;
    return std::exp(std::numbers::ln2 + half * std::log(half) - std::lgamma(half) +
                    (degrees - 1) * std::log(ratio) - half * ratio * ratio);
}

// P(mean + k s lies above the wanted share): mean over the sample's spread, by Simpson's rule.
double toleranceConfidence(double k, int count, double z) {
    constexpr int kSteps = 400;
    const double degrees = count - 1, root = std::sqrt(double(count));
    const double top = 1 + 9 / std::sqrt(2 * degrees), step = top / kSteps;
    double sum = 0;
    for (int i = 0; i <= kSteps; ++i) {
        const double ratio = i * step;
        const double share = i == 0 || i == kSteps ? 1 : i % 2 ? 4 : 2;
        sum += share * spreadDensity(ratio, degrees) * normalBelow(root * (k * ratio - z));
    }
    return sum * step / 3;
}

}  // namespace

double normalDensity(double z) {
    return std::exp(-z * z / 2) / std::sqrt(2 * std::numbers::pi);
}

double normalBelow(double z) {
    return std::erfc(-z / std::numbers::sqrt2) / 2;
}

double normalQuantile(double probability) {
    return solved(normalBelow, probability, -40, 40);
}

double studentTwoSided(double t, double degrees) {
    if (std::isinf(t)) return 0;
    return betaRegular(degrees / 2, 0.5, degrees / (degrees + t * t));
}

double studentQuantile(double probability, double degrees) {
    const auto below = [&](double t) {
        const double outside = studentTwoSided(t, degrees) / 2;
        return t < 0 ? outside : 1 - outside;
    };
    return solved(below, probability, -1e4, 1e4);
}

double toleranceFactor(int count, double cover, double confidence) {
    const double z = normalQuantile(cover);
    return solved([&](double k) { return toleranceConfidence(k, count, z); }, confidence, -50, 200);
}

}  // namespace fettle
