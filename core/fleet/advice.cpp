#include "core/fleet/advice.h"

#include <algorithm>

#include "core/machine/resource.h"

namespace fettle {

namespace {

constexpr const char* kAdviceFile = "advice.json";
constexpr int kMostHeads = 50, kMostOfAPart = 1000;
constexpr double kMostHours = 2000;

bool names(const Advice& row, const std::string& fault) {
    return std::find(row.faults.begin(), row.faults.end(), fault) != row.faults.end();
}

// A sentence, or a sentence and its source.
AdviceStep stepOf(const Json& item, const std::string& place, const std::string& usual, JsonReport& report) {
    if (item.is_string()) return {item.get<std::string>(), usual};
    if (item.is_array() && item.size() == 2 && item[0].is_string() && item[1].is_string())
        return {item[0].get<std::string>(), item[1].get<std::string>()};
    report.broken(place, "a step is a sentence, or a sentence and its source");
    return {};
}

std::vector<AdviceStep> stepsOf(JsonObject& row, const char* key, const std::string& usual) {
    std::vector<AdviceStep> steps;
    const Json& all = row.raw(key);
    if (all.is_null()) return steps;
    if (!all.is_array()) row.report().broken(row.place(key), "is not a list");
    for (const Json& item : all)
        steps.push_back(stepOf(item, row.place(key), usual, row.report()));
    return steps;
}

std::vector<AdvicePart> partsOf(JsonObject& row) {
    std::vector<AdvicePart> parts;
    for (const Json* item : row.list("parts")) {
        JsonObject part(*item, row.place("parts"), row.report());
        parts.push_back({part.text("what", true), part.word("from", {"bearing", "belt", "coupling", "motor"}),
                         part.texts("blanks"), part.integer("quantity", 1, kMostOfAPart)});
    }
    return parts;
}

// What is not said here is as in `usual`.
AdviceNeed needOf(JsonObject& row, const char* key, const AdviceNeed& usual) {
    const Json& value = row.raw(key);
    if (value.is_null()) return usual;
    JsonObject object(value, row.place(key), row.report());
    const auto text = [&](const char* name, const std::string& otherwise) {
        return object.has(name) ? object.text(name) : otherwise;
    };
    AdviceNeed need = usual;
    need.state = text("state", usual.state);
    need.trades = text("trades", usual.trades);
    need.lifting = text("lifting", usual.lifting);
    need.access = text("access", usual.access);
    if (object.has("heads")) need.heads = object.integer("heads", 1, kMostHeads);
    if (object.has("tools")) need.tools = object.texts("tools");
    if (object.has("permits")) need.permits = object.texts("permits");
    if (!object.has("hours")) return need;
    const auto hours = object.numbers("hours", 2, 0, kMostHours);
    if (hours.size() != 2 || hours[0] > hours[1])
        row.report().broken(object.place("hours"), "must be the fewest and the most hours");
    else
        need.hoursLow = hours[0], need.hoursHigh = hours[1];
    return need;
}

Advice adviceOf(JsonObject& row, const std::string& usual) {
    Advice advice;
    advice.faults = row.texts("faults");
    advice.job = row.text("job", true);
    advice.inspect = row.text("inspect", true);
    AdviceNeed said;
    said.state = row.text("state", true);
    said.trades = row.text("trades", true);
    advice.need = needOf(row, "need", said);
    advice.inspectNeed = needOf(row, "inspect_need", advice.need);
    advice.alignment = row.boolean("alignment").value_or(false);
    advice.parts = partsOf(row);
    advice.steps = stepsOf(row, "steps", usual);
    advice.inspectSteps = stepsOf(row, "inspect_steps", usual);
    advice.until = row.text("until", true);
    advice.stop = row.text("stop", true);
    advice.left = row.text("left", true);
    advice.measure = row.text("measure", true);
    advice.cured = row.text("cured", true);
    if (advice.steps.empty()) row.report().broken(row.place("steps"), "at least one step is needed");
    return advice;
}

// A table that the site edited before there was a row for this.
Advice byHandFrom(Advice any) {
    any.job = any.inspect = "Look at {machine}";
    return any;
}

}  // namespace

Result<AdviceTable> AdviceTable::load() {
    const auto json = loadResource(kAdviceFile);
    if (!json) return fail(json.error());
    JsonReport report{kAdviceFile, {}, {}};
    AdviceTable table;
    {
        JsonObject root(*json, "", report);
        root.raw("schema");
        root.raw("about");
        const std::string usual = root.text("default_source", true);
        table.partBoxes_ = root.has("part_boxes")
                               ? root.texts("part_boxes")
                               : std::vector<std::string>{"stock number", "on hand", "lead time"};
        std::size_t count = 0;
        for (const Json* item : root.list("rows")) {
            JsonObject row(*item, "/rows/" + std::to_string(count++), report);
            table.rows_.push_back(adviceOf(row, usual));
        }
        if (root.has("by_hand")) {
            JsonObject row(root.raw("by_hand"), "/by_hand", report);
            table.byHand_ = adviceOf(row, usual);
        } else if (!table.rows_.empty()) {
            table.byHand_ = byHandFrom(table.rows_.back());
        }
    }
    if (report.error) return fail(*report.error);
    if (table.rows_.empty() || !names(table.rows_.back(), "*"))
        return fail(ErrorKind::Invalid, kAdviceFile, "/rows",
                    "the last row must be for any other fault, \"*\"");
    return table;
}

const Advice& AdviceTable::of(const std::string& fault) const {
    for (const Advice& row : rows_)
        if (names(row, fault)) return row;
    return rows_.back();
}

}  // namespace fettle
