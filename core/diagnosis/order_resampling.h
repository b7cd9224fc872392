// Why: a recording whose speed wanders, read at even steps of shaft angle, has its orders sharp again: its
// axis then counts in Hz at the mean speed, and everything after it goes on as if the shaft had turned
// evenly. Lines of the mains smear in exchange. Done only where the comb of shaft orders gains by it. Method:
// core/dsp/orders. Units: Hz. Thread: pure.
#pragma once

#include <optional>
#include <vector>

#include "core/diagnosis/speed_track.h"

namespace fettle {

struct ReadByAngle {
    SpeedTrack track;
    double gainHeights = 0;                    // nepers that the orders stand higher
    double gainNepers = 0;                     // of the comb about the mean speed
    bool sharper = false;                      // worth it: then the channels below are filled
    double sampleRateHz = 0;                   // samples a turn x mean speed
    std::vector<std::vector<double>> samples;  // of each of the views' channels, in the channel's unit
};

struct Search {
    double leastHz = 0, mostHz = 0;  // where the speed may be
    std::optional<double> knownHz;   // its mean, where it is known
    std::vector<double> strong;      // strongOrders()
};
// Nothing where nothing can be followed, or the speed is even.
std::optional<ReadByAngle> readByAngle(const Recording& recording, const std::vector<ChannelViews>& views,
                                       const Search& search, const Mains& mains);

}  // namespace fettle
