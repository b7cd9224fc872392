// Why: on a site that thinks in inches the sheet says both: every sentence of it gets the other unit beside
// the stored one. Numbers, tables and the twins stay as they are. Thread: any.
#pragma once

#include "core/fleet/sheet_content.h"
#include "ui/model/units.h"

namespace fettle {

SheetContent withUnitsBeside(SheetContent sheet, const Units& units);

}  // namespace fettle
