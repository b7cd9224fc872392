// Why: the recordings of a trial as judgement wants them: the running ones of its two spans with the weight
// of what is followed, 1x and what else was named. Thread: as the FleetFile; reads only. Errors: those of the
// stores.
#pragma once

#include <vector>

#include "core/store/fleet_file.h"
#include "core/workshop/trial.h"

namespace fettle {

Result<std::vector<TrialRecording>> trialRecordings(FleetFile& fleet, const Trial& trial);

// One value against others that are as usual, decibans; empty where they are too few (under 5). On decibels
// of level; the values are above 0.
std::optional<double> weightAgainst(const std::vector<double>& usual, double value);

}  // namespace fettle
