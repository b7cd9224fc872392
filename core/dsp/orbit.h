// Why: two radial sensors at one place, read at the same moment, show the path the place moves on: a line for
// what pushes in one direction (resonance, a soft support), a circle for what turns with the shaft, loops for
// what strikes. Displacement, since that is what a path is; by order, since everything else blurs it. Source:
// a sine's displacement is its acceleration over -(2 pi f)^2; a pair of sines of one frequency draws an
// ellipse, the sum of a forward and a backward circle (Muszynska, Rotordynamics, 2005, ch. 2, from memory).
// Units: accelerations in g, paths in um, angles in degrees from the first sensor's direction towards the
// second's, which stands at a right angle to it. Thread: any. Errors: none; too few samples give an empty
// path.
#pragma once

#include <complex>
#include <span>
#include <vector>

namespace fettle {

// Displacement of one frequency as a rotating pointer: its size is the peak in um, its angle the phase of a
// cosine at the record's first sample. Read under a Hann window: within 0.1 % where the frequency is known to
// a twentieth of 1 / duration.
std::complex<double> displacementAt(std::span<const double> accelerationG, double sampleRateHz, double hz);

struct Ellipse {
    double majorUm = 0, minorUm = 0;  // half axes
    double angleDeg = 0;              // of the major axis, 0 to below 180
    int turns = 0;  // +1: from the first sensor's direction towards the second's; -1: back; 0: a line
};
Ellipse ellipseOf(std::complex<double> first, std::complex<double> second);

struct OrbitPath {
    std::vector<float> first, second;  // um; a closed path where it was made of orders
};
// One turn of the shaft, made of some of its orders (1, 2, ...), in steps of a degree.
OrbitPath orbitOfOrders(std::span<const double> firstG, std::span<const double> secondG, double sampleRateHz,
                        double shaftHz, std::span<const int> orders);
// As it was, everything above the corner, `turns` turns from the middle of the record.
OrbitPath orbitUnfiltered(std::span<const double> firstG, std::span<const double> secondG,
                          double sampleRateHz, double shaftHz, double cornerHz, int turns);

}  // namespace fettle
