// Why: what a findings sheet is drawn from, in one value: its words and numbers (core/fleet) and the spectra
// of the recording that spoke loudest. A recording that cannot be read costs the figure, not the sheet: the
// caption says so. Thread: a worker; costs about one examination. Errors: those of sheetContent.
#pragma once

#include <optional>

#include "core/diagnosis/detail.h"
#include "core/fleet/sheet_content.h"
#include "ui/model/units.h"

namespace fettle {

struct SheetData {
    SheetContent content;
    std::optional<RecordingDetail> detail;
    Units units = {};  // others to stand beside the stored ones
};

Result<SheetData> readSheet(FleetFile& fleet, const SheetRequest& request);
// Adds the spectra to a content that is at hand.
SheetData withDetail(FleetFile& fleet, SheetContent content);

}  // namespace fettle
