// Why: where a bearing's defects would show, as orders of its shaft.
// Source: textbook kinematics (pure rolling), e.g. Randall and Antoni, MSSP 25 (2011) 485-520, eq. 1-4.
// Units: orders are multiples of the speed of the ring's shaft; lengths in mm; angles in degrees.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"

namespace fettle {

enum class TurningRing { Inner, Outer };

struct BearingGeometry {
    int rollingElements = 0;  // in one row, >= 3
    double elementMm = 0;     // diameter
    double pitchMm = 0;       // diameter, > elementMm
    double contactDeg = 0;    // 0 to < 90
};

struct BearingOrders {
    double bpfo = 0, bpfi = 0;  // rolling elements passing a point of the outer, inner ring
    double bsf = 0;  // spin of an element: it strikes one race once a turn, both twice: look at 2 x bsf
    double ftf = 0;  // cage
};

// Orders by geometry. With the outer ring turning, FTF counts from the outer ring's shaft: bpfi = N ftf
// instead of bpfo = N ftf; the other three keep their magnitude, since the rings' speed against each other is
// the same.
BearingOrders ordersOf(const BearingGeometry& geometry, TurningRing turning = TurningRing::Inner);

// The rule a geometry breaks (element smaller than the pitch circle, elements fit round it); empty where
// sound.
std::string ruleBroken(const BearingGeometry& geometry);

// One way a bearing may be built inside: makers differ.
struct BearingVariant {
    std::string name;  // "8 x 28.575 mm on 125 mm" or "orders as given"
    BearingOrders orders;
    int rollingElements = 0;  // counted, or round(bpfo + bpfi)
    std::string source;       // nameplate, register, "typical, confirm"
    bool confirmed = false;   // false: from a table of common sizes
};

// Named by its numbers; source and confirmed are the caller's.
BearingVariant asVariant(const BearingGeometry& geometry, TurningRing turning);

struct Bearing {
    std::string designation;  // ISO dimension designation; may be empty
    std::string type;  // deep_groove, angular, cylindrical_roller, spherical_roller, taper_roller, sleeve
    int rows = 1;
    TurningRing turning = TurningRing::Inner;
    std::vector<BearingVariant> variants;  // empty: no families, `whyNone` says why
    std::string whyNone;
};

// The variants of a designation in resources/tables/bearings.json; prefixes and suffixes after the basic
// designation (6316-2Z/C3, 6205 2RS) are passed over. Empty where the table has none.
Result<std::vector<BearingVariant>> typicalVariants(const std::string& designation, TurningRing turning);

// Every row of that table.
Result<std::vector<BearingVariant>> allTypicalVariants();

}  // namespace fettle
