#include "core/workshop/trial_expect.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/base/units.h"
#include "core/workshop/unbalance.h"

namespace fettle {

namespace {

constexpr double kHeldLow = 0.1, kHeldHigh = 1;  // of a free rotor's motion; common practice, no source
constexpr double kCoefficientSpread = 0.15, kAngleSpreadDeg = 15, kSpeedSpread = 0.05;
constexpr double kUsualShare = 0.1;  // of the rotor's weight, most of a trial mass
constexpr double kFewestTurns = 15;
// Of a change's weight (core/trend/change.h): calibrator and how far the tail is known.
constexpr double kKappa = 0.15, kTailPower = 3;

double rad(double degrees) {
    return degrees * std::numbers::pi / 180;
}

void expectMass(const TrialChange& change, const TrialGround& ground, TrialExpectation& e) {
    e.unbalanceGmm = unbalanceGmm(change.massG, change.radiusMm);
    if (*e.unbalanceGmm <= 0) {
        e.lacking = "a mass and its radius are needed";
        return;
    }
    if (e.speedRpm <= 0) {
        e.lacking = "the speed of this shaft is not known";
        return;
    }
    e.forceN = unbalanceForceN(*e.unbalanceGmm, e.speedRpm);
    e.onceNowMmS = ground.onceMmS;
    if (!(change.rotorKg.value_or(0) > 0)) return;
    e.weightShare = *e.forceN / (*change.rotorKg * kStandardGravity);
    e.permissibleGmm = permissibleUnbalanceGmm(change.grade, *change.rotorKg, e.speedRpm);
    e.permissibleMassG = *e.permissibleGmm / change.radiusMm;
    e.equivalentGrade = equivalentGrade(*e.unbalanceGmm, *change.rotorKg, e.speedRpm);
    if (*e.unbalanceGmm > *e.permissibleGmm)
        e.warnings.push_back(fmt::format(
            "more than {} allows this rotor: at this radius {:.3g} g is the most. Use less, or agree in "
            "writing why more may run, how long, and at which level the machine is stopped",
            gradeName(change.grade), *e.permissibleMassG));
    if (*e.weightShare > kUsualShare)
        e.warnings.push_back(
            fmt::format("its force is {:.0f} % of the rotor's weight; trial masses usually stay under 10 % "
                        "(rule of thumb, no source)",
                        100 * *e.weightShare));
}

// Of the component that the mass is put on, at this channel and speed; the newest balancing comes first.
const TrialInfluence* fitting(const TrialChange& change, const Machine& machine, const TrialGround& ground,
                              double rpm) {
    const auto place = machine.placeOf(change.at);
    for (const TrialInfluence& one : ground.influences)
        if (place && one.at == place->component && one.point == change.point &&
            one.channel == change.channel && std::abs(one.speedRpm / rpm - 1) <= kSpeedSpread)
            return &one;
    return nullptr;
}

void expectMove(const TrialChange& change, const Machine& machine, const TrialGround& ground,
                TrialExpectation& e) {
    if (const TrialInfluence* known = fitting(change, machine, ground, e.speedRpm)) {
        const double move = known->mmSPerGmm * *e.unbalanceGmm;
        e.moveLowMmS = (1 - kCoefficientSpread) * move;
        e.moveHighMmS = (1 + kCoefficientSpread) * move;
        e.how = fmt::format("by the influence coefficient of {}: {:.3g} mm/s a g mm, give or take {:.0f} %",
                            known->from, known->mmSPerGmm, 100 * kCoefficientSpread);
        return;
    }
    if (!e.equivalentGrade) {
        e.how =
            "no influence coefficient is saved for this plane and point, and the rotor's mass is not "
            "given: what 1x moves by cannot be said";
        return;
    }
    const double freeMmS = *e.equivalentGrade / std::numbers::sqrt2;
    e.moveLowMmS = kHeldLow * freeMmS;
    e.moveHighMmS = kHeldHigh * freeMmS;
    e.how = fmt::format(
        "no influence coefficient is saved: free in space the rotor would move with {:.3g} mm/s r.m.s.; held "
        "by frame and base it moves with a tenth to the whole of that, near a resonance with more (common "
        "practice, no source)",
        freeMmS);
}

void expectOnce(const TrialChange& change, TrialExpectation& e) {
    if (!e.moveHighMmS || !e.onceNowMmS) return;
    const OnceRange range = onceAfter(*e.onceNowMmS, *e.moveLowMmS, *e.moveHighMmS, change.angleDeg);
    e.onceLowMmS = range.low;
    e.onceHighMmS = range.high;
    if (range.low > *e.onceNowMmS || range.high < *e.onceNowMmS) return;
    const double surely = 2.2 * *e.onceNowMmS / *e.moveLowMmS * change.massG;
    e.notes.push_back(
        change.angleDeg
            ? std::string("1x may stay as it is: the range holds what it is now")
            : fmt::format("1x may rise, fall or stay: where the mass stands to the heavy spot is not known. "
                          "Make two runs with the mass at opposite places, or give the angle; a rise by "
                          "itself is sure from {:.3g} g on, which may be more than is allowed",
                          surely));
}

struct ElementLine {
    const char* name;
    double order;
    double side;  // sidebands at this distance; 0: none
    const char* sideName;
};

std::optional<ElementLine> elementLine(const std::string& fault, const BearingOrders& orders) {
    if (fault == "bearing_outer_race") return ElementLine{"BPFO", orders.bpfo, 0, ""};
    if (fault == "bearing_inner_race") return ElementLine{"BPFI", orders.bpfi, 1, "shaft"};
    if (fault == "bearing_rolling_element") return ElementLine{"2 BSF", 2 * orders.bsf, orders.ftf, "FTF"};
    if (fault == "bearing_cage") return ElementLine{"FTF", orders.ftf, 0, ""};
    return std::nullopt;
}

void addLine(TrialExpectation& e, std::string name, double order) {
    e.lines.push_back({std::move(name), order, order * e.speedRpm / 60});
}

void expectBearing(const TrialChange& change, const Machine& machine, const TrialGround& ground,
                   TrialExpectation& e) {
    const auto place = std::find_if(machine.bearings.begin(), machine.bearings.end(),
                                    [&](const BearingPlace& one) { return one.at == change.at; });
    if (place == machine.bearings.end() || place->bearing.variants.empty()) {
        e.lacking =
            "the orders of the bearing at this place are not known: give its geometry in the register";
        return;
    }
    const auto line = elementLine(change.fault, place->bearing.variants.front().orders);
    if (!line) {
        e.lacking = "choose the element that is damaged";
        return;
    }
    for (int h = 1; h <= 3; ++h) {
        const std::string name = h == 1 ? line->name : fmt::format("{} x {}", h, line->name);
        if (line->side > 0 && h == 1) addLine(e, name + " - 1 x " + line->sideName, line->order - line->side);
        addLine(e, name, h * line->order);
        if (line->side > 0 && h == 1) addLine(e, name + " + 1 x " + line->sideName, line->order + line->side);
    }
    e.notes.push_back("slip moves these lines by up to 2 %; they stand in the envelope spectrum");
    if (place->bearing.variants.size() > 1)
        e.notes.push_back(fmt::format("the designation is built in {} ways; these are the lines of {}",
                                      place->bearing.variants.size(), place->bearing.variants.front().name));
    if (ground.seconds > 0 && e.speedRpm > 0 && ground.seconds * e.speedRpm / 60 < kFewestTurns)
        e.lacking = fmt::format(
            "a recording of {:.2g} s holds {:.0f} turns of this shaft; under {:.0f} no "
            "bearing line can be told",
            ground.seconds, ground.seconds * e.speedRpm / 60, kFewestTurns);
}

void expectBolt(TrialExpectation& e) {
    for (const double order : {0.5, 1.0, 1.5, 2.0, 2.5, 3.0})
        addLine(e, fmt::format("{:g} x", order), order);
    for (int order = 4; order <= 10; ++order)
        addLine(e, fmt::format("{} x", order), order);
    e.notes.push_back(
        "a foot that lifts cuts the motion off: 1x grows, mostly upright, orders 2 to 10 follow, half orders "
        "where it rattles; how much cannot be said beforehand (common practice, no source)");
}

void warnOfFewBefore(const TrialChange& change, const TrialGround& ground, double leastDban,
                     TrialExpectation& e) {
    if (change.follows == TrialFollows::Weight) return;
    const std::size_t needed = neededBefore(leastDban);
    if (ground.before < needed)
        e.warnings.push_back(fmt::format(
            "{} running {} in the span before; {:.0f} decibans take {} at least: "
            "begin the span earlier, or wait with the change",
            ground.before, ground.before == 1 ? "recording is" : "recordings are", leastDban, needed));
}

std::string whatIsFollowed(const TrialChange& change) {
    const std::string where = change.point + " " + change.channel;
    switch (change.follows) {
        case TrialFollows::Once:
            return "the change of 1x at " + where;
        case TrialFollows::Looseness:
            return "the change of orders 4 to 10 and of half orders at " + where;
        case TrialFollows::Velocity:
            return "the change of velocity r.m.s. at " + where;
        case TrialFollows::Weight:
            break;
    }
    return "the weight of the fault";
}

}  // namespace

OnceRange onceAfter(double now, double moveLow, double moveHigh, std::optional<double> angleDeg) {
    OnceRange range{1e300, 0};
    const auto take = [&](double value) {
        range.low = std::min(range.low, value);
        range.high = std::max(range.high, value);
    };
    constexpr int kSteps = 40;
    const double middle = angleDeg.value_or(0), spread = angleDeg ? kAngleSpreadDeg : 180;
    for (int i = 0; i <= kSteps; ++i) {
        const double move = moveLow + (moveHigh - moveLow) * i / kSteps;
        for (int k = -kSteps; k <= kSteps; ++k) {
            const double turn = rad(middle + spread * k / kSteps);
            take(std::hypot(now + move * std::cos(turn), move * std::sin(turn)));
        }
    }
    if (!angleDeg && moveLow <= now && now <= moveHigh) range.low = 0;  // between two steps
    return range;
}

double mostChangeDban(std::size_t before) {
    const double least = std::pow(double(before) + 1, -kTailPower);
    return 10 * std::log10(kKappa) + 10 * (kKappa - 1) * std::log10(least);
}

std::size_t neededBefore(double dban) {
    std::size_t count = 2;
    while (mostChangeDban(count) < dban && count < 10000)
        ++count;
    return count;
}

double ratioAt(const Machine& machine, const std::string& at) {
    const auto place = machine.placeOf(at);
    return place && place->shaft < machine.shafts.size() ? machine.shafts[place->shaft].ratio : 1;
}

TrialExpectation expectedOf(const TrialChange& change, const Machine& machine, const TrialGround& ground,
                            double leastDban) {
    TrialExpectation e;
    const auto driver = ground.driverRpm ? ground.driverRpm : machine.nominalRpm();
    e.speedRpm = driver.value_or(0) * ratioAt(machine, change.at);
    if (!machine.placeOf(change.at)) {
        e.lacking = "say where on the machine";
        return e;
    }
    if (change.kind == TrialKind::Mass) {
        expectMass(change, ground, e);
        if (e.lacking.empty()) {
            expectMove(change, machine, ground, e);
            expectOnce(change, e);
        }
    }
    if (change.kind == TrialKind::Bearing) expectBearing(change, machine, ground, e);
    if (change.kind == TrialKind::Bolt) expectBolt(e);
    if (change.kind == TrialKind::Other && change.words.empty()) e.lacking = "say what is changed";
    if (change.follows != TrialFollows::Weight && change.point.empty() && e.lacking.empty())
        e.lacking = "choose the channel that is followed";
    warnOfFewBefore(change, ground, leastDban, e);
    return e;
}

TrialPromise promisedOf(const TrialChange& change, const TrialExpectation& expectation,
                        const TrialPromise& asked) {
    TrialPromise promise;
    promise.leastDban = asked.leastDban;
    promise.within = asked.within;
    promise.at = change.at;
    promise.fault = change.follows == TrialFollows::Weight      ? change.fault
                    : change.follows == TrialFollows::Looseness ? "looseness"
                    : change.follows == TrialFollows::Once      ? "unbalance"
                                                                : "";
    if (!expectation.lacking.empty()) return promise;
    promise.onceLowMmS = expectation.onceLowMmS;
    promise.onceHighMmS = expectation.onceHighMmS;
    promise.sentences.push_back(
        fmt::format("Within {} running recordings after the change {} reaches {:.0f} decibans in 3 of 5.",
                    promise.within, whatIsFollowed(change), promise.leastDban));
    promise.sentences.push_back(
        "Before the change that never happens, and at most 1 recording in 20 reaches it alone.");
    if (change.follows == TrialFollows::Weight)
        promise.sentences.push_back("No other fault of a bearing is told with a greater weight.");
    if (promise.onceLowMmS)
        promise.sentences.push_back(fmt::format(
            "1x at {} {}, {:.2f} mm/s r.m.s. before, is {:.2f} to {:.2f} mm/s afterwards.", change.point,
            change.channel, *expectation.onceNowMmS, *promise.onceLowMmS, *promise.onceHighMmS));
    return promise;
}

std::vector<std::string> trialCautions(TrialKind kind) {
    std::vector<std::string> all = {
        "Whoever answers for the machine has agreed in writing; permit, risk assessment and site rules come "
        "first, and local codes and licensed practice before this sheet.",
        "Only competent, authorised people make the change, with the machine isolated, locked off, tried "
        "dead "
        "and at rest, stored energy let off.",
        "The level, temperature or noise at which the machine is stopped at once is agreed and written here, "
        "and somebody watches it during the first run.",
        "Nobody stands in line with the rotor, reaches behind a guard or works on it while it turns; it runs "
        "with all guards fitted."};
    if (kind == TrialKind::Mass)
        all.push_back(
            "The mass is secured so that it can neither turn nor fly off, clears everything fixed, and stays "
            "within the unbalance allowed for this rotor; it is taken out again and its removal is checked.");
    if (kind == TrialKind::Bearing)
        all.push_back(
            "The damaged bearing carries its load for the whole trial: no lifting gear, no machine whose "
            "seizing could hurt, a date by which it comes out.");
    if (kind == TrialKind::Bolt)
        all.push_back(
            "The bolt is slackened with the machine at rest, never while it turns; the others hold it alone, "
            "and it is tightened to its torque afterwards.");
    return all;
}

}  // namespace fettle
