// Why: what one recording shows of the shaft: how its orders, directions and the rest of the level stand to
// each other, as features of the cause table. Ratios in dB, shares of power, counts. A feature that the
// channels do not carry (no axial channel, twice the shaft not parted from twice the mains) is left out,
// never guessed. Velocities r.m.s. mm/s. Thread: pure.
#pragma once

#include <string>
#include <vector>

#include "core/diagnosis/cause_table.h"
#include "core/diagnosis/prepare.h"

namespace fettle {

// One acceleration channel's shaft lines; 0 where there is none.
struct ShaftLines {
    std::size_t channel = 0;
    bool axial = false;
    double overall = 0;
    double orders[11]{};  // [h] of h x, 1 .. 10
    double halves[3]{};   // 0.5x, 1.5x, 2.5x
    int high = 0;         // of orders 4 to 10, those that stand out and are not small beside 1x and 2x
    int half = 0;         // of the halves, likewise

    double highMmS() const;  // orders 4 to 10 together
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
    std::string at = "driver";  // component whose point is the worst
    std::vector<CauseFeature> features;
};

// `prepared.rates` must hold the speed; without it, levels and zone only.
ShaftPattern shaftPattern(const PreparedRecording& prepared);

}  // namespace fettle
