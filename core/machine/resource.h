// Why: standards' limits, bearing sizes and cause shares are data that users may correct, not code. They ship
// inside the program; a folder named by FETTLE_RESOURCES overrides them file by file.
#pragma once

#include <map>
#include <memory>
#include <string>

#include "core/base/json_object.h"
#include "core/base/result.h"

namespace fettle {

// File name -> content, written at build time from resources/tables by resources/setup/embed.cmake.
const std::map<std::string, std::string>& builtInResources();

// The parsed table: from FETTLE_RESOURCES where that folder has the file, else the built-in one.
Result<Json> loadResource(const std::string& name);
// The same for tables asked for with every recording: the built-in one is parsed once in a program. Thread:
// any.
Result<std::shared_ptr<const Json>> sharedResource(const std::string& name);

}  // namespace fettle
