// Why: what a gram in a plane does to the vibration at a sensor, per amount and angle, is learnt by one trial
// mass a plane and then serves for every later balancing of the same machine. One plane with one sensor, or
// two planes with two. Frame: phasor.h; vibration in the sensor's unit, masses in grams. Refused, because
// the answer would be noise: a trial that moved the vibration by less than a fifth of it (readings may
// scatter by 10 degrees, which is 17 % of the arrow), planes that work alike on both sensors (condition over
// 20: an error of 5 % in a coefficient would be one of 100 % in a mass). Source: T. P. Goodman, J. Eng. Ind.
// 86 (1964) 273-279; S. S. Rao, Mechanical Vibrations, section 9.4 (both from memory); limits of refusal:
// reasoned as told here, no source. Thread: pure. Errors: Invalid; place "run 2" counts from the initial run
// 0.
#pragma once

#include <span>
#include <vector>

#include "core/base/result.h"
#include "core/workshop/phasor.h"

namespace fettle {

inline constexpr double kLeastChangeShare = 0.2;  // of the larger of both arrows; below: refused
inline constexpr double kGoodChangeShare = 0.3;   // below: warned of (30 % or 30 degrees, common practice)
inline constexpr double kMostCondition = 20;

struct Influence {
    std::size_t planes = 1;       // as many sensors
    std::vector<Phasor> perGram;  // of sensor s and plane p at [s * planes + p]
    Phasor at(std::size_t sensor, std::size_t plane) const { return perGram[sensor * planes + plane]; }
};

enum class TrialMasses { Removed, LeftOn };  // before the next run

struct TrialRun {
    Phasor mass;                    // grams; in plane 0 for the first run, in plane 1 for the second
    std::vector<Phasor> vibration;  // by sensor
};

// `initial` by sensor; one trial a plane, in the order of the planes.
Result<Influence> influenceOf(std::span<const Phasor> initial, std::span<const TrialRun> trials,
                              TrialMasses masses);
// Largest change of the arrow at any sensor, as a share of the larger of the two.
double changeShare(std::span<const Phasor> before, std::span<const Phasor> after);
// How much worse a mass can be known than a coefficient: ratio of the singular values, after every sensor and
// every plane was set to the same size. 1 for one plane; infinite where the planes work alike.
double conditionOf(const Influence& influence);
// Masses that take this vibration away, by plane: the solution of V + influence x masses = 0.
Result<std::vector<Phasor>> massesAgainst(const Influence& influence, std::span<const Phasor> vibration);
std::vector<Phasor> predicted(const Influence& influence, std::span<const Phasor> vibration,
                              std::span<const Phasor> masses);

}  // namespace fettle
