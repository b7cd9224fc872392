#include "core/simulate/flow_sources.h"

#include <cmath>

#include "core/simulate/exact_math.h"
#include "core/simulate/resonator.h"
#include "core/simulate/severity_scale.h"

namespace fettle::sim {

namespace {
constexpr Pattern kDuct{0.8, 1, 0.7, 0.3, 0.1};
constexpr Pattern kFloorShake{1, 1.1, 0.6, 0.2, 0.4};
constexpr Mode kRumble{55, 0.5, 1};
constexpr double kRootTwo = 1.4142135623730951;
constexpr double kFlatShare = 0.35;  // of the floor's r.m.s. that is white

double bladeOrder(const Scene& scene, const Place& place) {
    return scene.machine().driven.blades.value_or(0) * scene.motion().shaftRatios.at(place.shaft);
}

void addBlades(Scene& scene, double rmsMmS) {
    const auto place = placeOf(scene.machine(), "driven");
    if (!place) return;
    const double order = bladeOrder(scene, *place);
    if (order <= 0) return;
    scene.addVelocity({order, 0, 0.2}, *place, kDuct, rmsMmS);
    scene.addVelocity({2 * order, 0, 0.6}, *place, kDuct, 0.3 * rmsMmS);
}

void addNoise(Scene& scene, const Place& place, const Mode& mode, double rmsG, const std::string& name) {
    const double gain = rmsG * scene.antialiasGain(mode.hz);
    if (gain == 0) return;
    auto noise = ringingNoise(mode, scene.rateHz(), scene.samples(), scene.chance(name));
    for (double& value : noise)
        value *= gain;
    scene.addHighBand(noise, place, name);
}
}  // namespace

void addSoundFlow(Scene& scene) {
    addBlades(scene, scene.character().bladePassMmS * scene.setup().operation.levelFactor);
}

void addSoundFloor(Scene& scene) {
    const double rms = scene.character().floorG * scene.setup().operation.floorFactor;
    std::size_t index = 0;
    for (Mode mode : modesOf(scene.machine().tag, scene.here().component)) {
        mode.damping *= 3;
        const double share = std::sqrt(mode.weight * (1 - kFlatShare * kFlatShare));
        addNoise(scene, scene.here(), mode, share * rms, "floor" + std::to_string(index++));
    }
    const double rumble = scene.character().rumbleMmS * scene.setup().operation.levelFactor;
    addNoise(scene, scene.here(), kRumble, peakGOf(rumble, kRumble.hz) / kRootTwo, "rumble");
    // White from 0 to 12.8 kHz; a slower node takes its share of it.
    const double white = kFlatShare * rms * std::sqrt(scene.rateHz() / 25600);
    std::vector<double> hiss(scene.samples());
    for (SceneChannel& channel : scene.channels()) {
        if (channel.flux) continue;
        hiss.assign(hiss.size(), 0);
        scene.chance("white " + channel.name).addNormal(white, hiss);
        blockBelow(150, scene.rateHz(), hiss);
        for (std::size_t i = 0; i < hiss.size(); ++i)
            channel.signal[i] += hiss[i];
    }
}

Status addBladePass(Scene& scene, const Condition& condition) {
    addBlades(scene, scale::kBladePassMmS * condition.severity);
    return {};
}

Status addCavitation(Scene& scene, const Condition& condition) {
    const auto place = placeOf(scene.machine(), condition.at);
    if (!place) return fail(place.error());
    const double blades = bladeOrder(scene, *place);
    std::vector<double> swing, unused;
    exact::phasors(scene.turnsOf({blades > 0 ? blades : 1, 0, 0}), swing, unused);
    const double rms = scale::kCavitationG * condition.severity;
    std::size_t index = 0;
    for (const double hz : {2300.0, 3700.0, 5600.0, 7900.0}) {
        const std::string name = "cavitation" + std::to_string(index++);
        const double gain = 0.5 * rms * scene.antialiasGain(hz);
        if (gain == 0) continue;
        auto noise = ringingNoise({hz, 0.2, 1}, scene.rateHz(), scene.samples(), scene.chance(name));
        for (std::size_t i = 0; i < noise.size(); ++i)
            noise[i] *= gain * (1 + 0.35 * swing[i]);
        scene.addHighBand(noise, *place, name);
    }
    return {};
}

Status addRoughFlow(Scene& scene, const Condition& condition) {
    const auto place = placeOf(scene.machine(), condition.at);
    if (!place) return fail(place.error());
    const double hz = 0.4 * scene.motion().shaftHz(place->shaft);
    const double rmsG = peakGOf(scale::kFlowMmS * condition.severity, hz) / kRootTwo;
    const double path = scene.pathFrom(*place).low / scene.pathFrom(*place).high;
    addNoise(scene, *place, {hz, 0.4, 1}, rmsG * path, "flow");
    return {};
}

Status addNeighbour(Scene& scene, const Condition& condition) {
    if (condition.rpm <= 0) return fail(ErrorKind::Invalid, scene.machine().tag, "neighbour", "needs rpm");
    const double hz = condition.rpm / 60;
    RandomStream chance = scene.chance("neighbour");
    const double start = chance.uniform();
    std::vector<double> turns(scene.samples());
    const auto add = [&](double order, double rmsMmS) {
        for (std::size_t i = 0; i < turns.size(); ++i)
            turns[i] = order * (start + hz * double(i) / scene.rateHz());
        scene.addForeignVelocity(turns, order * hz, kFloorShake, rmsMmS);
    };
    const double shares[] = {1, 0.3, 0.15, 0.08, 0.05};
    for (int order = 1; order <= 5; ++order)
        add(order, condition.levelMmS * condition.severity * shares[order - 1]);
    if (condition.blades > 5) add(condition.blades, 0.15 * condition.levelMmS * condition.severity);
    return {};
}

}  // namespace fettle::sim
