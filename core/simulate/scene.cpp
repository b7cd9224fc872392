#include "core/simulate/scene.h"

#include <cmath>

#include "core/base/units.h"
#include "core/simulate/exact_math.h"

namespace fettle::sim {

namespace {
constexpr double kPeakOfRms = 1.4142135623730951;
constexpr double kPassShare = 0.42, kStopShare = 0.5;  // of the sample rate: edges of the anti-alias filter

Direction directionOf(const std::string& word) {
    if (word == "vertical") return Direction::Vertical;
    if (word == "axial") return Direction::Axial;
    return Direction::Horizontal;
}
}  // namespace

double Pattern::share(Direction direction) const {
    if (direction == Direction::Vertical) return vertical;
    return direction == Direction::Axial ? axial : horizontal;
}

double Pattern::turns(Direction direction) const {
    if (direction == Direction::Vertical) return verticalTurns;
    return direction == Direction::Axial ? axialTurns : 0;
}

double peakGOf(double rmsMmS, double hz) {
    return rmsMmS * kPeakOfRms * kTwoPi * hz / (1000 * kStandardGravity);
}

Scene::Scene(const SimulationSetup& setup, Motion motion, Place here)
    : setup_(setup), motion_(std::move(motion)), here_(std::move(here)) {
    for (const auto& channel : setup.machine.points.at(setup.point).channels) {
        SceneChannel made;
        made.name = channel.name;
        made.flux = channel.quantity == "flux";
        made.unit = std::string(made.flux ? "1" : "g");
        made.direction = directionOf(channel.direction);
        made.signal.assign(motion_.samples(), 0);
        channels_.push_back(std::move(made));
    }
}

double Scene::antialiasGain(double hz) const {
    const double share = std::fabs(hz) / motion_.trueRateHz;
    if (share <= kPassShare) return 1;
    const double kept = share >= kStopShare ? 0 : (kStopShare - share) / (kStopShare - kPassShare);
    return kept > setup_.node.aliasShare ? kept : setup_.node.aliasShare;
}

RandomStream Scene::voice(std::string_view purpose) const {
    return RandomStream(fnv1a(setup_.machine.tag), purpose);
}

const std::vector<double>& Scene::turnsOf(const Line& line) {
    turns_.resize(samples());
    for (std::size_t i = 0; i < turns_.size(); ++i)
        turns_[i] =
            line.perDriver * motion_.driverTurns[i] + line.perSupply * motion_.supplyTurns[i] + line.phase;
    return turns_;
}

void Scene::addPhasors(const Pattern& pattern, double peakG) {
    for (SceneChannel& channel : channels_) {
        if (channel.flux) continue;
        const double amplitude = peakG * pattern.share(channel.direction);
        const double along = amplitude * exact::cosine(pattern.turns(channel.direction));
        const double across = amplitude * exact::sine(pattern.turns(channel.direction));
        double* out = channel.signal.data();
        for (std::size_t i = 0; i < channel.signal.size(); ++i)
            out[i] += along * cosines_[i] + across * sines_[i];
    }
}

void Scene::addVelocity(const Line& line, const Place& place, const Pattern& pattern, double rmsMmS) {
    addAcceleration(line, place, pattern, peakGOf(rmsMmS, std::fabs(hzOf(line))));
}

void Scene::addAcceleration(const Line& line, const Place& place, const Pattern& pattern, double peakG) {
    const double hz = std::fabs(hzOf(line));
    const PathGain path = pathFrom(place);
    const double peak = peakG * (hz < 1000 ? path.low : path.high) * antialiasGain(hz);
    if (peak == 0) return;
    exact::phasors(turnsOf(line), cosines_, sines_);
    addPhasors(pattern, peak);
}

void Scene::addFlux(const Line& line, double peak) {
    const double arriving = peak * antialiasGain(hzOf(line));
    if (arriving == 0) return;
    for (SceneChannel& channel : channels_)
        if (channel.flux) exact::addSines(turnsOf(line), arriving, channel.signal);
}

void Scene::addForeignVelocity(const std::vector<double>& turns, double hz, const Pattern& pattern,
                               double rmsMmS) {
    const double peak = peakGOf(rmsMmS, hz) * antialiasGain(hz);
    if (peak == 0) return;
    exact::phasors(turns, cosines_, sines_);
    addPhasors(pattern, peak);
}

void Scene::addHighBand(const std::vector<double>& signalG, const Place& place, std::string_view mode) {
    const double path = pathFrom(place).high;
    for (SceneChannel& channel : channels_) {
        if (channel.flux) continue;
        RandomStream fixed = voice(place.component + "/" + std::string(mode) + "/" + channel.name);
        const double sign = fixed.uniform() < 0.5 ? -1 : 1;
        const double gain = sign * path * fixed.between(0.75, 1.1);
        double* out = channel.signal.data();
        for (std::size_t i = 0; i < signalG.size(); ++i)
            out[i] += gain * signalG[i];
    }
}

}  // namespace fettle::sim
