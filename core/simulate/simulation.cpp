#include "core/simulate/simulation.h"

#include "core/simulate/condition_table.h"
#include "core/simulate/drive_train_sources.h"
#include "core/simulate/electrical_sources.h"
#include "core/simulate/exact_math.h"
#include "core/simulate/flow_sources.h"
#include "core/simulate/sensor.h"
#include "core/simulate/severity_scale.h"
#include "core/simulate/shaft_sources.h"

namespace fettle::sim {

namespace {
Status checkSetup(const SimulationSetup& setup) {
    const std::string& tag = setup.machine.tag;
    const NodeKind& node = setup.node;
    const auto refuse = [&](const char* place, const char* rule) {
        return fail(ErrorKind::Invalid, tag, place, rule);
    };
    if (setup.point >= setup.machine.points.size()) return refuse("point", "the machine has no such point");
    if (!(node.rateHz > 0) || !(setup.seconds > 0)) return refuse("rate", "rate and length must be above 0");
    if (node.rateHz * setup.seconds < 2) return refuse("seconds", "at least two samples");
    if (node.bits != 16 && node.bits != 24) return refuse("bits", "16 or 24");
    if (!(node.rangeG > 0)) return refuse("range", "must be above 0");
    if (setup.machine.driver.inverter && setup.operation.turning && !(setup.operation.outputHz > 0))
        return refuse("output_hz", "a turning inverter drive needs its output frequency");
    return {};
}

double heatOf(const Condition& condition) {
    if (condition.kind == "bearing_dry_or_worn") return scale::kDryHeatK * condition.severity;
    if (condition.kind == "overheating") return scale::kOverheatK * condition.severity;
    const double late = (condition.severity - scale::kLateFrom) / (1 - scale::kLateFrom);
    return condition.kind.rfind("bearing_", 0) == 0 && late > 0 ? scale::kLateHeatK * late : 0;
}

// Ventilation loss and load loss of a frame at rest with itself; common practice, no source.
double frameRise(const SimulationSetup& setup) {
    if (!setup.operation.turning) return setup.operation.energised ? 6 : 0.5;
    double rise = 10 + 24 * setup.operation.load * setup.operation.load;
    for (const Condition& condition : setup.conditions)
        rise += heatOf(condition);
    return rise;
}

void addSound(Scene& scene) {
    addSoundShafts(scene);
    addSoundDriveTrain(scene);
    addSoundElectrics(scene);
    addSoundFlow(scene);
    addSoundFloor(scene);
}

Status addConditions(Scene& scene) {
    const bool turning = scene.setup().operation.turning;
    for (const Condition& condition : scene.setup().conditions) {
        const ConditionRow* row = conditionRow(condition.kind);
        if (!row)
            return fail(ErrorKind::Invalid, scene.machine().tag, condition.kind,
                        "is not a kind of condition");
        if (condition.severity <= 0 || (row->needsTurning && !turning)) continue;
        if (auto done = row->apply(scene, condition); !done) return done;
    }
    return {};
}

double toTenths(double value) {
    return exact::nearestWhole(value * 10) / 10;
}
}  // namespace

Result<SimulatedRecording> simulate(const SimulationSetup& setup) {
    if (auto sound = checkSetup(setup); !sound) return fail(sound.error());
    const auto here = placeOf(setup.machine, setup.machine.points[setup.point].at);
    if (!here) return fail(here.error());
    SimulatedRecording recording;
    recording.rateHz = setup.node.rateHz;
    recording.bits = setup.node.bits;
    recording.trueRateHz = setup.node.rateHz * (1 + setup.node.clockError);
    const auto samples = std::size_t(setup.seconds * setup.node.rateHz);
    Scene scene(setup,
                makeMotion(setup.machine, setup.operation, recording.trueRateHz, samples,
                           RandomStream(setup.seed, "motion")),
                *here);
    if (setup.operation.turning)
        addSound(scene);
    else if (setup.operation.energised)
        scene.addFlux({0, 1, 0}, setup.character.fluxCarrier);
    if (auto done = addConditions(scene); !done) return fail(done.error());
    recording.channels = measure(scene);
    recording.shaftHz = setup.operation.turning ? scene.motion().driverHz : 0;
    recording.supplyHz = setup.operation.energised ? scene.motion().supplyHz : 0;
    recording.slip = setup.operation.turning ? scene.motion().slip : 0;
    recording.load = setup.operation.turning ? setup.operation.load : 0;
    RandomStream weather(setup.seed, "temperature");
    recording.ambientTempC = toTenths(setup.operation.ambientC);
    recording.frameTempC = toTenths(setup.operation.ambientC + frameRise(setup) + 0.4 * weather.normal());
    return recording;
}

std::uint64_t hashOf(const SimulatedRecording& recording) {
    std::uint64_t hash = kFnvStart;
    for (const SimulatedChannel& channel : recording.channels) {
        std::string bytes;
        bytes.reserve(4 * channel.samples.size());
        for (const std::int32_t sample : channel.samples)
            for (int shift = 0; shift < 32; shift += 8)
                bytes.push_back(char((std::uint32_t(sample) >> shift) & 0xFF));
        hash = fnv1a(bytes, hash);
    }
    return hash;
}

}  // namespace fettle::sim
