// Source: friction of a dry or worn bearing raises random noise at high frequencies before any line shows;
// common practice, no source.
#include <fmt/format.h>

#include <algorithm>

#include "core/diagnosis/fault_family.h"
#include "core/diagnosis/line_reading.h"

namespace fettle {

namespace {

constexpr double kHighLowHz = 2000, kNeedsHz = 2800;

std::vector<std::string> bearingPlaces(const Machine& machine) {
    std::vector<std::string> all;
    for (const BearingPlace& place : machine.bearings)
        if (std::find(all.begin(), all.end(), place.at) == all.end()) all.push_back(place.at);
    return all;
}

bool hasPoint(const Machine& machine, const std::string& at) {
    return std::any_of(machine.points.begin(), machine.points.end(),
                       [&](const Point& point) { return point.at == at; });
}

void measureFriction(const Listening& of, FamilyReport& report) {
    if (!hasPoint(of.machine, of.at)) {
        report.addBlind(of, "no point at this bearing: its high frequencies hardly travel",
                        "a point at this bearing, stud or adhesive mount");
        return;
    }
    for (const ChannelViews& views : of.prepared.views) {
        const Point* point = of.prepared.roles[views.channel].point;
        if (!point || point->at != of.at) continue;
        const double top = usableTopHz(views, point);
        if (top < kNeedsHz)
            report.addBlind(
                of, fmt::format("friction shows from 2 kHz up, this channel can be read to {:.0f} Hz", top),
                "a sample rate of 6.4 kHz or more and a stud or adhesive mount");
        else
            report.add(of, fmt::format("floor 2-{:.1f} kHz", top / 1000), "dB", views.channel,
                       floorDb(views, kHighLowHz, top));
    }
}

}  // namespace

FaultFamily dryBearingFamily() {
    return {"bearing_dry_or_worn",
            "no lines: random noise above 2 kHz, with the bearing's temperature",
            "every direction at its housing",
            "lines of an element: then it is that element; noise that a greasing does not change for a day",
            "cavitation, a leaking seal or steam, a neighbour's grinder, a looser mount",
            "a point at the bearing, readable to 2.8 kHz or more, one mount for all recordings",
            "greasing with the maker's amount decides: quiet for weeks means it was dry, back in hours means "
            "damage",
            "common practice, no source",
            "simulation only",
            bearingPlaces,
            measureFriction};
}

}  // namespace fettle
