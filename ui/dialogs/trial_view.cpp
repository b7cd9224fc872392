#include "ui/dialogs/trial_view.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QTableWidget>
#include <QVBoxLayout>

#include "ui/model/site_time.h"
#include "ui/model/trial_words.h"
#include "ui/model/unit_words.h"
#include "ui/pages/page_parts.h"
#include "ui/pages/ruled_table.h"
#include "ui/plot/trend_plot.h"
#include "ui/sheet/trial_figures.h"

namespace fettle {

TrialView::TrialView(const Theme& theme, const Units& units, bool writable, QWidget* parent)
    : QWidget(parent), theme_(theme), units_(units), writable_(writable) {
    setObjectName(QStringLiteral("trialView"));
    selection_.setUnits(units);
    plot_ = new TrendPlot(theme, axis_, selection_, this);
    plot_->setTitle(tr("Recording by recording"));
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->addWidget(buildText(), 5);
    all->addWidget(plot_, 5);
    all->addWidget(buildButtons());
}

QWidget* TrialView::buildText() {
    auto* box = new QWidget;
    verdict_ = selectableText(box, "trialVerdict");
    setTitleFont(*verdict_);
    frozen_ = selectableText(box, "trialFrozen");
    setInk(*frozen_, theme_, Role::MutedInk);
    promise_ = selectableText(box, "trialFrozenPromise");
    notes_ = selectableText(box, "trialNotes");
    setInk(*notes_, theme_, Role::MutedInk);
    checks_ = new QTableWidget(0, 4, box);
    checks_->setObjectName(QStringLiteral("trialChecks"));
    checks_->setAccessibleName(tr("What was promised and what came"));
    checks_->setHorizontalHeaderLabels({tr("promise"), tr("promised"), tr("found"), tr("so far")});
    checks_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    setRuled(*checks_, theme_);
    checks_->setWordWrap(true);
    checks_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    checks_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    checks_->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    checks_->horizontalHeader()->setSectionResizeMode(0, QHeaderView::ResizeToContents);
    checks_->horizontalHeader()->setSectionResizeMode(3, QHeaderView::ResizeToContents);
    auto* lines = new QVBoxLayout(box);
    for (QWidget* part : std::initializer_list<QWidget*>{verdict_, frozen_, checks_, promise_, notes_})
        lines->addWidget(part);
    lines->addStretch(1);
    auto* area = new QScrollArea(this);
    area->setObjectName(QStringLiteral("trialText"));
    area->setWidget(box);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    return area;
}

QWidget* TrialView::buildButtons() {
    auto* box = new QWidget(this);
    change_ = new QPushButton(tr("The &change is made…"), box);
    close_ = new QPushButton(tr("C&lose the trial…"), box);
    sheet_ = new QPushButton(tr("Trial &sheet…"), box);
    const std::pair<QPushButton*, const char*> names[] = {
        {change_, "trialChange"}, {close_, "trialClose"}, {sheet_, "trialSheet"}};
    auto* row = new QHBoxLayout(box);
    row->setContentsMargins(0, 0, 0, 0);
    row->addStretch(1);
    for (const auto& [button, name] : names) {
        button->setObjectName(QString::fromLatin1(name));
        button->setAutoDefault(false);
        row->addWidget(button);
    }
    change_->setToolTip(tr("Tell when the machine was stopped and when it turned again"));
    close_->setToolTip(tr("Keeps the result as it is then; a closed trial never changes"));
    sheet_->setToolTip(tr("The trial on paper"));
    connect(change_, &QPushButton::clicked, this, &TrialView::changeWanted);
    connect(close_, &QPushButton::clicked, this, &TrialView::closeWanted);
    connect(sheet_, &QPushButton::clicked, this, &TrialView::sheetWanted);
    return box;
}

void TrialView::show(const TrialEntry& entry, const TrialResult& result, const QTimeZone& zone) {
    entry_ = entry;
    result_ = result;
    zone_ = zone;
    showText();
    showChecks();
    showCurves();
    const bool open = writable_ && !entry.closedAt;
    change_->setEnabled(open);
    close_->setEnabled(open && entry.trial.changed());
    sheet_->setEnabled(true);
}

void TrialView::say(const QString& words) {
    verdict_->setText(words);
    for (QPushButton* button : {change_, close_, sheet_})
        button->setEnabled(false);
}

void TrialView::showText() {
    const Trial& trial = entry_.trial;
    verdict_->setText(withUnitsBeside(shown(result_.verdict), units_));
    QStringList facts;
    facts << trialChangeText(trial.change);
    if (trial.startedAt)
        facts << tr("promise frozen on %1 by %2")
                     .arg(momentText(*trial.startedAt, zone_), shown(trial.startedBy));
    if (trial.changeUntil) facts << tr("changed on %1").arg(momentText(*trial.changeUntil, zone_));
    if (entry_.closedAt) facts << tr("closed on %1").arg(momentText(*entry_.closedAt, zone_));
    facts << tr("%1 recordings before, %2 after").arg(result_.before).arg(result_.after);
    if (!trial.stopAt.empty()) facts << tr("stopped at once at %1").arg(shown(trial.stopAt));
    frozen_->setText(facts.join(QStringLiteral(" \u00b7 ")));
    promise_->setText(linesOf(trial.promise.sentences, units_));
    notes_->setText(linesOf(result_.notes, units_));
    notes_->setVisible(!result_.notes.empty());
}

void TrialView::showChecks() {
    checks_->setRowCount(int(result_.checks.size()));
    int row = 0;
    for (const TrialCheck& check : result_.checks) {
        const QString cells[] = {shown(check.what), withUnitsBeside(shown(check.promised), units_),
                                 withUnitsBeside(shown(check.found), units_), trialMarkWord(check.mark)};
        for (int column = 0; column < 4; ++column)
            checks_->setItem(row, column, new QTableWidgetItem(cells[column]));
        if (check.mark == TrialMark::Failed)
            checks_->item(row, 3)->setForeground(theme_.colour(Role::Trouble));
        ++row;
    }
    checks_->resizeRowsToContents();
    int height = checks_->horizontalHeader()->sizeHint().height() + 2 * checks_->frameWidth();
    for (int i = 0; i < checks_->rowCount(); ++i)
        height += checks_->rowHeight(i);
    checks_->setFixedHeight(height);
}

void TrialView::showCurves() {
    axis_.setZone(zone_);
    const TimeSpan span = trialTimes(entry_.trial, result_);
    axis_.setBounds(span);
    axis_.show(toMs(span.from), toMs(span.until));
    plot_->setAll(trialCurves(entry_.trial, result_));
    plot_->setEvents(trialMoments(entry_.trial, result_));
    plot_->setSubject(tr("%1, trial %2").arg(shown(entry_.trial.machine), shown(entry_.trial.name)));
    plot_->setWords(result_.recordings.empty()
                        ? tr("No running recording of the spans has come in yet: import recordings.")
                        : QString());
}

}  // namespace fettle
