// Why: everything about one recording that does not depend on a hypothesis: sensor checks, levels, running
// state, speed, views, ordinary lines, ranks. Done once; any number of hypotheses (phantoms too) are then
// weighed on it.
#pragma once

#include <optional>
#include <vector>

#include "core/diagnosis/examination.h"
#include "core/diagnosis/speed.h"
#include "core/diagnosis/speed_track.h"
#include "core/diagnosis/weigh.h"
#include "core/machine/machine.h"
#include "core/signal/recording.h"

namespace fettle {

// What the machine description says of a recorded channel.
struct ChannelRole {
    const Point* point = nullptr;           // null: no such point in the description
    const PointChannel* channel = nullptr;  // null: the point does not list it
    std::string quantity;  // acceleration velocity flux temperature, by description, else by unit
    double toG = 1;        // factor from the stored unit, for acceleration
};
double gPerUnit(const std::string& unit);  // of an acceleration; 1 for a unit that is none
ChannelRole roleOf(const Machine& machine, const Recording& recording, std::size_t channel);

struct PreparedRecording {
    RecordingPtr recording;           // at its corrected rate where the mains shows the stated one wrong
    std::vector<ChannelRole> roles;   // of each recorded channel
    std::vector<ChannelViews> views;  // of the acceleration channels
    std::vector<ChannelEvidence> evidence;  // same order as views; empty where nothing can be weighed
    std::vector<FluxView> flux;             // of the flux channels
    Mains mains;
    bool turnsInFlux = false;  // the motor's own rotation is seen in its flux
    bool combSeen = false;     // shaft orders stand out in vibration
    SpeedTrack track;          // where the speed wanders: how; its views are then read against shaft angle
    bool byAngle = false;      // where that sharpened the comb
    Rates rates;
    RecordingFacts facts;
    std::string unfit;  // why no narrow lines can be weighed; empty: they can

    const ChannelViews* viewsOf(std::size_t channel) const;  // null: not of acceleration
};

struct PrepareOptions {
    bool ignoreSpeed = false;  // look for the speed even where it is given
    WeighingSettings settings = {};
};

// The machine must outlive the result.
PreparedRecording prepare(const Machine& machine, const RecordingPtr& recording,
                          const PrepareOptions& options);

}  // namespace fettle
