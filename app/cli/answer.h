// Why: commands that work on a fleet file answer alike: one JSON object on stdout, an error as one line on
// stderr with the status that belongs to it.
#pragma once

#include <string>

#include "core/base/json_object.h"
#include "core/base/result.h"

namespace fettle {

void printJson(const Json& json);
// What every answer begins with: `schema` and `engine`, the version and checksum of the settings.
Json headedJson();
int couldNotRun(const Error& error);  // tells it; kCouldNotRun
void refuse(const Error& error);      // "refused: file: place: rule"
// "1 recording", "2 recordings"; `several` empty: one with an s.
std::string counted(std::size_t count, const std::string& one, const std::string& several = "");
// Written whole or not at all; told where it fails.
bool writeFile(const std::string& path, const std::string& bytes);
// Told, and true, where writing `path` would write over the fleet file or what stands beside it.
bool overwritesFleet(const std::string& path, const std::string& fleetPath);

}  // namespace fettle
