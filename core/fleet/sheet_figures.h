// Why: which spectrum and which trend a findings sheet shows, as data; whoever draws asks detailOf for the
// spectrum. Thread: pure.
#pragma once

#include "core/fleet/sheet_case.h"
#include "core/fleet/sheet_content.h"

namespace fettle {

SheetSpectrum spectrumOf(const SheetCase& sheet);
SheetTrend trendOf(const SheetCase& sheet);

}  // namespace fettle
