// Why: after the bearings are weighed, everything else that is followed over weeks is read from the same
// recording: one call a recording, all families of fault_family.h; on the
// channels no farther from a place than the machine's nearest point (core/machine/path.h). Thread: pure.
#pragma once

#include "core/diagnosis/fault_family.h"

namespace fettle {

// Measures, blind spots, and a hypothesis for every fault and place that concerns the machine: named only as
// fault_family.h says, else with the reason why one recording does not name it. `weighed`: the bearings'.
FamilyReport measuresOf(const Machine& machine, const PreparedRecording& prepared,
                        const std::vector<Hypothesis>& weighed);

}  // namespace fettle
