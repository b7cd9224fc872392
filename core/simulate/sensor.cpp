#include "core/simulate/sensor.h"

#include <cmath>

#include "core/simulate/exact_math.h"
#include "core/simulate/resonator.h"
#include "core/simulate/severity_scale.h"

namespace fettle::sim {

namespace {
constexpr double kFluxNoisePerRtHz = 1.2e-5;  // of full scale

double looseness(const Scene& scene) {
    for (const Condition& condition : scene.setup().conditions)
        if (condition.kind == "loose_node") return condition.severity;
    return 0;
}

// What gravity reads at rest: full on the vertical channel, a few hundredths elsewhere as no node sits quite
// straight. A node hanging from its magnet's edge leans.
double gravityOf(const Scene& scene, const SceneChannel& channel, double loose) {
    if (!scene.setup().node.gravity) return 0;
    const double lean = 0.02 + 0.15 * loose;
    RandomStream fixed = scene.voice("lean " + channel.name);
    const double tilt = lean * fixed.between(-1, 1);
    return channel.direction == Direction::Vertical ? exact::cosine(tilt) : exact::sine(tilt);
}

// A node off its seat hears less, rings lower and swings on one edge.
void loosen(Scene& scene, SceneChannel& channel, double loose) {
    const double kept = 1 - scale::kLooseNodeLossShare * loose;
    for (double& value : channel.signal)
        value *= kept;
    applyMount(scale::kLooseNodeHz, 0.08, scene.rateHz(), channel.signal);
    auto swing =
        ringingNoise({1.3, 0.2, 1}, scene.rateHz(), scene.samples(), scene.chance("swing " + channel.name));
    for (std::size_t i = 0; i < swing.size(); ++i)
        channel.signal[i] += scale::kLooseNodeSwingG * loose * swing[i];
}

void feelVibration(Scene& scene, SceneChannel& channel, double loose) {
    const NodeKind& node = scene.setup().node;
    if (loose > 0)
        loosen(scene, channel, loose);
    else
        applyMount(node.mountHz, node.mountDamping, scene.rateHz(), channel.signal);
    const double rest = gravityOf(scene, channel, loose);
    for (double& value : channel.signal)
        value += rest;
}
}  // namespace

std::vector<std::int32_t> quantised(const std::vector<double>& values, double range, int bits) {
    const double steps = double(std::int64_t(1) << (bits - 1));
    std::vector<std::int32_t> out;
    out.reserve(values.size());
    for (const double value : values) {
        const double step = exact::nearestWhole(value / range * steps);
        out.push_back(std::int32_t(step < -steps ? -steps : step > steps - 1 ? steps - 1 : step));
    }
    return out;
}

std::vector<SimulatedChannel> measure(Scene& scene) {
    const NodeKind& node = scene.setup().node;
    const double loose = looseness(scene);
    std::vector<SimulatedChannel> measured;
    for (SceneChannel& channel : scene.channels()) {
        if (!channel.flux) feelVibration(scene, channel, loose);
        const double density = channel.flux ? kFluxNoisePerRtHz : node.noisePerRtHz;
        scene.chance("sensor " + channel.name)
            .addNormal(density * std::sqrt(scene.rateHz() / 2), channel.signal);
        const double range = channel.flux ? 1 : node.rangeG;
        measured.push_back({channel.name, channel.unit, range, quantised(channel.signal, range, node.bits)});
    }
    return measured;
}

}  // namespace fettle::sim
