#include "ui/sheet/report_parts.h"

#include "ui/model/numbers.h"
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
    if (job.doBy.empty()) return engineWords(job.doByWords);
    const QString label = engineWords(job.doByLabel), date = plainText(job.doByWords);
    return job.overdue ? tr("%1 %2: that day has passed").arg(label, date) : tr("%1 %2").arg(label, date);
}

// What to do, what was found, and what to mind until then, one under the other.
FlowCell workCell(const ReportJob& job, const Units& units) {
    FlowCell cell{{}, reportText(job.firstLine, units)};
    QStringList found{tr("%1.").arg(reportText(job.finding, units))};
    if (job.moreFindings > 0) found << tr("%1 more on its sheet.").arg(job.moreFindings);
    if (!job.firm) found << tr("Possible only: the inspection decides.");
    cell.more.push_back({found.join(u' '), tr("Found:")});
    cell.more.push_back({reportText(job.howBad, units), tr("How bad:")});
    if (!job.changed.empty()) cell.more.push_back({reportText(job.changed, units), tr("Before:")});
    if (!job.untilThen.empty()) cell.more.push_back({reportText(job.untilThen, units), tr("Until then:")});
    if (!job.stopAtOnceIf.empty())
        cell.more.push_back({reportText(job.stopAtOnceIf, units) + u'.', tr("Stop at once if")});
    return cell;
}

FlowCell planCell(const ReportJob& job) {
    FlowCell cell{dueText(job), {}};
    cell.more.push_back({spelledDates(engineWords(job.orderWords)), tr("parts:")});
    cell.more.push_back({effortText(job.effort), tr("takes:")});
    cell.more.push_back({standstillText(job.effort), {}});
    cell.more.push_back({plainText(job.effort.trades), {}});
    cell.more.push_back({tr("%1 of 4").arg(job.priority), tr("priority:")});
    cell.more.push_back({engineWords(job.job), {}});
    cell.more.push_back({engineWords(job.decided), {}});
    return cell;
}

QString ownerText(const ReportUnseen& one) {
    return one.answered ? tr("%1; reason confirmed").arg(unseenOwner(one.reason)) : unseenOwner(one.reason);
}

}  // namespace

QString reportText(const std::string& text, const Units& units) {
    return withUnitsBeside(spelledDates(plainText(text)), units);
}

namespace {

QString hoursText(double hours) {
    return fixedText(hours, hours == double(int(hours)) ? 0 : 1);
}

// Tags of the jobs of one area, each with its number in the order of work.
QString jobsText(const RoundReport& report, const std::vector<int>& places) {
    QStringList all;
    for (const int place : places)
        all << tr("%1 (no. %2)")
                   .arg(plainText(report.work[std::size_t(place - 1)].tag), QString::number(place));
    return all.join(QStringLiteral(", "));
}

}  // namespace

QString effortText(const ReportEffort& effort) {
    if (!effort.heads || !effort.hoursLow || !effort.hoursHigh) return tr("people and hours not known");
    const QString low = hoursText(*effort.hoursLow), high = hoursText(*effort.hoursHigh);
    return *effort.heads == 1 ? tr("1 person, %1 to %2 h").arg(low, high)
                              : tr("%1 people, %2 to %3 h").arg(*effort.heads).arg(low, high);
}

QString standstillText(const ReportEffort& effort) {
    if (effort.standstill == "stopped") return tr("machine stopped");
    return effort.standstill == "running" ? tr("machine running") : tr("machine running, stopped for part");
}

QString personHoursText(double low, double high) {
    return tr("%1 to %2 person-hours").arg(hoursText(low), hoursText(high));
}

FlowTable areaTable(const RoundReport& report) {
    FlowTable table{tr("The same work by area, to share a stop"),
                    {{tr("area"), 2}, {tr("machines"), 6}, {tr("first latest day"), 2.2}, {tr("takes"), 3}},
                    {}};
    for (const ReportSum& sum : report.byArea)
        table.rows.push_back({{sum.of.empty() ? tr("no area given") : plainText(sum.of)},
                              {jobsText(report, sum.places)},
                              {sum.firstDay.empty() ? tr("no date") : dateText(sum.firstDay)},
                              {personHoursText(sum.personHoursLow, sum.personHoursHigh)}});
    return table;
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
        {{tr("fault"), 3},
         {tr("of machines"), 1.3},
         {tr("at no place of"), 1.5},
         {tr("at some places only of"), 2.2},
         {tr("what would show it on most"), 5}},
        {},
        tr("Whether sensor, band, length of recording and place could show it at all; the page of "
           "each machine says why and what would cure it.")};
    for (const ReportBlind& one : report.blind)
        table.rows.push_back({{engineWords(one.name)},
                              {QString::number(one.of)},
                              {QString::number(one.blind)},
                              {QString::number(one.somewhere)},
                              {engineWords(one.cure)}});
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
