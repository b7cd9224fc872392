// Why: `import --preview` shows what each file would be taken for and stores nothing: a table of kinds for
// people, one JSON object with every file for programs.
#pragma once

#include <string>
#include <vector>

#include "core/store/fleet_file.h"

namespace fettle {

// The program's exit status: 1 where something would be refused or parked.
int previewImport(FleetFile& fleet, const std::vector<std::string>& paths, bool recursive, bool json);

}  // namespace fettle
