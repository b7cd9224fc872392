#include "core/diagnosis/measures.h"

#include <algorithm>

#include "core/machine/path.h"

namespace fettle {

namespace {

// Channels of this recording no farther from the place than the nearest point of the machine.
std::vector<const ChannelViews*> channelsNear(const Machine& machine, const PreparedRecording& prepared,
                                              const std::string& at) {
    const Path nearest = nearestPath(machine, at);
    std::vector<const ChannelViews*> near;
    for (const ChannelViews& views : prepared.views) {
        const Point* point = prepared.roles[views.channel].point;
        if (point && pathBetween(machine, *point, at) <= nearest) near.push_back(&views);
    }
    return near;
}

// A state that is not known stays with the values: who follows them leaves those out.
bool turnsSteadily(const PreparedRecording& prepared) {
    const std::string& running = prepared.facts.running;
    return prepared.unfit.empty() && (running.starts_with("running") || running == "unknown");
}

bool sways(const PreparedRecording& prepared) {
    return prepared.unfit.empty() && prepared.facts.running == "unsteady";
}

std::string whyNotMeasured(const PreparedRecording& prepared) {
    if (!prepared.unfit.empty()) return prepared.unfit;
    return sways(prepared) ? "the speed moves too much for levels to compare"
                           : "running state " + prepared.facts.running;
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
                        sways(of.prepared)
                            ? "a recording at steady speed"
                            : "a recording of the running machine, long enough, with its speed");
        return;
    }
    of.family.measure(of, report);
}

// Of one that is named.
void sayWay(const Listening& of, Hypothesis& h) {
    const Path path = nearestPath(of.machine, of.at);
    h.path = keptName(path);
    if (!h.path.empty()) h.against.push_back("heard " + wordsOf(path) + ": a reading nearer to it decides");
}

// Said of every fault that was asked for and not named.
void addConsidered(const Listening& of, FamilyReport& report) {
    for (Hypothesis& h : report.hypotheses)
        if (h.fault == of.family.fault && h.at == of.at) return sayWay(of, h);
    Hypothesis h;
    h.fault = of.family.fault;
    h.at = of.at;
    h.provedOn = of.family.provedOn;
    h.recordingCount = measured(report, of);
    h.path = keptName(nearestPath(of.machine, of.at));
    const BlindSpot* blind = blindFor(report, of);
    h.why = measured(report, of) ? "no baseline: sound machines draw these lines too, their change decides"
            : blind              ? blind->why
                                 : "no channel of this recording hears it";
    report.hypotheses.push_back(std::move(h));
}

}  // namespace

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
