// Why: trends as one table: a row a recording and channel, a column a quantity with its unit in the name;
// empty where it was not measured. RFC 4180, decimal point, UTC. No cell starts a formula in a spreadsheet.
#pragma once

#include <string>

#include "core/store/fleet_file.h"

namespace fettle {

std::string trendCsvHeader();

struct TrendCsv {
    std::string text;
    std::size_t rows = 0;
};
Result<TrendCsv> trendCsvOf(FleetFile& fleet, const MachineEntry& machine, Instant from, Instant until);

}  // namespace fettle
