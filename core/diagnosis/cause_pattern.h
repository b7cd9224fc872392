// Why: what one recording shows of the shaft: how its orders, directions and the rest of the level stand to
// each other, as features of the cause table. Ratios in dB, shares of power, counts. A feature that the
// channels do not carry (no axial channel, twice the shaft not parted from twice the mains) is left out,
// never guessed. Orders at which this machine draws lines of its own (blade pass, belts, mesh, twice the
// mains) say nothing of the shaft and are left out of the high and half orders. Velocities r.m.s. mm/s.
// Thread: pure.
#pragma once

#include <string>
#include <vector>

#include "core/diagnosis/cause_table.h"
#include "core/diagnosis/prepare.h"

namespace fettle {

// By the nameplate, so that all recordings of a machine leave out the same.
struct OwnOrders {
    bool high[11]{};   // [h] of orders 4 to 10
    bool halves[3]{};  // of 0.5x, 1.5x, 2.5x
};
OwnOrders ownOrders(const Machine& machine);
// "orders 4-10", "orders 4-10 but 4, 6"; "half orders over floor but 1.5": what is left out is another
// quantity.
std::string highOrdersName(const OwnOrders& own);
std::string halfOrdersName(const OwnOrders& own);

// One acceleration channel's shaft lines; 0 where there is none.
struct ShaftLines {
    std::size_t channel = 0;
    bool axial = false;
    double overall = 0;
    double others = 0;  // lines of blades, belts, mesh and mains together
    OwnOrders own;
    double orders[11]{};  // [h] of h x, 1 .. 10
    double halves[3]{};   // 0.5x, 1.5x, 2.5x over the noise there: rough flow is none
    int high = 0;         // of orders 4 to 10, those that stand out and are not small beside 1x and 2x
    int half = 0;         // of the halves, likewise

    double highMmS() const;  // orders 4 to 10 together, but its own
    double halfMmS() const;
};

struct ShaftPattern {
    std::vector<ShaftLines> channels;
    const ChannelLevels* worst = nullptr;  // the channel with the worst zone; null: no limit applies
    std::size_t worstChannel = 0;
    ZoneNote zone;  // of `worst`
    double overall = 0;
    double radial1 = 0, radial2 = 0, axial1 = 0;  // the largest
    int high = 0, half = 0;
    double othersShare = 0;     // of the level's power on the worst channel: lines that are not the shaft's
    std::string at = "driver";  // component whose point is the worst
    std::vector<CauseFeature> features;
};

// `prepared.rates` must hold the speed; without it, levels and zone only.
ShaftPattern shaftPattern(const Machine& machine, const PreparedRecording& prepared);

}  // namespace fettle
