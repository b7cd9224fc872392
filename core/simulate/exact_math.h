// Why: recordings must be the same bytes on every computer, and the sine, exponential and logarithm of C
// libraries differ in the last digit. These use only + - * / and sqrt, which IEEE 754 rounds in one way, and
// the room is compiled without fused multiply-add. Units: angles in turns (1 = a full circle), good for
// |turns| < 1e9. Errors below 1e-14 of a full circle's amplitude. Thread: pure functions.
#pragma once

#include <cstddef>
#include <vector>

namespace fettle::sim::exact {

// A whole number nearest to x (halves to even), |x| < 2^51.
double nearestWhole(double x);
// Cuts a number computed elsewhere to 32 binary places, past which compilers and libraries may differ.
double steady(double x);
double sine(double turns);
double cosine(double turns);
double exponential(double x);             // 0 below -700; x above 700 is taken as 700
double logarithm(double x);               // natural, x > 0 and normal
double fromDecibels(double amplitudeDb);  // 20 dB -> 10

// cosines[i] + j sines[i] = exp(j 2 pi turns[i]); resized as needed.
void phasors(const std::vector<double>& turns, std::vector<double>& cosines, std::vector<double>& sines);
// out[i] += gain * sine(turns[i])
void addSines(const std::vector<double>& turns, double gain, std::vector<double>& out);
// Pairs of uniform deviates, 0 < first <= 1 and 0 <= second < 1, become pairs of normal ones.
void boxMuller(double* first, double* second, std::size_t count);

}  // namespace fettle::sim::exact
