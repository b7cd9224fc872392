// Why: the fleet file and every printed JSON speak mm/s, Hz and degrees Celsius; a site reads in the units
// its people think in. This is the one place where a stored number becomes a shown one and a typed one
// becomes a stored one. What is not among the rows below (g, dB, um) is shown as it is. Factors: 25.4 mm an
// inch, exact; F = 1.8 C + 32 (a difference of temperatures has no offset). Thread: any.
#pragma once

#include <QString>

namespace fettle {

struct Units {
    bool inches = false;      // in/s for mm/s, mil for um
    bool perMinute = false;   // r/min for Hz
    bool fahrenheit = false;  // degrees F for degrees C
    bool operator==(const Units&) const = default;
};

struct ShownUnit {
    double factor = 1, offset = 0;  // shown = stored * factor + offset
    QString unit;
    double shown(double stored) const { return stored * factor + offset; }
    double stored(double shownValue) const { return (shownValue - offset) / factor; }
};

// "mm/s r.m.s." -> 1/25.4, "in/s r.m.s."; "°C" -> 1.8, 32, "°F"; "K" (a difference) -> 1.8, 0, "°F".
ShownUnit shownUnit(const QString& stored, const Units& units);

}  // namespace fettle
