#include "ui/sheet/trial_sheet.h"

#include "core/diagnosis/settings.h"
#include "ui/model/engine_words.h"
#include "ui/model/numbers.h"
#include "ui/model/site_time.h"
#include "ui/model/trial_words.h"
#include "ui/model/unit_words.h"
#include "ui/sheet/page_flow.h"
#include "ui/sheet/plot_on_paper.h"
#include "ui/sheet/trial_figures.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr double kTrialFigureMm = 62, kBoxMm = 2.8, kSignMm = 9;

QString textOf(const std::string& text, const Units& units) {
    return withUnitsBeside(plainText(engineText(text).toStdString()), units);
}

QString outcomeLine(const TrialSheet& sheet) {
    return sheet.entry.closedAt ? tr("Trial %1").arg(trialOutcomeWord(sheet.result.outcome))
                                : tr("Trial in work: %1").arg(trialOutcomeWord(sheet.result.outcome));
}

void setTrialHead(Column& column, const TrialSheet& sheet) {
    const Trial& trial = sheet.entry.trial;
    column.muted(tr("Trial sheet, %1; made on %2").arg(plainText(sheet.site), dateText(sheet.madeOn)));
    column.rule(0.4);
    column.gap(2);
    const auto line = [&](const QString& text, double pt, bool bold) {
        column.moveTo(column.y() + place(column.page(), text, {column.left(), column.y()}, column.width(),
                                         {.pt = pt, .bold = bold, .mostLines = 3}));
        column.gap(0.8);
    };
    line(outcomeLine(sheet), 16, true);
    line(tr("%1: %2").arg(plainText(trial.machine), plainText(sheet.service)), 11, true);
    line(textOf(sheet.result.verdict, sheet.units), 10, false);
    column.gap(1);
}

void setLaterTrialHead(Column& column, const TrialSheet& sheet) {
    column.muted(tr("Trial sheet, %1: %2")
                     .arg(plainText(sheet.entry.trial.machine), plainText(sheet.entry.trial.name)));
    column.rule(0.3);
    column.gap(1);
}

FlowTable changeTable(const TrialSheet& sheet) {
    const Trial& trial = sheet.entry.trial;
    const QTimeZone zone = siteZone(sheet.timeZone);
    FlowTable table{tr("What is changed, and what it has to do"), {{tr("what"), 3}, {tr("value"), 8}}, {}};
    const auto add = [&](const QString& name, const QString& value) {
        if (!value.isEmpty()) table.rows.push_back({{name}, {value}});
    };
    add(tr("change"), trialChangeText(trial.change));
    add(tr("in words"), textOf(trial.change.words, sheet.units));
    if (!trial.change.point.empty())
        add(tr("channel followed"),
            QStringLiteral("%1 %2").arg(plainText(trial.change.point), plainText(trial.change.channel)));
    for (const TrialFigure& row : trialFigures(trial.change, trial.expectation, sheet.units))
        add(row.name, row.value);
    add(tr("how it was worked out"), textOf(trial.expectation.how, sheet.units));
    for (const std::string& one : trial.expectation.notes)
        add(tr("mind"), textOf(one, sheet.units));
    for (const std::string& one : trial.expectation.warnings)
        add(tr("warning"), textOf(one, sheet.units));
    if (trial.changeFrom) add(tr("stopped and isolated"), momentText(*trial.changeFrom, zone));
    if (trial.changeUntil) add(tr("turning again, changed"), momentText(*trial.changeUntil, zone));
    if (trial.afterUntil) add(tr("recordings up to"), momentText(*trial.afterUntil, zone));
    return table;
}

Block promiseBlock(const TrialSheet& sheet) {
    return [&sheet](Column& column) {
        const Trial& trial = sheet.entry.trial;
        column.gap(1.5);
        column.heading(tr("The promise"));
        column.muted(trial.startedAt ? tr("Frozen on %1 by %2.")
                                           .arg(momentText(*trial.startedAt, siteZone(sheet.timeZone)),
                                                plainText(trial.startedBy))
                                     : tr("Not frozen yet: the trial is not started."));
        int number = 0;
        for (const std::string& one : trial.promise.sentences)
            column.marked(QStringLiteral("%1.").arg(++number), textOf(one, sheet.units), 5);
    };
}

FlowTable checkTable(const TrialSheet& sheet) {
    FlowTable table{
        tr("What came"), {{tr("promise"), 2}, {tr("promised"), 4}, {tr("found"), 4}, {tr("kept?"), 1.4}}, {}};
    for (const TrialCheck& check : sheet.result.checks)
        table.rows.push_back({{plainText(check.what)},
                              {textOf(check.promised, sheet.units)},
                              {textOf(check.found, sheet.units)},
                              {QString(), trialMarkWord(check.mark)}});
    QStringList notes;
    for (const std::string& one : sheet.result.notes)
        notes << textOf(one, sheet.units);
    table.note = notes.join(QStringLiteral(". "));
    return table;
}

Block figureBlock(const TrialSheet& sheet) {
    return [&sheet](Column& column) {
        if (sheet.result.recordings.empty()) return;
        column.gap(1.5);
        column.heading(tr("Recording by recording"));
        column.muted(
            tr("Weight in decibans (left) and 1x in mm/s r.m.s. (right, where it is followed); the "
               "marks say when the change was made and when 3 of 5 recordings had told it."));
        column.page().trend = QRectF(column.left(), column.y(), column.width(), kTrialFigureMm * kMm);
        column.gap(kTrialFigureMm);
    };
}

