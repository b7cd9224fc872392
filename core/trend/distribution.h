// Why: the few distributions that limits, weights and dates stand on. Source: M. Abramowitz and I. A. Stegun,
// Handbook of Mathematical Functions (1964), 26.5.8 (continued fraction of the incomplete beta function) and
// 26.7.1 (Student's t); one-sided tolerance factor: G. J. Hahn and W. Q. Meeker, Statistical Intervals
// (1991), section 4.6 (the noncentral t written as a mean over the sample's spread). Thread: pure functions.
#pragma once

namespace fettle {

double normalDensity(double z);
double normalBelow(double z);               // P(Z <= z)
double normalQuantile(double probability);  // of (0, 1)

// P(|T| >= |t|) of Student's t; degrees > 0.
double studentTwoSided(double t, double degrees);
// t with P(T <= t) = probability.
double studentQuantile(double probability, double degrees);

// k such that mean + k s of `count` normal values lies above `cover` of all values with `confidence`.
// count >= 2.
double toleranceFactor(int count, double cover = 0.95, double confidence = 0.95);

}  // namespace fettle
