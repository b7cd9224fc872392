#include "core/simulate/fleet_state.h"

#include "core/simulate/exact_math.h"
#include "core/simulate/random_stream.h"

namespace fettle::sim {

namespace {
using namespace std::chrono;

double daysSinceEpoch(Instant time) {
    return double(time.time_since_epoch().count()) / 86400000.0;
}

std::uint64_t wholeDay(Instant time) {
    return std::uint64_t(floor<days>(time).time_since_epoch().count());
}

// A value in -1..1 a day, joined by straight lines.
double dailyChance(std::string_view purpose, double day) {
    const double whole = double(std::int64_t(day));
    const auto at = [&](double d) { return RandomStream(std::uint64_t(d), purpose).between(-1, 1); };
    return at(whole) + (day - whole) * (at(whole + 1) - at(whole));
}

bool isOn(const FleetMachine& fleet, const char* kind, Instant time) {
    for (const Story& story : fleet.stories)
        if (story.condition.kind == kind && valueAt(story.severity, time) > 0.5) return true;
    return false;
}

double outputHzAt(const OperationPlan& plan, RandomStream& chance) {
    if (plan.outputHz.size() != 2) return 0;
    return exact::nearestWhole(chance.between(plan.outputHz[0], plan.outputHz[1]) * 10) / 10;
}

Operation operationAt(const Scenario& scenario, const FleetMachine& fleet, Instant time, std::uint64_t key) {
    const std::string& tag = fleet.machine.tag;
    RandomStream chance(key, "operation");
    const double day = daysSinceEpoch(time);
    const double weekly = RandomStream(wholeDay(time) / 7, "week " + tag).normal();
    Operation operation;
    operation.turning = operation.energised = !isOn(fleet, kStoppedKind, time);
    operation.load = fleet.operation.load * (1 + fleet.operation.loadDaily * dailyChance("load " + tag, day));
    operation.loadSwing = fleet.operation.loadSwing;
    operation.mainsHz = fleet.machine.mainsHz + 0.02 * chance.normal();
    operation.outputHz = outputHzAt(fleet.operation, chance);
    operation.beltCreep = 0.4 + 0.2 * dailyChance("creep " + tag, day);
    operation.ambientC = outdoorsC(scenario, time) + fleet.operation.hallC;
    // About 5 % from day to day and from week to week; warm oil and grease are a little quieter.
    operation.levelFactor = exact::exponential(0.05 * dailyChance("level " + tag, day) + 0.04 * weekly);
    const double warm = 0.004 * (operation.ambientC - 12);
    operation.floorFactor =
        exact::exponential(0.06 * dailyChance("floor " + tag, day) + 0.04 * weekly - warm);
    operation.slipFactor = fleet.operation.slipFactor * (1 + 0.002 * (operation.ambientC - 12));
    return operation;
}
}  // namespace

double valueAt(const std::vector<DatedValue>& knots, Instant time) {
    if (knots.empty()) return 0;
    if (time <= knots.front().on) return knots.front().value;
    for (std::size_t i = 1; i < knots.size(); ++i) {
        if (time > knots[i].on) continue;
        const double span = double((knots[i].on - knots[i - 1].on).count());
        const double share = span > 0 ? double((time - knots[i - 1].on).count()) / span : 1;
        return knots[i - 1].value + share * (knots[i].value - knots[i - 1].value);
    }
    return knots.back().value;
}

double outdoorsC(const Scenario& scenario, Instant time) {
    const double day = daysSinceEpoch(time);
    const double season = 10 - 8 * exact::cosine((day - 17) / 365.25);
    const double hour = 3.5 * exact::cosine(day - 0.625);
    double extra = 0;
    for (const HeatWave& wave : scenario.heatWaves)
        if (time >= wave.from && time < wave.to + days(1)) extra += wave.plusK;
    return season + hour + 2.5 * dailyChance("weather", day) + extra;
}

double severityAt(const Story& story, double ambientC, Instant time) {
    const double severity = valueAt(story.severity, time);
    if (!story.hotAboveC) return severity;
    const double share = (ambientC - *story.hotAboveC) / 6;
    return severity * (share < 0 ? 0 : share > 1 ? 1 : share);
}

bool isSilent(const FleetMachine& fleet, Instant time) {
    return isOn(fleet, kSilentKind, time);
}

SimulationSetup setupAt(const Scenario& scenario, const FleetMachine& fleet, const FleetNode& node,
                        const CaptureKind& capture, Instant time, std::uint64_t key) {
    SimulationSetup setup;
    setup.machine = fleet.machine;
    setup.character = characterOf(fleet.machine);
    setup.point = node.point;
    setup.node = node.kind;
    if (capture.rateHz > 0) setup.node.rateHz = capture.rateHz;
    if (capture.bits > 0) setup.node.bits = capture.bits;
    setup.seconds = capture.seconds;
    const std::uint64_t moment = fnv1a(fleet.machine.tag + "@" + formatUtc(time), key ^ kFnvStart);
    setup.operation = operationAt(scenario, fleet, time, moment);
    for (const Story& story : fleet.stories) {
        Condition condition = story.condition;
        condition.severity = severityAt(story, setup.operation.ambientC, time);
        const bool source = condition.kind != kStoppedKind && condition.kind != kSilentKind;
        if (source && condition.severity > 0) setup.conditions.push_back(std::move(condition));
    }
    setup.seed = fnv1a(node.id + "/" + capture.name, moment);
    return setup;
}

}  // namespace fettle::sim
