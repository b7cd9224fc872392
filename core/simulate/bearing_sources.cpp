#include "core/simulate/bearing_sources.h"

#include "core/simulate/exact_math.h"
#include "core/simulate/impact_train.h"
#include "core/simulate/severity_scale.h"

namespace fettle::sim {

namespace {
struct FoundBearing {
    Place place;
    const BearingVariant* variant = nullptr;
};

Result<FoundBearing> bearingAt(const Machine& machine, const std::string& at) {
    for (const BearingPlace& bearing : machine.bearings) {
        if (bearing.at != at) continue;
        if (bearing.bearing.variants.empty())
            return fail(ErrorKind::Invalid, machine.tag, at, "this bearing has no geometry to simulate from");
        const auto place = placeOf(machine, at);
        if (!place) return fail(place.error());
        return FoundBearing{*place, &bearing.bearing.variants.front()};
    }
    return fail(ErrorKind::Invalid, machine.tag, at, "no bearing stands there");
}

double lateness(double severity) {
    const double over = (severity - scale::kLateFrom) / (1 - scale::kLateFrom);
    return over > 0 ? over : 0;
}

// The floor a bearing adds once its surfaces are rough, through every mode of its housing above `fromHz`.
void addHiss(Scene& scene, const Place& place, double rmsG, double fromHz, const std::string& name) {
    std::size_t index = 0;
    for (Mode mode : modesOf(scene.machine().tag, place.component)) {
        const std::string label = std::to_string(index++);
        const double gain = rmsG * mode.weight * scene.antialiasGain(mode.hz);
        if (gain == 0 || mode.hz < fromHz) continue;
        mode.damping *= 4;
        auto noise = ringingNoise(mode, scene.rateHz(), scene.samples(), scene.chance(name + label));
        for (double& value : noise)
            value *= 2 * gain;
        scene.addHighBand(noise, place, label);
    }
}

void ringHousing(Scene& scene, const Place& place, const std::vector<Impact>& impacts, double peakG) {
    std::size_t index = 0;
    for (Mode mode : modesOf(scene.machine().tag, place.component)) {
        const std::string label = std::to_string(index++);
        mode.weight *= peakG * scene.antialiasGain(mode.hz);
        if (mode.weight > 0)
            scene.addHighBand(ring(impacts, mode, scene.rateHz(), scene.samples()), place, label);
    }
}

Status addDefect(Scene& scene, const Condition& condition, Defect defect) {
    const auto found = bearingAt(scene.machine(), condition.at);
    if (!found) return fail(found.error());
    const double late = lateness(condition.severity);
    DefectMotion motion;
    motion.defect = defect;
    motion.orders = found->variant->orders;
    motion.rollingElements = found->variant->rollingElements;
    motion.cageShift = condition.cageShift;
    motion.slipJitter = condition.slipJitter * (1 + 2 * late);
    motion.roughness = 0.1 + 0.3 * late;
    const double ratio = scene.motion().shaftRatios.at(found->place.shaft);
    const std::string name = condition.kind + condition.at;
    const auto impacts = impactTrain(motion, scene.turnsOf({ratio, 0, 0}), scene.chance(name));
    ringHousing(scene, found->place, impacts, impactPeakG(condition.severity));
    if (late > 0) addHiss(scene, found->place, scale::kLateFloorG * late, 0, name);
    return {};
}
}  // namespace

double impactPeakG(double severity) {
    return severity <= 0 ? 0 : scale::kImpactLeastG * exact::exponential(scale::kImpactGrowth * severity);
}

Status addOuterRace(Scene& scene, const Condition& condition) {
    return addDefect(scene, condition, Defect::OuterRace);
}
Status addInnerRace(Scene& scene, const Condition& condition) {
    return addDefect(scene, condition, Defect::InnerRace);
}
Status addRollingElement(Scene& scene, const Condition& condition) {
    return addDefect(scene, condition, Defect::RollingElement);
}
Status addCage(Scene& scene, const Condition& condition) {
    return addDefect(scene, condition, Defect::Cage);
}

Status addDryBearing(Scene& scene, const Condition& condition) {
    const auto place = placeOf(scene.machine(), condition.at);
    if (!place) return fail(place.error());
    addHiss(scene, *place, scale::kDryFloorG * condition.severity, 1200, "dry" + condition.at);
    return {};
}

}  // namespace fettle::sim
