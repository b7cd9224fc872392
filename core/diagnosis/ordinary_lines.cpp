#include "core/diagnosis/ordinary_lines.h"

#include <algorithm>
#include <cmath>

namespace fettle {

std::uint16_t Blocked::addReason(std::string reason) {
    reasons.push_back(std::move(reason));
    return static_cast<std::uint16_t>(std::min<std::size_t>(reasons.size(), 65535));
}

void Blocked::block(double centreHz, double halfWidthHz, double df, std::uint16_t reason) {
    const double low = std::ceil((centreHz - halfWidthHz) / df),
                 high = std::floor((centreHz + halfWidthHz) / df);
    if (high < 0 || low >= double(bins.size())) return;
    const auto last = std::min(bins.size() - 1, std::size_t(high));
    for (auto k = std::size_t(std::max(0.0, low)); k <= last; ++k)
        if (!bins[k]) bins[k] = reason;
}

std::vector<ForcingLine> ordinaryLines(const Machine& machine, const Rates& rates,
                                       const WeighingSettings& settings) {
    ForcingExtent extent;
    extent.mostHz = settings.envelopeTopHz;
    extent.shaftHz = rates.shaftHz;
    return forcingLines(machine, extent);
}

double movesOf(const ForcingLine& line, const Rates& rates) {
    return std::abs(line.perShaft) * (rates.shaftSpreadHz + line.spread * rates.shaftHz) +
           std::abs(line.perMains) * rates.mainsSpreadHz;
}

Blocked blockOrdinaryLines(const std::vector<ForcingLine>& lines, const Rates& rates, double df,
                           std::size_t bins, const WeighingSettings& settings) {
    Blocked blocked;
    blocked.bins.assign(bins, 0);
    for (const ForcingLine& line : lines) {
        const double centre = line.hz(rates.shaftHz, rates.mainsHz);
        blocked.block(centre, settings.maskBins * df + movesOf(line, rates), df,
                      blocked.addReason(line.name));
    }
    return blocked;
}

}  // namespace fettle
