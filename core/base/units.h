// Why: a shaft speed in r/min taken for one in Hz, or a level in g for one in mm/s, is a wrong bearing.
// Values that cross a room's border as bare numbers carry their unit in the name (speedRpm, weightDban);
// where two units of one thing meet in a call, these types keep them apart.
#pragma once

#include <cmath>
#include <compare>
#include <numbers>

namespace fettle {

template <class Tag>
struct Measure {
    double value = 0;
    constexpr Measure() = default;
    constexpr explicit Measure(double v) : value(v) {}
    constexpr auto operator<=>(const Measure&) const = default;
    constexpr Measure operator+(Measure o) const { return Measure(value + o.value); }
    constexpr Measure operator-(Measure o) const { return Measure(value - o.value); }
    constexpr Measure operator*(double k) const { return Measure(value * k); }
    constexpr Measure operator/(double k) const { return Measure(value / k); }
    constexpr double operator/(Measure o) const { return value / o.value; }
};

using Hertz = Measure<struct HertzTag>;
using Rpm = Measure<struct RpmTag>;
using Order = Measure<struct OrderTag>;        // multiples of a shaft's turning frequency
using Decibans = Measure<struct DecibansTag>;  // 10 log10 of an e-value

constexpr Hertz toHertz(Rpm speed) {
    return Hertz(speed.value / 60);
}
constexpr Rpm toRpm(Hertz speed) {
    return Rpm(speed.value * 60);
}
constexpr Hertz operator*(Order order, Hertz shaft) {
    return Hertz(order.value * shaft.value);
}

inline constexpr double kStandardGravity = 9.80665;  // m/s2 in 1 g, exact (ISO 80000-3)
inline constexpr double kTwoPi = 2 * std::numbers::pi;

// Velocity amplitude in mm/s of an acceleration amplitude in g at a frequency; the same kind of amplitude out
// as in.
constexpr double velocityMmPerS(double accelerationG, Hertz at) {
    return accelerationG * kStandardGravity * 1000 / (kTwoPi * at.value);
}
// Displacement amplitude in um of a velocity amplitude in mm/s; the same kind of amplitude out as in.
constexpr double displacementUm(double velocityMmS, Hertz at) {
    return velocityMmS * 1000 / (kTwoPi * at.value);
}
// r.m.s. in mm/s of a single sine's peak in inch/s.
inline double rmsMmPerSFromInchPeak(double inchPerS) {
    return inchPerS * 25.4 / std::numbers::sqrt2;
}

inline double decibels(double powerRatio) {
    return 10 * std::log10(powerRatio);
}

}  // namespace fettle
