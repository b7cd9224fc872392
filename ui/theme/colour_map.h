// Why: a waterfall must not show steps that are not in the data, and must read for every eye: the map runs
// evenly in lightness from dark blue to light yellow. Source: the map cividis, J. R. Nunez, C. R. Anderton,
// R. S. Renslow, PLoS ONE 13 (2018) e0199239; ten of its colours are kept here (from memory), what lies
// between is interpolated and set to even steps of CIE lightness. Greys for print: dark is much.
#pragma once

#include <QColor>
#include <array>

namespace fettle {

using ColourMap = std::array<QRgb, 256>;  // weak to strong

const ColourMap& blueToYellow();
const ColourMap& greysForPrint();

// Linear light (0 to 1) of an sRGB channel (0 to 1); IEC 61966-2-1.
double linearLight(double channel);
// CIE 1976 L* (0 to 100) of an sRGB colour.
double lightness(QRgb colour);

}  // namespace fettle
