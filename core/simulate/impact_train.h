// Why: when a defect is struck. The cage runs a little off its ideal speed and never quite evenly: both shift
// and smear the lines exactly as in real bearings, and inner and outer race move in opposite directions.
// Source: R. B. Randall and J. Antoni, MSSP 25 (2011) 485-520, sec. 2.1 and eq. 1-4; load distribution in the
// loaded zone after Stribeck, as given there, with load factor 0.45. Units: angles in turns of the bearing's
// shaft, positions in samples.
#pragma once

#include <vector>

#include "core/machine/bearing.h"
#include "core/simulate/random_stream.h"
#include "core/simulate/resonator.h"

namespace fettle::sim {

enum class Defect { OuterRace, InnerRace, RollingElement, Cage };

struct DefectMotion {
    Defect defect = Defect::OuterRace;
    BearingOrders orders;  // of pure rolling
    int rollingElements = 8;
    double cageShift = 0;       // true over expected cage speed, less 1
    double slipJitter = 0.004;  // standard deviation of an interval, relative
    double roughness = 0.1;     // standard deviation of an impact's strength, relative
};

// Impacts a turn of the shaft with the cage as it really runs: N phi, N (1 - phi), 2 x spin, phi.
double strikesPerTurn(const DefectMotion& motion);

// `shaftTurns` rises along the samples.
std::vector<Impact> impactTrain(const DefectMotion& motion, const std::vector<double>& shaftTurns,
                                RandomStream chance);

}  // namespace fettle::sim
