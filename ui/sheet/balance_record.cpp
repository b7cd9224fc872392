#include "ui/sheet/balance_record.h"

#include <QPainter>

#include "core/workshop/unbalance.h"
#include "ui/model/numbers.h"
#include "ui/model/words.h"
#include "ui/plot/readout.h"
#include "ui/sheet/balance_words.h"
#include "ui/sheet/page_flow.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr double kFigureMm = 58;

FlowTable flowOf(const QString& heading, const BalanceTable& table) {
    FlowTable flow;
    flow.heading = heading;
    for (const QString& head : table.heads)
        flow.columns.push_back({head, 1});
    for (const QStringList& row : table.rows) {
        std::vector<FlowCell> cells;
        for (const QString& text : row)
            cells.push_back({text});
        flow.rows.push_back(std::move(cells));
    }
    return flow;
}

QString headLine(const BalanceRecord& record) {
    return tr("Balance record of %1").arg(plainText(record.job.machine));
}

void setBalanceHead(Column& column, const BalanceRecord& record) {
    const TextStyle title{.pt = 15, .bold = true, .mostLines = 1};
    column.moveTo(column.y() +
                  place(column.page(), headLine(record), {column.left(), column.y()}, column.width(), title));
    column.gap(0.8);
    const BalanceJob& job = record.job;
    column.paragraph(plainText(job.name) + QStringLiteral(", ") + methodWords(job.method) +
                     QStringLiteral(", ") + record.date);
}

QStringList rotorFacts(const BalanceJob& job, const BalanceAnswer& answer) {
    QStringList facts;
    facts << (job.rotor.component == "driven" ? tr("rotor of the driven machine") : tr("rotor of the motor"));
    if (job.rotor.massKg) facts << tr("%1 kg").arg(significant(*job.rotor.massKg, 4));
    if (job.rotor.rpm) facts << tr("%1 r/min").arg(fixedText(*job.rotor.rpm, 0));
    facts << tr("grade %1").arg(shown(gradeName(job.rotor.grade)));
    if (answer.permissibleGmm)
        facts << tr("permissible unbalance %1 g mm").arg(significant(*answer.permissibleGmm, 4));
    if (job.saved)
        facts << tr("coefficients of %1, %2").arg(plainText(job.saved->from), dateText(job.saved->date));
    return facts;
}

void setResults(Column& column, const BalanceRecord& record) {
    const auto results = balanceResults(record.job, record.answer);
    if (results.empty()) {
        column.heading(tr("Masses"));
        column.paragraph(balanceState(record.answer));
    }
    for (const BalanceSection& section : results) {
        column.heading(section.heading);
        for (const QString& line : section.lines)
            column.paragraph(line);
        const FlowTable table = flowOf({}, section.table);
        if (table.rows.empty()) continue;
        setFlowHead(column, table.columns);
        for (const auto& row : table.rows)
            setFlowRow(column, table.columns, row);
        column.gap(1);
    }
    const QStringList doubts = balanceDoubts(record.answer);
    if (doubts.isEmpty()) return;
    column.heading(tr("To be minded"));
    for (const QString& doubt : doubts)
        column.marked(QStringLiteral("-"), doubt, 3);
}

void setAllCautions(Column& column) {
    column.heading(tr("Cautions"));
    for (const QString& caution : balanceCautions())
        column.marked(QStringLiteral("-"), caution, 3);
}

void setSignatures(Column& column, const BalanceRecord& record) {
    if (!record.job.note.empty()) column.paragraph(plainText(record.job.note), tr("Note:"));
    column.gap(1);
    setBlanks(column, {tr("balanced by"), tr("date"), tr("checked by"), tr("work order")}, 0);
}

std::vector<SheetPage> layOut(const BalanceRecord& record, PaperSize size) {
    const Block head = [&](Column& column) { setBalanceHead(column, record); };
    PageFlow flow(size, head, head);
    flow.add(Block([&](Column& column) {
        column.paragraph(rotorFacts(record.job, record.answer).join(QStringLiteral(", ")), tr("Rotor:"));
        column.paragraph(conventionWords(record.job), tr("Angles:"));
    }));
    flow.add(Block([](Column& column) {  // both figures stand side by side
        SheetPage& page = column.page();
        const double half = column.width() / 2, height = kFigureMm * kMm;
        page.spectrum = QRectF(column.left(), column.y(), half - kMm, height);
        page.trend = QRectF(column.left() + half + kMm, column.y(), half - kMm, height);
        column.gap(kFigureMm + 1);
    }));
    flow.add(flowOf(tr("Runs"), runTable(record.job, record.answer)));
    flow.add(Block([&](Column& column) { setResults(column, record); }));
    flow.add(Block(setAllCautions));
    flow.add(Block([&](Column& column) { setSignatures(column, record); }));
    return flow.finish(headLine(record));
}

// Side by side where there are several.
template <class Picture, class Paint>
void paintRow(QPainter& painter, const QRectF& rect, const std::vector<Picture>& pictures, Paint paint) {
    const double width = rect.width() / double(std::max<std::size_t>(pictures.size(), 1));
    for (std::size_t i = 0; i < pictures.size(); ++i)
        paint(painter, QRectF(rect.left() + double(i) * width, rect.top(), width, rect.height()),
              pictures[i]);
}

}  // namespace

BalanceRecordPages::BalanceRecordPages(const BalanceRecord& record, PaperSize size)
    : PrintedPages(layOut(record, size), size),
      rotors_(rotorPictures(record.job, record.answer, true)),
      polars_(polarPictures(record.job, record.answer)) {}

void BalanceRecordPages::paintFigures(QPainter& painter, const SheetPage& page) {
    if (page.spectrum.isNull()) return;
    const QFont font = sheetFont(kLeastPt);
    paintRow(painter, page.spectrum, rotors_, [&](QPainter& on, const QRectF& rect, const RotorPicture& one) {
        paintRotor(on, rect, one, paper_, font);
    });
    paintRow(painter, page.trend, polars_, [&](QPainter& on, const QRectF& rect, const PolarPicture& one) {
        paintPolar(on, rect, one, paper_, font);
    });
}

PdfTitle titleOf(const BalanceRecord& record) {
    return {headLine(record), {}};
}

}  // namespace fettle
