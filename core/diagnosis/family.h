// Why: a family is the set of lines one fault would draw. Bearing families are tied by kinematics: one
// unknown a bearing, the cage shift c (true cage ratio phi = FTF (1 + c): contact angle, slip, geometry),
// moves outer- and inner-race lines in opposite directions while their sum stays N. Source: Randall and
// Antoni, MSSP 25 (2011) 485-520, section 2 (which lines, which sidebands); the shares w are settings of this
// engine, tried on open records. Units: orders of the bearing's own shaft; w is the share of true faults that
// show the line.
#pragma once

#include <string>
#include <vector>

#include "core/machine/bearing.h"

namespace fettle {

enum class BearingElement { OuterRace, InnerRace, RollingElement, Cage };
inline constexpr BearingElement kBearingElements[] = {BearingElement::OuterRace, BearingElement::InnerRace,
                                                      BearingElement::RollingElement, BearingElement::Cage};
std::string faultKey(BearingElement element);     // "bearing_outer_race"
std::string plainName(BearingElement element);    // "outer race"
std::string carrierName(BearingElement element);  // "BPFO"

struct FamilyLine {
    std::string name;  // "2 x BPFO - 1 x shaft"
    double order = 0;  // at c = 0
    double slope = 0;  // change of order per unit of c
    double w = 0;
    bool carrier = false;  // a harmonic of the defect frequency itself
    int harmonic = 1;
};

struct Family {
    std::string fault;              // key
    std::string variant;            // which internal geometry
    std::string provedOn;           // open data | published numbers | simulation only
    std::vector<FamilyLine> lines;  // lines[0] is the first carrier
};

Family bearingFamily(BearingElement element, const BearingVariant& variant);

}  // namespace fettle
