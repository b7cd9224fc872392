// Why: a finding by change rests on a quantity of its own, on its own channel: the sheet shows that
// quantity's trend and, for a gear, the acceleration spectrum with the mesh marked, not the velocity that
// says nothing of it. Thread: reading as the FleetFile, else pure. Errors: those of the stores.
#pragma once

#include <optional>
#include <vector>

#include "core/fleet/sheet_case.h"
#include "core/fleet/sheet_content.h"

namespace fettle {

// The change of a measure of its family; null: the finding has none.
const ChangeFacts* measuredChange(const SheetCase& sheet);
bool isOfGear(const SheetCase& sheet);  // such a change, of a gear
// Its daily medians of the weeks that a sheet shows; nothing where the series is not in the file.
Status addChangeDays(FleetFile& fleet, SheetCase& sheet);
// Empty: fewer than two days.
std::optional<SheetTrend> changeTrend(const SheetCase& sheet);
// Mesh and its harmonics at the recording's speed; empty: it is no gear, or the recording is not of the
// channel that changed.
std::vector<SheetMark> meshMarks(const SheetCase& sheet, const RecordingFacts& facts);

}  // namespace fettle
