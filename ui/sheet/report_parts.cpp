#include "ui/sheet/report_parts.h"

#include "ui/model/round_words.h"
#include "ui/model/unit_words.h"
#include "ui/model/words.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

QString placeText(const std::string& service, const std::string& area) {
    QStringList parts{plainText(service), plainText(area)};
    parts.removeAll(QString());
    return parts.join(QStringLiteral(", "));
}

FlowCell machineCell(const std::string& tag, const std::string& service, const std::string& area,
                     const std::string& urgency) {
    return {placeText(service, area), plainText(tag), urgencyOf(urgency), false};
}

QString dueText(const ReportJob& job) {
    if (job.doBy.empty()) return plainText(job.doByWords);
    const QString label = plainText(job.doByLabel), date = plainText(job.doByWords);
    return job.overdue ? tr("%1 %2: that day has passed").arg(label, date) : tr("%1 %2").arg(label, date);
}

// What to do, what was found, and what to mind until then, one under the other.
FlowCell workCell(const ReportJob& job, const Units& units) {
    FlowCell cell{{}, reportText(job.firstLine, units)};
    QStringList found{tr("%1.").arg(reportText(job.finding, units))};
    if (job.moreFindings > 0) found << tr("%1 more on its sheet.").arg(job.moreFindings);
    if (!job.firm) found << tr("Possible only: the inspection decides.");
    found << reportText(job.changed, units);
    cell.more.push_back({found.join(u' '), tr("Found:")});
    if (!job.untilThen.empty()) cell.more.push_back({reportText(job.untilThen, units), tr("Until then:")});
    if (!job.stopAtOnceIf.empty())
        cell.more.push_back({reportText(job.stopAtOnceIf, units) + u'.', tr("Stop at once if")});
    return cell;
}

FlowCell planCell(const ReportJob& job) {
    FlowCell cell{dueText(job), {}};
    cell.more.push_back({reportText(job.orderWords), tr("parts:")});
    cell.more.push_back({tr("%1 of 4").arg(job.priority), tr("priority:")});
    cell.more.push_back({reportText(job.job), {}});
    cell.more.push_back({plainText(job.decided), {}});
    return cell;
}

QString ownerText(const ReportUnseen& one) {
    return one.answered ? tr("%1; reason confirmed").arg(unseenOwner(one.reason)) : unseenOwner(one.reason);
}

}  // namespace

QString reportText(const std::string& text, const Units& units) {
    return withUnitsBeside(spelledDates(plainText(text)), units);
}

FlowTable workTable(const RoundReport& report, const Units& units) {
    FlowTable table{
        tr("The work in full, in its order"),
        {{tr("no."), 0.5}, {tr("machine"), 2.5}, {tr("what to do"), 8}, {tr("by when"), 3}},
        {},
        tr("Each has a findings sheet of its own with steps, parts, tools, permits and cautions.")};
    for (const ReportJob& job : report.work)
        table.rows.push_back({{QString::number(job.place)},
                              machineCell(job.tag, job.service, job.area, job.urgency),
                              workCell(job, units),
                              planCell(job)});
    return table;
}

FlowTable asideTable(const QString& heading, const std::vector<ReportAside>& entries, const Units& units) {
    FlowTable table{heading, {{tr("machine"), 3}, {tr("finding"), 3}, {tr("why"), 6}}, {}};
    for (const ReportAside& one : entries)
        table.rows.push_back({machineCell(one.tag, one.service, one.area, one.urgency),
                              {reportText(one.finding)},
                              {reportText(one.words, units)}});
    return table;
}

FlowTable unseenTable(const RoundReport& report) {
    FlowTable table{
        tr("Machines that could not be judged"),
        {{tr("machine"), 3}, {tr("reason"), 4}, {tr("whose matter"), 2}, {tr("when last seen"), 3}},
        {}};
    for (const ReportUnseen& one : report.notSeen)
        table.rows.push_back({machineCell(one.tag, one.service, one.area, "unseen"),
                              {reportText(one.words), unseenReasonWord(one.reason) + u':'},
                              {ownerText(one)},
                              {reportText(one.foundBefore)}});
    return table;
}

FlowTable dueTable(const RoundReport& report, const Units& units) {
    FlowTable table{tr("Jobs to verify, overdue, due again, late"),
                    {{tr("machine"), 2}, {tr("what"), 2}, {tr("since"), 2}, {tr("how it stands"), 6}},
                    {}};
    for (const DueItem& item : report.due)
        table.rows.push_back({{{}, plainText(item.machine)},
                              {dueKindWord(item.kind)},
                              {item.day.empty() ? QString() : dateText(item.day)},
                              {reportText(item.words, units)}});
    return table;
}

FlowTable blindTable(const RoundReport& report) {
    FlowTable table{
        tr("What could not be seen on the listed machines"),
        {{tr("fault"), 5}, {tr("could not be seen on"), 5}},
        {},
        tr("Whether sensor, band, length of recording and place could show it at all; the page of "
           "each machine says why and what would cure it.")};
    for (const ReportBlind& one : report.blind)
        table.rows.push_back({{plainText(one.name)}, {tr("%1 of %2 machines").arg(one.blind).arg(one.of)}});
    return table;
}

FlowTable moveTable(const QString& heading, const RoundComparison& comparison, const Units& units) {
    FlowTable table{heading,
                    {{tr("machine"), 2.8}, {tr("move"), 2.2}, {tr("why"), 5}, {tr("decided then, now"), 3}},
                    {},
                    reportText(comparison.note)};
    for (const MachineMove& one : comparison.moves) {
        const std::string& urgency = one.after.empty() ? one.before : one.after;
        QString decided = reportText(one.decidedBefore);
        if (!decided.isEmpty() || !one.decidedAfter.empty())
            decided =
                tr("%1; %2").arg(decided.isEmpty() ? tr("nothing") : decided,
                                 one.decidedAfter.empty() ? tr("nothing") : reportText(one.decidedAfter));
        const std::string& finding = one.findingAfter.empty() ? one.findingBefore : one.findingAfter;
        QString why = reportText(one.why, units);
        if (!finding.empty()) why = tr("%1. %2").arg(reportText(finding), why);
        table.rows.push_back({machineCell(one.tag, one.service, one.area, urgency),
                              {urgencyStep(one), moveWord(one.move) + u':'},
                              {why},
                              {decided}});
    }
    return table;
}

}  // namespace fettle
