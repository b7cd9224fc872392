// Why: lines that every healthy machine of this build draws. They are never evidence for a bearing.
// Units: orders of the driver's shaft, Hz. Thread: pure. Sources: gear mesh, belt and blade-pass rates are
// kinematics (any machine-vibration textbook); pole pass and slot lines W. T. Thomson, I. Culbert, Current
// Signature Analysis (2017). Every such line is a x (driver shaft frequency) + b x (mains or inverter output
// frequency), so that speed and mains can be refined without listing the lines again.
#pragma once

#include <string>
#include <vector>

#include "core/machine/machine.h"

namespace fettle {

enum class ForcingKind { Shaft, Mains, PolePass, GearMesh, Belt, BladePass, Slots, Inverter };

struct ForcingLine {
    std::string name;  // "3 x shaft", "2 x mains", "G1 mesh + 1 x S2"
    ForcingKind kind = ForcingKind::Shaft;
    double perShaft = 0;  // a
    double perMains = 0;  // b
    double spread = 0;    // relative half-width of a (belt creep, unknown ratios)
    double fixedHz = 0;   // neither: an inverter's switching frequency
    double hz(double shaftHz, double mainsHz) const {
        return perShaft * shaftHz + perMains * mainsHz + fixedHz;
    }
};

struct ForcingExtent {
    double mostHz = 5000;     // lines above are not listed
    double shaftHz = 25;      // rough, for the cut-off only
    int shaftHarmonics = 60;  // of every shaft
    int mainsHarmonics = 20;
};

// Teeth in mesh for one turn of the driver. In a planetary set they count from the carrier: S |ws - wc|.
double meshOrder(const Machine& machine, const Gear& gear);
// Turns of the belt for one turn of the driver, without creep: it runs with the rim it comes off. 0 where the
// length is not known.
double beltOrder(const Machine& machine, const Belt& belt);

// Shaft orders of every shaft, mains multiples, pole-pass sidebands of 1x and 2 x mains, gear mesh with shaft
// sidebands, blade pass, belt orders, inverter lines.
std::vector<ForcingLine> forcingLines(const Machine& machine, const ForcingExtent& extent);

}  // namespace fettle
