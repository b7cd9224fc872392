#include "core/diagnosis/prepare.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/base/text.h"
#include "core/base/units.h"
#include "core/diagnosis/half_orders.h"
#include "core/diagnosis/levels.h"
#include "core/diagnosis/order_resampling.h"
#include "core/diagnosis/running.h"
#include "core/diagnosis/sensor_checks.h"
#include "core/diagnosis/speed_comb.h"

namespace fettle {

namespace {

constexpr double kLeastMainsSpreadHz = 0.02;  // of a mains that was measured
constexpr double kTrackReach = 0.02;          // how far a speed is followed from its mean
constexpr double kBesideMean = 0.003;         // of a track

const Point* pointOf(const Machine& machine, const Recording& recording, const Channel& channel) {
    const std::string& id = !channel.point.empty() ? channel.point : recording.point;
    if (id.empty()) return &machine.points.front();
    return machine.pointById(id);
}

std::string quantityOfUnit(const std::string& unit) {
    const std::string u = lowerAscii(unit);
    if (u == "mm/s" || u == "in/s" || u == "m/s") return "velocity";
    if (u == "1" || u == "t" || u == "v") return "flux";
    if (u == "degc" || u == "c" || u == "k") return "temperature";
    return "acceleration";
}

// The highest rate at which any element is struck, for the narrowest band worth having.
double highestCarrierHz(const Machine& machine, const Recording& recording) {
    double rpm = recording.speedRpm.value_or(0);
    if (const auto range = speedRange(machine); range) rpm = std::max(rpm, range->most);
    double highest = 0;
    for (const BearingPlace& place : machine.bearings)
        for (const BearingVariant& variant : place.bearing.variants)
            highest = std::max(highest, variant.orders.bpfi * machine.shafts[place.shaft].ratio);
    return highest * rpm / 60;
}

ChannelViews viewsOf(const Channel& channel, double toG, double carrierHz, const WeighingSettings& settings) {
    if (toG == 1) return makeViews(channel.samples, channel.sampleRateHz, carrierHz, settings);
    std::vector<double> g = channel.samples;
    for (double& x : g)
        x *= toG;
    return makeViews(g, channel.sampleRateHz, carrierHz, settings);
}

// A level from a record that failed a check grades the sensor, not the machine.
void dropZonesOfBadRecord(const SensorCheck& check, ChannelLevels& levels) {
    for (const QualityNote& note : check.notes)
        for (const char* code : {"ski_slope", "clipped", "held", "flat"})
            if (note.code == code) {
                levels.zones.clear();
                levels.noZoneWhy = "the record failed a sensor check (" + note.code + ")";
            }
}

// Sensor checks, levels and views of every channel; channels that cannot be weighed keep their notes only.
void readChannels(const Machine& machine, PreparedRecording& prepared, const WeighingSettings& settings) {
    const Recording& recording = *prepared.recording;
    const double carrier = highestCarrierHz(machine, recording);
    for (std::size_t i = 0; i < recording.channels.size(); ++i) {
        const Channel& channel = recording.channels[i];
        const ChannelRole role = roleOf(machine, recording, i);
        prepared.roles.push_back(role);
        prepared.facts.channels.push_back({channel.name, role.point ? role.point->id : channel.point,
                                           role.channel ? role.channel->direction : "unknown", role.quantity,
                                           channel.sampleRateHz, channel.samples.size()});
        ChannelViews views;
        if (role.quantity == "acceleration") views = viewsOf(channel, role.toG, carrier, settings);
        views.channel = i;
        const SensorCheck check = checkSensor(channel, role, &views);
        prepared.facts.quality.insert(prepared.facts.quality.end(), check.notes.begin(), check.notes.end());
        prepared.facts.levels.push_back(levelsOf(machine, channel, role, &views));
        dropZonesOfBadRecord(check, prepared.facts.levels.back());
        if (!check.unfit && views.samplesUsed > 0) prepared.views.push_back(std::move(views));
        if (role.quantity == "flux" && !check.unfit) {
            FluxView flux = fluxView(channel, i, settings);
            if (!flux.z.empty()) prepared.flux.push_back(std::move(flux));
        }
    }
}

RecordingPtr withRateOver(const Recording& recording, double tooHighBy) {
    auto corrected = std::make_shared<Recording>(recording);
    for (Channel& channel : corrected->channels)
        channel.sampleRateHz /= 1 + tooHighBy;
    return corrected;
}

// Channels, mains and speed as the stated sample rate has them.
PreparedRecording readAt(const Machine& machine, const RecordingPtr& recording,
                         const PrepareOptions& options) {
    PreparedRecording prepared;
    prepared.recording = recording;
    prepared.facts.file = recording->file;
    readChannels(machine, prepared, options.settings);
    const auto given = options.ignoreSpeed ? std::nullopt : recording->speedRpm;
    SpeedAnswer answer =
        findSpeed({machine, *recording, given, prepared.views, prepared.flux, options.settings});
    prepared.facts.speed = std::move(answer.speed);
    prepared.mains = answer.mains;
    prepared.turnsInFlux = answer.inFlux;
    prepared.combSeen = answer.combSeen;
    prepared.facts.quality.insert(prepared.facts.quality.end(), answer.notes.begin(), answer.notes.end());
    return prepared;
}

// The same at the rate that the mains shows, where it shows the stated one to be wrong.
PreparedRecording readAtTrueRate(const Machine& machine, const RecordingPtr& recording,
                                 const PrepareOptions& options) {
    PreparedRecording prepared = readAt(machine, recording, options);
    const ClockCheck clock = checkClock(machine, prepared.mains);
    const Mains stated = prepared.mains;
    if (clock.corrected) prepared = readAt(machine, withRateOver(*recording, clock.error), options);
    if (stated.measured)
        prepared.facts.mains = MainsFacts{stated.hz, stated.plusMinusHz, stated.from, stated.output};
    if (clock.told) prepared.facts.quality.push_back({"sample_rate", "", clock.detail});
    return prepared;
}

// Where the speed may be looked for when it wanders.
std::optional<Search> searchOf(const Machine& machine, const PreparedRecording& prepared) {
    Search search;
    search.strong = strongOrders(machine);
    const auto& rpm = prepared.facts.speed.rpm;
    if (rpm && prepared.facts.speed.from != "given") search.knownHz = *rpm / 60;
    const auto range = prepared.mains.measured ? speedRangeAt(machine, prepared.mains) : speedRange(machine);
    if (!rpm && !range) return std::nullopt;
    search.leastHz = (rpm ? *rpm : range->least) / 60 * (1 - kTrackReach);
    search.mostHz = (rpm ? *rpm : range->most) / 60 * (1 + kTrackReach);
    return search;
}

std::vector<ChannelViews> viewsByAngle(const Machine& machine, ReadByAngle& read,
                                       const PreparedRecording& prepared, const WeighingSettings& settings) {
    const double carrier = highestCarrierHz(machine, *prepared.recording);
    std::vector<ChannelViews> all;
    for (std::size_t i = 0; i < prepared.views.size(); ++i) {
        const std::size_t index = prepared.views[i].channel;
        Channel turned;
        turned.samples = std::move(read.samples[i]);
        turned.sampleRateHz = read.sampleRateHz;
        all.push_back(viewsOf(turned, prepared.roles[index].toG, carrier, settings));
        all.back().channel = index;
    }
    return all;
}

// A speed that wanders: views against shaft angle where that sharpens the comb, and the mean speed with them.
void followSpeed(const Machine& machine, PreparedRecording& prepared, const WeighingSettings& settings) {
    if (prepared.views.empty()) return;
    const auto search = searchOf(machine, prepared);
    if (!search) return;
    auto read = readByAngle(*prepared.recording, prepared.views, *search, prepared.mains);
    if (!read || !read->sharper) return;
    std::vector<ChannelViews> views = viewsByAngle(machine, *read, prepared, settings);
    const double mean = read->track.meanHz;
    const auto comb = findComb(combViews(views, mean * (1 + kTrackReach), search->strong),
                               mean * (1 - kBesideMean), mean * (1 + kBesideMean), prepared.mains);
    if (!comb || !comb->single()) return;
    SpeedResult& speed = prepared.facts.speed;
    if (prepared.turnsInFlux && std::abs(comb->hz * 60 / *speed.rpm - 1) > kBesideMean) return;
    prepared.views = std::move(views);
    prepared.byAngle = prepared.combSeen = true;
    prepared.track = std::move(read->track);
    speed.rpm = comb->hz * 60;
    speed.plusMinusRpm = comb->plusMinusHz * 60;
    speed.from = speed.givenRpm ? "given, refined" : "found";
    prepared.facts.quality.push_back(
        {"unsteady", "",
         fmt::format("the speed moved between {:.1f} and {:.1f} r/min; lines are read against shaft angle",
                     prepared.track.leastHz * 60, prepared.track.mostHz * 60)});
}

// Why lines as narrow as a bearing's cannot be judged in this recording; empty: they can.
std::string whyUnfit(const PreparedRecording& prepared, const WeighingSettings& settings) {
    if (prepared.facts.running == "stopped" || prepared.facts.running == "energised_not_turning")
        return "the machine does not turn";
    if (prepared.views.empty()) return "no acceleration channel that can be weighed";
    if (!prepared.facts.speed.rpm) return "the shaft speed is not known: " + prepared.facts.speed.from;
    const double turns = prepared.rates.shaftHz * prepared.recording->seconds();
    if (turns < settings.fewestTurns)
        return fmt::format(
            "{:.1f} shaft turns in {:.2f} s are too few to name a line: {:.0f} are needed, {:.2f} s or more",
            turns, prepared.recording->seconds(), settings.fewestTurns,
            settings.fewestTurns / prepared.rates.shaftHz);
    return "";
}

// Sidebands at multiples of the pole-pass frequency about every shaft order: j x shaft + b x mains, b even.
// Seen on open records of a sound induction motor; neutral only where a view shows a line, and only as many
// as leave room between.
void neutralPolePass(const Machine& machine, const Rates& rates, ChannelEvidence& evidence,
                     const WeighingSettings& settings) {
    const bool slips =
        machine.driver.kind == DriverKind::Induction || machine.driver.kind == DriverKind::WoundRotor;
    if (!slips || rates.mainsHz <= 0) return;
    const double df = evidence.views->df;
    double covered = 0;
    for (int b = 2; b <= settings.mostPolePass * 2; b += 2)
        for (const int sign : {1, -1}) {
            const double half = settings.sideLineBins * df + b * settings.polePassSpreadHz;
            covered += (2 * half + df) / rates.shaftHz;
            if (covered > settings.sideLineCover) return;
            neutralWhereFound(evidence, sign * b * rates.mainsHz, rates.shaftHz, half,
                              fmt::format("{:+} x mains and shaft orders", sign * b));
        }
}

void rankAll(const Machine& machine, PreparedRecording& prepared, const WeighingSettings& settings) {
    const std::vector<ForcingLine> ordinary = ordinaryLines(machine, prepared.rates, settings);
    for (ChannelViews& views : prepared.views) {
        ChannelEvidence evidence;
        evidence.blocked = blockOrdinaryLines(ordinary, prepared.rates, views.df, views.bins, settings);
        rankViews(views, evidence.blocked.bins, settings);
        evidence.channelName = prepared.facts.channels[views.channel].name;
        evidence.views = &views;
        for (View& view : views.envelopes)
            evidence.factors.push_back(std::move(view.factor));
        neutralPolePass(machine, prepared.rates, evidence, settings);
        neutralHalfOrders(prepared.rates, evidence, settings);
        prepared.evidence.push_back(std::move(evidence));
    }
}

}  // namespace

double gPerUnit(const std::string& unit) {
    const std::string u = lowerAscii(unit);
    if (u == "m/s2" || u == "m/s^2" || u == "m/s²") return 1 / kStandardGravity;
    if (u == "mg") return 1e-3;
    return 1;
}

ChannelRole roleOf(const Machine& machine, const Recording& recording, std::size_t index) {
    const Channel& channel = recording.channels[index];
    ChannelRole role;
    role.point = pointOf(machine, recording, channel);
    if (role.point) {
        const auto& listed = role.point->channels;
        const auto at = std::find_if(listed.begin(), listed.end(),
                                     [&](const PointChannel& c) { return c.name == channel.name; });
        if (at != listed.end()) role.channel = &*at;
    }
    role.quantity = role.channel ? role.channel->quantity : quantityOfUnit(channel.unit);
    const std::string unit = channel.unit.empty() && role.channel ? role.channel->unit : channel.unit;
    role.toG = gPerUnit(unit);
    return role;
}

const ChannelViews* PreparedRecording::viewsOf(std::size_t channel) const {
    for (const ChannelViews& one : views)
        if (one.channel == channel) return &one;
    return nullptr;
}

PreparedRecording prepare(const Machine& machine, const RecordingPtr& recording,
                          const PrepareOptions& options) {
    PreparedRecording prepared = readAtTrueRate(machine, recording, options);
    followSpeed(machine, prepared, options.settings);
    const double mainsSpread = prepared.mains.measured
                                   ? std::max(kLeastMainsSpreadHz, prepared.mains.plusMinusHz)
                                   : options.settings.mainsSpreadHz;
    prepared.rates = {prepared.facts.speed.rpm.value_or(0) / 60, prepared.facts.speed.plusMinusRpm / 60,
                      prepared.mains.hz, mainsSpread};
    prepared.facts.running = runningState(machine, prepared);
    prepared.facts.frameTempC = recording->frameTempC;
    prepared.unfit = whyUnfit(prepared, options.settings);
    if (prepared.facts.speed.rpm)
        for (const ChannelViews& views : prepared.views)
            addShaftOrders(prepared.facts.levels[views.channel], views, prepared.rates.shaftHz);
    if (prepared.unfit.empty()) rankAll(machine, prepared, options.settings);
    for (std::size_t i = 0; i < prepared.evidence.size(); ++i)
        prepared.evidence[i].views = &prepared.views[i];
    return prepared;
}

}  // namespace fettle
