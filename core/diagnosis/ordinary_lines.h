// Why: shaft orders, mains multiples, gear mesh and their like stand in every spectrum of the machine. A
// position where one of them may stand is neutral for every fault, and the row says with what it is shared.
// Shapes: `blocked[k]` is 0 where bin k is free, else 1 + the index of the reason.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/diagnosis/settings.h"
#include "core/machine/forcing.h"

namespace fettle {

struct Blocked {
    std::vector<std::uint16_t> bins;
    std::vector<std::string> reasons;

    void block(double centreHz, double halfWidthHz, double df, std::uint16_t reason);
    std::uint16_t addReason(std::string reason);
    std::string why(std::size_t bin) const { return bins[bin] ? reasons[bins[bin] - 1u] : ""; }
};

// The driver's shaft frequency and the grid's (or inverter's) with their half-widths, all in Hz.
struct Rates {
    double shaftHz = 0, shaftSpreadHz = 0;
    double mainsHz = 0, mainsSpreadHz = 0;
};

// What the machine draws anyway, up to the top of an envelope spectrum.
std::vector<ForcingLine> ordinaryLines(const Machine& machine, const Rates& rates,
                                       const WeighingSettings& settings);
// What the uncertain rates move a line by, Hz.
double movesOf(const ForcingLine& line, const Rates& rates);

// Half-width of a masked line: maskBins x df, plus what the uncertain rates move it by.
Blocked blockOrdinaryLines(const std::vector<ForcingLine>& lines, const Rates& rates, double df,
                           std::size_t bins, const WeighingSettings& settings);

}  // namespace fettle
