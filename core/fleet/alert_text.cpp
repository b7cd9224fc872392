#include "core/fleet/alert_text.h"

#include <fmt/format.h>

#include "core/base/json_parts.h"
#include "core/base/text.h"
#include "core/diagnosis/settings.h"
#include "core/fleet/site_calendar.h"

namespace fettle {

namespace {

constexpr const char* kCaution =
    "Guards stay fitted while somebody listens and measures. Before any work: isolate, lock out and prove "
    "every energy source dead; site rules, local codes and licensed practice come first. This is advice, not "
    "a permit to work.\n";

std::string machineName(const Alert& alert) {
    std::string name = oneLine(alert.machine, 120);
    if (!alert.service.empty()) name += " (" + oneLine(alert.service, 120) + ")";
    return name;
}

std::string stateWords(const Alert& alert, const std::string& zone) {
    if (!alert.acknowledged) return "open";
    return fmt::format("acknowledged by {} on {}: {}", oneLine(alert.acknowledgedBy, 120),
                       momentIn(zone, *alert.acknowledged), oneLine(alert.acknowledgedWhy, 400));
}

std::string paragraphOf(const ToldAlert& told, const std::string& zone) {
    const Alert& alert = told.alert;
    std::string text = machineName(alert) + "\n";
    text += fmt::format("  {}\n", oneLine(alert.words, 600));
    if (told.event == "grown") text += "  Told again because it has grown.\n";
    text += fmt::format("  Since {}; alert {} of rule \"{}\"\n", momentIn(zone, alert.since), alert.id,
                        oneLine(alert.rule, 120));
    if (!alert.area.empty()) text += "  Area " + oneLine(alert.area, 120);
    if (!alert.criticality.empty())
        text += (alert.area.empty() ? "  Criticality " : ", criticality ") + oneLine(alert.criticality, 10);
    if (!alert.area.empty() || !alert.criticality.empty()) text += "\n";
    text += "  State: " + stateWords(alert, zone) + "\n";
    if (alert.unit == "dban")
        text +=
            "  Decibans say how unlike chance the lines are: 30 are reached by chance lines in at most 1 "
            "recording of 1,000. They are not the odds that the fault is there.\n";
    return text + "\n";
}

std::string subjectOf(const std::vector<ToldAlert>& alerts, const std::string& site) {
    const std::string where = site.empty() ? "" : oneLine(site, 80) + ": ";
    if (alerts.size() == 1)
        return where + oneLine(alerts[0].alert.machine, 80) + ": " + oneLine(alerts[0].alert.words, 140);
    return fmt::format("{}{} alerts, the first of {}", where, alerts.size(),
                       alerts.empty() ? "none" : oneLine(alerts[0].alert.machine, 80));
}

Json timeOrNull(const std::optional<Instant>& time) {
    return time ? Json(formatUtc(*time)) : Json();
}

}  // namespace

AlertLetter letterOf(const std::vector<ToldAlert>& alerts, const std::string& site, const std::string& zone) {
    AlertLetter letter{subjectOf(alerts, site), {}};
    for (const ToldAlert& told : alerts)
        letter.body += paragraphOf(told, zone);
    letter.body += kCaution;
    return letter;
}

AlertLetter testLetter(const std::string& site, const std::string& zone, Instant now) {
    return {(site.empty() ? "" : oneLine(site, 80) + ": ") + "test of the alerts",
            fmt::format("Alerts of this site reach this address. Sent on {}; nothing has happened.\n",
                        momentIn(zone, now))};
}

Json toJson(const Alert& a) {
    return {{"id", a.id},
            {"machine", a.machine},
            {"service", a.service},
            {"area", a.area},
            {"criticality", a.criticality},
            {"fault", a.fault},
            {"at", a.at},
            {"rule", a.rule},
            {"kind", a.kind},
            {"deliver", a.deliver},
            {"state", a.state()},
            {"since", formatUtc(a.since)},
            {"raised", formatUtc(a.raised)},
            {"seen", formatUtc(a.seen)},
            {"ended", timeOrNull(a.ended)},
            {"value", a.value},
            {"unit", a.unit},
            {"words", a.words},
            {"acknowledged", timeOrNull(a.acknowledged)},
            {"acknowledged_by", a.acknowledgedBy},
            {"acknowledged_why", a.acknowledgedWhy}};
}

Json toJson(const AlertRule& r) {
    return {{"name", r.name},
            {"kind", r.kind},
            {"fault", r.fault},
            {"grade", r.grade},
            {"least", orNull(r.least)},
            {"least_hours", orNull(r.leastHours)},
            {"hits", r.hits},
            {"of", r.of},
            {"ask_second", r.askSecond},
            {"machine", r.machine},
            {"area", r.area},
            {"criticality", r.criticality},
            {"deliver", r.deliver},
            {"enabled", r.enabled}};
}

Json toJson(const AlertMessage& m) {
    return {{"way", m.way},
            {"digest", m.digest},
            {"message_id", m.messageId},
            {"made", formatUtc(m.made)},
            {"attempts", m.attempts},
            {"next_try", m.sent ? Json() : Json(formatUtc(m.nextTry))},
            {"error", m.error},
            {"sent", timeOrNull(m.sent)}};
}

Json letterJson(const std::vector<ToldAlert>& alerts, const std::string& kind, const std::string& site) {
    Json json{{"schema", 1}, {"engine", WeighingSettings().engine()}, {"kind", kind}, {"site", site}};
    json["alerts"] = Json::array();
    for (const ToldAlert& told : alerts) {
        json["alerts"].push_back(toJson(told.alert));
        json["alerts"].back()["event"] = told.event;
    }
    return json;
}

std::string lineOf(const Alert& a) {
    std::string line = fmt::format("{}  {}  {}  {}  since {}  {}", a.id, a.state(), oneLine(a.machine),
                                   oneLine(a.rule), formatUtc(a.since), oneLine(a.words));
    if (a.ended) line += "; not seen since " + formatUtc(*a.ended);
    if (a.acknowledged)
        line += fmt::format("; {}: {}", oneLine(a.acknowledgedBy), oneLine(a.acknowledgedWhy));
    return line;
}

}  // namespace fettle
