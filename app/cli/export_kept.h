// Why: rounds as they were kept and examinations as they were weighed leave the fleet file as the JSON they
// are stored as, one after another, none of them held longer than it is written. Thread: as the FleetFile.
// Errors: those of the stores; Unwritable.
#pragma once

#include <string>

#include "app/cli/export_span.h"

namespace fettle {

// How many were written. A round has its rows as `round --json` gives them and the examinations of the week.
Result<std::size_t> exportRounds(FleetFile& fleet, const ExportSpan& span, const std::string& path);
Result<std::size_t> exportExaminations(FleetFile& fleet, const ExportSpan& span, const std::string& path);

}  // namespace fettle
