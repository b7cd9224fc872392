// Why: a plate says half a designation, or a caliper three sizes, or a spectrum an order nobody expected; the
// finder says which bearings these could be. By designation: the table of inner builds (bearings.json) and
// all sizes of the table of boundary dimensions (bearing_sizes.json). By order: every line of every build
// that lies near, with the slip it would need; real bearings slip 1 to 2 %, a line farther off is none of
// theirs. Units: mm, orders of the bearing's own shaft. Source of orders: core/machine/bearing.h; sizes: ISO
// 15 from memory. Thread: any. Errors: of the tables only.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/machine/bearing.h"

namespace fettle {

struct BearingSize {
    double boreMm = 0, outerMm = 0;
    double widthMm = 0;  // 0: not by ISO 15 (taper roller bearings)
};

// One inner build of a designation; without a build where only its size is known.
struct KnownBearing {
    std::string designation, type;  // type: as in a machine description; empty: not told
    std::optional<BearingSize> size;
    std::optional<BearingGeometry> build;
    std::optional<BearingOrders> orders;  // inner ring turning
    std::string source;                   // of the build
};

// What a designation says of type and size: letters before and after the basic number are passed over.
std::string typeOf(const std::string& designation);
Result<std::optional<BearingSize>> sizeOf(const std::string& designation);

// All there is: every build by designation, then every size without one.
Result<std::vector<KnownBearing>> knownBearings();

struct BearingWish {
    std::string part;                                // of the designation; empty: any
    std::optional<double> boreMm, outerMm, widthMm;  // to within 0.5 mm
};
std::vector<KnownBearing> findBearings(const std::vector<KnownBearing>& all, const BearingWish& wish);

enum class BearingLine { OuterRace, InnerRace, RollingElement, Cage };
struct OrderFit {
    std::size_t bearing = 0;  // place in the list searched
    BearingLine line = BearingLine::OuterRace;
    int multiple = 1;          // of the line
    double expectedOrder = 0;  // a rolling element strikes both races: twice its spin
    double slip = 0;           // found over expected - 1
};
// Nearest first. `tolerance` of 1: 0.02 is 2 %; multiples up to `most`, of a cage the first alone.
std::vector<OrderFit> fitOrder(const std::vector<KnownBearing>& all, double order, double tolerance = 0.02,
                               int most = 3);

}  // namespace fettle
