// Why: a correction stands at any angle, a rotor has holes, bolts or blades. The mass is shared out over the
// places that are free: the two nearest that enclose the angle where they can take it, else as few of the
// others as it needs, each within the most it may carry. What was rounded or found no place is left over and
// told. Masses of one plane are all at one radius here; others are brought to it first (`combined`). Units:
// grams, mm, degrees as the rotor is counted (any sense, both ways the same). Source: parallelogram of
// forces; the choice among many places is the least sum of masses that does it. Thread: pure.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/workshop/phasor.h"

namespace fettle {

struct PlacesOnRotor {
    int count = 0;                // evenly spaced; 0: a mass may stand at any angle
    double firstDegrees = 0;      // of place 1
    std::vector<int> taken;       // numbers from 1 that cannot carry any
    std::optional<double> mostG;  // one place can carry
    double stepG = 0;             // masses come in steps of this; 0: any

    double degreesOf(int number) const { return turned(firstDegrees + 360.0 * (number - 1) / count); }
    bool isFree(int number) const;
};

struct PlacedMass {
    int place = 0;  // its number; 0: at the angle itself
    Polar mass;     // grams at degrees
};

struct SplitMass {
    std::vector<PlacedMass> masses;  // by number
    Polar leftOver;                  // what no place took, grams at degrees
};

SplitMass splitOver(const Polar& mass, const PlacesOnRotor& places);

// A mass that sits on the rotor already, at its own radius.
struct FittedMass {
    Polar mass;
    double radiusMm = 0;
};
// One mass at `radiusMm` that does the same as all of these.
Polar combined(std::span<const FittedMass> masses, double radiusMm);

}  // namespace fettle
