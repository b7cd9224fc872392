#include "core/fleet/ask_suggestions.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/base/text.h"
#include "core/diagnosis/blind_spots.h"
#include "core/diagnosis/urgency.h"
#include "core/diagnosis/wording.h"
#include "core/machine/path.h"

namespace fettle {

namespace {

// Common practice, no source.
constexpr double kBearingTopHz = 10000, kShaftTopHz = 1000;
constexpr double kFewestTurns = 60, kFewestSeconds = 4, kMostWideSeconds = 8, kLongNarrow = 32,
                 kOverAMinute = 64;
constexpr double kBarsTopHz = 400;  // mains and its fifth: 12800 lines in 32 s

const std::string kBarsNeed =
    ": stray flux at the motor's frame, or motor current taken by qualified electrical staff, narrow (1 kHz "
    "or less), at a steady load of at least half";

bool isOfBearing(const std::string& fault) {
    return fault.starts_with("bearing");
}

bool isOfShaft(const std::string& fault) {
    for (const char* one : {"unbalance", "misalignment", "bent_shaft", "looseness", "soft_foot", "resonance"})
        if (fault == one) return true;
    return false;
}

// "a long narrow recording of 9.0 s or more, 1 kHz is enough" -> 9
std::optional<double> secondsIn(const std::string& cure) {
    constexpr std::string_view before = "recording of ";
    const std::size_t at = cure.find(before);
    if (at == std::string::npos || cure.find(" s or more", at) == std::string::npos) return std::nullopt;
    const std::string_view rest = std::string_view(cure).substr(at + before.size());
    return parseNumber(rest.substr(0, rest.find(' ')));
}

class Suggestions {
  public:
    Suggestions(const Machine& machine, const Examination& examination, const Hypothesis& h)
        : machine_(machine), examination_(examination), h_(h) {}

    void fromBlindSpots();
    void fromFault();
    void fromRivals();
    void fromWay();
    void fromUrgency();
    std::vector<AskSuggestion> take() { return std::move(all_); }

  private:
    void add(AskSuggestion one);
    void fromCure(const BlindSpot& spot);
    void addPhasePair(const std::string& why);
    void addBars(const std::string& at, double seconds, const std::string& why);
    bool phaseDecides() const;
    bool hasFlux() const;
    AskSuggestion byHand(const std::string& place, const std::string& direction, std::string why) const;
    AskSuggestion ofNode(const std::string& at, double seconds, std::string why) const;
    double handSeconds(const std::string& at, double most) const;
    std::string bearingPlace(const std::string& at) const;
    std::string pointFor(const std::string& at) const;
    std::string missingRadial(const std::string& at) const;

