// Why: a round as one JSON object that others may rely on (resources/schemas/round.schema.json), and as the
// fleet file keeps it, machine by machine. Total: list -> JSON -> list gives the same list, as makeRound made
// it; numbers unrounded, a week without a value in the strip is null. Errors: Unsupported for another schema,
// Invalid for a value that breaks a rule of the schema, with its place; unknown keys are let be.
#pragma once

#include <string>

#include "core/base/json_object.h"
#include "core/round/round.h"

namespace fettle {

Json toJson(const RoundMachine& machine);
Json toJson(const RoundList& list);

Result<RoundMachine> roundMachineFromJson(const Json& json, const std::string& file = "round");
Result<RoundList> roundListFromJson(const Json& json, const std::string& file = "round");

// One line, as the fleet file keeps a row, and back.
std::string roundMachineAsText(const RoundMachine& machine);
Result<RoundMachine> roundMachineFromText(const std::string& text, const std::string& file = "round");

}  // namespace fettle
