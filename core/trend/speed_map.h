// Why: the grid under a resonance map: spectra of one channel gathered in bins of speed, their median and
// their largest value line by line, and the level of one order over the bins. Thread: pure.
#pragma once

#include <optional>

#include "core/trend/resonance_map.h"

namespace fettle {

// A round width of speed bins so that most hold a handful of recordings; r/min.
double binWidth(const std::vector<SpeedSpectrum>& spectra);
SpeedMap speedMapOf(const ChannelSpectra& channel, double widthRpm);

// Levels of an order over the bins that hold enough recordings: medians of what each recording has where the
// order stands at its own speed; dB, less 40 dB a decade of speed.
struct OrderTrack {
    std::vector<std::size_t> bins;  // of the map
    std::vector<double> db;         // evened by three
    std::vector<double> level, overFloorDb;
};
OrderTrack orderTrack(const ChannelSpectra& channel, const SpeedMap& map, int order, std::size_t fewest);

// Median level about a frequency over the bins in which none of these orders is near; nothing where one
// always is.
std::optional<double> levelWithoutOrders(const SpeedMap& map, double hz, const std::vector<int>& orders);

}  // namespace fettle
