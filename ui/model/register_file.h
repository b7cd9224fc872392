// Why: the whole register as one JSON file, or as one CSV table (core/fleet/register_csv.h), out and in
// again: a list of {"machine": description, "from": day, "note": why}, one entry for each description that
// ever held, so that nothing is lost on the way (no day: from the beginning; a fleet that has all of it is
// left unchanged); a single description or a plain list of them is taken too, as what holds now.
// Thread: as the FleetFile. Errors: of a file that is no such thing (a name ending in .csv, .tsv or .txt is a
// table); each machine's own trouble is listed and the others go in.
#pragma once

#include <string>
#include <vector>

#include "core/base/json_object.h"
#include "core/store/fleet_file.h"

namespace fettle {

Result<std::string> registerAsJson(FleetFile& fleet);

struct RegisterTaken {
    int added = 0, changed = 0, unchanged = 0;
    std::vector<std::string> refused;  // sentences
};
// The same value for several machines, each described anew from a day on, or corrected where that is empty.
Result<RegisterTaken> setAlike(FleetFile& fleet, const std::vector<std::string>& tags,
                               const std::string& pointer, const Json& value, const std::string& from,
                               const std::string& note);
Result<RegisterTaken> takeRegister(FleetFile& fleet, const std::string& text, const std::string& file);

}  // namespace fettle
