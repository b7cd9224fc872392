#include "core/simulate/truth.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/simulate/exact_math.h"
#include "core/simulate/fleet_state.h"

namespace fettle::sim {

namespace {
using namespace std::chrono;

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

// The worst noon of each week that is made, heat taken into account.
Json severityByWeek(const Scenario& scenario, const FleetMachine& fleet, const Story& story, int first) {
    Json list = Json::array();
    for (int week = first; week < scenario.weeks; ++week) {
        double most = 0;
        for (int day = 0; day < 7; ++day) {
            const Instant noon = scenario.start + days(7 * week + day) + hours(12);
            most = std::max(most, severityAt(story, outdoorsC(scenario, noon) + fleet.operation.hallC, noon));
        }
        list.push_back(exact::nearestWhole(1000 * most) / 1000);
    }
    return list;
}

Json severityList(const Story& story) {
    Json list = Json::array();
    for (const DatedValue& knot : story.severity)
        list.push_back({{"on", formatDate(knot.on)}, {"value", knot.value}});
    return list;
}

Json storyEntry(const Scenario& scenario, const FleetMachine& fleet, const Story& story, int first) {
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
    entry["severity_by_week"] = severityByWeek(scenario, fleet, story, first);
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

Json captureOf(const FleetNode& node, const CaptureKind& capture) {
    return {{"name", textOrNull(capture.name)},
            {"seconds", capture.seconds},
            {"rate_hz", capture.rateHz > 0 ? capture.rateHz : node.kind.rateHz},
            {"a_week", capture.onDays.empty() ? 7 : capture.onDays.size()}};
}

Json nodesOf(const FleetMachine& fleet) {
    Json nodes = Json::array();
    for (const FleetNode& node : fleet.nodes) {
        Json captures = Json::array();
        for (const CaptureKind& capture : node.captures)
            captures.push_back(captureOf(node, capture));
        nodes.push_back({{"point", fleet.machine.points[node.point].id},
                         {"kind", node.kind.name},
                         {"clock_error_pct", exact::nearestWhole(1e6 * node.kind.clockError) / 1e4},
                         {"captures", captures}});
    }
    return nodes;
}

bool isWanted(const SampleOptions& options, const std::string& tag) {
    return options.machine.empty() || options.machine == tag;
}

// Spoiled recordings, with the files they became.
Json intakeOf(const Scenario& scenario, const SampleOptions& options) {
    const std::vector<PlannedRecording> plan = planRecordings(scenario, options);
    Json list = Json::array();
    for (std::size_t i = 0; i < scenario.intake.size(); ++i) {
        const IntakeTrouble& trouble = scenario.intake[i];
        Json files = Json::array();
        for (const PlannedRecording& planned : plan)
            if (planned.trouble == i)
                files.push_back(
                    fmt::format("recordings/{}/{}.{}", trouble.machine, planned.name, options.extension));
        if (files.empty()) continue;
        list.push_back({{"kind", trouble.kind},
                        {"machine", trouble.machine},
                        {"point", trouble.point},
                        {"from", formatDate(trouble.from)},
                        {"to", formatDate(trouble.to)},
                        {"should", trouble.should},
                        {"text", trouble.text},
                        {"files", files}});
    }
    return list;
}
}  // namespace

Json truthOf(const Scenario& scenario, const SampleOptions& options) {
    Json truth;
    truth["schema"] = 1;
    truth["engine"] = engineOf(scenario);
    truth["site"] = scenario.site;
    const int first = firstWeek(scenario, options);
    truth["from"] = formatDate(scenario.start + days(7 * first));
    truth["to"] = formatDate(scenario.end() - days(1));
    truth["key"] = options.key;
    truth["stories"] = Json::array();
    truth["machines"] = Json::array();
    for (const FleetMachine& fleet : scenario.machines) {
        if (!isWanted(options, fleet.machine.tag)) continue;
        for (const Story& story : fleet.stories)
            truth["stories"].push_back(storyEntry(scenario, fleet, story, first));
        if (fleet.stories.empty()) truth["stories"].push_back(soundEntry(fleet));
        truth["machines"].push_back(
            {{"tag", fleet.machine.tag}, {"about", fleet.about}, {"nodes", nodesOf(fleet)}});
    }
    truth["intake"] = intakeOf(scenario, options);
    return truth;
}

Json eventsOf(const Scenario& scenario, const SampleOptions& options) {
    std::vector<std::pair<Instant, Json>> dated;
    for (const FleetMachine& fleet : scenario.machines) {
        if (!isWanted(options, fleet.machine.tag)) continue;
        for (const SiteEvent& event : fleet.events)
            dated.push_back({event.time,
                             {{"machine", fleet.machine.tag},
                              {"time", formatUtc(event.time)},
                              {"kind", event.kind},
                              {"at", textOrNull(event.at)},
                              {"text", event.text}}});
    }
    std::stable_sort(dated.begin(), dated.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    Json events = Json::array();
    for (auto& [time, event] : dated)
        events.push_back(std::move(event));
    return events;
}

}  // namespace fettle::sim
