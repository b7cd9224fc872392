#include "core/diagnosis/measures.h"

#include <algorithm>

namespace fettle {

namespace {

bool joins(const Machine& machine, const std::string& at, std::size_t shaft) {
    const std::string& id = machine.shafts[shaft].id;
    for (const Gear& gear : machine.gears)
        if (gear.id == at) return gear.from == id || gear.to == id;
    for (const Belt& belt : machine.belts)
        if (belt.id == at) return belt.from == id || belt.to == id;
    return false;
}

bool isBelt(const Machine& machine, const std::string& at) {
    return std::any_of(machine.belts.begin(), machine.belts.end(),
                       [&](const Belt& belt) { return belt.id == at; });
}

// Channels of this recording no farther from the place than the nearest point of the machine.
std::vector<const ChannelViews*> channelsNear(const Machine& machine, const PreparedRecording& prepared,
                                              const std::string& at) {
    const Farness nearest = nearestPoint(machine, at);
    std::vector<const ChannelViews*> near;
    for (const ChannelViews& views : prepared.views) {
        const Point* point = prepared.roles[views.channel].point;
        if (point && farnessOf(machine, *point, at) <= nearest) near.push_back(&views);
    }
    return near;
}

// A state that is not known stays with the values: who follows them leaves those out.
bool turnsSteadily(const PreparedRecording& prepared) {
    const std::string& running = prepared.facts.running;
    return prepared.unfit.empty() && (running.starts_with("running") || running == "unknown");
}

std::string whyNotMeasured(const PreparedRecording& prepared) {
    if (!prepared.unfit.empty()) return prepared.unfit;
    return "running state " + prepared.facts.running;
}

const BlindSpot* blindFor(const FamilyReport& report, const Listening& of) {
    for (const BlindSpot& spot : report.blind)
        if (spot.fault == of.family.fault && spot.at == of.at) return &spot;
    return nullptr;
}

bool measured(const FamilyReport& report, const Listening& of) {
    return std::any_of(report.measures.begin(), report.measures.end(),
                       [&](const FaultMeasure& m) { return m.fault == of.family.fault && m.at == of.at; });
}

void measureOne(const Listening& of, FamilyReport& report) {
    if (!turnsSteadily(of.prepared)) {
        report.addBlind(of, whyNotMeasured(of.prepared),
                        "a recording of the running machine, long enough, with its speed");
        return;
    }
    of.family.measure(of, report);
}

// Said of every fault that was asked for and not named.
void addConsidered(const Listening& of, FamilyReport& report) {
    for (const Hypothesis& h : report.hypotheses)
        if (h.fault == of.family.fault && h.at == of.at) return;
    Hypothesis h;
    h.fault = of.family.fault;
    h.at = of.at;
    h.provedOn = of.family.provedOn;
    h.recordingCount = measured(report, of);
    const BlindSpot* blind = blindFor(report, of);
    h.why = measured(report, of) ? "no baseline: sound machines draw these lines too, their change decides"
            : blind              ? blind->why
                                 : "no channel of this recording hears it";
    report.hypotheses.push_back(std::move(h));
}

}  // namespace

Farness farnessOf(const Machine& machine, const Point& point, const std::string& at) {
    for (const Hears& hears : point.hears)
        if (hears.at == at)
            return hears.path == "same housing" ? Farness::SameHousing
                   : hears.path == "same base"  ? Farness::SameShaft
                                                : Farness::Afar;
    const auto place = machine.placeOf(point.at);
    if (!place) return Farness::Afar;
    if (place->component == at) return Farness::SameHousing;
    if (!joins(machine, at, place->shaft)) return Farness::Afar;
    // A gear's box hears it through its own wall, a belt pulls at the bearings of its pulleys.
    const bool own = isBelt(machine, at) || (place->component != "driver" && place->component != "driven");
    return own ? Farness::SameHousing : Farness::SameShaft;
}

Farness nearestPoint(const Machine& machine, const std::string& at) {
    Farness nearest = Farness::Afar;
    for (const Point& point : machine.points)
        nearest = std::min(nearest, farnessOf(machine, point, at));
    return nearest;
}

FamilyReport measuresOf(const Machine& machine, const PreparedRecording& prepared,
                        const std::vector<Hypothesis>& weighed) {
    FamilyReport report;
    SupplyLines supply;
    if (turnsSteadily(prepared)) supply = supplyLinesOf(machine, prepared);
    for (const FaultFamily& family : faultFamilies())
        for (const std::string& at : family.placesOn(machine)) {
            const Listening of{family, machine, prepared, supply, at, channelsNear(machine, prepared, at),
                               weighed};
            measureOne(of, report);
            addConsidered(of, report);
        }
    return report;
}

}  // namespace fettle
