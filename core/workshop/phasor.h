// Why: balancing adds arrows: a vibration at shaft speed has an amount and a phase, a mass has an amount and
// a place. Both are turned into complex numbers of one frame here and nowhere else, so that no step can mix
// senses. The frame: angles are counted from the rotor's zero mark AGAINST the rotation, and a phase is a
// LAG: the degrees the rotor turns from the moment the mark passes the pick-up until the vibration peaks. A
// mass moved by so many degrees against the rotation passes so much later, hence its vibration lags so much
// more: masses and phases turn the same way. Who counts with the rotation, or reads a lead, is turned round
// at the door. Units: degrees in [0, 360). Source: the usual reasoning of the influence method; S. S. Rao,
// Mechanical Vibrations, section 9.4 (from memory). Thread: pure.
#pragma once

#include <complex>

namespace fettle {

using Phasor = std::complex<double>;

struct Polar {
    double amount = 0, degrees = 0;
};

Phasor phasorOf(const Polar& polar);
Polar polarOf(Phasor phasor);
double turned(double degrees);                  // into [0, 360)
double degreesBetween(double from, double to);  // the shorter way, -180 to 180

enum class Counted { AgainstRotation, WithRotation };  // places on the rotor
enum class PhaseIs { Lag, Lead };                      // of the vibration, after or before the mark

struct AngleConvention {
    Counted rotor = Counted::AgainstRotation;
    PhaseIs phase = PhaseIs::Lag;
};

Phasor massPhasor(const Polar& asCounted, const AngleConvention& convention);
Polar massAsCounted(Phasor mass, const AngleConvention& convention);
Phasor vibrationPhasor(const Polar& asRead, const AngleConvention& convention);
Polar vibrationAsRead(Phasor vibration, const AngleConvention& convention);

}  // namespace fettle
