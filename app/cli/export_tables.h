// Why: what people said and decided, what intake refused and what was weighed leaves the fleet file as one
// table each: a JSON list of objects, or CSV (RFC 4180) where the file's name ends in .csv. Times UTC, days
// of the site's calendar; weights in decibans. JSON keeps every character; a cell of CSV is one line and
// starts no formula in a spreadsheet. Thread: as the FleetFile. Errors: those of the stores; Unwritable.
#pragma once

#include <string>
#include <vector>

#include "app/cli/export_span.h"

namespace fettle {

// machines decisions jobs feedback events refusals weights measures, and those of export_more_tables.h
const std::vector<std::string>& exportTableNames();

// How many rows were written.
Result<std::size_t> exportTable(FleetFile& fleet, const std::string& name, const ExportSpan& span,
                                const std::string& path);

}  // namespace fettle
