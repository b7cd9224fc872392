// Why: what a change has to do is worked out before it is made, or a trial proves nothing. A mass: unbalance,
// force, grade, and what it adds to 1x, by a saved influence coefficient or as an honest range; a bearing:
// the lines of its element; a bolt: the orders a loose foot draws. Without the angle between the mass and
// the rotor's own heavy spot a mass may as well lower 1x, and the range says so. Units in the names.
// Sources: ISO 21940-11 (unbalance.h); share of a free rotor's motion that a held one makes: common practice,
// no source. Thread: pure.
#pragma once

#include "core/machine/machine.h"
#include "core/workshop/trial.h"

namespace fettle {

// What 1x moved by for one g mm at a place, as balancing found it.
struct TrialInfluence {
    std::string from;                // "balancing of 4 May 2026"
    std::string at, point, channel;  // at: driver | driven
    double mmSPerGmm = 0;            // r.m.s.
    double speedRpm = 0;
};

// What is known of the machine when the trial is planned.
struct TrialGround {
    std::optional<double> driverRpm;  // as last measured, else rated
    std::optional<double> onceMmS;    // 1x of the channel followed: median of the recordings before
    std::size_t before = 0;           // running recordings in the span before
    double seconds = 0;               // length of a recording; 0: not known
    std::vector<TrialInfluence> influences;
};

// `leastDban`: that is going to be promised.
TrialExpectation expectedOf(const TrialChange& change, const Machine& machine, const TrialGround& ground,
                            double leastDban = 20);
// Fault and place, the range of 1x and the sentences; `asked` gives weight and number of recordings.
TrialPromise promisedOf(const TrialChange& change, const TrialExpectation& expectation,
                        const TrialPromise& asked);

// The weight a change can reach at most where so many recordings stand before it, decibans.
double mostChangeDban(std::size_t before);
// Recordings before, so that a change can reach this weight.
std::size_t neededBefore(double dban);

struct OnceRange {
    double low = 0, high = 0;
};
// 1x after something between `moveLow` and `moveHigh` was added to `now`; without an angle at any angle.
OnceRange onceAfter(double now, double moveLow, double moveHigh, std::optional<double> angleDeg);

// How the speed of a place's shaft follows from the driver's; 1 where the place is not known.
double ratioAt(const Machine& machine, const std::string& at);

// The cautions of a trial, each to be confirmed before it is started; own words, site rules come first.
std::vector<std::string> trialCautions(TrialKind kind);

}  // namespace fettle
