#include <algorithm>
#include <map>

#include "ui/model/round_words.h"
#include "ui/model/words.h"
#include "ui/sheet/report_parts.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr size_t kMostTags = 8, kMostBlind = 3;  // std:: here would file the next words in "std"
constexpr double kGutterMm = 6;

QString periodText(const RoundReport& report) {
    return tr("round of %1 to %2").arg(dateText(report.from), dateText(report.until));
}

// "KL-ID-01, PK-FN-04 and 3 more"
QString someOf(QStringList tags) {
    if (tags.size() <= qsizetype(kMostTags)) return tags.join(QStringLiteral(", "));
    const auto more = tags.size() - qsizetype(kMostTags);
    return tr("%1 and %2 more").arg(tags.mid(0, kMostTags).join(QStringLiteral(", "))).arg(more);
}

QString headline(const RoundReport& r) {
    if (r.work.empty()) return tr("No machine asks for work this week.");
    const auto urgent = std::count_if(r.work.begin(), r.work.end(),
                                      [](const ReportJob& job) { return job.urgency == "act"; });
    const auto planned = qsizetype(r.work.size()) - urgent;
    if (r.ageNote.empty()) return tr("%1 to act on now, %2 to plan for.").arg(urgent).arg(planned);
    return tr("On %1: %2 to act on, %3 to plan for.").arg(dateText(r.until)).arg(urgent).arg(planned);
}

QString restLine(const RoundReport& r) {
    return tr("%1 machines: %2 act, %3 plan, %4 watch, %5 unseen, %6 leave. The round is %7.")
        .arg(r.machines)
        .arg(r.act)
        .arg(r.plan)
        .arg(r.watch)
        .arg(r.unseen)
        .arg(r.leave)
        .arg(reportText(r.state));
}

std::vector<FlowColumn> workColumns() {
    return {{tr("no."), 0.5},   {tr("machine"), 2.4}, {tr("what to do"), 5.6},
            {tr("takes"), 2.2}, {tr("latest"), 1.8},  {tr("place"), 1.4}};
}

QString latestText(const ReportJob& job) {
    if (job.doBy.empty()) return tr("no date");
    const QString date = dateText(job.doBy);
    return job.overdue ? tr("%1, passed").arg(date) : date;
}

// What it all takes, so that people can be booked.
void setSums(Column& column, const RoundReport& report) {
    QStringList sums;
    std::size_t unknown = 0;
    for (const ReportSum& sum : report.byUrgency) {
        unknown += sum.unknown;
        sums << tr("%1: %2 (%3, machine stopped for %4)")
                    .arg(urgencyWord(sum.of), personHoursText(sum.personHoursLow, sum.personHoursHigh),
                         counted(qsizetype(sum.places.size()), tr("machine"), tr("machines")))
                    .arg(sum.standstills);
    }
    column.gap(0.4);
    column.paragraph(sums.join(QStringLiteral("; ")) + u'.', tr("All together"));
    column.muted(
        tr("The work itself by common practice, every finding that asks for work counted: without isolating, "
           "getting there and waiting. What is done in one stop may take less."));
    if (unknown > 0) column.muted(tr("Not counted, for want of figures: %1.").arg(unknown));
}

void setAreas(Column& column, const RoundReport& report) {
    if (report.byArea.size() < 2) return;
    const FlowTable table = areaTable(report);
    column.gap(1);
    column.heading(table.heading);
    setFlowHead(column, table.columns);
    for (const auto& row : table.rows)
        setFlowRow(column, table.columns, row);
}

void setWork(Column& column, const RoundReport& report, const SummaryFit& fit, const Units& units) {
    column.heading(tr("What needs work, in this order"));
    if (report.work.empty())
        return column.paragraph(tr("Nothing. What is watched, put off or disputed stands in the tables."));
    setFlowHead(column, workColumns());
    const std::size_t count = std::min(fit.work, report.work.size());
    for (std::size_t i = 0; i < count; ++i) {
        const ReportJob& job = report.work[i];
        setFlowRow(column, workColumns(),
                   {{QString::number(job.place)},
                    {urgencyWord(job.urgency), plainText(job.tag), urgencyOf(job.urgency), false},
                    {reportText(job.firstLine, units)},
                    {tr("%1; %2").arg(effortText(job.effort), standstillText(job.effort))},
                    {latestText(job)},
                    {plainText(job.area)}});
    }
    if (count < report.work.size())
        column.muted(tr("and %1 more, in the tables that follow").arg(report.work.size() - count));
    const auto undecided = std::count_if(report.work.begin(), report.work.end(),
                                         [](const ReportJob& job) { return job.decided != "accepted"; });
    if (undecided > 0)
        column.muted(
            tr("%1 of these are not decided yet: the engineer may still change them.").arg(undecided));
    setSums(column, report);
    if (fit.areas) setAreas(column, report);
}

void setUnseen(Column& column, const RoundReport& report) {
    column.heading(tr("Not seen"));
    if (report.notSeen.empty()) return column.paragraph(tr("Every machine could be judged."));
    std::map<std::string, QStringList> byReason;
    for (const ReportUnseen& one : report.notSeen)
        byReason[one.reason] << plainText(one.tag);
    for (const auto& [reason, tags] : byReason)
        column.paragraph(tr("%1 (%2)").arg(someOf(tags), unseenOwner(reason)),
                         unseenReasonWord(reason) + u':');
}

