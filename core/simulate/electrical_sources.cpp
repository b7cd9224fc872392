#include "core/simulate/electrical_sources.h"

#include "core/simulate/exact_math.h"
#include "core/simulate/severity_scale.h"

namespace fettle::sim {

namespace {
constexpr Pattern kFrame{1, 0.7, 0.1, 0.5, 0};

int polesOf(const Machine& machine) {
    return machine.driver.poles.value_or(4);
}
int barsOf(const Machine& machine) {
    return machine.driver.rotorBars.value_or(0);
}

Place frame() {
    return {"driver", "", 0};
}

// 2 k s f1 as a line: k x (2 x supply - poles x shaft).
Line slipLine(const Machine& machine, double times, Line around) {
    around.perSupply += 2 * times;
    around.perDriver -= polesOf(machine) * times;
    return around;
}

bool hasCage(const Machine& machine) {
    return machine.driver.kind == DriverKind::Induction || machine.driver.kind == DriverKind::TwoSpeed;
}

void addBarLines(Scene& scene, double sidebandDb) {
    if (!hasCage(scene.machine())) return;
    const double share = exact::fromDecibels(sidebandDb) * scene.setup().operation.load;
    const double carrier = scene.character().fluxCarrier, once = scene.character().unbalanceMmS;
    for (const double k : {1.0, 2.0}) {
        const double part = share / (k * k);
        scene.addFlux(slipLine(scene.machine(), -k, {0, 1, 0.1}), carrier * part);
        scene.addFlux(slipLine(scene.machine(), k, {0, 1, 0.35}), 0.8 * carrier * part);
        scene.addVelocity(slipLine(scene.machine(), -k, {1, 0, 0.2}), frame(), kFrame, 6 * once * part);
        scene.addVelocity(slipLine(scene.machine(), k, {1, 0, 0.6}), frame(), kFrame, 5 * once * part);
    }
}

void addEccentricity(Scene& scene, double belowCarrierDb) {
    const double peak = scene.character().fluxCarrier * exact::fromDecibels(belowCarrierDb);
    scene.addFlux({-1, 1, 0.15}, peak);
    scene.addFlux({1, 1, 0.4}, 0.8 * peak);
}

void addSlots(Scene& scene, double peakG) {
    const double bars = barsOf(scene.machine());
    if (bars <= 0) return;
    const double flux = 0.01 * scene.character().fluxCarrier;
    scene.addFlux({bars, 1, 0.2}, flux);
    scene.addFlux({bars, -1, 0.7}, 1.2 * flux);
    scene.addAcceleration({bars, 0, 0.1}, frame(), kFrame, peakG);
    scene.addAcceleration({bars, 2, 0.3}, frame(), kFrame, 0.6 * peakG);
    scene.addAcceleration({bars, -2, 0.5}, frame(), kFrame, 0.7 * peakG);
}

// Carrier at a clock of its own, with sidebands at twice the output frequency; ripple at six times it.
void addInverter(Scene& scene) {
    const double carrierHz = scene.machine().driver.carrierHz.value_or(4000);
    const double outHz = scene.motion().supplyHz, flux = scene.character().fluxCarrier;
    scene.addFlux({0, 5, 0.2}, 0.05 * flux);
    scene.addFlux({0, 7, 0.4}, 0.03 * flux);
    scene.addVelocity({0, 6, 0.3}, frame(), kFrame, 0.06);
    const double perSupply = carrierHz / outHz;
    for (const double k : {-2.0, 0.0, 2.0}) {
        scene.addAcceleration({0, perSupply + k, 0.1}, frame(), kFrame, k == 0 ? 0.004 : 0.01);
        scene.addFlux({0, perSupply + k, 0.6}, (k == 0 ? 0.02 : 0.04) * flux);
    }
}
}  // namespace

void addSoundElectrics(Scene& scene) {
    const auto& voice = scene.character();
    scene.addFlux({0, 1, 0}, voice.fluxCarrier);
    scene.addFlux({0, 3, 0.3}, 0.04 * voice.fluxCarrier);
    scene.addFlux({0, 5, 0.8}, 0.02 * voice.fluxCarrier);
    addEccentricity(scene, voice.fluxEccentricDb);
    addBarLines(scene, voice.barAsymmetryDb);
    addSlots(scene, voice.slotPeakG);
    scene.addVelocity({0, 2, 0.4}, frame(), kFrame, voice.twiceMainsMmS);
    scene.addVelocity({0, 4, 0.1}, frame(), kFrame, 0.15 * voice.twiceMainsMmS);
    if (scene.machine().driver.inverter) addInverter(scene);
}

Status addRotorBars(Scene& scene, const Condition& condition) {
    addBarLines(scene, scale::kBarsLeastDb + scale::kBarsRangeDb * condition.severity);
    return {};
}

Status addAirGap(Scene& scene, const Condition& condition) {
    const double s = condition.severity;
    addEccentricity(scene, scene.character().fluxEccentricDb + scale::kEccentricRangeDb * s);
    addSlots(scene, 3 * s * scene.character().slotPeakG);
    scene.addVelocity({0, 2, 0.4}, frame(), kFrame, 0.4 * scale::kTwiceMainsMmS * s);
    return {};
}

Status addTwiceMains(Scene& scene, const Condition& condition) {
    scene.addVelocity({0, 2, 0.4}, frame(), kFrame, scale::kTwiceMainsMmS * condition.severity);
    return {};
}

Status addSupplyUnbalance(Scene& scene, const Condition& condition) {
    scene.addVelocity({0, 2, 0.4}, frame(), kFrame, 0.7 * scale::kTwiceMainsMmS * condition.severity);
    scene.addFlux({0, 3, 0.3}, 0.3 * condition.severity * scene.character().fluxCarrier);
    return {};
}

}  // namespace fettle::sim
