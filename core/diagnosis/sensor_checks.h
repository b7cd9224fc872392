// Why: a verdict is no better than the record under it. Faults of the sensor and of the record are looked for
// first. Codes: clipped flat held coarse ski_slope offset short unknown_channel. A note never changes a
// weight; `unfit` ones stop weighing of that channel.
#pragma once

#include <vector>

#include "core/diagnosis/examination.h"
#include "core/diagnosis/prepare.h"

namespace fettle {

struct SensorCheck {
    std::vector<QualityNote> notes;
    bool unfit = false;  // nothing in this channel can be weighed: flat, or hardly a record
};

SensorCheck checkSensor(const Channel& channel, const ChannelRole& role, const ChannelViews* views);

}  // namespace fettle
