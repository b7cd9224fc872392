#include "app/cli/re_examine_answer.h"

#include <fmt/format.h>

#include "app/cli/answer.h"
#include "core/base/text.h"
#include "core/exchange/csv_cell.h"

namespace fettle {

namespace {

constexpr std::size_t kTellVerdicts = 40, kTellMachines = 20;

std::string dban(const std::optional<double>& weight) {
    return weight ? fmt::format("{:.1f}", *weight) : "-";
}

std::string urgencyOr(const std::string& urgency) {
    return urgency.empty() ? "not named" : urgency;
}

std::string countsText(const ChangeCounts& counts) {
    std::vector<std::string> parts;
    const auto add = [&](std::size_t count, ChangeKind kind) {
        if (count > 0) parts.push_back(fmt::format("{} {}", count, toText(kind)));
    };
    add(counts.appeared, ChangeKind::Appeared);
    add(counts.raised, ChangeKind::Raised);
    add(counts.vanished, ChangeKind::Vanished);
    add(counts.lowered, ChangeKind::Lowered);
    add(counts.moved, ChangeKind::Moved);
    return joined(parts, ", ");
}

std::string lineOf(const ChangedVerdict& verdict) {
    const VerdictChangeRow& row = verdict.example;
    return fmt::format("  {} {} @ {}: {} -> {}, {} -> {} dban at {}; recordings: {}\n",
                       oneLine(verdict.machine), verdict.fault, oneLine(verdict.at),
                       urgencyOr(row.change.oldUrgency), urgencyOr(row.change.newUrgency),
                       dban(row.change.oldDban), dban(row.change.newDban), formatUtc(row.time),
                       countsText(verdict.counts));
}

std::string groupLine(const ChangedGroup& group) {
    return fmt::format("  {}: {}; most {:.1f} dban\n", oneLine(group.name), countsText(group.counts),
                       group.mostDban);
}

template <class Row, class ToLine>
void tellRows(std::string& text, const char* head, const std::vector<Row>& rows, std::size_t most,
              ToLine toLine) {
    text += head;
    for (std::size_t i = 0; i < std::min(most, rows.size()); ++i)
        text += toLine(rows[i]);
    if (rows.size() > most) text += fmt::format("  and {} more; --json has all\n", rows.size() - most);
}

Json countsJson(const ChangeCounts& counts) {
    return {{"appeared", counts.appeared},
            {"raised", counts.raised},
            {"vanished", counts.vanished},
            {"lowered", counts.lowered},
            {"moved", counts.moved}};
}

Json number(const std::optional<double>& value) {
    return value ? Json(*value) : Json();
}

Json verdictJson(const ChangedVerdict& verdict) {
    const VerdictChangeRow& row = verdict.example;
    return {{"machine", verdict.machine},
            {"fault", verdict.fault},
            {"at", verdict.at},
            {"change", toText(verdict.worst)},
            {"recordings", countsJson(verdict.counts)},
            {"time", formatUtc(row.time)},
            {"file", row.file},
            {"old_engine", row.oldEngine},
            {"old_urgency", row.change.oldUrgency.empty() ? Json() : Json(row.change.oldUrgency)},
            {"new_urgency", row.change.newUrgency.empty() ? Json() : Json(row.change.newUrgency)},
            {"old_dban", number(row.change.oldDban)},
            {"new_dban", number(row.change.newDban)}};
}

Json groupsJson(const std::vector<ChangedGroup>& groups, const char* key) {
    Json list = Json::array();
    for (const ChangedGroup& group : groups)
        list.push_back({{key, group.name},
                        {"verdicts", group.verdicts},
                        {"recordings", countsJson(group.counts)},
                        {"most_dban", group.mostDban}});
    return list;
}

Json runJson(const ReExaminationDifference& difference) {
    const ReExaminationRun& run = difference.run;
    Json before = Json::array();
    for (const WeighedBefore& one : difference.weighedBefore)
        before.push_back({{"engine", one.engine}, {"recordings", one.recordings}});
    return {{"id", run.id},
            {"engine", run.engine},
            {"machine", run.machine.empty() ? Json() : Json(run.machine)},
            {"started", formatUtc(run.started)},
            {"finished", run.finished ? Json(formatUtc(*run.finished)) : Json()},
            {"recordings", difference.weighed},
            {"weighed_before", before}};
}

}  // namespace

std::string differenceText(const ReExaminationDifference& difference) {
    std::string text =
        fmt::format("engine {}, {} recordings weighed again{}\n", difference.run.engine, difference.weighed,
                    difference.run.finished ? "" : "; not finished, start it again for the rest");
    for (const WeighedBefore& one : difference.weighedBefore)
        text += fmt::format("  {} had been weighed by {}\n", one.recordings, oneLine(one.engine));
    if (difference.verdicts.empty())
        return text + fmt::format("no verdict changed by {:g} decibans or more\n", difference.leastDban);
    tellRows(text, "verdicts, worst first\n", difference.verdicts, kTellVerdicts, lineOf);
    tellRows(text, "by family\n", difference.families, kTellVerdicts, groupLine);
    tellRows(text, "by machine\n", difference.machines, kTellMachines, groupLine);
    return text;
}

Json differenceJson(const ReExaminationDifference& difference, const std::optional<ReExamineReport>& done) {
    Json json = headedJson();
    json["run"] = runJson(difference);
    json["least_dban"] = difference.leastDban;
    if (done)
        json["done"] = {{"weighed", done->weighed},
                        {"already", done->alreadyCurrent},
                        {"without_waveform", done->withoutWaveform},
                        {"changed", done->changed},
                        {"refused", done->refused},
                        {"cancelled", done->cancelled}};
    json["verdicts"] = Json::array();
    for (const ChangedVerdict& verdict : difference.verdicts)
        json["verdicts"].push_back(verdictJson(verdict));
    json["families"] = groupsJson(difference.families, "fault");
    json["machines"] = groupsJson(difference.machines, "machine");
    return json;
}

Result<std::string> differenceCsv(FleetFile& fleet, const ReExaminationDifference& difference) {
    std::string csv =
        "machine,time,file,fault,at,change,old_urgency,new_urgency,old_dban,new_dban,old_engine,"
        "new_engine";
    csv += kCsvEnd;
    const auto plain = [](const std::optional<double>& weight) {
        return weight ? fmt::format("{}", *weight) : std::string();
    };
    const auto read = fleet.reExaminations().eachChange(difference.run.id, [&](const VerdictChangeRow& row) {
        const VerdictChange& change = row.change;
        const auto kind = kindOf(change, difference.leastDban);
        if (!kind) return;
        csv += fmt::format("{},{},{},{},{},{},{},{},{},{},{},{}{}", csvCell(row.machine), formatUtc(row.time),
                           csvCell(row.file), csvCell(change.fault), csvCell(change.at), toText(*kind),
                           change.oldUrgency, change.newUrgency, plain(change.oldDban), plain(change.newDban),
                           csvCell(row.oldEngine), csvCell(difference.run.engine), kCsvEnd);
    });
    if (!read) return fail(read.error());
    return csv;
}

}  // namespace fettle
