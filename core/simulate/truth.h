// Why: what was put into the recordings, for those who check verdicts, and what the site noted, for those who
// show it. Plain JSON; dates UTC. truth.json holds one entry a story, one for each machine without, and the
// recordings that arrive spoiled with what intake should do; events.json is one array of dated events.
#pragma once

#include "core/simulate/sample_plan.h"

namespace fettle::sim {

Json truthOf(const Scenario& scenario, const SampleOptions& options);

// [{machine, time, kind, at, text}], oldest first; `at` is null where none is named.
Json eventsOf(const Scenario& scenario, const SampleOptions& options);

}  // namespace fettle::sim
