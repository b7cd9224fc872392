#include "core/diagnosis/hypotheses.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/diagnosis/line_reading.h"
#include "core/machine/path.h"

namespace fettle {

namespace {

struct Listener {
    std::size_t evidence = 0;
    Path path = Path::OwnPlace;
};

std::vector<Listener> listenersOf(const Machine& machine, const BearingPlace& place,
                                  const PreparedRecording& prepared) {
    std::vector<Listener> all;
    for (std::size_t i = 0; i < prepared.evidence.size(); ++i) {
        const ChannelRole& role = prepared.roles[prepared.views[i].channel];
        if (!role.point) continue;
        if (const auto path = heardPath(machine, *role.point, place.at)) all.push_back({i, *path});
    }
    return all;
}

Path nearestOf(const std::vector<Listener>& listeners) {
    Path nearest = Path::ThroughBelt;
    for (const Listener& listener : listeners)
        nearest = std::min(nearest, listener.path);
    return nearest;
}

// Within the record's resolution, or within what slip usually makes: that much nobody can tell apart.
bool sameOrders(const BearingHypothesis& a, const BearingHypothesis& b, double shaftHz, double df,
                const WeighingSettings& settings) {
    if (a.variants.size() != b.variants.size()) return false;
    for (std::size_t v = 0; v < a.variants.size(); ++v) {
        const double hz = a.variants[v].lines[0].order * a.shaftRatio * shaftHz;
        const double apart = std::abs(b.variants[v].lines[0].order * b.shaftRatio * shaftHz - hz);
        if (apart > std::max(df, settings.shiftSpread * hz)) return false;
    }
    return true;
}

bool sameHearings(const BearingHypothesis& a, const BearingHypothesis& b) {
    return std::equal(
        a.hearings.begin(), a.hearings.end(), b.hearings.begin(), b.hearings.end(),
        [](const Hearing& x, const Hearing& y) { return x.channel == y.channel && x.wCut == y.wCut; });
}

bool merged(std::vector<BearingHypothesis>& all, const BearingHypothesis& one,
            const PreparedRecording& prepared, const WeighingSettings& settings) {
    for (BearingHypothesis& other : all) {
        const double df = prepared.views[one.hearings[0].channel].df;
        if (other.fault != one.fault || !sameHearings(other, one) ||
            !sameOrders(other, one, prepared.rates.shaftHz, df, settings))
            continue;
        other.at = eitherOf(other.at, one.at);
        return true;
    }
    return false;
}

// Why no line of it can be judged in this recording; nothing: it can.
std::optional<AskedBearings::NotAsked> unheard(const Machine& machine, const BearingPlace& place,
                                               const PreparedRecording& prepared, bool heard,
                                               const WeighingSettings& settings) {
    if (place.bearing.variants.empty())
        return AskedBearings::NotAsked{place.at, place.bearing.whyNone,
                                       "enter its geometry or orders, from the maker"};
    if (!prepared.unfit.empty())
        return AskedBearings::NotAsked{place.at, prepared.unfit,
                                       "a recording of the running machine, long enough, with its speed"};
    if (!heard) return AskedBearings::NotAsked{place.at, kNotHeard, "a sensor on it"};
    const Shaft& shaft = machine.shafts[place.shaft];
    const double hz = shaft.ratio * prepared.rates.shaftHz, seconds = prepared.recording->seconds();
    if (hz * seconds >= settings.fewestTurns) return std::nullopt;
    return AskedBearings::NotAsked{place.at,
                                   fmt::format("{:.1f} turns of {} in {} are too few to name a line",
                                               hz * seconds, shaft.id, secondsText(seconds)),
                                   "a recording of " + secondsText(settings.fewestTurns / hz) + " or more"};
}

// "8-ball variant (8 x 28.575 mm on 125 mm)"
std::string toldApart(const BearingPlace& place, const BearingVariant& variant) {
    const bool rollers = place.bearing.type.find("roller") != std::string::npos;
    return fmt::format("{}-{} variant ({})", variant.rollingElements, rollers ? "roller" : "ball",
                       variant.name);
}

void askElements(const Machine& machine, const BearingPlace& place, const PreparedRecording& prepared,
                 const std::vector<Hearing>& hearings, const WeighingSettings& settings,
                 AskedBearings& asked) {
    const Path path = nearestOf(listenersOf(machine, place, prepared));
    for (const BearingElement element : kBearingElements) {
        BearingHypothesis one{faultKey(element), place.at,      machine.shafts[place.shaft].ratio, {},
                              hearings,          keptName(path)};
        for (const BearingVariant& variant : place.bearing.variants) {
            one.variants.push_back(bearingFamily(element, variant));
            if (place.bearing.variants.size() > 1) one.variants.back().variant = toldApart(place, variant);
        }
        if (!merged(asked.hypotheses, one, prepared, settings)) asked.hypotheses.push_back(std::move(one));
    }
}

}  // namespace

std::vector<Hearing> hearingsOf(const Machine& machine, const BearingPlace& place,
                                const PreparedRecording& prepared) {
    const std::vector<Listener> listeners = listenersOf(machine, place, prepared);
    const Path nearest = nearestOf(listeners);
    std::vector<Hearing> hearings;
    for (const Listener& l : listeners)
        if (l.path == nearest) hearings.push_back({l.evidence, 1, wCutOf(nearest)});
    for (Hearing& h : hearings)
        h.share = 1.0 / double(hearings.size());
    return hearings;
}

AskedBearings askBearings(const Machine& machine, const PreparedRecording& prepared,
                          const WeighingSettings& settings) {
    AskedBearings asked;
    for (const BearingPlace& place : machine.bearings) {
        if (place.bearing.type == "sleeve") continue;  // no rolling elements: these faults do not concern it
        const std::vector<Hearing> hearings = hearingsOf(machine, place, prepared);
        if (auto why = unheard(machine, place, prepared, !hearings.empty(), settings))
            asked.notAsked.push_back(std::move(*why));
        else
            askElements(machine, place, prepared, hearings, settings, asked);
    }
    return asked;
}

}  // namespace fettle
