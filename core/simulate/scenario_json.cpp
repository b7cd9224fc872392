#include <fmt/format.h>

#include <algorithm>

#include "core/simulate/condition_table.h"
#include "core/simulate/random_stream.h"
#include "core/simulate/scenario.h"

namespace fettle::sim {

namespace {
using std::chrono::weekday;
using NodeKinds = std::map<std::string, NodeKind>;

std::string itemPlace(const JsonObject& object, const std::string& key, std::size_t i) {
    return fmt::format("{}/{}", object.place(key), i);
}

Instant dateOf(JsonObject& object, const std::string& key) {
    const std::string text = object.text(key, true);
    const auto time = parseUtc(text + "T00:00:00Z");
    if (!time) object.report().broken(object.place(key), "a date like 2026-01-05 is expected");
    return time.value_or(Instant{});
}

NodeKind readKind(const Json& value, const std::string& place, JsonReport& report) {
    JsonObject object(value, place, report);
    NodeKind kind;
    kind.name = object.text("name", true);
    kind.rateHz = object.number("rate_hz", 100, 200000, true).value_or(kind.rateHz);
    kind.bits = object.integer("bits", 16, 24, true).value_or(kind.bits);
    if (kind.bits != 16 && kind.bits != 24) report.broken(object.place("bits"), "must be 16 or 24");
    kind.rangeG = object.number("range_g", 0.1, 1000, true).value_or(kind.rangeG);
    kind.noisePerRtHz = object.number("noise_g_per_rt_hz", 0, 0.1, true).value_or(kind.noisePerRtHz);
    kind.mountHz = object.number("mount_hz", 0, 100000).value_or(0);
    kind.mountDamping = object.number("mount_damping", 0.005, 0.7).value_or(kind.mountDamping);
    kind.gravity = object.boolean("gravity").value_or(false);
    kind.aliasShare = object.number("alias_share", 0, 1).value_or(0);
    return kind;
}

std::vector<weekday> readDays(JsonObject& object) {
    static const std::vector<std::string> names{"sunday",   "monday", "tuesday", "wednesday",
                                                "thursday", "friday", "saturday"};
    std::vector<weekday> days;
    for (const std::string& word : object.texts("on")) {
        const auto found = std::find(names.begin(), names.end(), word);
        if (found == names.end()) object.report().broken(object.place("on"), "days of the week are expected");
        days.push_back(weekday(unsigned(found - names.begin()) % 7));
    }
    return days;
}

CaptureKind readCapture(const Json& value, const std::string& place, JsonReport& report) {
    JsonObject object(value, place, report);
    CaptureKind capture;
    capture.name = object.text("name");
    capture.seconds = object.number("seconds", 0.1, 600, true).value_or(4);
    capture.rateHz = object.number("rate_hz", 100, 200000).value_or(0);
    capture.bits = object.integer("bits", 16, 24).value_or(0);
    if (capture.bits != 0 && capture.bits != 16 && capture.bits != 24)
        report.broken(object.place("bits"), "must be 16 or 24");
    capture.onDays = readDays(object);
    return capture;
}

FleetNode readNode(const Json& value, const std::string& place, const NodeKinds& kinds,
                   const Machine& machine, JsonReport& report) {
    JsonObject object(value, place, report);
    FleetNode node;
    const std::string point = object.text("point", true), kind = object.text("kind", true);
    for (std::size_t i = 0; i < machine.points.size(); ++i)
        if (machine.points[i].id == point) node.point = i;
    if (machine.points[node.point].id != point)
        report.broken(object.place("point"), "the machine has no such point");
    const auto found = kinds.find(kind);
    if (found == kinds.end())
        report.broken(object.place("kind"), "is not a node kind of scenario.json");
    else
        node.kind = found->second;
    node.id = object.text("id", true);
    node.kind.clockError = object.number("clock_error_pct", -10, 10).value_or(0) / 100;
    node.givesSpeed = object.boolean("gives_speed").value_or(false);
    node.givesLoad = object.boolean("gives_load").value_or(false);
    node.simultaneous = object.boolean("simultaneous").value_or(true);
    for (const Json* item : object.list("captures"))
        node.captures.push_back(
            readCapture(*item, itemPlace(object, "captures", node.captures.size()), report));
    if (node.captures.empty()) report.broken(object.place("captures"), "at least one is required");
    return node;
}

OperationPlan readOperation(const Json& value, const std::string& place, JsonReport& report) {
    JsonObject object(value, place, report);
    OperationPlan plan;
    plan.load = object.number("load", 0, 1.5).value_or(plan.load);
    plan.loadSwing = object.number("load_swing", 0, 0.5).value_or(plan.loadSwing);
    plan.loadDaily = object.number("load_daily", 0, 0.5).value_or(plan.loadDaily);
    plan.hallC = object.number("hall_c", -20, 40).value_or(0);
    plan.slipFactor = object.number("slip_factor", 0.5, 1.5).value_or(1);
    if (object.has("output_hz")) plan.outputHz = object.numbers("output_hz", 2, 1, 400);
    return plan;
}

std::vector<DatedValue> readSeverity(JsonObject& object) {
    std::vector<DatedValue> knots;
    for (const Json* item : object.list("severity")) {
        JsonObject knot(*item, itemPlace(object, "severity", knots.size()), object.report());
        const Instant on = dateOf(knot, "on");
        if (!knots.empty() && on < knots.back().on) knot.report().broken(knot.place("on"), "dates must rise");
        knots.push_back({on, knot.number("value", 0, 1, true).value_or(0)});
    }
    if (knots.empty()) object.report().broken(object.place("severity"), "at least one date is required");
    return knots;
}

Condition readCondition(JsonObject& object, const Machine& machine) {
    Condition condition;
    condition.kind = object.text("kind", true);
    const bool state = condition.kind == kStoppedKind || condition.kind == kSilentKind;
    if (!state && !conditionRow(condition.kind))
        object.report().broken(object.place("kind"), "is not a kind of condition");
    condition.at = object.text("at");
    if (!condition.at.empty() && !machine.placeOf(condition.at))
        object.report().broken(object.place("at"), "is not a place of this machine");
    condition.cageShift = object.number("cage_shift", -0.02, 0.02).value_or(condition.cageShift);
    condition.slipJitter = object.number("slip_jitter", 0, 0.05).value_or(condition.slipJitter);
    condition.rpm = object.number("rpm", 0, 20000).value_or(0);
    condition.levelMmS = object.number("level_mm_s", 0, 100).value_or(0);
    condition.blades = object.integer("blades", 0, 1000).value_or(0);
    return condition;
}

Story readStory(const Json& value, const std::string& place, const Machine& machine, JsonReport& report) {
    JsonObject object(value, place, report);
    Story story;
    story.condition = readCondition(object, machine);
    story.severity = readSeverity(object);
    story.hotAboveC = object.number("hot_above_c", -50, 60);
    story.text = object.text("story", true);
    story.fault = object.text("fault");
    story.decoy = object.boolean("decoy").value_or(false);
    story.expect = object.texts("expect");
    story.mustNot = object.texts("must_not");
    story.unseen = object.text("unseen");
    story.visibleNow = object.boolean("visible_now").value_or(false);
    return story;
}

DenseSpan readDense(const Json& value, const std::string& place, JsonReport& report) {
    JsonObject object(value, place, report);
    const Instant from = dateOf(object, "from"), to = dateOf(object, "to");
    return {from, to, object.integer("per_week", 1, 2000, true).value_or(7)};
}

Instant momentOf(JsonObject& object, const std::string& key) {
    const auto time = parseUtc(object.text(key, true));
    if (!time) object.report().broken(object.place(key), "a time like 2026-01-05T08:00:00Z is expected");
    return time.value_or(Instant{});
}

SiteEvent readEvent(const Json& value, const std::string& place, const Machine& machine, JsonReport& report) {
    static const std::vector<std::string> kinds{"repair",   "greasing",   "part", "moved_node",
                                                "cleaning", "inspection", "other"};
    JsonObject object(value, place, report);
    SiteEvent event;
    event.time = momentOf(object, "time");
    event.kind = object.word("kind", kinds, true);
    event.at = object.text("at");
    if (!event.at.empty() && !machine.placeOf(event.at))
        report.broken(object.place("at"), "is not a place of this machine");
    event.text = object.text("text", true);
    return event;
}

IntakeTrouble readTrouble(const Json& value, const std::string& place, JsonReport& report) {
    JsonObject object(value, place, report);
    IntakeTrouble trouble;
    trouble.kind = object.word("kind", {kClockReset, kCutOff, kDuplicate, kLate}, true);
    trouble.machine = object.text("machine", true);
    trouble.point = object.text("point", true);
    trouble.from = dateOf(object, "from");
    trouble.to = dateOf(object, "to");
    if (trouble.kind == kLate) trouble.received = momentOf(object, "received");
    trouble.should = object.word("should", {"refuse", "park", "recognise", "take"}, true);
    trouble.text = object.text("text", true);
    return trouble;
}

// A file that names what is not there would quietly spoil nothing.
Status checkIntake(const Scenario& scenario, const std::string& file) {
    for (std::size_t i = 0; i < scenario.intake.size(); ++i) {
        const IntakeTrouble& trouble = scenario.intake[i];
        const auto has = [&](const FleetMachine& fleet) {
            const auto& points = fleet.machine.points;
            return fleet.machine.tag == trouble.machine &&
                   std::any_of(points.begin(), points.end(),
                               [&](const auto& point) { return point.id == trouble.point; });
        };
        if (std::none_of(scenario.machines.begin(), scenario.machines.end(), has))
            return fail(ErrorKind::Invalid, file, fmt::format("/intake/{}", i),
                        "names a machine or point that is not there");
    }
    return {};
}

Result<FleetMachine> readMachine(const std::string& text, const std::string& file, const NodeKinds& kinds,
                                 std::vector<std::string>& warnings) {
    const auto json = parseJson(text, file);
    if (!json) return fail(json.error());
    JsonReport report{file, {}, {}};
    FleetMachine fleet;
    {
        JsonObject object(*json, "", report);
        fleet.about = object.text("about");
        fleet.description = object.raw("machine");
        auto parsed = parseMachine(fleet.description.dump(), file + ": /machine");
        if (!parsed) return fail(parsed.error());
        warnings.insert(warnings.end(), parsed->warnings.begin(), parsed->warnings.end());
        fleet.machine = std::move(parsed->machine);
        if (object.has("operation"))
            fleet.operation = readOperation(object.raw("operation"), object.place("operation"), report);
        for (const Json* item : object.list("nodes"))
            fleet.nodes.push_back(readNode(*item, itemPlace(object, "nodes", fleet.nodes.size()), kinds,
                                           fleet.machine, report));
        for (const Json* item : object.list("denser"))
            fleet.dense.push_back(readDense(*item, itemPlace(object, "denser", fleet.dense.size()), report));
        for (const Json* item : object.list("stories"))
            fleet.stories.push_back(
                readStory(*item, itemPlace(object, "stories", fleet.stories.size()), fleet.machine, report));
        for (const Json* item : object.list("events"))
            fleet.events.push_back(
                readEvent(*item, itemPlace(object, "events", fleet.events.size()), fleet.machine, report));
    }
    if (report.error) return fail(*report.error);
    warnings.insert(warnings.end(), report.warnings.begin(), report.warnings.end());
    return fleet;
}

struct Heading {
    Scenario scenario;
    NodeKinds kinds;
    std::vector<std::string> tags;
};

Result<Heading> readHeading(const std::string& text, const std::string& file) {
    const auto json = parseJson(text, file);
    if (!json) return fail(json.error());
    JsonReport report{file, {}, {}};
    Heading heading;
    {
        JsonObject object(*json, "", report);
        heading.scenario.site = object.text("site", true);
        heading.scenario.start = dateOf(object, "start");
        heading.scenario.weeks = object.integer("weeks", 1, 520, true).value_or(1);
        std::size_t i = 0;
        for (const Json* item : object.list("node_kinds")) {
            const NodeKind kind = readKind(*item, itemPlace(object, "node_kinds", i++), report);
            heading.kinds[kind.name] = kind;
        }
        for (const Json* item : object.list("heat_waves")) {
            JsonObject wave(*item, itemPlace(object, "heat_waves", heading.scenario.heatWaves.size()),
                            report);
            const Instant from = dateOf(wave, "from"), to = dateOf(wave, "to");
            heading.scenario.heatWaves.push_back(
                {from, to, wave.number("plus_k", -40, 40, true).value_or(0)});
        }
        for (const Json* item : object.list("intake"))
            heading.scenario.intake.push_back(
                readTrouble(*item, itemPlace(object, "intake", heading.scenario.intake.size()), report));
        heading.tags = object.texts("machines");
    }
    if (report.error) return fail(*report.error);
    heading.scenario.warnings = report.warnings;
    return heading;
}
}  // namespace

Result<Scenario> loadScenario(const FileSystem& files, const std::string& folder) {
    const std::string file = folder + "/scenario.json";
    const auto text = files.read(file);
    if (!text) return fail(text.error());
    auto heading = readHeading(*text, file);
    if (!heading) return fail(heading.error());
    Scenario scenario = std::move(heading->scenario);
    scenario.checksum = fnv1a(*text);
    for (const std::string& tag : heading->tags) {
        const std::string path = fmt::format("{}/{}.json", folder, tag);
        const auto machineText = files.read(path);
        if (!machineText) return fail(machineText.error());
        auto machine = readMachine(*machineText, path, heading->kinds, scenario.warnings);
        if (!machine) return fail(machine.error());
        if (machine->machine.tag != tag)
            return fail(ErrorKind::Invalid, path, "/machine/tag", "must be the file's name");
        scenario.checksum = fnv1a(*machineText, scenario.checksum);
        scenario.machines.push_back(std::move(*machine));
    }
    if (auto sound = checkIntake(scenario, file); !sound) return fail(sound.error());
    return scenario;
}

}  // namespace fettle::sim
