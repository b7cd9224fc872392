// Why: the whole register as one JSON file, out and in again: a list of {"machine": description, "from": day,
// "note": why}, one entry for each description that ever held, so that nothing is lost on the way; a single
// description or a plain list of them is taken too. Thread: as the FleetFile. Errors: of a file that is no
// such thing; each machine's own trouble is listed and the others go in.
#pragma once

#include <string>
#include <vector>

#include "core/store/fleet_file.h"

namespace fettle {

Result<std::string> registerAsJson(FleetFile& fleet);

struct RegisterTaken {
    int added = 0, changed = 0, unchanged = 0;
    std::vector<std::string> refused;  // sentences
};
Result<RegisterTaken> takeRegister(FleetFile& fleet, const std::string& text, const std::string& file);

}  // namespace fettle
