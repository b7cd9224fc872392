#include <fmt/format.h>

#include <cmath>
#include <cstdlib>

#include "core/diagnosis/family.h"

namespace fettle {

namespace {

constexpr double kCageOfElementW = 0.4;

// What each element draws. Sidebands stand at h x carrier + j x (shaft or cage), for h = 1, 2.
struct Pattern {
    BearingElement element;
    const char *fault, *plain, *carrier, *side;
    std::vector<double> carrierW;  // of h = 1, 2, ..
    std::vector<int> sidebands;
    double sidebandW;
};

const Pattern& patternOf(BearingElement element) {
    static const std::vector<Pattern> all = {
        {BearingElement::OuterRace,
         "bearing_outer_race",
         "outer race",
         "BPFO",
         "shaft",
         {.95, .8, .7, .6, .5, .4, .4, .4, .3, .3, .3, .3},
         {-1, 1},
         .25},
        {BearingElement::InnerRace,
         "bearing_inner_race",
         "inner race",
         "BPFI",
         "shaft",
         {.9, .8, .6, .5, .4, .4, .3, .3},
         {-2, -1, 1, 2},
         .5},
        {BearingElement::RollingElement,
         "bearing_rolling_element",
         "rolling element",
         "2 BSF",
         "FTF",
         {.8, .7, .6, .5, .4, .4, .3, .3},
         {-2, -1, 1, 2},
         .5},
        {BearingElement::Cage, "bearing_cage", "cage", "FTF", "", {.8, .7, .5, .4, .3}, {}, 0},
    };
    return all[std::size_t(element)];
}

struct Moving {
    double order, slope;
};

// The defect order and how it moves with the cage shift.
Moving carrierOf(BearingElement element, const BearingVariant& v) {
    const double n = v.rollingElements, phi = v.orders.ftf;
    // The ring that stands still is passed at N phi, the turning one at N (1 - phi).
    const bool outerTurns = std::abs(n * phi - v.orders.bpfi) < std::abs(n * phi - v.orders.bpfo);
    const auto still = [](double order) { return Moving{order, order}; };
    const auto turning = [n](double order) { return Moving{order, order - n}; };
    switch (element) {
        case BearingElement::OuterRace:
            return outerTurns ? turning(v.orders.bpfo) : still(v.orders.bpfo);
        case BearingElement::InnerRace:
            return outerTurns ? still(v.orders.bpfi) : turning(v.orders.bpfi);
        // The element's own spread is as wide as the cage's: its shift is looked for as a shift of its own.
        case BearingElement::RollingElement:
            return {2 * v.orders.bsf, 2 * v.orders.bsf};
        case BearingElement::Cage:
            break;
    }
    return {phi, phi};
}

std::string lineName(const Pattern& pattern, int h, int j) {
    std::string name = h == 1 ? pattern.carrier : fmt::format("{} x {}", h, pattern.carrier);
    if (j != 0) name += fmt::format(" {} {} x {}", j > 0 ? "+" : "-", std::abs(j), pattern.side);
    return name;
}

}  // namespace

std::string faultKey(BearingElement element) {
    return patternOf(element).fault;
}
std::string plainName(BearingElement element) {
    return patternOf(element).plain;
}
std::string carrierName(BearingElement element) {
    return patternOf(element).carrier;
}

Family bearingFamily(BearingElement element, const BearingVariant& variant) {
    const Pattern& pattern = patternOf(element);
    const Moving carrier = carrierOf(element, variant);
    const bool bySide = std::string(pattern.side) == "FTF";
    Family family{pattern.fault, variant.name, "open data", {}};
    for (int h = 1; h <= int(pattern.carrierW.size()); ++h)
        family.lines.push_back({lineName(pattern, h, 0), h * carrier.order, h * carrier.slope,
                                pattern.carrierW[std::size_t(h - 1)], true, h});
    for (int h = 1; h <= 2; ++h)
        for (const int j : pattern.sidebands)
            family.lines.push_back({lineName(pattern, h, j),
                                    h * carrier.order + j * (bySide ? variant.orders.ftf : 1.0),
                                    h * carrier.slope, pattern.sidebandW, false, h});
    if (bySide)  // the element passes the load zone once a cage turn: its impacts swell and fade with it
        for (int h = 1; h <= 2; ++h)
            family.lines.push_back(
                {h == 1 ? "FTF" : "2 x FTF", h * variant.orders.ftf, 0, kCageOfElementW, false, 1});
    return family;
}

}  // namespace fettle
