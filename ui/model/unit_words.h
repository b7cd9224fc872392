// Why: a sheet goes to people who think in inches as well as to those who do not: a velocity or a temperature
// in a sentence gets the other unit beside it, never instead of it, so that both read the same sheet.
// "6.2 mm/s" -> "6.2 mm/s (0.24 in/s)", "61 °C" -> "61 °C (142 °F)"; a number that has it already is let be.
// Thread: any.
#pragma once

#include <QString>

#include "ui/model/units.h"

namespace fettle {

QString withUnitsBeside(const QString& text, const Units& units);

}  // namespace fettle
