#include "core/diagnosis/hypotheses.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace fettle {

namespace {

// How near a point is to a bearing, best first, and what is left of w along the way (common practice, no
// source).
struct Path {
    const char* name;
    double wCut;
};
constexpr std::array<Path, 5> kPaths = {{{"own place", 1.0},
                                         {"same housing", 1.0},
                                         {"same base", 0.5},
                                         {"through coupling", 0.3},
                                         {"through belt", 0.1}}};
constexpr std::size_t kFarthestByDefault = 3;  // through a belt only where `hears` says so

std::string componentOf(const std::string& at) {
    return at.substr(0, at.rfind(' '));
}

std::optional<std::size_t> pathBetween(const Point& point, const BearingPlace& place) {
    for (const std::string& named : {place.at, place.component})  // "driven" is all of it
        for (const Hears& hears : point.hears)
            if (hears.at == named)
                for (std::size_t i = 0; i < kPaths.size(); ++i)
                    if (hears.path == kPaths[i].name) return i;
    if (point.at == place.at) return 0;  // whatever else it hears
    if (!point.hears.empty()) return std::nullopt;
    if (point.at == place.component || componentOf(point.at) == place.component) return 1;
    return kFarthestByDefault;
}

struct Listener {
    std::size_t evidence, path;
};

std::vector<Listener> listenersOf(const BearingPlace& place, const PreparedRecording& prepared) {
    std::vector<Listener> all;
    for (std::size_t i = 0; i < prepared.evidence.size(); ++i) {
        const ChannelRole& role = prepared.roles[prepared.views[i].channel];
        if (!role.point) continue;
        if (const auto path = pathBetween(*role.point, place)) all.push_back({i, *path});
    }
    return all;
}

bool sameOrders(const BearingHypothesis& a, const BearingHypothesis& b, double shaftHz, double df) {
    if (a.variants.size() != b.variants.size()) return false;
    for (std::size_t v = 0; v < a.variants.size(); ++v) {
        const double apart = std::abs(a.variants[v].lines[0].order * a.shaftRatio -
                                      b.variants[v].lines[0].order * b.shaftRatio);
        if (apart * shaftHz > df) return false;
    }
    return true;
}

bool sameHearings(const BearingHypothesis& a, const BearingHypothesis& b) {
    return std::equal(
        a.hearings.begin(), a.hearings.end(), b.hearings.begin(), b.hearings.end(),
        [](const Hearing& x, const Hearing& y) { return x.channel == y.channel && x.wCut == y.wCut; });
}

// "driver DE" and "driver NDE" -> "driver DE or NDE"; other pairs are named in full.
std::string either(const std::string& a, const std::string& b) {
    const std::string component = componentOf(a);
    return component == componentOf(b) ? a + " or " + b.substr(component.size() + 1) : a + " or " + b;
}

bool merged(std::vector<BearingHypothesis>& all, const BearingHypothesis& one,
            const PreparedRecording& prepared) {
    for (BearingHypothesis& other : all) {
        const double df = prepared.views[one.hearings[0].channel].df;
        if (other.fault != one.fault || !sameHearings(other, one) ||
            !sameOrders(other, one, prepared.rates.shaftHz, df))
            continue;
        other.at = either(other.at, one.at);
        return true;
    }
    return false;
}

}  // namespace

std::vector<Hearing> hearingsOf(const Machine&, const BearingPlace& place,
                                const PreparedRecording& prepared) {
    std::vector<Listener> listeners = listenersOf(place, prepared);
    if (listeners.empty()) return {};
    const std::size_t best =
        std::min_element(listeners.begin(), listeners.end(), [](const auto& a, const auto& b) {
            return a.path < b.path;
        })->path;
    std::vector<Hearing> hearings;
    for (const Listener& l : listeners)
        if (l.path == best) hearings.push_back({l.evidence, 1, kPaths[best].wCut});
    for (Hearing& h : hearings)
        h.share = 1.0 / double(hearings.size());
    return hearings;
}

AskedBearings askBearings(const Machine& machine, const PreparedRecording& prepared) {
    AskedBearings asked;
    for (const BearingPlace& place : machine.bearings) {
        if (place.bearing.variants.empty()) {
            asked.notAsked.push_back(
                {place.at, place.bearing.whyNone, "enter geometry or orders from the nameplate"});
            continue;
        }
        const std::vector<Hearing> hearings = hearingsOf(machine, place, prepared);
        if (hearings.empty()) {
            asked.notAsked.push_back(
                prepared.unfit.empty()
                    ? AskedBearings::NotAsked{place.at, "no point of this recording hears it",
                                              "measure at this bearing"}
                    : AskedBearings::NotAsked{
                          place.at, prepared.unfit,
                          "a recording of the running machine, long enough, with its speed"});
            continue;
        }
        for (const BearingElement element : kBearingElements) {
            BearingHypothesis one{
                faultKey(element), place.at, machine.shafts[place.shaft].ratio, {}, hearings};
            for (const BearingVariant& variant : place.bearing.variants)
                one.variants.push_back(bearingFamily(element, variant));
            if (!merged(asked.hypotheses, one, prepared)) asked.hypotheses.push_back(std::move(one));
        }
    }
    return asked;
}

}  // namespace fettle
