// Why: impacts and noise are heard through resonances. A resonance here is one complex pole, the exact
// sampling of an exponentially decaying sine, so that an impact between two samples rings with the right
// phase. Units: positions in samples, rates in Hz, waveforms in the unit of the strengths. Source: R. B.
// Randall and J. Antoni, MSSP 25 (2011) 485-520, sec. 2.1 (a train of impulse responses).
#pragma once

#include <vector>

#include "core/simulate/character.h"
#include "core/simulate/random_stream.h"

namespace fettle::sim {

struct Impact {
    double sample = 0;  // may lie between samples
    double strength = 1;
};

// Peak of one ring is about its strength x the mode's weight.
std::vector<double> ring(const std::vector<Impact>& impacts, const Mode& mode, double rateHz,
                         std::size_t samples);

// White noise heard through the resonance, of r.m.s. about 1 whatever the rate.
std::vector<double> ringingNoise(const Mode& mode, double rateHz, std::size_t samples, RandomStream chance);

// What a structure does with acceleration below its resonance: two first-order high passes at `hz`, 12 dB an
// octave.
void blockBelow(double hz, double rateHz, std::vector<double>& signal);

// A sensor on a spring: gain 1 at 0 Hz, 1/(2 damping) at `hz`. Second-order section by the bilinear transform
// with `hz` kept.
void applyMount(double hz, double damping, double rateHz, std::vector<double>& signal);

}  // namespace fettle::sim
