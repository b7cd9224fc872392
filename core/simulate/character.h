// Why: two sound machines of one type never sound alike. A machine's own voice (residual unbalance,
// resonances, floor) is drawn once from its tag and then stays, so that its weeks can be compared. Units:
// velocities mm/s r.m.s. at the machine's own housing and rated speed; accelerations g r.m.s. or peak as
// named. Levels: sound machines of zone A to B, ISO 20816-3 as remembered; broadband 0.02 to 0.2 g, common
// practice, no source.
#pragma once

#include <string>
#include <vector>

#include "core/machine/machine.h"

namespace fettle::sim {

// A structural resonance: rings as exp(-2 pi hz damping t) sin(2 pi hz t).
struct Mode {
    double hz = 0, damping = 0.03, weight = 1;
};

// One-degree-of-freedom support in one direction: force to velocity.
struct Support {
    double hz = 60, damping = 0.08;
};

struct MachineCharacter {
    double unbalanceMmS = 0.8;                                         // 1x
    std::vector<double> shaftHarmonics{0.25, 0.12, 0.07, 0.05, 0.03};  // 2x, 3x ... over 1x
    double twiceMainsMmS = 0.15;
    double slotPeakG = 0.008;
    double bladePassMmS = 0.25;
    double meshPeakG = 0.05;
    double beltMmS = 0.1;
    double floorG = 0.05;          // broadband r.m.s.
    double rumbleMmS = 0.12;       // random, r.m.s., mostly 20 to 150 Hz: floor, ducts, belts
    double fluxCarrier = 0.3;      // of full scale
    double fluxEccentricDb = -48;  // lines at f1 +- fr below the carrier
    double barAsymmetryDb = -62;   // of sound bars, at full load
    Support horizontal{58, 0.08}, vertical{95, 0.06}, axial{130, 0.06};
};

MachineCharacter characterOf(const Machine& machine);

// Structural resonances of one housing, 0.13 to 6 kHz, weights summing to 1; fixed by tag and component.
std::vector<Mode> modesOf(const std::string& tag, const std::string& component);

// Velocity for one force at `hz` over that at `referenceHz`.
double mobilityRatio(const Support& support, double hz, double referenceHz);

}  // namespace fettle::sim
