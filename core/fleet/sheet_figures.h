// Why: which spectrum and which trend a findings sheet shows, as data; whoever draws asks detailOf for the
// spectrum. Thread: pure.
#pragma once

#include "core/fleet/sheet_case.h"
#include "core/fleet/sheet_content.h"

namespace fettle {

// The pole-pass sideband of the mains in a flux channel, else the first of rotor bars; null: not measured.
const FaultMeasure* barMeasure(const RecordingFacts& facts);
SheetSpectrum spectrumOf(const SheetCase& sheet);
SheetTrend trendOf(const SheetCase& sheet);

}  // namespace fettle
