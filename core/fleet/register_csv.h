// Why: the register as a table for a spreadsheet: one row a machine, its newest description; the history is
// in the JSON alone. Columns are the keys of a machine description from the outside in, parted by strokes
// ("driver/power_kw", "driver/bearings/DE/designation"), elements of lists counted from 0
// ("points/0/channels/1/unit"); an empty cell is an absent key. First comes "tag", then the rest as they
// stand in the descriptions. Keys of numbers and of yes and no are read as such, all else as text; text of a
// key this program does not know that looks like a number, and text that breaks a line, stands as a JSON
// string; a list or object whose parts no columns could give back (deeper than 12 keys, longer than 1,000, a
// null where a number belongs) as JSON in one cell; a key that is no name by signs (register_csv.cpp).
// Written with commas, decimal points and quotes (RFC 4180), and made safe against being taken for a formula;
// read with comma, semicolon or tab, and with a decimal comma where the fields are parted by something else.
// Out and in again is the same register. Thread: pure but for the fleet file.
#pragma once

#include <string>
#include <vector>

#include "core/base/json_object.h"
#include "core/store/fleet_file.h"

namespace fettle {

Result<std::string> registerAsCsv(FleetFile& fleet);
// Machines as rows of a table; for tests and for a part of a register.
std::string machinesAsCsv(const std::vector<Json>& machines);

struct CsvMachine {
    std::size_t line = 0;
    std::string json;  // empty: `refusal`
    Error refusal;
};
// A row that is no description, or no UTF-8 text, still comes back, as its refusal. Errors: of a table
// without a head, a tag or any row.
Result<std::vector<CsvMachine>> machinesOfCsv(const std::string& text, const std::string& file);

}  // namespace fettle
