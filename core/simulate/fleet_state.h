// Why: what a machine does and suffers at one moment: the scenario's stories, the weather, the day's load, as
// the setup of one recording. The same moment of the same machine always gives the same setup.
#pragma once

#include "core/simulate/scenario.h"

namespace fettle::sim {

// Outdoors, degC: season, time of day, weather and heat waves; invented, of a temperate hill site.
double outdoorsC(const Scenario& scenario, Instant time);

// Severity of one story at that moment, heat taken into account.
double severityAt(const Story& story, double ambientC, Instant time);

bool isSilent(const FleetMachine& fleet, Instant time);

// The setup of one recording. `key` is the run's own; recordings with equal keys are equal.
SimulationSetup setupAt(const Scenario& scenario, const FleetMachine& fleet, const FleetNode& node,
                        const CaptureKind& capture, Instant time, std::uint64_t key);

}  // namespace fettle::sim
