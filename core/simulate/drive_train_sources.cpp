#include "core/simulate/drive_train_sources.h"

#include "core/base/units.h"
#include "core/simulate/exact_math.h"
#include "core/simulate/resonator.h"
#include "core/simulate/severity_scale.h"

namespace fettle::sim {

namespace {
constexpr Pattern kBeltPull{1, 0.4, 0.15, 0, 0};
constexpr double kSoundModulation = 0.06;

template <class Part>
const Part* partById(const std::vector<Part>& parts, const std::string& id) {
    for (const Part& part : parts)
        if (part.id == id) return &part;
    return nullptr;
}

struct Mesh {
    double order = 0;  // of the driver
    double firstRatio = 1, secondRatio = 1;
    Place place;
};

Result<Mesh> meshOf(const Scene& scene, const Gear& gear) {
    const auto place = placeOf(scene.machine(), gear.id);
    if (!place) return fail(place.error());
    const auto from = scene.machine().shaftById(gear.from), to = scene.machine().shaftById(gear.to);
    if (!from || !to || gear.teeth[0] <= 0)
        return fail(ErrorKind::Invalid, scene.machine().tag, gear.id, "only gears with two counted wheels");
    const auto& ratios = scene.motion().shaftRatios;
    return Mesh{gear.teeth[0] * ratios.at(*from), ratios.at(*from), ratios.at(*to), *place};
}

struct MeshLevel {
    double peakG = 0, harmonic = 1, modulation = 0, phaseTurns = 0;
};

// One harmonic of the mesh, its amplitude and phase swung by both shafts.
void addMeshHarmonic(Scene& scene, const Mesh& mesh, const MeshLevel& level) {
    const double hz = mesh.order * level.harmonic * scene.motion().driverHz;
    const double peak = level.peakG * scene.antialiasGain(hz);
    if (peak == 0) return;
    std::vector<double> first, second, cosines, sines;
    exact::phasors(scene.turnsOf({mesh.firstRatio, 0, 0}), first, sines);
    exact::phasors(scene.turnsOf({mesh.secondRatio, 0, 0.2}), second, sines);
    std::vector<double> turns = scene.turnsOf({mesh.order * level.harmonic, 0, 0.1 * level.harmonic});
    for (std::size_t i = 0; i < turns.size(); ++i)
        turns[i] += level.phaseTurns * (first[i] + 0.5 * second[i]);
    exact::phasors(turns, cosines, sines);
    for (std::size_t i = 0; i < turns.size(); ++i)
        sines[i] *= peak * (1 + level.modulation * (first[i] + 0.5 * second[i]));
    scene.addHighBand(sines, mesh.place, "mesh" + std::to_string(int(level.harmonic)));
}

Status addMesh(Scene& scene, const Gear& gear, double wear) {
    const auto mesh = meshOf(scene, gear);
    if (!mesh) return fail(mesh.error());
    const double base = scene.character().meshPeakG * scene.setup().operation.levelFactor *
                        (0.5 + 0.5 * scene.setup().operation.load);
    const double shares[] = {1, 0.45, 0.2};
    for (int h = 1; h <= 3; ++h) {
        MeshLevel level;
        level.harmonic = h;
        level.peakG = base * shares[h - 1] * (1 + scale::kMeshGrowth * wear * h / 2);
        level.modulation = kSoundModulation + scale::kMeshModulation * wear;
        level.phaseTurns = h * (0.01 + 0.06 * wear);
        addMeshHarmonic(scene, *mesh, level);
    }
    return {};
}

double wearOf(const Scene& scene, const std::string& kind, const std::string& id) {
    for (const Condition& condition : scene.setup().conditions)
        if (condition.kind == kind && condition.at == id) return condition.severity;
    return 0;
}

void addBeltOrder(Scene& scene, const Belt& belt, double order, double rmsMmS) {
    const auto from = scene.machine().shaftById(belt.from);
    if (!from || belt.lengthMm <= 0) return;
    const double ratio = scene.motion().shaftRatios.at(*from);
    const double turns = ratio * std::numbers::pi * belt.pulleyMm[0] / belt.lengthMm;
    scene.addVelocity({order * turns, 0, 0.3 * order}, Place{"driver", "DE", 0}, kBeltPull, rmsMmS);
}
}  // namespace

void addSoundDriveTrain(Scene& scene) {
    for (const Gear& gear : scene.machine().gears)
        if (wearOf(scene, "gear_mesh", gear.id) == 0) (void)addMesh(scene, gear, 0);
    const double level = scene.character().beltMmS * scene.setup().operation.levelFactor;
    for (const Belt& belt : scene.machine().belts) {
        addBeltOrder(scene, belt, 1, 0.6 * level);
        addBeltOrder(scene, belt, 2, level);
    }
}

Status addGearWear(Scene& scene, const Condition& condition) {
    const Gear* gear = partById(scene.machine().gears, condition.at);
    if (!gear) return fail(ErrorKind::Invalid, scene.machine().tag, condition.at, "no such gear");
    return condition.severity > 0 ? addMesh(scene, *gear, condition.severity) : Status{};
}

Status addGearTooth(Scene& scene, const Condition& condition) {
    const Gear* gear = partById(scene.machine().gears, condition.at);
    if (!gear) return fail(ErrorKind::Invalid, scene.machine().tag, condition.at, "no such gear");
    const auto mesh = meshOf(scene, *gear);
    if (!mesh) return fail(mesh.error());
    const auto& turns = scene.turnsOf({mesh->firstRatio, 0, 0});
    std::vector<Impact> impacts;
    for (std::size_t i = 0; i + 1 < turns.size(); ++i) {
        const double next = exact::nearestWhole(turns[i] + 0.5);
        if (turns[i] < next && turns[i + 1] >= next)
            impacts.push_back({double(i) + (next - turns[i]) / (turns[i + 1] - turns[i]), 1});
    }
    std::size_t index = 0;
    for (Mode mode : modesOf(scene.machine().tag, mesh->place.component)) {
        mode.weight *= scale::kToothPeakG * condition.severity * scene.antialiasGain(mode.hz);
        const auto signal = ring(impacts, mode, scene.rateHz(), scene.samples());
        scene.addHighBand(signal, mesh->place, std::to_string(index++));
    }
    return {};
}

Status addBeltWear(Scene& scene, const Condition& condition) {
    const Belt* belt = partById(scene.machine().belts, condition.at);
    if (!belt) return fail(ErrorKind::Invalid, scene.machine().tag, condition.at, "no such belt");
    const double level = scale::kBeltMmS * condition.severity;
    const double shares[] = {0.5, 1, 0.5, 0.35};
    for (int h = 1; h <= 4; ++h)
        addBeltOrder(scene, *belt, h, level * shares[h - 1]);
    return {};
}

}  // namespace fettle::sim