FlowTable recordingTable(const TrialSheet& sheet) {
    const QTimeZone zone = siteZone(sheet.timeZone);
    FlowTable table{tr("All recordings"),
                    {{tr("time"), 3.4},
                     {tr("side"), 1.4},
                     {tr("decibans"), 1.4},
                     {tr("1x, mm/s"), 1.4},
                     {tr("r/min"), 1.4},
                     {tr("named more strongly"), 3}},
                    {}};
    const auto number = [](const std::optional<double>& value, int digits) {
        return value ? fixedText(*value, digits) : QStringLiteral("–");
    };
    for (const TrialRecording& one : sheet.result.recordings)
        table.rows.push_back({{shortMomentText(one.time, zone)},
                              {one.after ? tr("after") : tr("before")},
                              {number(one.weightDban, 1)},
                              {number(one.onceMmS, 2)},
                              {number(one.speedRpm, 0)},
                              {plainText(one.strongest)}});
    return table;
}

// Each with its box: crossed where it was confirmed when the trial was started.
Block cautionBlock(const TrialSheet& sheet, const std::string& words) {
    return [&sheet, words](Column& column) {
        const auto& confirmed = sheet.entry.trial.precautions;
        const bool done = std::find(confirmed.begin(), confirmed.end(), words) != confirmed.end();
        const double box = kBoxMm * kMm, top = column.y() + 0.2 * kMm;
        column.page().boxes.push_back({QRectF(column.left(), top, box, box), done});
        column.marked(QString(), plainText(engineText(words).toStdString()), 5);
    };
}

Block signBlock(const TrialSheet& sheet) {
    return [&sheet](Column& column) {
        const Trial& trial = sheet.entry.trial;
        column.gap(1.5);
        column.heading(tr("Signed"));
        column.paragraph(plainText(trial.responsible), tr("Answers for it:"));
        column.paragraph(plainText(trial.permit), tr("Permit:"));
        column.paragraph(textOf(trial.stopAt, sheet.units), tr("Stopped at once at:"));
        column.paragraph(plainText(trial.remarks), tr("Remarks:"));
        const QStringList labels{tr("change made by, date"), tr("change taken out and checked by, date"),
                                 tr("witness, date")};
        const double gap = 3 * kMm, width = (column.width() - 2 * gap) / 3;
        for (int i = 0; i < labels.size(); ++i) {
            const double left = column.left() + i * (width + gap);
            place(column.page(), labels[i], {left, column.y()}, width,
                  {.pt = kLeastPt, .ink = Role::MutedInk, .mostLines = 1});
            column.page().boxes.push_back(
                {QRectF(left, column.y() + lineHeight(kLeastPt) + 0.5 * kMm, width, kSignMm * kMm)});
        }
        column.moveTo(column.y() + lineHeight(kLeastPt));
        column.gap(kSignMm + 2);
    };
}

// The curve of the trial drawn where the layout left room for it.
class TrialPages : public PrintedPages {
  public:
    TrialPages(std::shared_ptr<const TrialSheet> sheet, PaperSize size)
        : PrintedPages(layOutTrial(*sheet, size), size), sheet_(std::move(sheet)) {
        setPaperLabels(plot_);
        axis_.setZone(siteZone(sheet_->timeZone));
        axis_.setBounds(trialTimes(sheet_->entry.trial, sheet_->result));
        selection_.setUnits(sheet_->units);
        plot_.setAll(trialCurves(sheet_->entry.trial, sheet_->result));
        plot_.setEvents(trialMoments(sheet_->entry.trial, sheet_->result));
    }

  protected:
    void paintFigures(QPainter& painter, const SheetPage& page) override {
        if (!page.trend.isNull()) drawOnPaper(plot_, painter, page.trend);
    }

  private:
    std::shared_ptr<const TrialSheet> sheet_;
    Theme paper_{ThemeChoice::Paper};
    Selection selection_;
    TimeAxis axis_{selection_};
    TrendPlot plot_{paper_, axis_, selection_, nullptr};
};

}  // namespace

Result<TrialSheet> readTrialSheet(FleetFile& fleet, std::int64_t trial, const std::string& madeOn) {
    auto entry = trialOf(fleet, trial);
    if (!entry) return fail(entry.error());
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto machine = fleet.machines().byTag(entry->trial.machine);
    if (!machine) return fail(machine.error());
    auto result = trialResult(fleet, *entry);
    if (!result) return fail(result.error());
    return TrialSheet{std::move(*entry),          std::move(*result), site->site,
                      machine->service,           site->timeZone,     madeOn,
                      WeighingSettings().engine()};
}

std::vector<SheetPage> layOutTrial(const TrialSheet& sheet, PaperSize size) {
    PageFlow flow(
        size, [&](Column& column) { setTrialHead(column, sheet); },
        [&](Column& column) { setLaterTrialHead(column, sheet); });
    flow.add(changeTable(sheet));
    flow.add(promiseBlock(sheet));
    flow.add(checkTable(sheet));
    flow.add(figureBlock(sheet));
    flow.add([](Column& column) {
        column.gap(1.5);
        column.heading(tr("Cautions; a filled box was confirmed before the start"));
    });
    for (const std::string& words : trialCautions(sheet.entry.trial.change.kind))
        flow.add(cautionBlock(sheet, words));
    flow.add(signBlock(sheet));
    flow.add(recordingTable(sheet));
    return flow.finish(tr("Made on %1 by Fettle %2. A record of a trial, no permit to work.")
                           .arg(dateText(sheet.madeOn), plainText(sheet.engine)));
}

std::unique_ptr<PrintedPages> trialPages(std::shared_ptr<const TrialSheet> sheet, PaperSize size) {
    return std::make_unique<TrialPages>(std::move(sheet), size);
}

PdfTitle titleOf(const TrialSheet& sheet) {
    return {
        tr("Trial sheet %1: %2").arg(plainText(sheet.entry.trial.machine), plainText(sheet.entry.trial.name)),
        plainText(sheet.engine)};
}

}  // namespace fettle
