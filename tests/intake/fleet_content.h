// Why: two fleet files hold the same when everything a user could ask of their recordings is the same, but
// for the row numbers and the moment of import; two imports of one folder make the same rows as well. Shapes:
// one text a recording, sorted; or one a row. Thread: one.
#pragma once

#include <string>
#include <vector>

#include "core/store/fleet_file.h"

namespace fettle::intake_test {

// Path (its last part), time, samples, sidecar, examination, weights, levels and spectra of every recording.
std::vector<std::string> contentOf(FleetFile& fleet);
// Last parts of the paths of every recording, sorted.
std::vector<std::string> filesIn(FleetFile& fleet);

// Every row of every table, its number and all, but for the moment of import: "trend|1|...".
std::vector<std::string> tablesOf(const std::string& path);

}  // namespace fettle::intake_test
