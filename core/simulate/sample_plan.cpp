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

int firstWeek(const Scenario& scenario, const SampleOptions& options) {
    return options.weeks > 0 && options.weeks < scenario.weeks ? scenario.weeks - options.weeks : 0;
}

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

void planWeek(const Scenario& scenario, std::size_t m, Instant monday, int perWeek,
              std::vector<PlannedRecording>& plan) {
    const FleetMachine& fleet = scenario.machines[m];
    const int slots = recordingsIn(fleet, monday, perWeek);
    for (int slot = 0; slot < slots; ++slot)
        for (std::size_t n = 0; n < fleet.nodes.size(); ++n) {
            const FleetNode& node = fleet.nodes[n];
            Instant time = timeOf(fleet, node, monday, slot, slots);
            if (isSilent(fleet, time)) continue;
            for (std::size_t c = 0; c < node.captures.size(); ++c) {
                const std::string& point = fleet.machine.points[node.point].id;
                const auto count = time.time_since_epoch().count() / 60000 % 1000000;
                plan.push_back({m, n, c, time, nameOf(time, point, node.captures[c].name),
                                fmt::format("{}-{:06}", node.id, count)});
                time += seconds(std::int64_t(node.captures[c].seconds) + 20);
            }
        }
}

// A given speed is a reading of its own, a few hundredths of a per cent off, to a tenth of an r/min.
double givenRpm(const PlannedRecording& planned, const SimulatedRecording& recording) {
    RandomStream chance(fnv1a(planned.name), planned.captureId);
    return exact::nearestWhole(600 * recording.shaftHz * (1 + 0.0002 * chance.normal())) / 10;
}

Json channelsOf(const SimulatedRecording& recording) {
    Json channels = Json::array();
    for (const SimulatedChannel& channel : recording.channels)
        channels.push_back({{"name", channel.name}, {"unit", channel.unit}, {"scale", channel.scale}});
    return channels;
}

Json textOrNull(const std::string& text) {
    return text.empty() ? Json(nullptr) : Json(text);
}

// First and last moment with a severity above 0; no end where it lasts to the scenario's.
void tellDates(const Story& story, Json& entry) {
    const DatedValue* first = nullptr;
    const DatedValue* last = nullptr;
    for (std::size_t i = 0; i < story.severity.size(); ++i) {
        if (story.severity[i].value <= 0) continue;
        if (!first) first = &story.severity[i == 0 ? 0 : i - 1];
        last = i + 1 < story.severity.size() ? &story.severity[i + 1] : nullptr;
    }
    entry["from"] = first ? Json(formatDate(first->on)) : Json(nullptr);
    entry["to"] = last ? Json(formatDate(last->on)) : Json(nullptr);
}

// In the middle of the last week.
double severityAtEnd(const Scenario& scenario, const FleetMachine& fleet, const Story& story) {
    const Instant time = scenario.end() - hours(84);
    return severityAt(story, outdoorsC(scenario, time) + fleet.operation.hallC, time);
}

Json severityList(const Story& story) {
    Json list = Json::array();
    for (const DatedValue& knot : story.severity)
        list.push_back({{"on", formatDate(knot.on)}, {"value", knot.value}});
    return list;
}

Json storyEntry(const Scenario& scenario, const FleetMachine& fleet, const Story& story) {
    Json entry;
    entry["tag"] = fleet.machine.tag;
    entry["story"] = story.text;
    entry["fault"] = textOrNull(story.fault);
    entry["at"] = textOrNull(story.condition.at);
    tellDates(story, entry);
    entry["decoy"] = story.decoy;
    entry["kind"] = story.condition.kind;
    entry["severity"] = exact::nearestWhole(1000 * severityAtEnd(scenario, fleet, story)) / 1000;
    entry["severity_by_date"] = severityList(story);
    if (story.hotAboveC) entry["hot_above_c"] = *story.hotAboveC;
    if (story.fault.starts_with("bearing_")) entry["cage_shift"] = story.condition.cageShift;
    entry["expect"] = story.expect;
    entry["must_not"] = story.mustNot;
    entry["unseen_reason"] = textOrNull(story.unseen);
    entry["visible_now"] = story.visibleNow;
    return entry;
}

Json soundEntry(const FleetMachine& fleet) {
    Json entry;
    entry["tag"] = fleet.machine.tag;
    entry["story"] = fleet.about.empty() ? "sound throughout" : fleet.about;
    for (const char* none : {"fault", "at", "from", "to"})
        entry[none] = nullptr;
    entry["decoy"] = false;
    entry["expect"] = Json::array();
    entry["must_not"] = Json::array();
    entry["unseen_reason"] = nullptr;
    entry["visible_now"] = false;
    return entry;
}

Json nodesOf(const FleetMachine& fleet) {
    Json nodes = Json::array();
    for (const FleetNode& node : fleet.nodes)
        nodes.push_back({{"point", fleet.machine.points[node.point].id},
                         {"kind", node.kind.name},
                         {"clock_error_pct", exact::nearestWhole(1e6 * node.kind.clockError) / 1e4}});
    return nodes;
}
}  // namespace

std::vector<PlannedRecording> planRecordings(const Scenario& scenario, const SampleOptions& options) {
    std::vector<PlannedRecording> plan;
    for (std::size_t m = 0; m < scenario.machines.size(); ++m) {
        if (!options.machine.empty() && scenario.machines[m].machine.tag != options.machine) continue;
        for (int week = firstWeek(scenario, options); week < scenario.weeks; ++week)
            planWeek(scenario, m, scenario.start + days(7 * week), std::max(1, options.perWeek), plan);
    }
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
    sidecar["time"] = formatUtc(planned.time);
    sidecar["time_source"] = "node";
    sidecar["received"] = formatUtc(planned.time + seconds(9));
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

Json truthOf(const Scenario& scenario, const SampleOptions& options) {
    Json truth;
    truth["schema"] = 1;
    truth["engine"] = engineOf(scenario);
    truth["site"] = scenario.site;
    truth["from"] = formatDate(scenario.start + days(7 * firstWeek(scenario, options)));
    truth["to"] = formatDate(scenario.end() - days(1));
    truth["key"] = options.key;
    truth["stories"] = Json::array();
    truth["machines"] = Json::array();
    for (const FleetMachine& fleet : scenario.machines) {
        if (!options.machine.empty() && fleet.machine.tag != options.machine) continue;
        for (const Story& story : fleet.stories)
            truth["stories"].push_back(storyEntry(scenario, fleet, story));
        if (fleet.stories.empty()) truth["stories"].push_back(soundEntry(fleet));
        truth["machines"].push_back(
            {{"tag", fleet.machine.tag}, {"about", fleet.about}, {"nodes", nodesOf(fleet)}});
    }
    return truth;
}

}  // namespace fettle::sim
