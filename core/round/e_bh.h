// Why: the list of a round is cut so that the mean share of chance entries over rounds is at most alpha,
// whatever the dependence between machines. Source: R. Wang and A. Ramdas, False discovery rate control with
// e-values, JRSS-B 84 (2022) 822-852, section 4 (e-BH). Weights in decibans (10 log10 e). Thread: pure.
#pragma once

#include <span>
#include <vector>

namespace fettle {

struct EbhResult {
    std::vector<bool> listed;  // in the order of the input
    double needsDban = 0;      // weight a machine needs to be listed now: 10 log10(K / (alpha k)), k >= 1
};
// K is the number of weights given; machines that could not be weighed are not among them.
EbhResult eBh(std::span<const double> weightsDban, double alpha);

// 10 log10 of the weighted mean of e-values; shares need not sum to 1. Neither overflows nor underflows for
// weights of thousands of decibans. Of none: 0, the e-value 1 that says nothing.
double meanDban(std::span<const double> weightsDban, std::span<const double> shares = {});

// Prior weights (all above 0) brought to a mean of 1, in decibans, to be added to the machines' weights. The
// bound of e-BH stands: the weighted e-values of chance machines add up to K at most on average, which is all
// its proof uses.
std::vector<double> priorsDban(std::span<const double> shares);

}  // namespace fettle
