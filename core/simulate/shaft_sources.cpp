#include "core/simulate/shaft_sources.h"

#include <cmath>
#include <string>

#include "core/simulate/exact_math.h"
#include "core/simulate/severity_scale.h"

namespace fettle::sim {

namespace {
constexpr Pattern kRadialForce{1, 0.75, 0.2, 0.25, 0.05};
constexpr Pattern kCouplingOnce{0.8, 0.7, 1.4, 0.5, 0.5};
constexpr Pattern kCouplingTwice{1, 0.85, 0.9, 0.5, 0.5};
constexpr Pattern kFootLift{0.55, 1, 0.2, 0, 0};

// A speed-squared force through the supports, against the rated speed where levels are given.
Pattern throughSupports(const Scene& scene, Pattern pattern, double order, double ratio) {
    const double hz = scene.motion().driverHz * ratio, rated = ratedShaftHz(scene.machine()) * ratio;
    const double force = (hz / rated) * (hz / rated);
    const auto& voice = scene.character();
    pattern.horizontal *= force * mobilityRatio(voice.horizontal, order * hz, order * rated);
    pattern.vertical *= force * mobilityRatio(voice.vertical, order * hz, order * rated);
    pattern.axial *= force * mobilityRatio(voice.axial, order * hz, order * rated);
    return pattern;
}

void addOrder(Scene& scene, const Place& place, const Pattern& pattern, double order, double rmsMmS,
              const std::string& voice) {
    const double ratio = scene.motion().shaftRatios.at(place.shaft);
    const double phase = scene.voice(voice).uniform();
    scene.addVelocity({order * ratio, 0, phase}, place, throughSupports(scene, pattern, order, ratio),
                      rmsMmS);
}

void addSoundShaft(Scene& scene, const Place& place, double rmsMmS) {
    const std::string name = "shaft " + place.component;
    addOrder(scene, place, kRadialForce, 1, rmsMmS, name + " 1");
    double order = 2;
    for (const double share : scene.character().shaftHarmonics) {
        addOrder(scene, place, kCouplingTwice, order, rmsMmS * share, name + std::to_string(int(order)));
        ++order;
    }
}
}  // namespace

void addSoundShafts(Scene& scene) {
    const double level = scene.character().unbalanceMmS * scene.setup().operation.levelFactor;
    addSoundShaft(scene, {"driver", "", 0}, level);
    const auto driven = scene.machine().shaftOfDriven();
    if (driven && *driven != 0) addSoundShaft(scene, {"driven", "", *driven}, 0.8 * level);
}

Status addUnbalance(Scene& scene, const Condition& condition) {
    const auto place = placeOf(scene.machine(), condition.at);
    if (!place) return fail(place.error());
    // In phase with the residue of that component, so that it grows from there.
    const std::string voice = place->shaft == 0 ? "shaft driver 1" : "shaft " + place->component + " 1";
    addOrder(scene, *place, kRadialForce, 1, scale::kUnbalanceMmS * condition.severity, voice);
    return {};
}

Status addMisalignment(Scene& scene, const Condition& condition) {
    const auto place = placeOf(scene.machine(), condition.at);
    if (!place) return fail(place.error());
    const double s = condition.severity;
    addOrder(scene, *place, kCouplingOnce, 1, scale::kMisalignedOnceMmS * s, "misaligned 1");
    addOrder(scene, *place, kCouplingTwice, 2, scale::kMisalignedTwiceMmS * s, "misaligned 2");
    addOrder(scene, *place, kCouplingTwice, 3, scale::kMisalignedThriceMmS * s, "misaligned 3");
    addOrder(scene, *place, kCouplingTwice, 4, 0.4 * scale::kMisalignedThriceMmS * s, "misaligned 4");
    return {};
}

std::vector<HalfOrder> truncatedMotion(double stop, std::size_t count) {
    constexpr std::size_t kPoints = 512;  // over two turns
    std::vector<double> motion(kPoints);  // displacement
    for (std::size_t i = 0; i < kPoints; ++i) {
        const double turns = 2 * double(i) / kPoints;
        const double free = exact::sine(turns) + 0.35 * exact::sine(turns / 2 + 0.1);
        motion[i] = free > stop ? stop : free;
    }
    std::vector<HalfOrder> orders(count);
    for (std::size_t k = 1; k <= count; ++k)
        for (std::size_t i = 0; i < kPoints; ++i) {
            const double turns = double(k * i) / kPoints;
            orders[k - 1].cosine += double(k) * motion[i] * exact::cosine(turns);
            orders[k - 1].sine += double(k) * motion[i] * exact::sine(turns);
        }
    const HalfOrder once = orders.at(1);
    const double norm = std::sqrt(once.cosine * once.cosine + once.sine * once.sine);
    for (HalfOrder& order : orders)
        order = {order.cosine / norm, order.sine / norm};
    return orders;
}

Status addLooseness(Scene& scene, const Condition& condition) {
    const auto place = placeOf(scene.machine(), condition.at);
    if (!place) return fail(place.error());
    const double s = condition.severity;
    const double level = scale::kLooseMmS * s, ratio = scene.motion().shaftRatios.at(place->shaft);
    const auto orders = truncatedMotion(0.75 - 0.6 * s, 24);
    for (std::size_t k = 1; k <= orders.size(); ++k) {
        const double order = double(k) / 2;
        const Pattern pattern = throughSupports(scene, kFootLift, order, ratio);
        const HalfOrder& part = orders[k - 1];
        scene.addVelocity({order * ratio, 0, 0}, *place, pattern, level * part.cosine);
        scene.addVelocity({order * ratio, 0, -0.25}, *place, pattern, level * part.sine);
    }
    return {};
}

}  // namespace fettle::sim
