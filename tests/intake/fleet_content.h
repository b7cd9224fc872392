// Why: two fleet files hold the same when everything a user could ask of their recordings is the same, but
// for the row numbers and the moment of import. Shapes: one text a recording, sorted. Thread: one.
#pragma once

#include <string>
#include <vector>

#include "core/store/fleet_file.h"

namespace fettle::intake_test {

// Path (its last part), time, samples, sidecar, examination, weights, levels and spectra of every recording.
std::vector<std::string> contentOf(FleetFile& fleet);
// Last parts of the paths of every recording, sorted.
std::vector<std::string> filesIn(FleetFile& fleet);

}  // namespace fettle::intake_test
