// Why: a finding by change rests on a quantity of its own, on its own channel: the sheet shows that
// quantity's trend and, where it is one of acceleration (a gear, the high band), that spectrum, not the
// velocity, which says nothing of it. Thread: reading as the FleetFile, else pure. Errors: those of the
// stores.
#pragma once

#include <optional>
#include <vector>

#include "core/fleet/sheet_case.h"
#include "core/fleet/sheet_content.h"

namespace fettle {

// The change a named finding rests on; null: it rests on none.
const ChangeFacts* measuredChange(const SheetCase& sheet);
// The same where acceleration shows it: of a gear, or of what is measured in g.
const ChangeFacts* changeInAcceleration(const SheetCase& sheet);
// Its daily medians of the weeks that a sheet shows; nothing where the velocity shows it, or the file has
// none.
Status addChangeDays(FleetFile& fleet, SheetCase& sheet);
// Empty: fewer than two days.
std::optional<SheetTrend> changeTrend(const SheetCase& sheet);
// The spectrum of such a change, of a gear with its mesh and harmonics marked at the recording's speed;
// false: there is none, or the recording is not of the channel that changed.
bool showAcceleration(const SheetCase& sheet, const RecordingFacts& facts, SheetSpectrum& spectrum,
                      std::string& point);

}  // namespace fettle
