// Why: a verdict is no better than the record under it. Faults of the sensor and of the record are looked for
// first. Codes: clipped flat held coarse ski_slope offset short unknown_channel; of speed and clock (speed.h,
// mains.h): sample_rate speed_disagrees unsteady. A note never changes a weight; `unfit` ones stop weighing
// of that channel.
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

// Whether a note is about the sensor at all, and not about the description, the record's length or the
// machine's speed.
bool speaksOfSensor(const std::string& code);

}  // namespace fettle
