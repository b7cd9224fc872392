#include "ui/sheet/walk_sheet.h"

#include <algorithm>

#include "ui/model/numbers.h"
#include "ui/model/words.h"
#include "ui/sheet/page_flow.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

QString titleText(const WalkSheet& walk) {
    return tr("Readings asked for, %1").arg(plainText(walk.site));
}

QString serviceText(const Ask& ask) {
    QStringList parts{plainText(ask.service), plainText(ask.area)};
    parts.removeAll(QString());
    return parts.join(QStringLiteral(", "));
}

FlowTable handTable(const std::vector<Ask>& asks, const Units& units) {
    FlowTable table{tr("By hand, in the order of the walk"),
                    {{tr("no."), 0.5},
                     {tr("machine"), 2.4},
                     {tr("where"), 1.8},
                     {tr("how"), 2.4},
                     {tr("why"), 4},
                     {tr("file, reading, seen"), 2.6}},
                    {},
                    tr("At usual running and load. Note speed and load with each reading.")};
    for (const Ask& ask : asks)
        if (ask.request.byHand)
            table.rows.push_back({{QString::number(ask.request.id)},
                                  {serviceText(ask), plainText(ask.request.machine)},
                                  {askedWhere(ask.request)},
                                  {askedWhat(ask.spec, units)},
                                  {plainText(ask.request.why)},
                                  {QStringLiteral("……………………………")}});
    return table;
}

FlowTable nodeTable(const std::vector<Ask>& asks, const Units& units) {
    FlowTable table{
        tr("Of the nodes: to be set by whoever looks after them"),
        {{tr("no."), 0.5}, {tr("machine"), 2.4}, {tr("point"), 1.8}, {tr("how"), 2.4}, {tr("why"), 6}},
        {}};
    for (const Ask& ask : asks)
        if (!ask.request.byHand)
            table.rows.push_back({{QString::number(ask.request.id)},
                                  {serviceText(ask), plainText(ask.request.machine)},
                                  {askedWhere(ask.request)},
                                  {askedWhat(ask.spec, units)},
                                  {plainText(ask.request.why)}});
    return table;
}

// In our own words; what the site and the law say comes first.
QStringList cautionWords() {
    return {
        tr("The machines run: take readings only where guards are fitted and the place is reached safely; no "
           "loose clothing, no cable or magnet near a shaft, a coupling or a belt."),
        tr("A guard that hides a bearing stays on. What cannot be reached is written down as not reached."),
        tr("Hot surfaces, noise, dust and explosive areas: use what the site prescribes, and only "
           "instruments "
           "approved for the place."),
        tr("A reflecting mark for the tachometer is put on only at a standstill, isolated and locked by "
           "authorised people."),
        tr("Site rules, local codes and licensed practice come first; this leaf is advice, no permit to "
           "work.")};
}

void setCautionWords(Column& column) {
    column.gap(1.5);
    column.heading(tr("Safety comes first"));
    for (const QString& line : cautionWords())
        column.marked(QStringLiteral("–"), line, 3);
}

}  // namespace

QString askedWhat(const AskSpec& spec, const Units& units) {
    QStringList what;
    const ShownUnit hz = shownUnit(QStringLiteral("Hz"), units);
    if (spec.seconds > 0) what << tr("%1 s or more").arg(spec.seconds, 0, 'g', 4);
    if (spec.topHz > 0) what << tr("to %1 %2").arg(fixedText(hz.shown(spec.topHz), 0)).arg(hz.unit);
    if (linesOf(spec) > 0) what << tr("%1 lines").arg(linesOf(spec));
    if (spec.tachometer) what << tr("with a tachometer");
    return what.isEmpty() ? tr("a running recording") : what.join(QStringLiteral(", "));
}

QString askedWhere(const Request& request) {
    const QString place = plainText(request.point);
    return request.direction.empty() ? place : tr("%1, %2").arg(place, plainText(request.direction));
}

std::vector<SheetPage> layOutWalk(const WalkSheet& walk, PaperSize size, const Units& units) {
    const auto hand =
        std::count_if(walk.asks.begin(), walk.asks.end(), [](const Ask& ask) { return ask.request.byHand; });
    PageFlow flow(
        size,
        [&](Column& column) {
            column.moveTo(column.y() + place(column.page(), titleText(walk), {column.left(), column.y()},
                                             column.width(), {.pt = 14, .bold = true, .mostLines = 2}));
            column.paragraph(tr("%1 by hand, %2 of the nodes. Made on %3.")
                                 .arg(hand)
                                 .arg(std::ptrdiff_t(walk.asks.size()) - hand)
                                 .arg(dateText(walk.madeOn)));
        },
        [&](Column& column) {
            column.muted(titleText(walk));
            column.rule(0.3);
            column.gap(1);
        });
    flow.add(setCautionWords);
    if (walk.asks.empty()) flow.add([](Column& column) { column.paragraph(tr("Nothing is asked for.")); });
    flow.add(handTable(walk.asks, units));
    flow.add(nodeTable(walk.asks, units));
    return flow.finish(plainText(walk.site));
}

PdfTitle titleOf(const WalkSheet& walk) {
    return {titleText(walk), {}};
}

}  // namespace fettle
