// One speed is measured, the driver's; every other shaft's follows from teeth and pulleys.
// Planetary sets by Willis's equation (ws - wc) / (wr - wc) = -R / S (R. Willis, Principles of Mechanism,
// 1841).
#include <fmt/format.h>

#include <cmath>

#include "core/machine/machine_parse.h"

namespace fettle::machine_parse {

namespace {

// Speed of one shaft over another's, magnitude, with its relative half-width.
struct SpeedRatio {
    double value = 1;
    double spread = 0;
};

// A fixed ring: from the sun to the carrier; a fixed sun: from the ring to the carrier; a fixed carrier: from
// the sun to the ring.
SpeedRatio ratioOf(const Gear& gear) {
    if (!gear.planetary) return {static_cast<double>(gear.teeth[0]) / gear.teeth[1], 0};
    const double sun = (*gear.planetary)[0], ring = (*gear.planetary)[1];
    if (gear.fixed == "sun") return {ring / (sun + ring), 0};
    if (gear.fixed == "carrier") return {sun / ring, 0};
    return {sun / (sun + ring), 0};
}

// Creep makes the pulley that is driven late: with power from `to` to `from` that is the one on `from`.
SpeedRatio ratioOf(const Belt& belt, bool reversed) {
    double ratio = belt.teeth[0] > 0 ? static_cast<double>(belt.teeth[0]) / belt.teeth[1]
                                     : belt.pulleyMm[0] / belt.pulleyMm[1];
    if (reversed) ratio = 1 / ratio;
    const double middle = 1 - (belt.creepPct[0] + belt.creepPct[1]) / 200;
    return {ratio * middle, (belt.creepPct[1] - belt.creepPct[0]) / 200 / middle};
}

// What joins two shafts, seen from one of them.
struct Joint {
    std::string from, to;
    SpeedRatio ratio;
    double slack =
        0;  // how far off a second way round may be, beyond the spreads: which way creep acts is not known
    std::string place;
};

std::vector<Joint> jointsOf(const Machine& machine) {
    std::vector<Joint> joints;
    for (std::size_t i = 0; i < machine.gears.size(); ++i) {
        const Gear& gear = machine.gears[i];
        const std::string place = fmt::format("/gears/{}", i);
        const SpeedRatio ratio = ratioOf(gear);
        joints.push_back({gear.from, gear.to, ratio, 0, place});
        joints.push_back({gear.to, gear.from, {1 / ratio.value, ratio.spread}, 0, place});
    }
    for (std::size_t i = 0; i < machine.belts.size(); ++i) {
        const Belt& belt = machine.belts[i];
        const std::string place = fmt::format("/belts/{}", i);
        joints.push_back({belt.from, belt.to, ratioOf(belt, false), belt.creepPct[1] / 50, place});
        joints.push_back({belt.to, belt.from, ratioOf(belt, true), belt.creepPct[1] / 50, place});
    }
    return joints;
}

// Carries known ratios over the joints until nothing changes.
void spread(const std::vector<Joint>& joints, std::vector<bool>& known, Reading& reading) {
    auto& shafts = reading.machine.shafts;
    for (bool changed = true; changed;) {
        changed = false;
        for (const Joint& joint : joints) {
            const std::size_t from = *reading.machine.shaftById(joint.from),
                              to = *reading.machine.shaftById(joint.to);
            if (!known[from] || known[to]) continue;
            shafts[to].ratio = shafts[from].ratio * joint.ratio.value;
            shafts[to].ratioSpread = shafts[from].ratioSpread + joint.ratio.spread;
            known[to] = changed = true;
        }
    }
}

// Two ways to one shaft must agree.
void checkLoops(const std::vector<Joint>& joints, Reading& reading) {
    const auto& shafts = reading.machine.shafts;
    for (const Joint& joint : joints) {
        const Shaft& from = shafts[*reading.machine.shaftById(joint.from)];
        const Shaft& to = shafts[*reading.machine.shaftById(joint.to)];
        const double off = std::abs(from.ratio * joint.ratio.value / to.ratio - 1);
        if (off > 0.005 + joint.slack + from.ratioSpread + joint.ratio.spread + to.ratioSpread)
            reading.report.broken(joint.place,
                                  fmt::format("gears and belts disagree on the speed of shaft {} by {:.1f} %",
                                              to.id, 100 * off));
    }
}

void useGivenRatio(const DrivenSpeed& driven, std::vector<bool>& known, Reading& reading) {
    const auto at = reading.machine.shaftOfDriven();
    if (!driven.ratio || !at) return;
    if (known[*at])
        return reading.report.warn("/driven/speed_ratio", "not used, the ratio follows from the train");
    reading.machine.shafts[*at].ratio = *driven.ratio;
    reading.machine.shafts[*at].ratioSpread = driven.tolerance;
    known[*at] = true;
}
}  // namespace

void setRatios(const DrivenSpeed& driven, Reading& reading) {
    auto& shafts = reading.machine.shafts;
    if (reading.report.error || shafts.empty()) return;
    const auto joints = jointsOf(reading.machine);
    std::vector<bool> known(shafts.size(), false);
    known[0] = true;
    shafts[0].ratio = 1;
    spread(joints, known, reading);
    useGivenRatio(driven, known, reading);
    spread(joints, known, reading);
    for (std::size_t i = 0; i < shafts.size(); ++i)
        if (!known[i])
            return reading.report.broken(
                "/shafts", "no gear, belt or driven.speed_ratio gives the speed of shaft " + shafts[i].id);
    checkLoops(joints, reading);
}

}  // namespace fettle::machine_parse
