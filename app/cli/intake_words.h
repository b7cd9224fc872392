// Why: import and follow tell alike of what came in and what did not: a line each. Thread: one.
#pragma once

#include <string>
#include <vector>

#include "core/store/fleet_file.h"

namespace fettle {

void tellRefused(const Refusal& refusal);  // "refused: file: place: rule" on stderr
// What came in raised alerts and nobody sends them here: says so, and how they are sent.
void tellWaitingAlerts(FleetFile& fleet);
// Each path a line on stdout, at once; one that breaks the line, or gives a terminal orders, cannot be told.
void tellTaken(const std::vector<std::string>& paths);

}  // namespace fettle
