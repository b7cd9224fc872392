#include "app/cli/export_more_tables.h"

#include "core/base/json_parts.h"
#include "core/exchange/mail_message.h"
#include "core/store/re_examination_store.h"

namespace fettle {

namespace {

Json whenOrNull(const std::optional<Instant>& time) {
    return time ? Json(formatUtc(*time)) : Json();
}

// A document as it was kept; as text where it is none.
Json documentOf(const std::string& text) {
    auto json = parseJson(text, "");
    return json ? std::move(*json) : Json(text);
}

Status addAlertRules(FleetFile& fleet, const ExportSpan&, const ExportRow& row) {
    const auto rules = fleet.alerts().rules();
    if (!rules) return fail(rules.error());
    for (const AlertRule& r : *rules)
        row({r.name, r.kind, r.fault, r.grade, orNull(r.least), orNull(r.leastHours), r.hits, r.of,
             r.askSecond, r.machine, r.area, r.criticality, r.deliver, r.enabled});
    return {};
}

Status addAlerts(FleetFile& fleet, const ExportSpan& span, const ExportRow& row) {
    const auto alerts = fleet.alerts().alerts(true, span.machine);
    if (!alerts) return fail(alerts.error());
    for (auto a = alerts->rbegin(); a != alerts->rend(); ++a)
        if (span.has(a->raised))
            row({a->id, a->machine, a->fault, a->at, a->rule, a->kind, a->deliver, a->state(),
                 formatUtc(a->since), formatUtc(a->raised), formatUtc(a->seen), whenOrNull(a->ended),
                 a->value, a->told, a->unit, a->words, whenOrNull(a->acknowledged), a->acknowledgedBy,
                 a->acknowledgedWhy});
    return {};
}

Status addDeliveries(FleetFile& fleet, const ExportSpan& span, const ExportRow& row) {
    return fleet.alerts().eachDelivery([&](const AlertDelivery& d) {
        if (!span.has(d.machine) || !span.has(d.raised)) return;
        std::vector<Json> cells{d.item.alert, d.machine,    d.fault,       d.at,
                                d.item.way,   d.item.event, d.item.digest, formatUtc(d.item.due),
                                d.dropped};
        if (const auto& m = d.message)
            cells.insert(cells.end(),
                         {m->messageId, formatUtc(m->made), m->attempts, m->error, whenOrNull(m->sent)});
        else
            cells.insert(cells.end(), 5, Json());
        row(cells);
    });
}

Status addRequests(FleetFile& fleet, const ExportSpan& span, const ExportRow& row) {
    const auto requests = fleet.requests().list(span.machine, true);
    if (!requests) return fail(requests.error());
    for (const Request& r : *requests)
        if (span.has(r.askedAt))
            row({r.machine, r.byHand, r.point, r.direction, r.what, r.why, formatUtc(r.askedAt), r.askedBy,
                 whenOrNull(r.answeredAt), r.recording ? Json(*r.recording) : Json()});
    return {};
}

Status addJobSteps(FleetFile& fleet, const ExportSpan& span, const ExportRow& row) {
    const auto jobs = fleet.log().jobs(span.machine);
    if (!jobs) return fail(jobs.error());
    for (const Job& job : *jobs) {
        const auto steps = fleet.jobs().steps(job.id);
        if (!steps) return fail(steps.error());
        for (const JobStep& s : *steps)
            if (span.has(s.time)) row({job.id, job.machine, s.state, formatUtc(s.time), s.text, s.by});
    }
    return {};
}

Status addPhotos(FleetFile& fleet, const ExportSpan& span, const ExportRow& row) {
    for (const MachineEntry& machine : span.machines) {
        const auto events = fleet.log().events(machine.tag);
        if (!events) return fail(events.error());
        const auto photos = fleet.photos().ofMachine(machine.tag);
        if (!photos) return fail(photos.error());
        for (const Photo& photo : *photos)
            for (const Event& event : *events) {
                if (event.id != photo.event || !span.has(event.time)) continue;
                const auto bytes = fleet.photos().bytes(photo.id);
                if (!bytes) return fail(bytes.error());
                row({machine.tag, formatUtc(event.time), event.kind, photo.name, photo.media,
                     base64(*bytes)});
            }
    }
    return {};
}

Status addWorkshop(FleetFile& fleet, const ExportSpan& span, const ExportRow& row) {
    const auto all = fleet.workshop().list(span.machine);
    if (!all) return fail(all.error());
    for (auto w = all->rbegin(); w != all->rend(); ++w)
        if (span.has(w->createdAt))
            row({w->machine, w->kind, w->name, formatUtc(w->createdAt), formatUtc(w->changedAt),
                 whenOrNull(w->closedAt), documentOf(w->json)});
    return {};
}

Status addReadingRules(FleetFile& fleet, const ExportSpan&, const ExportRow& row) {
    const auto rules = fleet.readingRules().all();
    if (!rules) return fail(rules.error());
    for (const ReadingRuleEntry& r : *rules)
        row({r.pattern, documentOf(r.json), formatUtc(r.createdAt), r.by});
    return {};
}

Status addChangedVerdicts(FleetFile& fleet, const ExportSpan& span, const ExportRow& row) {
    const auto runs = fleet.reExaminations().runs();
    if (!runs) return fail(runs.error());
    for (auto run = runs->rbegin(); run != runs->rend(); ++run) {
        const auto add = [&](const VerdictChangeRow& r) {
            if (span.has(r.machine) && span.has(r.time))
                row({run->id, formatUtc(run->started), run->engine, r.machine, r.recording, formatUtc(r.time),
                     r.oldEngine, r.change.fault, r.change.at, orNull(r.change.oldDban),
                     orNull(r.change.newDban), r.change.oldUrgency, r.change.newUrgency});
        };
        if (auto good = fleet.reExaminations().eachChange(run->id, add); !good) return good;
    }
    return {};
}

}  // namespace

const std::vector<MoreTable>& moreTables() {
    static const std::vector<MoreTable> all = {
        {"alert_rules",
         {"name", "kind", "fault", "grade", "least", "least_hours", "hits", "of", "ask_second", "machine",
          "area", "criticality", "deliver", "enabled"},
         addAlertRules},
        {"alerts",
         {"id", "machine", "fault", "at", "rule", "kind", "deliver", "state", "since", "raised", "seen",
          "ended", "value", "told", "unit", "words", "acknowledged", "acknowledged_by", "acknowledged_why"},
         addAlerts},
        {"deliveries",
         {"alert", "machine", "fault", "at", "way", "event", "digest", "due", "dropped", "message_id", "made",
          "attempts", "error", "sent"},
         addDeliveries},
        {"requests",
         {"machine", "by_hand", "point", "direction", "what", "why", "asked", "asked_by", "answered",
          "recording"},
         addRequests},
        {"job_steps", {"job", "machine", "state", "time", "text", "by"}, addJobSteps},
        {"photos", {"machine", "event_time", "event_kind", "name", "media", "base64"}, addPhotos},
        {"workshop", {"machine", "kind", "name", "created", "changed", "closed", "document"}, addWorkshop},
        {"reading_rules", {"pattern", "keys", "created", "by"}, addReadingRules},
        {"changed_verdicts",
         {"run", "started", "engine", "machine", "recording", "time", "old_engine", "fault", "at", "old_dban",
          "new_dban", "old_urgency", "new_urgency"},
         addChangedVerdicts}};
    return all;
}

}  // namespace fettle
