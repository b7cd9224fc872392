#include <fmt/format.h>

#include "core/base/json_parts.h"
#include "core/base/text.h"
#include "core/exchange/csv_cell.h"
#include "core/fleet/round_report.h"

namespace fettle {

namespace {

template <class Item>
Json list(const std::vector<Item>& items, Json (*make)(const Item&)) {
    Json all = Json::array();
    for (const Item& item : items)
        all.push_back(make(item));
    return all;
}

Json jobJson(const ReportJob& job) {
    return {{"place", job.place},
            {"tag", job.tag},
            {"asset", orNull(job.asset)},
            {"service", job.service},
            {"area", orNull(job.area)},
            {"criticality", job.criticality},
            {"urgency", job.urgency},
            {"first_line", job.firstLine},
            {"finding", job.finding},
            {"firm", job.firm},
            {"do_by", orNull(job.doBy)},
            {"do_by_label", orNull(job.doByLabel)},
            {"do_by_words", orNull(job.doByWords)},
            {"overdue", job.overdue},
            {"order_by", orNull(job.orderBy)},
            {"order_words", orNull(job.orderWords)},
            {"priority", job.priority},
            {"job", job.job},
            {"until_then", job.untilThen},
            {"stop_at_once_if", job.stopAtOnceIf},
            {"more_findings", job.moreFindings},
            {"changed", job.changed},
            {"decided", job.decided},
            {"how_bad", job.howBad},
            {"effort", toJson(job.effort)}};
}

Json asideJson(const ReportAside& one) {
    return {{"tag", one.tag},         {"service", one.service}, {"area", orNull(one.area)},
            {"urgency", one.urgency}, {"finding", one.finding}, {"words", one.words}};
}

Json unseenJson(const ReportUnseen& one) {
    return {{"tag", one.tag},
            {"service", one.service},
            {"area", orNull(one.area)},
            {"reason", one.reason},
            {"words", one.words},
            {"whose", one.whose},
            {"found_before", orNull(one.foundBefore)},
            {"answered", one.answered}};
}

Json dueJson(const DueItem& item) {
    return {{"machine", item.machine}, {"kind", item.kind}, {"day", orNull(item.day)}, {"words", item.words}};
}

Json blindJson(const ReportBlind& one) {
    return {{"fault", one.fault}, {"name", one.name},           {"blind", one.blind},
            {"of", one.of},       {"somewhere", one.somewhere}, {"cure", orNull(one.cure)}};
}

Json sumsJson(const std::vector<ReportSum>& sums, const char* ofKey) {
    Json all = Json::array();
    for (const ReportSum& sum : sums)
        all.push_back(toJson(sum, ofKey));
    return all;
}

std::string number(const std::optional<double>& value) {
    return value ? fmt::format("{:g}", *value) : "";
}

Json moveJson(const MachineMove& one) {
    return {{"tag", one.tag},
            {"service", one.service},
            {"area", orNull(one.area)},
            {"move", toText(one.move)},
            {"before", orNull(one.before)},
            {"after", orNull(one.after)},
            {"finding_before", orNull(one.findingBefore)},
            {"finding_after", orNull(one.findingAfter)},
            {"why", one.why},
            {"decided_before", orNull(one.decidedBefore)},
            {"decided_after", orNull(one.decidedAfter)}};
}

}  // namespace

Json toJson(const RoundComparison& c) {
    return {{"before", {{"from", c.beforeFrom}, {"until", c.beforeUntil}}},
            {"after", {{"from", c.afterFrom}, {"until", c.afterUntil}}},
            {"moves", list(c.moves, moveJson)},
            {"quiet", c.quiet},
            {"note", orNull(c.note)}};
}

Json toJson(const RoundReport& r) {
    return {{"schema", 1},
            {"engine", r.engine},
            {"site", r.site},
            {"from", r.from},
            {"until", r.until},
            {"made_on", r.madeOn},
            {"state", r.state},
            {"age_note", orNull(r.ageNote)},
            {"counts",
             {{"machines", r.machines},
              {"act", r.act},
              {"plan", r.plan},
              {"watch", r.watch},
              {"unseen", r.unseen},
              {"leave", r.leave}}},
            {"work", list(r.work, jobJson)},
            {"effort_by_urgency", sumsJson(r.byUrgency, "urgency")},
            {"effort_by_area", sumsJson(r.byArea, "area")},
            {"watched", list(r.watched, asideJson)},
            {"deferred", list(r.deferred, asideJson)},
            {"disputed", list(r.disputed, asideJson)},
            {"unseen", list(r.notSeen, unseenJson)},
            {"due", list(r.due, dueJson)},
            {"changes", r.changes ? toJson(*r.changes) : Json()},
            {"promise", r.promise},
            {"record", r.record},
            {"leave", r.leaveWords},
            {"blind", list(r.blind, blindJson)},
            {"limits", r.limits},
            {"cautions", r.cautions}};
}

std::string reportCsv(const RoundReport& report) {
    std::string out = csvLine({"place",
                               "tag",
                               "asset",
                               "service",
                               "area",
                               "criticality",
                               "urgency",
                               "priority",
                               "title",
                               "finding",
                               "firm",
                               "do_by",
                               "overdue",
                               "order_parts_by",
                               "job",
                               "until_then",
                               "stop_at_once_if",
                               "changed",
                               "decided",
                               "round_to",
                               "how_bad",
                               "trades",
                               "standstill",
                               "heads",
                               "hours_low",
                               "hours_high",
                               "person_hours_low",
                               "person_hours_high"});
    for (const ReportJob& job : report.work)
        out += csvLine({std::to_string(job.place),
                        job.tag,
                        job.asset,
                        job.service,
                        job.area,
                        job.criticality,
                        job.urgency,
                        std::to_string(job.priority),
                        job.firstLine,
                        job.finding,
                        job.firm ? "yes" : "no",
                        job.doBy,
                        job.overdue ? "yes" : "no",
                        job.orderBy,
                        job.job,
                        job.untilThen,
                        job.stopAtOnceIf,
                        job.changed,
                        job.decided,
                        report.until,
                        job.howBad,
                        job.effort.trades,
                        job.effort.standstill,
                        job.effort.heads ? std::to_string(*job.effort.heads) : "",
                        number(job.effort.hoursLow),
                        number(job.effort.hoursHigh),
                        number(job.effort.personHoursLow),
                        number(job.effort.personHoursHigh)});
    return out;
}

std::string comparisonCsv(const RoundComparison& comparison) {
    std::string out =
        csvLine({"tag", "service", "area", "move", "before", "after", "finding_before", "finding_after",
                 "why", "decided_before", "decided_after", "round_before", "round_after"});
    for (const MachineMove& one : comparison.moves)
        out += csvLine({one.tag, one.service, one.area, toText(one.move), one.before, one.after,
                        one.findingBefore, one.findingAfter, one.why, one.decidedBefore, one.decidedAfter,
                        comparison.beforeUntil, comparison.afterUntil});
    return out;
}

}  // namespace fettle
