#include "app/cli/event_list.h"

#include <fmt/format.h>

#include <map>

#include "app/cli/answer.h"
#include "app/cli/load.h"
#include "core/base/text.h"
#include "core/fleet/grease.h"

namespace fettle {

namespace {

using Heard = std::map<std::int64_t, GreasingHeard>;  // by event

Json orNull(const std::optional<double>& value) {
    return value ? Json(*value) : Json();
}

Json toJson(const GreasingHeard& heard) {
    return {{"where", heard.where.empty() ? Json() : Json(heard.where)},
            {"course", toText(heard.witness.course)},
            {"words", heard.witness.words},
            {"before_g", orNull(heard.witness.before)},
            {"after_g", orNull(heard.witness.after)},
            {"later_g", orNull(heard.witness.later)}};
}

Json toJson(const Event& event, const Heard& heard) {
    const auto found = heard.find(event.id);
    return {{"machine", event.machine},
            {"time", formatUtc(event.time)},
            {"kind", event.kind},
            {"at", event.at},
            {"text", event.text},
            {"by", event.by},
            {"heard", found == heard.end() ? Json() : toJson(found->second)}};
}

std::string lineOf(const Event& event, const Heard& heard) {
    std::string line = fmt::format("{}  {}", formatUtc(event.time), event.kind);
    if (!event.at.empty()) line += "  " + oneLine(event.at);
    if (!event.text.empty()) line += "  " + oneLine(event.text);
    line += "\n";
    const auto found = heard.find(event.id);
    if (found == heard.end()) return line;
    const std::string& where = found->second.where;
    return line + "   " + (where.empty() ? "" : "at " + where + ": ") + found->second.witness.words + "\n";
}

}  // namespace

int answerEventList(FleetFile& fleet, const std::string& machine, bool json) {
    const auto events = fleet.log().events(machine);
    if (!events) return couldNotRun(events.error());
    const auto greasings = greasingsHeard(fleet, machine);
    if (!greasings) return couldNotRun(greasings.error());
    Heard heard;
    for (const GreasingHeard& one : *greasings)
        heard[one.event] = one;
    Json all = headedJson();
    all["events"] = Json::array();
    std::string text;
    for (const Event& event : *events) {
        all["events"].push_back(toJson(event, heard));
        text += lineOf(event, heard);
    }
    if (json)
        printJson(all);
    else
        print(text.empty() ? "no events\n" : text);
    return kDone;
}

}  // namespace fettle
