// Why: how long before each failure of a machine the rule would have listed it, as lines to read and as JSON.
#pragma once

#include <string>

#include "core/store/fleet_file.h"

namespace fettle {

// `before`: a day instead of the machine's failures; empty: all of them.
int answerFirstListed(FleetFile& fleet, const std::string& tag, const std::string& before, bool json);

}  // namespace fettle
