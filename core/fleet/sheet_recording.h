// Why: which recording of the fleet file a week's examination speaks of. A gateway may write every day under
// one file name, so a name alone would show another day's waveform. A week as it is now knows its recordings
// by number; a kept one (the examination as text) has names and facts only: they are matched by file name,
// facts and order in time, and where that leaves a choice nothing is shown. Thread: as the FleetFile; reads
// only. Errors: those of the stores.
#pragma once

#include "core/fleet/sheet_case.h"
#include "core/store/fleet_file.h"

namespace fettle {

// Fills week and weekIds: as kept with the round, else from the recordings.
Status addWeek(FleetFile& fleet, std::optional<std::int64_t> round, SheetCase& sheet);
// Fills recording and recordingTime, and for a finding without lines finding.recording: the newest running
// one of the point that governs.
Status addRecording(FleetFile& fleet, SheetCase& sheet);

}  // namespace fettle
