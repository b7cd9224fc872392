// Why: where the speed wanders within a recording its orders smear, the high ones first, and a family's lines
// are lost in the floor. The comb is followed through short pieces; where reading against shaft angle then
// sharpens the comb it is done, otherwise nothing is changed. Source: computed order tracking, Fyfe and
// Munck, MSSP 11 (1997) 187-205 (core/dsp/orders); the path through the pieces is the dearest one under a
// charge on jumps (Viterbi, IEEE Trans. Inf. Theory 13 (1967) 260-269). Units: Hz of the shaft, seconds.
// Thread: pure.
#pragma once

#include <optional>
#include <vector>

#include "core/diagnosis/mains.h"
#include "core/diagnosis/view.h"
#include "core/dsp/orders.h"
#include "core/signal/recording.h"

namespace fettle {

struct SpeedTrack {
    std::vector<ShaftAngle::SpeedSample> samples;  // at the middle of each piece
    double leastHz = 0, mostHz = 0, meanHz = 0;
    double nepers = 0;    // that there is a comb in the pieces at all
    bool oneWay = false;  // rises or falls throughout

    void take(std::vector<ShaftAngle::SpeedSample> speeds);
    double wander() const { return meanHz > 0 ? (mostHz - leastHz) / meanHz : 0; }
};

// Through the acceleration channels given by `views`, between two shaft frequencies; nothing where the
// recording is too short for six pieces of 16 turns or no comb stands in them. `strong`: strongOrders().
std::optional<SpeedTrack> trackSpeed(const Recording& recording, const std::vector<ChannelViews>& views,
                                     double leastHz, double mostHz, const Mains& mains,
                                     const std::vector<double>& strong);

}  // namespace fettle
