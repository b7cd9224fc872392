// Why: short lists are typed faster than tables are filled: numbers of places ("3, 4") and masses that sit on
// a rotor ("12 @ 30; 5 @ 200 @ 390": grams, degrees, radius in mm where it is another). Thread: any.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "core/workshop/split_mass.h"

namespace fettle {

// Empty where it is no such list; an empty text is an empty list.
std::optional<std::vector<int>> numbersIn(const QString& text);
QString numbersText(const std::vector<int>& numbers);
std::optional<std::vector<FittedMass>> massesIn(const QString& text, double usualRadiusMm);
QString massesText(const std::vector<FittedMass>& masses, double usualRadiusMm);

}  // namespace fettle
