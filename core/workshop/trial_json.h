// Why: a trial outlives the program as a document of the fleet file: this is its JSON, written and read back
// without loss, so that a promise made in May is the promise that is read in November. Keys carry their unit.
// Errors: Invalid with the place ("/change/mass_g"). Thread: pure.
#pragma once

#include "core/base/json_object.h"
#include "core/workshop/trial.h"

namespace fettle {

Json toJson(const Trial& trial);
std::string trialAsText(const Trial& trial);
Result<Trial> trialFromText(const std::string& text, const std::string& file);

}  // namespace fettle