void setDue(Column& column, const RoundReport& report) {
    column.heading(tr("Promised, and due"));
    std::map<std::string, QStringList> byKind;
    for (const DueItem& item : report.due)
        if (!byKind[item.kind].contains(plainText(item.machine)))
            byKind[item.kind] << plainText(item.machine);
    for (const char* kind : {"verify", "overdue", "deferred", "late"})
        if (!byKind[kind].isEmpty()) column.paragraph(someOf(byKind[kind]), dueKindWord(kind) + u':');
    if (report.due.empty()) column.paragraph(tr("No job waits for a check, none is overdue."));
    QStringList off;
    for (const ReportAside& one : report.deferred)
        off << plainText(one.tag);
    if (!off.isEmpty()) column.paragraph(someOf(off), tr("put off by the engineer:"));
}

void setChanges(Column& column, const RoundReport& report) {
    column.heading(tr("What changed"));
    if (!report.changes)
        return column.paragraph(
            tr("This is the first round kept here: levels are set against the weeks before it."));
    const RoundComparison& changes = *report.changes;
    column.muted(tr("since the round to %1").arg(dateText(changes.beforeUntil)));
    bool any = false;
    for (const RoundMove move : kRoundMoves) {
        QStringList tags;
        for (const MachineMove& one : changes.moves)
            if (one.move == move && move != RoundMove::Stayed) tags << plainText(one.tag);
        any |= !tags.isEmpty();
        if (!tags.isEmpty()) column.paragraph(someOf(tags), moveWord(move) + u':');
    }
    if (!any) column.paragraph(tr("No machine moved."));
}

QString withCapital(QString text) {
    if (!text.isEmpty()) text[0] = text[0].toUpper();
    return text;
}

void setRecord(Column& column, const RoundReport& report) {
    column.heading(tr("How often the list was right here"));
    column.paragraph(withCapital(reportText(report.promise)) + u'.');
    if (!report.record.empty()) column.paragraph(withCapital(engineWords(report.record.front())) + u'.');
}

// At no place, at some places only, or both.
QString blindText(const ReportBlind& one) {
    if (one.somewhere == 0)
        return tr("could be seen at no place of %1 of the %2 listed machines it concerns.")
            .arg(one.blind)
            .arg(one.of);
    if (one.blind == 0)
        return tr("could be seen at some places only of %1 of the %2 listed machines it concerns.")
            .arg(one.somewhere)
            .arg(one.of);
    return tr("could be seen at no place of %1, and at some places only of %2, of the %3 listed machines it "
              "concerns.")
        .arg(one.blind)
        .arg(one.somewhere)
        .arg(one.of);
}

void setLimits(Column& column, const RoundReport& report) {
    column.heading(tr("What this list cannot tell"));
    for (std::size_t i = 0; i < std::min(kMostBlind, report.blind.size()); ++i)
        column.paragraph(blindText(report.blind[i]), engineWords(report.blind[i].name));
    for (const std::string& limit : report.limits)
        column.marked(QStringLiteral("–"), engineWords(limit), 3);
}

void setHalves(Column& top, const std::function<void(Column&)>& left,
               const std::function<void(Column&)>& right) {
    const double width = (top.width() - kGutterMm * kMm) / 2;
    Column first(top.page(), top.fit(), top.left(), width, top.y());
    Column second(top.page(), top.fit(), top.left() + width + kGutterMm * kMm, width, top.y());
    left(first);
    right(second);
    top.moveTo(std::max(first.y(), second.y()));
    top.gap(1);
}

}  // namespace

void setReportHead(Column& column, const RoundReport& report) {
    const TextStyle style{.pt = kLeastPt, .ink = Role::MutedInk, .mostLines = 1};
    TextStyle right = style;
    right.align = Qt::AlignRight;
    const double half = column.width() / 2;
    place(column.page(), tr("Round report, %1").arg(plainText(report.site)), {column.left(), column.y()},
          half, style);
    place(column.page(), tr("made on %1").arg(dateText(report.madeOn)), {column.left() + half, column.y()},
          half, right);
    column.moveTo(column.y() + lineHeight(style.pt));
    column.gap(1);
    column.rule(0.4);
    column.gap(2);
    column.moveTo(column.y() + place(column.page(), headline(report), {column.left(), column.y()},
                                     column.width(), {.pt = 16, .bold = true, .mostLines = 2}));
    column.moveTo(column.y() +
                  place(column.page(), tr("%1, the %2").arg(plainText(report.site), periodText(report)),
                        {column.left(), column.y()}, column.width(), {.pt = 10, .mostLines = 2}));
    column.gap(0.8);
    column.paragraph(restLine(report));
    if (!report.ageNote.empty())
        column.moveTo(column.y() + place(column.page(), plainText(report.ageNote),
                                         {column.left(), column.y()}, column.width(),
                                         {.pt = 9, .bold = true, .mostLines = 3}));
    column.gap(0.8);
}

void setReportLaterHead(Column& column, const RoundReport& report) {
    place(column.page(), tr("Round report, %1, %2").arg(plainText(report.site), periodText(report)),
          {column.left(), column.y()}, column.width(),
          {.pt = kLeastPt, .ink = Role::MutedInk, .mostLines = 1});
    column.moveTo(column.y() + lineHeight(kLeastPt));
    column.gap(1);
}

void setSummary(Column& column, const RoundReport& report, const SummaryFit& fit, const Units& units) {
    setWork(column, report, fit, units);
    column.gap(1);
    setHalves(
        column,
        [&](Column& left) {
            setUnseen(left, report);
            setDue(left, report);
        },
        [&](Column& right) {
            setChanges(right, report);
            setRecord(right, report);
        });
    setLimits(column, report);
    column.gap(0.6);
    column.muted(engineWords(report.cautions.empty() ? std::string() : report.cautions.back()));
}

}  // namespace fettle