    const Machine& machine_;
    const Examination& examination_;
    const Hypothesis& h_;
    std::vector<AskSuggestion> all_;
};

// A record of so many lines is as long as lines over band, and what an instrument has is a number of lines.
double wholeSeconds(const AskSpec& spec) {
    return linesOf(spec) > 0 ? std::max(spec.seconds, linesOf(spec) / spec.topHz) : spec.seconds;
}

void Suggestions::add(AskSuggestion one) {
    one.spec.seconds = wholeSeconds(one.spec);
    for (AskSuggestion& there : all_) {
        if (there.byHand != one.byHand || there.point != one.point || there.direction != one.direction)
            continue;
        there.spec.seconds = std::max(there.spec.seconds, one.spec.seconds);
        there.spec.topHz = std::max(there.spec.topHz, one.spec.topHz);
        there.spec.seconds = wholeSeconds(there.spec);
        there.spec.tachometer |= one.spec.tachometer;
        if (there.why.find(one.why) == std::string::npos) there.why += "; " + one.why;
        return;
    }
    all_.push_back(std::move(one));
}

// So long that the place's shaft turns often enough, as instruments have it: a power of two.
double Suggestions::handSeconds(const std::string& at, double most) const {
    double rpm = examination_.speed.rpm.value_or(machine_.nominalRpm().value_or(0));
    const auto place = machine_.placeOf(at);
    if (place && place->shaft < machine_.shafts.size()) rpm *= std::abs(machine_.shafts[place->shaft].ratio);
    double seconds = kFewestSeconds;
    while (rpm > 0 && seconds < most && seconds * rpm / 60 < kFewestTurns)
        seconds *= 2;
    return seconds;
}

AskSuggestion Suggestions::byHand(const std::string& place, const std::string& direction,
                                  std::string why) const {
    AskSuggestion one{true, place, direction, {}, std::move(why)};
    const bool wide = isOfBearing(h_.fault) || h_.fault.starts_with("gear");
    one.spec.topHz = wide ? kBearingTopHz : kShaftTopHz;
    one.spec.seconds = handSeconds(place, wide ? kMostWideSeconds : kOverAMinute);
    if (h_.fault == "rotor_bar") {
        one.spec.topHz = kBarsTopHz;
        one.spec.seconds = std::max(one.spec.seconds, kLongNarrow);
    }
    return one;
}

// Unbalance is told from its rivals by the phase of two radial directions.
bool Suggestions::phaseDecides() const {
    if (h_.fault == "unbalance") return true;
    return h_.fault == "misalignment" &&
           std::any_of(h_.rivals.begin(), h_.rivals.end(),
                       [](const Rival& rival) { return rival.fault == "unbalance"; });
}

void Suggestions::addPhasePair(const std::string& why) {
    for (const char* direction : {"horizontal", "vertical"}) {
        AskSuggestion one = byHand(bearingPlace(h_.at), direction, why);
        one.spec.tachometer = true;
        add(std::move(one));
    }
}

bool Suggestions::hasFlux() const {
    for (const Point& point : machine_.points)
        for (const PointChannel& channel : point.channels)
            if (channel.quantity == "flux") return true;
    return false;
}

// Of a node that hears flux; else by hand at the motor.
void Suggestions::addBars(const std::string& at, double seconds, const std::string& why) {
    const double length = std::max(seconds, kLongNarrow);
    AskSuggestion one = ofNode(at, length, why + kBarsNeed);
    if (!hasFlux()) {
        one = byHand(at, "", why + kBarsNeed);
        one.spec.seconds = std::max(one.spec.seconds, length);
    }
    add(std::move(one));
}

AskSuggestion Suggestions::ofNode(const std::string& at, double seconds, std::string why) const {
    AskSuggestion one{false, pointFor(at), "", {}, std::move(why)};
    one.spec.seconds = seconds;
    return one;
}

// A component is read at its bearing nearest to the driver.
std::string Suggestions::bearingPlace(const std::string& at) const {
    const std::string first = placesIn(at).front();
    const auto place = machine_.placeOf(first);
    if (!place || !place->position.empty()) return first;
    for (const BearingPlace& bearing : machine_.bearings)
        if (bearing.component == place->component) return bearing.at;
    return place->component == "driver" || place->component == "driven" ? first + " DE" : first;
}

std::string Suggestions::pointFor(const std::string& at) const {
    const Point* nearest = nullptr;
    for (const Point& point : machine_.points)
        if (!nearest || pathBetween(machine_, point, at) < pathBetween(machine_, *nearest, at))
            nearest = &point;
    return nearest ? nearest->id : at;
}

std::string Suggestions::missingRadial(const std::string& at) const {
    bool horizontal = false;
    for (const Point& point : machine_.points)
        if (housingOf(machine_, point.at) == housingOf(machine_, at))
            for (const PointChannel& channel : point.channels)
                horizontal |= channel.direction == "horizontal";
    return horizontal ? "vertical" : "horizontal";
}

// Cures as core/diagnosis words them; what no recording can bring falls through.
void Suggestions::fromCure(const BlindSpot& spot) {
    const std::string& cure = spot.cure;
    const auto says = [&](const char* words) { return cure.find(words) != std::string::npos; };
    const std::string at = spot.at.empty() ? h_.at : spot.at;
    const std::string why = faultName(h_.fault) + " is not to be seen there: " + spot.why;
    if (spot.fault == "rotor_bar" && (says("recording") || says("stray flux"))) {
        addBars(at, secondsIn(cure).value_or(0), why);
    } else if (const auto seconds = secondsIn(cure)) {
        add(ofNode(at, *seconds, why));
    } else if (says("more than a minute")) {
        add(ofNode(at, kOverAMinute, why));
    } else if (says("a long narrow recording")) {
        add(ofNode(at, kLongNarrow, why));
    } else if (says("a recording of ")) {
        add(ofNode(at, 0, why));
    } else if (says("axial reading")) {
        add(byHand("driver DE", "axial", why));
    } else if (says("second radial reading")) {
        add(byHand(bearingPlace(at), missingRadial(at), why));
    } else if (says("radial reading")) {
        add(byHand(bearingPlace(at), "radial", why));
    } else if (says("vertical reading")) {
        add(byHand(bearingPlace(at), "vertical", why));
    } else if (says("tachometer")) {
        AskSuggestion one = byHand(bearingPlace(at), "", why);
        one.spec.tachometer = true;
        add(std::move(one));
    } else if (says("a point at this bearing") || says("a sensor on ") || says("higher sample rate") ||
               says("a sample rate of ")) {
        add(byHand(bearingPlace(at), "", why));
    }
}

void Suggestions::fromBlindSpots() {
    for (const BlindSpot& spot : examination_.blind) {
        const bool fault = spot.fault.empty() || faultsMeet(h_.fault, spot.fault);
        const auto place = machine_.placeOf(placesIn(h_.at).front());
        const bool here =
            spot.at.empty() || placesMeet(spot.at, h_.at) || (place && spot.at == place->component);
        if (fault && here) fromCure(spot);
    }
}

void Suggestions::fromFault() {
    if (h_.fault == "rotor_bar") addBars(h_.at, kLongNarrow, "the pole-pass sidebands decide");
    if (phaseDecides())
        addPhasePair(
            "phase at two radial directions about 90 degrees apart decides: both at the same time, "
            "with a mark once a turn");
}

void Suggestions::fromRivals() {
    for (const Rival& rival : h_.rivals) {
        const std::string name = faultName(rival.fault);
        if (isOfShaft(h_.fault) && isOfShaft(rival.fault)) {
            AskSuggestion one =
                byHand("driver DE", "axial", "phase across the coupling parts it from " + name);
            one.spec.tachometer = true;
            add(std::move(one));
        } else if (!placesMeet(rival.at, h_.at)) {
            const std::string why = fmt::format(
                "its lines are explained by {} at {} as well: where are they largest", name, rival.at);
            for (const std::string& at : {h_.at, rival.at})
                for (const std::string& place : placesIn(at))
                    add(byHand(bearingPlace(place), "", why));
        }
    }
    const std::vector<std::string> ends = placesIn(h_.at);
    if (ends.size() > 1)
        for (const std::string& place : ends)
            add(byHand(place, "", "two like bearings: at which end are the lines larger"));
}

void Suggestions::fromWay() {
    if (const std::string way = pathWords(h_.path); !way.empty())
        add(byHand(bearingPlace(h_.at), "", "it is heard " + way));
}

void Suggestions::fromUrgency() {
    if (urgencyRank(h_.urgency) < urgencyRank("plan")) return;
    const std::string why =
        "before the job: confirms it with another sensor, and is what the reading after the job is held "
        "against";
    if (phaseDecides())
        addPhasePair(why);
    else
        add(byHand(bearingPlace(h_.at), "", why));
}

}  // namespace

std::vector<AskSuggestion> askSuggestions(const Machine& machine, const Examination& examination,
                                          const Hypothesis& hypothesis) {
    Suggestions suggestions(machine, examination, hypothesis);
    const bool finding = !hypothesis.sentence.empty();
    suggestions.fromBlindSpots();
    if (finding) {
        suggestions.fromFault();
        suggestions.fromRivals();
        suggestions.fromWay();
        suggestions.fromUrgency();
    }
    return suggestions.take();
}

}  // namespace fettle
