// Why: a sensor that measures down to 0 Hz feels gravity, and says so with every recording: how it sits on
// the machine, and between which two recordings it was knocked, turned or swapped. Two or three axes of one
// point; an axis alone says by how much it tilted at least. Told from 3 degrees on that stay (heat moves the
// zero of a small sensor by a degree or so: common practice, no source), against the scatter of the
// recordings before. Units: g, the mean of each axis over a recording; degrees; times UTC. Thread: pure.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/time.h"

namespace fettle {

struct PoseAxis {
    std::string name, direction;  // "x"; horizontal vertical axial radial unknown, as the register has it
};
struct PoseReading {
    Instant time{};
    std::vector<double> g;  // of each axis
};

struct PoseMove {
    Instant before{}, after{};  // the last recording as it was, the first as it is
    double degrees = 0;         // at least, with fewer than three axes
    std::vector<double> was, now;
};

struct NodePose {
    bool felt = false;            // gravity is in the records
    std::vector<double> g;        // of the newest recordings
    std::string words;            // "y up 0.99 g", or why not
    std::string misfit;           // where it is not as the register has it; empty: it is, or cannot be told
    std::vector<PoseMove> moves;  // oldest first
};
// Readings oldest first, all with as many values as there are axes.
NodePose askGravity(std::span<const PoseAxis> axes, std::span<const PoseReading> readings);

// "knocked, turned or swapped between 12 May 2026, 06:20 and 13 May 2026, 06:20 Europe/London: 34 degrees";
// the two moments come as the site says them.
std::string moveWords(const PoseMove& move, const std::string& before, const std::string& after);

}  // namespace fettle
