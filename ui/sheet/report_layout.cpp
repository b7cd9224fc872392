#include "ui/sheet/report_layout.h"

#include <algorithm>

#include "ui/model/round_words.h"
#include "ui/model/words.h"
#include "ui/sheet/report_parts.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

// All the work and the table by area where they leave the first page whole, else all the work, else as many
// lines of it as do; what does not fit stands in the tables.
SummaryFit whatFits(const PageFlow& flow, const RoundReport& report, const Units& units) {
    const auto fits = [&](const SummaryFit& fit) {
        const Block block = [&](Column& column) { setSummary(column, report, fit, units); };
        return flow.heightOf(block) <= flow.room();
    };
    SummaryFit fit{report.work.size(), true};
    if (fits(fit)) return fit;
    fit.areas = false;
    while (fit.work > 1 && !fits(fit))
        --fit.work;
    return fit;
}

Block listOf(const QString& heading, const std::vector<std::string>& lines) {
    return [heading, &lines](Column& column) {
        column.gap(1.5);
        column.heading(heading);
        for (const std::string& line : lines)
            column.marked(QStringLiteral("–"), engineWords(line), 3);
    };
}

void addTables(PageFlow& flow, const RoundReport& report, const SummaryFit& first, const Units& units) {
    flow.newPage();
    if (!first.areas && report.byArea.size() > 1) flow.add(areaTable(report));
    flow.add(workTable(report, units));
    flow.add(asideTable(tr("Put off by the engineer"), report.deferred, units));
    flow.add(asideTable(tr("Listed, but disputed: no work is asked for"), report.disputed, units));
    flow.add(
        asideTable(tr("Watched: no work yet, looked at again in the next round"), report.watched, units));
    flow.add(unseenTable(report));
    flow.add(dueTable(report, units));
    if (report.changes)
        flow.add(moveTable(tr("Since the round to %1").arg(dateText(report.changes->beforeUntil)),
                           *report.changes, units));
    flow.add(blindTable(report));
    flow.add(listOf(tr("How often the list was right here"), report.record));
    flow.add([&report](Column& column) { column.paragraph(engineWords(report.leaveWords)); });
    flow.add(listOf(tr("Safety comes first"), report.cautions));
}

QString footerOf(const std::string& madeOn, const std::string& engine) {
    return tr("Made on %1 by Fettle %2. Advice from measured data, no permit to work.")
        .arg(dateText(madeOn), plainText(engine));
}

QString comparisonTitle(const RoundComparison& c) {
    return tr("Round to %1 against round to %2").arg(dateText(c.afterUntil), dateText(c.beforeUntil));
}

QString countsText(const RoundComparison& c) {
    QStringList parts;
    for (const RoundMove move : kRoundMoves)
        if (const std::size_t count = c.count(move)) parts << tr("%1 %2").arg(count).arg(moveWord(move));
    parts << tr("%1 on leave in both").arg(c.quiet);
    return parts.join(QStringLiteral(", "));
}

}  // namespace

std::vector<SheetPage> layOutReport(const RoundReport& report, PaperSize size, const Units& units) {
    PageFlow flow(
        size, [&](Column& column) { setReportHead(column, report); },
        [&](Column& column) { setReportLaterHead(column, report); });
    const SummaryFit fit = whatFits(flow, report, units);
    flow.add([&](Column& column) { setSummary(column, report, fit, units); });
    addTables(flow, report, fit, units);
    return flow.finish(footerOf(report.madeOn, report.engine));
}

std::vector<SheetPage> layOutComparison(const RoundComparison& comparison, const QString& site,
                                        PaperSize size) {
    const Block head = [&](Column& column) {
        column.moveTo(column.y() + place(column.page(), comparisonTitle(comparison),
                                         {column.left(), column.y()}, column.width(),
                                         {.pt = 14, .bold = true, .mostLines = 2}));
        column.muted(site);
        column.paragraph(countsText(comparison));
    };
    PageFlow flow(size, head, [&](Column& column) {
        column.muted(comparisonTitle(comparison));
        column.rule(0.3);
        column.gap(1);
    });
    flow.add(moveTable(tr("Machine by machine"), comparison, {}));
    return flow.finish(site);
}

PdfTitle titleOf(const RoundReport& report) {
    return {tr("Round report, %1, to %2").arg(plainText(report.site), dateText(report.until)),
            plainText(report.engine)};
}

PdfTitle titleOf(const RoundComparison& comparison, const QString& site) {
    return {tr("%1: %2").arg(site, comparisonTitle(comparison)), {}};
}

}  // namespace fettle
