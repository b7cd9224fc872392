// Why: recordings leave the fleet file as files with their sidecars, a folder a machine, each read back
// before it is written (core/exchange/recording_export). What lies in the folder in another form
// keeps its sidecar: the new one is told apart by number. Thread: as the FleetFile. Errors: one recording's
// own trouble is told and the rest goes on; what cannot be written ends it.
#pragma once

#include <string>

#include "app/cli/export_span.h"
#include "core/exchange/recording_export.h"

namespace fettle {

// Tells how many; an exit status.
int exportRecordings(FleetFile& fleet, const ExportSpan& span, const std::string& folder,
                     ExportForm form = ExportForm::AsItCame);

}  // namespace fettle
