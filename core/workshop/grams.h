// Why: "4.2 mm/s" tells nobody how much lime sits on the wheel; after one known mass 1x can be told in grams.
// A sensor node gives no phase, so amounts alone are used, and what that leaves open is in the interval: the
// unbalance left behind by the balancing may point anywhere, and a coefficient got from the correction
// itself is only known between the sum and the difference of the levels before and after. Units: level in
// mm/s r.m.s. (or any, alike), grams at the plane's radius. Source: triangle inequality on the influence
// method. Thread: pure.
#pragma once

#include <optional>

namespace fettle {

// Level a gram, with the interval it is known to lie in.
struct LevelPerGram {
    double value = 0, low = 0, high = 0;
};

struct MassInterval {
    double grams = 0, low = 0, high = 0;
};

// Of a balance job's coefficient: readings repeat to within a tenth.
LevelPerGram perGramOfJob(double perGram);
// By what a mass of this size, fitted against the unbalance, made of the level; empty where the level did not
// fall by 30 % (else hardly anything is known).
std::optional<LevelPerGram> perGramOfKnownMass(double before, double after, double grams);
// `leftBehind`: the level right after the balancing.
MassInterval massOf(double level, const LevelPerGram& perGram, double leftBehind);

}  // namespace fettle
