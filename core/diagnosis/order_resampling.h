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
    double gainNepers = 0;                     // of the comb about the mean speed
    bool sharper = false;                      // worth it: then the channels below are filled
    double sampleRateHz = 0;                   // samples a turn x mean speed
    std::vector<std::vector<double>> samples;  // of each of the views' channels, in the channel's unit
};

// Nothing where no comb can be followed, or the speed is even.
std::optional<ReadByAngle> readByAngle(const Recording& recording, const std::vector<ChannelViews>& views,
                                       double leastHz, double mostHz, const Mains& mains,
                                       const std::vector<double>& strong);

}  // namespace fettle
