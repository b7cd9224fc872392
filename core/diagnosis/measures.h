// Why: after the bearings are weighed, everything else that is followed over weeks is read from the same
// recording: one call a recording, all families of fault_family.h. Also: which channels of a recording hear
// a place. Thread: pure.
#pragma once

#include "core/diagnosis/fault_family.h"

namespace fettle {

// Measures, blind spots, and a hypothesis for every fault and place that concerns the machine: named only as
// fault_family.h says, else with the reason why one recording does not name it. `weighed`: the bearings'.
FamilyReport measuresOf(const Machine& machine, const PreparedRecording& prepared,
                        const std::vector<Hypothesis>& weighed);

// How far a point is from a place: what it hears of it. Common practice, no source.
enum class Farness { SameHousing, SameShaft, Afar };
Farness farnessOf(const Machine& machine, const Point& point, const std::string& at);
// The least over all points of the machine.
Farness nearestPoint(const Machine& machine, const std::string& at);

}  // namespace fettle
