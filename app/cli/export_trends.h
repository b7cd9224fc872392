// Why: trends as one table: a row a recording and channel, a column a quantity with its unit in the name;
// empty where it was not measured. RFC 4180, decimal point, UTC. No cell starts a formula in a spreadsheet.
#pragma once

#include <string>

#include "app/cli/export_span.h"
#include "app/cli/out_file.h"

namespace fettle {

std::string trendCsvHeader();

// Of a machine, a channel and a month after the other; how many rows. What is held does not grow with its
// history. `import` takes the table in again (core/intake/level_table.h).
Result<std::size_t> writeTrends(FleetFile& fleet, const MachineEntry& machine, const ExportSpan& span,
                                OutFile& out);

}  // namespace fettle
