// Why: every command that works on a fleet file opens it alike and says alike what opening found.
#pragma once

#include <memory>
#include <string>

#include "core/store/fleet_file.h"

namespace fettle {

// Null after telling why. A file that can only be read is told of; `toWrite` refuses it.
std::unique_ptr<FleetFile> openFleet(const std::string& path, bool toWrite);
// To read, a file of an older form as it is; that it is one is told.
std::unique_ptr<FleetFile> openFleetOfAnyForm(const std::string& path);

}  // namespace fettle
