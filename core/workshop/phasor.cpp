#include "core/workshop/phasor.h"

#include <cmath>

#include "core/base/units.h"

namespace fettle {

namespace {
constexpr double kDegree = kTwoPi / 360;

Phasor mirrored(Phasor phasor, bool mirror) {
    return mirror ? std::conj(phasor) : phasor;
}
}  // namespace

Phasor phasorOf(const Polar& polar) {
    return {polar.amount * std::cos(polar.degrees * kDegree),
            polar.amount * std::sin(polar.degrees * kDegree)};
}

Polar polarOf(Phasor phasor) {
    const double amount = std::abs(phasor);
    return {amount, amount > 0 ? turned(std::arg(phasor) / kDegree) : 0};
}

double turned(double degrees) {
    const double rest = std::fmod(degrees, 360);
    const double positive = rest < 0 ? rest + 360 : rest;
    return positive >= 360 ? 0 : positive;
}

double degreesBetween(double from, double to) {
    const double way = turned(to - from);
    return way > 180 ? way - 360 : way;
}

Phasor massPhasor(const Polar& asCounted, const AngleConvention& convention) {
    return mirrored(phasorOf(asCounted), convention.rotor == Counted::WithRotation);
}

Polar massAsCounted(Phasor mass, const AngleConvention& convention) {
    return polarOf(mirrored(mass, convention.rotor == Counted::WithRotation));
}

Phasor vibrationPhasor(const Polar& asRead, const AngleConvention& convention) {
    return mirrored(phasorOf(asRead), convention.phase == PhaseIs::Lead);
}

Polar vibrationAsRead(Phasor vibration, const AngleConvention& convention) {
    return polarOf(mirrored(vibration, convention.phase == PhaseIs::Lead));
}

}  // namespace fettle
