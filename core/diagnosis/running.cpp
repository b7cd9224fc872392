#include "core/diagnosis/running.h"

#include <algorithm>

#include "core/dsp/statistics.h"

namespace fettle {

namespace {

// Common practice, no source: a machine that turns shakes by more than this somewhere.
constexpr double kStillMmS = 0.08, kStillG = 0.01;
constexpr double kMainsInFlux = 0.5;  // share of the flux power within 1 Hz of the mains frequency

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

std::optional<bool> mainsInFlux(const Machine& machine, const PreparedRecording& prepared) {
    for (std::size_t i = 0; i < prepared.roles.size(); ++i) {
        const Channel& channel = prepared.recording->channels[i];
        if (prepared.roles[i].quantity != "flux" || channel.samples.size() < 256) continue;
        const double hz = prepared.recording->outputHz.value_or(machine.mainsHz);
        const Spectrum s = periodogram(channel.samples, channel.sampleRateHz);
        const double near = bandRms(s, hz - 1, hz + 1), all = bandRms(s, 2, s.topHz());
        return all > 0 && near * near > kMainsInFlux * all * all;
    }
    return std::nullopt;
}

bool combFound(const SpeedResult& speed) {
    return std::any_of(speed.estimates.begin(), speed.estimates.end(),
                       [](const SpeedEstimate& e) { return e.from == "shaft comb"; });
}

}  // namespace

std::string runningState(const Machine& machine, const PreparedRecording& prepared) {
    const Movement m = movement(prepared);
    const auto energised = mainsInFlux(machine, prepared);
    if (!m.any) return "unknown";
    const bool still = m.mmS < kStillMmS && m.g < kStillG;
    if (still) return energised.value_or(false) ? "energised_not_turning" : "stopped";
    if (combFound(prepared.facts.speed)) return energised.value_or(true) ? "running" : "turning_unpowered";
    if (energised && !*energised) return "stopped";  // shaken by its neighbours
    // Somebody measured that it turns, and the recording is long enough to judge it.
    const double turns = prepared.facts.speed.givenRpm.value_or(0) / 60 * prepared.recording->seconds();
    return turns >= WeighingSettings().fewestTurns ? "running" : "unknown";
}

}  // namespace fettle
