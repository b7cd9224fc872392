// Why: a machine's history as it was told, and beside each greasing what the sensor heard of it.
#pragma once

#include <string>

#include "core/store/fleet_file.h"

namespace fettle {

int answerEventList(FleetFile& fleet, const std::string& machine, bool json);

}  // namespace fettle
