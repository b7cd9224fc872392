#include "core/simulate/sample_plan.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/simulate/exact_math.h"
#include "core/simulate/fleet_state.h"
#include "core/simulate/random_stream.h"

namespace fettle::sim {

namespace {
using namespace std::chrono;
constexpr int kSimulatorVersion = 1;  // raised whenever the same setup gives other samples
constexpr std::int64_t kWeekSeconds = std::int64_t(7) * 86400;
constexpr seconds kBetween{20};      // from the end of one capture of a node to the next
constexpr seconds kAfterUsual{300};  // captures with days of their own follow the usual one
constexpr seconds kSending{9};       // from first sample to arrival

int recordingsIn(const FleetMachine& fleet, Instant monday, int perWeek) {
    for (const DenseSpan& span : fleet.dense)
        if (monday + days(7) > span.from && monday <= span.to) perWeek = std::max(perWeek, span.perWeek);
    return perWeek;
}

// "2026-01-08T114512Z_M-DE_long"
std::string nameOf(Instant time, const std::string& point, const std::string& capture) {
    std::string stamp = formatUtc(time);
    stamp.erase(std::remove(stamp.begin(), stamp.end(), ':'), stamp.end());
    return stamp + "_" + point + (capture.empty() ? "" : "_" + capture);
}

Instant timeOf(const FleetMachine& fleet, const FleetNode& node, Instant monday, int slot, int slots) {
    const std::int64_t middle = kWeekSeconds * (2 * std::int64_t(slot) + 1) / (2 * std::int64_t(slots));
    const std::int64_t most = std::min<std::int64_t>(7200, kWeekSeconds / slots / 4);
    RandomStream chance(fnv1a(fleet.machine.tag + node.id), formatUtc(monday + seconds(middle)));
    return monday + seconds(middle + std::int64_t(chance.between(double(-most), double(most))));
}

struct NodeWeek {
    const Scenario& scenario;
    std::size_t machine, node;
    Instant monday;
    std::vector<PlannedRecording>& plan;

    const FleetMachine& fleet() const { return scenario.machines[machine]; }
    const FleetNode& fleetNode() const { return fleet().nodes[node]; }

    void add(Instant time, std::size_t capture) const {
        if (isSilent(fleet(), time)) return;
        const auto count = (time - scenario.start) / seconds(10);
        PlannedRecording planned;
        planned.machine = machine;
        planned.node = node;
        planned.capture = capture;
        planned.time = planned.stated = time;
        planned.received = time + kSending;
        planned.name =
            nameOf(time, fleet().machine.points[fleetNode().point].id, fleetNode().captures[capture].name);
        planned.captureId = fmt::format("{}-{:07}", fleetNode().id, count);
        plan.push_back(std::move(planned));
    }

