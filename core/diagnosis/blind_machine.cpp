#include "core/diagnosis/blind_machine.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>

#include "core/base/units.h"
#include "core/diagnosis/line_reading.h"
#include "core/diagnosis/prepare.h"
#include "core/machine/path.h"

namespace fettle {

namespace {

constexpr double kLowestHz = 2, kHighestVelocityHz = 1000;
constexpr double kNoiseTold = 0.15;      // mm/s: less is small beside any A/B boundary
constexpr double kBandHz = 900;          // the narrowest band an envelope is taken of
constexpr double kEarlyDamageHz = 2000;  // rings from here up
constexpr double kReadShare = 0.48;      // of the sample rate
constexpr double kFewestTurns = 4;       // for 1x to stand clear of 0 Hz under a Hann window

// What a point recorded in the span.
struct HeardPoint {
    const Point* point = nullptr;
    std::string housing;
    std::set<std::string> directions;
    double topHz = 0, seconds = 0;
    int recordings = 0;
    std::map<std::string, int> failed;  // by check: recordings
};

struct Span {
    const Machine& machine;
    std::vector<HeardPoint> points;
    std::optional<double> shaftHz;
    bool temperature = false;
    std::vector<BlindSpot> spots;

    void add(const std::string& fault, const std::string& at, std::string why, std::string cure) {
        spots.push_back({fault, at, std::move(why), std::move(cure), true});
    }
};

void takeChannel(const Machine& machine, const ChannelFacts& channel, Span& span) {
    span.temperature |= channel.quantity == "temperature";
    const Point* point = machine.pointById(channel.point);
    if (!point || (channel.quantity != "acceleration" && channel.quantity != "velocity")) return;
    auto at = std::find_if(span.points.begin(), span.points.end(),
                           [&](const HeardPoint& p) { return p.point == point; });
    if (at == span.points.end())
        at = span.points.insert(at, {point, housingOf(machine, point->at), {}, 0, 0, 0, {}});
    at->directions.insert(channel.direction);
    at->topHz = std::max(at->topHz, kReadShare * channel.sampleRateHz);
    if (channel.sampleRateHz > 0)
        at->seconds = std::max(at->seconds, double(channel.samples) / channel.sampleRateHz);
}

// A check counts once a recording, whichever of the point's channels failed it.
void countChecks(const RecordingFacts& r, Span& span) {
    for (HeardPoint& heard : span.points) {
        std::set<std::string> channels, codes;
        for (const ChannelFacts& channel : r.channels)
            if (channel.point == heard.point->id) channels.insert(channel.name);
        heard.recordings += !channels.empty();
        for (const QualityNote& note : r.quality)
            if (channels.count(note.channel)) codes.insert(note.code);
        for (const std::string& code : codes)
            ++heard.failed[code];
    }
}

Span spanOf(const Machine& machine, const std::vector<RecordingFacts>& recordings) {
    Span span{machine, {}, {}, false, {}};
    for (const RecordingFacts& r : recordings) {
        for (const ChannelFacts& channel : r.channels)
            takeChannel(machine, channel, span);
        countChecks(r, span);
        if (r.speed.rpm) span.shaftHz = *r.speed.rpm / 60;
        span.temperature |= r.frameTempC.has_value();
    }
    return span;
}

// A housing that has bearings of its own.
struct Part {
    std::string at, words;
};

bool sitsOnMotorShaft(const Machine& machine) {
    for (const char* word : {"close", "none", "direct"})
        if (machine.coupling.find(word) != std::string::npos) return true;
    return false;
}

std::vector<Part> partsOf(const Machine& machine) {
    std::vector<Part> parts{{"driver", "motor"}};
    for (const Box& box : machine.boxes)
        parts.push_back({box.id, machine.boxes.size() == 1 && !machine.gears.empty() ? "gearbox" : box.id});
    for (const Gear& gear : machine.gears)
        if (housingOf(machine, gear.id) == gear.id) parts.push_back({gear.id, "gearbox"});
    if (machine.driven.known && !sitsOnMotorShaft(machine))
        parts.push_back({"driven", machine.driven.kind.empty() ? "driven machine" : machine.driven.kind});
    return parts;
}

std::vector<const BearingPlace*> bearingsOf(const Machine& machine, const std::string& component) {
    std::vector<const BearingPlace*> all;
    for (const BearingPlace& place : machine.bearings)
        if (place.component == component) all.push_back(&place);
    return all;
}

Path nearestHeard(const Span& span, const std::string& at) {
    Path nearest = Path::ThroughBelt;
    for (const HeardPoint& p : span.points)
        nearest = std::min(nearest, pathBetween(span.machine, *p.point, at));
    return nearest;
}

// A point that would be near but did not record.
std::string sensorFor(const Span& span, const Part& part) {
    for (const Point& point : span.machine.points)
        if (wordsOf(pathBetween(span.machine, point, part.at)).empty()) return "a recording of " + point.id;
    return "a sensor on the " + part.words;
}

void addEarlyDamage(const Part& part, Span& span) {
    double top = 0;
    for (const HeardPoint& p : span.points)
        if (p.housing == part.at) top = std::max(top, p.topHz);
    if (top > 0 && top < kEarlyDamageHz)
        span.add("bearing", part.at,
                 fmt::format("early damage rings above 2 kHz, this can be read to {:.1f} kHz: it shows late",
                             top / 1000),
                 "a sample rate of 10 kHz or more on a stud or adhesive mount");
}

void addBearings(const Part& part, Span& span) {
    const auto bearings = bearingsOf(span.machine, part.at);
    const bool sleeve = !bearings.empty() && std::all_of(bearings.begin(), bearings.end(), [](const auto* b) {
        return b->bearing.type == "sleeve";
    });
    if (sleeve) return;
    const std::string way = wordsOf(nearestHeard(span, part.at));
    if (!bearings.empty() && way.empty()) return addEarlyDamage(part, span);
    if (bearings.empty() && way.empty())
        return span.add("bearing", part.at, "its bearings are not described", "enter their designations");
    const std::string sensor = sensorFor(span, part);
    if (bearings.empty())
        span.add("bearing", part.at, "its bearings are not described, and it is heard " + way,
                 "enter their designations; " + sensor);
    else
        span.add("bearing", part.at, "heard " + way, sensor);
}

bool has(const std::set<std::string>& directions, const char* one) {
    return directions.count(one) > 0;
}

void addAxial(Span& span) {
    std::set<std::string> all;
    for (const HeardPoint& p : span.points)
        all.insert(p.directions.begin(), p.directions.end());
    if (all == std::set<std::string>{"unknown"}) {
        for (const char* fault : {"misalignment", "bent_shaft", "looseness", "soft_foot", "resonance"})
            span.add(fault, "driver", "the directions of the channels are not given", "enter them");
    } else if (!has(all, "axial")) {
        for (const char* fault : {"misalignment", "bent_shaft"})
            span.add(fault, "driver", "no axial channel: it shows there first",
                     "an axial reading at the drive end");
    }
}

// What is lost with the radial directions that no point of a housing has.
void addRadial(const std::string& housing, const std::set<std::string>& directions, Span& span) {
    if (has(directions, "unknown")) return;
    const bool horizontal = has(directions, "horizontal"), vertical = has(directions, "vertical");
    if (!horizontal && !vertical && !has(directions, "radial")) {
        for (const char* fault : {"unbalance", "looseness"})
            span.add(fault, housing, "no radial channel", "a radial reading");
        return;
    }
    if (!vertical && !has(directions, "radial"))
        for (const char* fault : {"looseness", "soft_foot"})
            span.add(fault, housing, "no vertical channel: a foot lifts that way", "a vertical reading");
    if (!horizontal || !vertical)
        span.add("resonance", housing, "one radial direction: it answers in one direction most",
                 "a second radial reading, across the first");
}

void addDirections(Span& span) {
    addAxial(span);
    std::map<std::string, std::set<std::string>> byHousing;
    for (const HeardPoint& p : span.points)
        byHousing[p.housing].insert(p.directions.begin(), p.directions.end());
    for (const auto& [housing, directions] : byHousing)
        addRadial(housing, directions, span);
}

// 1x of the driver's and of the driven shaft, on the points that sit there.
void addSlowShaft(const std::string& at, std::size_t shaft, Span& span) {
    if (!span.shaftHz) return;
    const double hz = *span.shaftHz * span.machine.shafts[shaft].ratio;
    double low = 1e9, seconds = 0;
    for (const HeardPoint& p : span.points) {
        if (p.housing != at) continue;
        low = std::min(low, p.point->usableHz ? std::max(kLowestHz, (*p.point->usableHz)[0]) : kLowestHz);
        seconds = std::max(seconds, p.seconds);
    }
    if (seconds <= 0) return;
    if (hz < low)
        span.add("unbalance", at, fmt::format("1x at {:.1f} Hz lies below the {:.0f} Hz read from", hz, low),
                 "a sensor that reads lower");
    else if (hz * seconds < kFewestTurns)
        span.add("unbalance", at, fmt::format("{:.1f} turns in {}", hz * seconds, secondsText(seconds)),
                 "a recording of " + secondsText(kFewestTurns / hz) + " or more");
}

// Half of a point's recordings, or more, in which the sensor hides the machine.
void addFailedChecks(const HeardPoint& heard, Span& span) {
    static const std::vector<std::array<const char*, 3>> cures = {
        {"clipped", "clipped", "a wider range"},
        {"coarse", "in too few steps", "a narrower range"},
        {"flat", "flat", "a look at the node"},
        {"held", "with repeated samples", "a look at the node"},
        {"ski_slope", "drowned below 10 Hz", "the node seated firmly"}};
    for (const auto& [code, words, cure] : cures) {
        const auto failed = heard.failed.find(code);
        if (failed == heard.failed.end() || 2 * failed->second < heard.recordings) continue;
        span.add("", heard.point->at,
                 fmt::format("{} of {} recordings of {} are {}", failed->second, heard.recordings,
                             heard.point->id, words),
                 cure);
    }
}

void addNoise(const HeardPoint& heard, Span& span) {
    const Point& point = *heard.point;
    const auto channel = std::find_if(point.channels.begin(), point.channels.end(),
                                      [](const auto& c) { return c.quantity == "acceleration"; });
    if (!point.noisePerRtHz || channel == point.channels.end()) return;
    const double density = *point.noisePerRtHz * gPerUnit(channel->unit);
    const double low = point.usableHz ? std::max(kLowestHz, (*point.usableHz)[0]) : kLowestHz;
    const double mmS = noiseMmS(density, low, kHighestVelocityHz);
    if (mmS < kNoiseTold) return;
    span.add("", point.at,
             fmt::format("own noise of {}, {:.0f} ug/sqrt(Hz), is {:.2f} mm/s from {:g} Hz and {:.0f} mg in "
                         "a band of 900 Hz: less does not show",
                         point.id, density * 1e6, mmS, low, density * 1000 * std::sqrt(kBandHz)),
             "a sensor of less noise");
}

bool drivesFluid(const Machine& machine) {
    for (const char* word : {"fan", "pump", "blower", "compressor"})
        if (machine.driven.kind.find(word) != std::string::npos) return true;
    return false;
}

}  // namespace

double noiseMmS(double gPerRtHz, double lowHz, double highHz) {
    return gPerRtHz * kStandardGravity * 1000 / kTwoPi * std::sqrt(1 / lowHz - 1 / highHz);
}

std::vector<BlindSpot> blindByMachine(const Machine& machine, const std::vector<RecordingFacts>& recordings) {
    Span span = spanOf(machine, recordings);
    if (span.points.empty()) return {};
    for (const Part& part : partsOf(machine))
        addBearings(part, span);
    addDirections(span);
    addSlowShaft("driver", 0, span);
    if (machine.driven.known) addSlowShaft("driven", machine.shaftOfDriven().value_or(0), span);
    if (drivesFluid(machine) && !machine.driven.blades)
        span.add("blade_pass", "driven", "the number of blades is not known", "enter it");
    if (!span.temperature)
        span.add("overheating", "driver", "no frame temperature comes with the recordings",
                 "a node that sends it, with the ambient");
    for (const HeardPoint& point : span.points) {
        addNoise(point, span);
        addFailedChecks(point, span);
    }
    return std::move(span.spots);
}

}  // namespace fettle
