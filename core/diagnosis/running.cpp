#include "core/diagnosis/running.h"

#include <algorithm>
#include <cmath>

#include "core/dsp/statistics.h"

namespace fettle {

namespace {

// Common practice, no source: a machine that turns shakes by more than this somewhere.
constexpr double kStillMmS = 0.08, kStillG = 0.01;
constexpr double kHighBandHz = 1000, kFewestHighHz = 400;
constexpr double kOverSensorNoise = 1.5;  // of the high band of a machine that turns
constexpr double kSlowRpm = 600;          // below, a machine may well hiss too little to be heard
constexpr double kOwnMmS = 2.5;           // no floor carries so much from a neighbour
constexpr double kUnsteady = 0.03;        // of the speed, within a recording: levels no longer compare
constexpr double kUnloaded = 0.125;       // of the rated slip

struct Movement {
    bool any = false;  // there is a vibration channel with levels
    double mmS = 0, g = 0;
};

Movement movement(const PreparedRecording& prepared) {
    Movement m;
    for (const ChannelLevels& l : prepared.facts.levels) {
        if (!l.velocityRmsMmS || !l.accelerationRmsG) continue;
        m.any = true;
        m.mmS = std::max(m.mmS, *l.velocityRmsMmS);
        m.g = std::max(m.g, *l.accelerationRmsG);
    }
    return m;
}

// Whether every channel's high band is no more than its sensor makes by itself.
bool hissesNot(const Machine& machine, const PreparedRecording& prepared) {
    if (machine.nominalRpm().value_or(1500) < kSlowRpm) return false;
    bool heard = false;
    for (const ChannelViews& views : prepared.views) {
        const double top = 0.9 * views.spectrum.topHz(), band = top - kHighBandHz;
        if (band < kFewestHighHz) continue;
        heard = true;
        const ChannelRole& role = prepared.roles[views.channel];
        const double noise = role.point && role.point->noisePerRtHz
                                 ? *role.point->noisePerRtHz * role.toG * std::sqrt(band)
                                 : kStillG / kOverSensorNoise;
        if (bandRms(views.spectrum, kHighBandHz, top) > kOverSensorNoise * noise) return false;
    }
    return heard;
}

std::string poweredState(const Machine& machine, const PreparedRecording& prepared) {
    const auto slip = slipReading(machine, prepared.facts.speed, prepared.mains);
    const auto rated = ratedSlipHz(machine);
    if (!slip || !rated || !prepared.mains.measured) return "running";
    const double ratedShare = *rated * *machine.driver.poles / (2 * prepared.mains.hz);
    const bool judged = slip->plusMinus < kUnloaded * ratedShare;
    return judged && slip->share < kUnloaded * ratedShare ? "running_unloaded" : "running";
}

// Shaken, and the motor's own turning is not seen in flux.
std::string shakenState(const Machine& machine, const PreparedRecording& prepared, double mmS) {
    const bool hasFlux = !prepared.flux.empty(), energised = prepared.mains.leads, comb = prepared.combSeen;
    // A noisy sensor hides the hiss of a machine that turns: its shaking or somebody's reading speaks for it.
    const bool spokenFor = prepared.facts.speed.givenRpm || mmS > kOwnMmS;
    const bool quiet = !(comb && spokenFor) && hissesNot(machine, prepared);
    if (hasFlux && !energised) return comb && !quiet ? "turning_unpowered" : "stopped";
    const bool fluxWouldTell = energised && machine.driver.poles.value_or(2) > 2;
    if (quiet && comb && !fluxWouldTell) return "unknown";
    if (quiet) return energised ? "energised_not_turning" : "stopped";
    if (comb) return "running";
    // Somebody measured that it turns, and the recording is long enough to judge it.
    const double turns = prepared.facts.speed.givenRpm.value_or(0) / 60 * prepared.recording->seconds();
    return turns >= WeighingSettings().fewestTurns ? "running" : "unknown";
}

}  // namespace

std::string runningState(const Machine& machine, const PreparedRecording& prepared) {
    if (prepared.byAngle && prepared.track.wander() > kUnsteady)
        return prepared.track.oneWay ? "run_up_or_down" : "unsteady";
    if (prepared.turnsInFlux) return poweredState(machine, prepared);
    const Movement m = movement(prepared);
    if (!m.any) return "unknown";
    if (m.mmS < kStillMmS && m.g < kStillG) return prepared.mains.leads ? "energised_not_turning" : "stopped";
    return shakenState(machine, prepared, m.mmS);
}

}  // namespace fettle
