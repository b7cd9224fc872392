// Why: the plain numbers of a record: how large, how peaky, how far from normal. Many small definitions of
// these are about (biased or not, with or without 3 taken off), so each says which it is. Units: the
// signal's, or none for ratios. Errors: none; a ratio of a signal without spread (or without samples) is 0.
// Thread: any.
#pragma once

#include <cstddef>
#include <span>

namespace fettle {

double mean(std::span<const double> values);
double rms(std::span<const double> values);  // mean kept
// Divides by n - lostDegrees: 0 for the spread of these samples, 1 for an estimate of where they came from.
double standardDeviation(std::span<const double> values, std::size_t lostDegrees = 0);
double peak(std::span<const double> values);  // largest magnitude, mean kept
double peakToPeak(std::span<const double> values);
double crestFactor(std::span<const double> values);  // peak / r.m.s., mean kept
double skewness(std::span<const double> values);     // third central moment, biased
double kurtosis(
    std::span<const double> values);  // fourth central moment, Pearson's, biased: 3 for normal noise
double median(std::span<const double> values);  // of an even count the mean of the middle two
// Median distance from the median, unscaled; times 1.4826 it estimates a normal standard deviation.
double medianAbsoluteDeviation(std::span<const double> values);

}  // namespace fettle
