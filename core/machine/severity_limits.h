// Why: limits of standards as data: each with standard, edition, clause and how sure we are of the figure, so
// that a user who owns the standard can correct it. Values: resources/tables/severity_limits.json. Units:
// velocity r.m.s. in mm/s, displacement r.m.s. in um, 10 to 1000 Hz unless the entry says otherwise.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/machine/machine.h"

namespace fettle {

enum class Zone { A, B, C, D };
std::string toText(Zone zone);

struct ZoneLimits {
    std::string basis;  // "ISO 20816-3 group 2 rigid"
    std::string edition, clause;
    std::string sure;      // read | memory, cross-checked | memory | memory, doubtful
    double velocity[3]{};  // A/B, B/C, C/D
    std::optional<double> displacement[3];
    double leastHz = 10, mostHz = 1000;
    bool greyOnly = false;  // a note only: alone never above watch (practice: motors to 15 kW)
};

// A level exactly on a boundary belongs to the better zone: the standard does not say; this program decides
// so.
Zone zoneOf(double velocityMmS, const ZoneLimits& limits);
// The same for displacement, where the set has it; below 600 r/min the worse of the two zones governs.
std::optional<Zone> displacementZoneOf(double displacementUm, const ZoneLimits& limits);

// The limit sets that apply to a point, two where the support is unknown (rigid and flexible); empty with a
// reason where none applies. `indicative`: not on a bearing housing or end shield.
struct ApplicableLimits {
    std::vector<ZoneLimits> sets;
    bool indicative = false;
    std::string why;  // why none, or why indicative
};
Result<ApplicableLimits> limitsFor(const Machine& machine, const Point& point);

}  // namespace fettle
