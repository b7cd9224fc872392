// Why: a shaft draws a comb of orders. A speed is believed by how many tops of the spectrum stand where its
// orders would, each top by its rank among all tops, so that a spectrum full of foreign lines makes the
// search harder instead of surer. The product over orders is an e-value for every speed tried; their mean
// over the range says whether there is a comb at all, the share of the best speed's neighbourhood in their
// sum whether it can be told from the others. Source: calibrated p-values, Vovk and Wang, Ann. Statist. 49
// (2021) 1736-1754. Units: Hz of the shaft, nepers. Thread: pure.
#pragma once

#include <optional>
#include <vector>

#include "core/diagnosis/mains.h"
#include "core/diagnosis/view.h"
#include "core/machine/machine.h"

namespace fettle {

// An order and the share of shafts that draw it.
struct CombOrder {
    double order = 0, w = 0;
};

// Tops of the channels' mean spectrum, or of their mean envelope: by bin, where one stands.
struct CombView {
    double df = 0;
    std::vector<float> place;       // bins, between bins; 0: no top here
    std::vector<float> z;           // over floor, mean of the channels
    std::vector<float> factor;      // e-value of its rank
    std::vector<CombOrder> orders;  // 1, 2, 3 ..
    std::vector<CombOrder> strong;  // of this machine: teeth, blades, rotor bars
    std::vector<std::size_t> depths;
    double none = 0;  // share of shafts that draw no comb here
};
// Orders at which this machine's first shaft draws lines of their own.
std::vector<double> strongOrders(const Machine& machine);
// `mostHz`: the fastest shaft that will be asked for.
std::vector<CombView> combViews(const std::vector<ChannelViews>& channels, double mostHz,
                                const std::vector<double>& strong);

struct Comb {
    double hz = 0, plusMinusHz = 0;
    double nepers = 0;       // of the mean e-value over the range
    double share = 0;        // of the e-values' sum within reach of the best
    double secondHz = 0;     // the best outside that reach; 0: none
    double secondGap = 0;    // nepers it lies below the best
    int found = 0, low = 0;  // orders that stand out; those of 1 to 4
    double highest = 0;      // of them
    bool twoWays = false;    // ranks and heights over the floor, each on its own, point here
    bool stands() const;     // there is a comb
    bool single() const;     // and no other speed fits nearly as well
};

// The best comb between two shaft frequencies. Orders beside a multiple of the mains stay neutral.
std::optional<Comb> findComb(const std::vector<CombView>& views, double leastHz, double mostHz,
                             const Mains& mains);

// The log of the product of e-values at `count` speeds from `leastHz` up, `step` apart.
std::vector<double> combNepers(const std::vector<CombView>& views, double leastHz, double step,
                               std::size_t count, const Mains& mains);

}  // namespace fettle