    // The captures that `wanted` picks, one after the other.
    template <class Rule>
    void addInTurn(Instant time, Rule wanted) const {
        const auto& captures = fleetNode().captures;
        for (std::size_t c = 0; c < captures.size(); ++c) {
            if (!wanted(captures[c])) continue;
            add(time, c);
            time += seconds(std::int64_t(captures[c].seconds)) + kBetween;
        }
    }
};

void planNode(const NodeWeek& week, int slots) {
    for (int slot = 0; slot < slots; ++slot)
        week.addInTurn(timeOf(week.fleet(), week.fleetNode(), week.monday, slot, slots),
                       [](const CaptureKind& capture) { return capture.onDays.empty(); });
    for (int day = 0; day < 7; ++day) {
        const weekday today(floor<days>(week.monday + days(day)));
        week.addInTurn(timeOf(week.fleet(), week.fleetNode(), week.monday, day, 7) + kAfterUsual,
                       [today](const CaptureKind& capture) {
                           const auto& on = capture.onDays;
                           return std::find(on.begin(), on.end(), today) != on.end();
                       });
    }
}

bool befalls(const Scenario& scenario, const IntakeTrouble& trouble, const PlannedRecording& planned) {
    const FleetMachine& fleet = scenario.machines[planned.machine];
    return fleet.machine.tag == trouble.machine &&
           fleet.machine.points[fleet.nodes[planned.node].point].id == trouble.point &&
           planned.time >= trouble.from && planned.time < trouble.to + days(1);
}

// The recording as it arrives; one that comes twice is followed by its copy.
void spoil(const Scenario& scenario, std::size_t index, PlannedRecording& planned,
           std::vector<PlannedRecording>& copies) {
    const IntakeTrouble& trouble = scenario.intake[index];
    const FleetMachine& fleet = scenario.machines[planned.machine];
    const FleetNode& node = fleet.nodes[planned.node];
    if (trouble.kind == kDuplicate) {
        copies.push_back(planned);
        copies.back().name += "_again";
        copies.back().trouble = index;
        return;
    }
    planned.trouble = index;
    planned.received = trouble.received.value_or(planned.received);
    if (trouble.kind != kClockReset) return;
    planned.stated = Instant{} + (planned.time - trouble.from);
    planned.name =
        nameOf(planned.stated, fleet.machine.points[node.point].id, node.captures[planned.capture].name);
}

void spoilAll(const Scenario& scenario, std::vector<PlannedRecording>& plan) {
    std::vector<PlannedRecording> copies;
    for (PlannedRecording& planned : plan)
        for (std::size_t i = 0; i < scenario.intake.size(); ++i)
            if (befalls(scenario, scenario.intake[i], planned)) spoil(scenario, i, planned, copies);
    plan.insert(plan.end(), copies.begin(), copies.end());
}

// A given speed is a reading of its own, a few hundredths of a per cent off, to a tenth of an r/min.
double givenRpm(const PlannedRecording& planned, const SimulatedRecording& recording) {
    RandomStream chance(fnv1a(formatUtc(planned.time)), planned.captureId);
    return exact::nearestWhole(600 * recording.shaftHz * (1 + 0.0002 * chance.normal())) / 10;
}

Json channelsOf(const SimulatedRecording& recording) {
    Json channels = Json::array();
    for (const SimulatedChannel& channel : recording.channels)
        channels.push_back({{"name", channel.name}, {"unit", channel.unit}, {"scale", channel.scale}});
    return channels;
}

}  // namespace

int firstWeek(const Scenario& scenario, const SampleOptions& options) {
    return options.weeks > 0 && options.weeks < scenario.weeks ? scenario.weeks - options.weeks : 0;
}

std::vector<PlannedRecording> planRecordings(const Scenario& scenario, const SampleOptions& options) {
    std::vector<PlannedRecording> plan;
    for (std::size_t m = 0; m < scenario.machines.size(); ++m) {
        const FleetMachine& fleet = scenario.machines[m];
        if (!options.machine.empty() && fleet.machine.tag != options.machine) continue;
        for (int week = firstWeek(scenario, options); week < scenario.weeks; ++week) {
            const Instant monday = scenario.start + days(7 * week);
            const int slots = recordingsIn(fleet, monday, std::max(1, options.perWeek));
            for (std::size_t n = 0; n < fleet.nodes.size(); ++n)
                planNode({scenario, m, n, monday, plan}, slots);
        }
    }
    spoilAll(scenario, plan);
    std::stable_sort(plan.begin(), plan.end(), [](const PlannedRecording& a, const PlannedRecording& b) {
        return a.machine != b.machine ? a.machine < b.machine : a.time < b.time;
    });
    return plan;
}

SimulationSetup setupOf(const Scenario& scenario, const PlannedRecording& planned, std::uint64_t key) {
    const FleetMachine& fleet = scenario.machines.at(planned.machine);
    const FleetNode& node = fleet.nodes.at(planned.node);
    return setupAt(scenario, fleet, node, node.captures.at(planned.capture), planned.time, key);
}

std::string engineOf(const Scenario& scenario) {
    return fmt::format("simulate-{} {:016x}", kSimulatorVersion, scenario.checksum);
}

Json sidecarOf(const Scenario& scenario, const PlannedRecording& planned,
               const SimulatedRecording& recording) {
    const FleetMachine& fleet = scenario.machines.at(planned.machine);
    const FleetNode& node = fleet.nodes.at(planned.node);
    Json sidecar;
    sidecar["schema"] = 1;
    sidecar["engine"] = engineOf(scenario);
    sidecar["machine"] = fleet.machine.tag;
    sidecar["point"] = fleet.machine.points[node.point].id;
    sidecar["time"] = formatUtc(planned.stated);
    sidecar["time_source"] = "node";
    sidecar["received"] = formatUtc(planned.received);
    sidecar["capture"] = planned.captureId;
    sidecar["simultaneous"] = node.simultaneous ? Json(true) : Json("unknown");
    if (node.givesSpeed) sidecar["speed_rpm"] = givenRpm(planned, recording);
    if (fleet.machine.driver.inverter && recording.supplyHz > 0)
        sidecar["output_hz"] = exact::nearestWhole(10 * recording.supplyHz) / 10;
    sidecar["frame_temp_c"] = recording.frameTempC;
    sidecar["ambient_temp_c"] = recording.ambientTempC;
    if (node.givesLoad && recording.shaftHz > 0)
        sidecar["operating"] = {{"load_pct", exact::nearestWhole(100 * recording.load)}};
    sidecar["channels"] = channelsOf(recording);
    return sidecar;
}

}  // namespace fettle::sim
