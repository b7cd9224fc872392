#include "ui/dialogs/re_examine_dialog.h"

#include <QCheckBox>
#include <QComboBox>
#include <QCoreApplication>
#include <QDialogButtonBox>
#include <QDoubleSpinBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

#include "ui/model/numbers.h"
#include "ui/model/words.h"
#include "ui/pages/ruled_table.h"

namespace fettle {

namespace {

constexpr int kMostVerdicts = 2000;  // beyond, nobody reads on

QString spoken(const char* text) {
    return QCoreApplication::translate("fettle::ReExamineDialog", text);
}

QString kindWord(ChangeKind kind) {
    constexpr const char* kWords[] = {QT_TRANSLATE_NOOP("fettle::ReExamineDialog", "appeared"),
                                      QT_TRANSLATE_NOOP("fettle::ReExamineDialog", "more urgent"),
                                      QT_TRANSLATE_NOOP("fettle::ReExamineDialog", "vanished"),
                                      QT_TRANSLATE_NOOP("fettle::ReExamineDialog", "less urgent"),
                                      QT_TRANSLATE_NOOP("fettle::ReExamineDialog", "weight moved")};
    return spoken(kWords[std::size_t(kind)]);
}

QString urgencyOrNone(const std::string& urgency) {
    return urgency.empty() ? spoken(QT_TRANSLATE_NOOP("fettle::ReExamineDialog", "not named"))
                           : urgencyWord(urgency);
}

QTableWidgetItem* cell(const QString& text, bool number = false) {
    auto* item = new QTableWidgetItem(text);
    item->setToolTip(text);
    if (number) item->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
    return item;
}

QString countText(std::size_t count) {
    return count > 0 ? QLocale().toString(qulonglong(count)) : QString();
}

}  // namespace

ReExamineDialog::ReExamineDialog(FleetWork& work, const Theme& theme, const QString& machine, QWidget* parent)
    : QDialog(parent), work_(work), machine_(machine), long_(std::make_unique<LongWork>(work.path())) {
    setObjectName(QStringLiteral("reExamineDialog"));
    setWindowTitle(tr("Weigh again what is kept raw"));
    build(theme);
    connect(long_.get(), &LongWork::progressed, this, &ReExamineDialog::showProgress);
    connect(this, &QDialog::finished, this, [this] {
        if (!long_->running()) return deleteLater();
        long_->cancel();
        connect(long_.get(), &LongWork::finished, this, &QObject::deleteLater);
    });
    setState(false);
    read();
}

QLayout* ReExamineDialog::buildControls() {
    scope_ = new QComboBox(this);
    scope_->setObjectName(QStringLiteral("reExamineScope"));
    scope_->setAccessibleName(tr("Machines to weigh again"));
    scope_->setToolTip(tr("Whose recordings are weighed again"));
    scope_->addItem(tr("all machines"), QString());
    if (!machine_.isEmpty()) scope_->addItem(machine_, machine_);
    all_ = new QCheckBox(tr("also what this engine &weighed"), this);
    all_->setObjectName(QStringLiteral("reExamineAll"));
    all_->setToolTip(
        tr("After a description was corrected: verdicts of today's engine are weighed again too"));
    start_ = new QPushButton(tr("&Weigh again"), this);
    start_->setObjectName(QStringLiteral("reExamineStart"));
    start_->setToolTip(tr("Recordings whose waveform is no longer kept stay as they were weighed"));
    stop_ = new QPushButton(tr("&Stop"), this);
    stop_->setObjectName(QStringLiteral("reExamineStop"));
    stop_->setToolTip(tr("What was weighed stays; starting again carries on"));
    connect(start_, &QPushButton::clicked, this, &ReExamineDialog::start);
    connect(stop_, &QPushButton::clicked, this, [this] {
        word_->setText(tr("Stopping; what was weighed stays."));
        long_->cancel();
    });
    auto* row = new QHBoxLayout;
    for (QWidget* widget : {static_cast<QWidget*>(scope_), static_cast<QWidget*>(all_)})
        row->addWidget(widget);
    row->addStretch(1);
    row->addWidget(start_);
    row->addWidget(stop_);
    return row;
}

void ReExamineDialog::build(const Theme& theme) {
    word_ = new QLabel(this);
    word_->setObjectName(QStringLiteral("reExamineWord"));
    word_->setWordWrap(true);
    word_->setText(
        tr("Weighs recordings with today's engine and the descriptions that held then, and keeps old "
           "verdicts beside new ones. The open round stays as it is."));
    run_ = new QLabel(this);
    run_->setObjectName(QStringLiteral("reExamineRun"));
    run_->setWordWrap(true);
    bar_ = new QProgressBar(this);
    bar_->setObjectName(QStringLiteral("reExamineBar"));
    by_ = new QComboBox(this);
    by_->setObjectName(QStringLiteral("reExamineBy"));
    by_->setAccessibleName(tr("Listed by"));
    by_->setToolTip(tr("One line a verdict, or counted by family of faults or by machine"));
    by_->addItems({tr("by verdict"), tr("by family"), tr("by machine")});
    least_ = new QDoubleSpinBox(this);
    least_->setObjectName(QStringLiteral("reExamineLeast"));
    least_->setAccessibleName(tr("Least move of a weight that is listed"));
    least_->setToolTip(tr("Decibans by which a weight must have moved to be listed"));
    least_->setRange(1, 100);
    least_->setDecimals(0);
    least_->setValue(kToldMoveDban);
    least_->setSuffix(tr(" decibans"));
    connect(by_, &QComboBox::currentIndexChanged, this, &ReExamineDialog::fill);
    connect(least_, &QDoubleSpinBox::valueChanged, this, &ReExamineDialog::read);
    table_ = new QTableWidget(this);
    table_->setObjectName(QStringLiteral("reExamineTable"));
    table_->setAccessibleName(tr("What was weighed differently"));
    table_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    setRuled(*table_, theme);
    QSizePolicy room = table_->sizePolicy();
    room.setRetainSizeWhenHidden(true);
    table_->setSizePolicy(room);
    table_->hide();
    auto* choice = new QHBoxLayout;
    choice->addWidget(run_, 1);
    choice->addWidget(by_);
    choice->addWidget(least_);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* all = new QVBoxLayout(this);
    all->addWidget(word_);
    all->addLayout(buildControls());
    all->addWidget(bar_);
    all->addLayout(choice);
    all->addWidget(table_, 1);
    all->addWidget(buttons);
    resize(fontMetrics().averageCharWidth() * 120, fontMetrics().height() * 30);
}

void ReExamineDialog::setState(bool running) {
    bar_->setVisible(running);
    start_->setEnabled(!running && work_.writable());
    stop_->setEnabled(running);
    scope_->setEnabled(!running);
    all_->setEnabled(!running);
}

void ReExamineDialog::start() {
    bar_->setRange(0, 0);
    word_->setText(tr("What is to be weighed is being looked up."));
    const bool started = long_->start<ReExamineReport>(
        [tag = scope_->currentData().toString().toStdString(), all = all_->isChecked()](
            FleetFile& fleet, const Progress& progress, const CancelToken& cancel) {
            ImportOptions options;
            options.evenCurrent = all;
            options.progress = progress;
            options.cancel = cancel;
            return reExamine(fleet, tag, options);
        },
        [this](Result<ReExamineReport> report) { ended(report); });
    if (started) setState(true);
}

void ReExamineDialog::showProgress(qulonglong done, qulonglong total, const QString& what) {
    bar_->setRange(0, int(std::min<qulonglong>(total, 1000000000)));
    bar_->setValue(int(std::min<qulonglong>(done, 1000000000)));
    word_->setText(tr("%1 of %2 recordings: %3").arg(done).arg(total).arg(what));
}

void ReExamineDialog::ended(const Result<ReExamineReport>& report) {
    setState(false);
    if (!report)
        word_->setText(sentence(report.error()));
    else
        word_->setText(
            (report->cancelled
                 ? tr("Stopped: %1 weighed again, %2 already by this engine, %3 without their "
                      "waveform keep their verdict, %4 no longer fit their description. Starting "
                      "again carries on.")
                 : tr("%1 weighed again, %2 already by this engine, %3 without their waveform keep "
                      "their verdict, %4 no longer fit their description."))
                .arg(report->weighed)
                .arg(report->alreadyCurrent)
                .arg(report->withoutWaveform)
                .arg(report->refused.size()));
    work_.noteChange();
    read();
}

void ReExamineDialog::read() {
    work_.ask<ReExaminationDifference>(
        this, QStringLiteral("re-examination"),
        [least = least_->value()](FleetFile& fleet, const CancelToken&) {
            return differenceOf(fleet, {}, least);
        },
        [this](Result<ReExaminationDifference> difference) { show(std::move(difference)); });
}

void ReExamineDialog::show(Result<ReExaminationDifference> difference) {
    if (!difference) {
        difference_.reset();
        const bool none = difference.error().kind == ErrorKind::NotFound;
        run_->setText(none ? tr("Nothing was weighed again in this fleet file yet.")
                           : sentence(difference.error()));
        return fill();
    }
    difference_ = std::make_shared<const ReExaminationDifference>(std::move(*difference));
    const ReExaminationRun& run = difference_->run;
    const QString engine = shown(run.engine);
    run_->setText((run.finished
                       ? tr("%1: %2 recordings weighed again by %3; %4 verdicts came out differently.")
                       : tr("%1, not finished: %2 recordings weighed again by %3; %4 verdicts came "
                            "out differently."))
                      .arg(dateText(run.started))
                      .arg(difference_->weighed)
                      .arg(engine)
                      .arg(difference_->verdicts.size()));
    fill();
}

void ReExamineDialog::fill() {
    table_->clear();
    table_->setRowCount(0);
    table_->setVisible(difference_ != nullptr);
    if (!difference_) return table_->setColumnCount(0);
    if (by_->currentIndex() == 0) return fillVerdicts();
    const bool families = by_->currentIndex() == 1;
    fillGroups(families ? difference_->families : difference_->machines, families);
}

void ReExamineDialog::fillVerdicts() {
    const QStringList heads{tr("Machine"), tr("Fault"),           tr("What changed"), tr("Urgency before"),
                            tr("Now"),     tr("Decibans before"), tr("Now"),          tr("Recordings")};
    table_->setColumnCount(int(heads.size()));
    table_->setHorizontalHeaderLabels(heads);
    const int rows = int(std::min<std::size_t>(kMostVerdicts, difference_->verdicts.size()));
    table_->setRowCount(rows);
    for (int row = 0; row < rows; ++row) {
        const ChangedVerdict& verdict = difference_->verdicts[std::size_t(row)];
        const VerdictChange& change = verdict.example.change;
        int column = 0;
        const auto put = [&](QTableWidgetItem* item) { table_->setItem(row, column++, item); };
        put(cell(shown(verdict.machine)));
        put(cell(faultWords(verdict.fault, verdict.at)));
        put(cell(kindWord(verdict.worst)));
        put(cell(urgencyOrNone(change.oldUrgency)));
        put(cell(urgencyOrNone(change.newUrgency)));
        put(cell(weightText(change.oldDban), true));
        put(cell(weightText(change.newDban), true));
        put(cell(countText(verdict.counts.all()), true));
    }
    table_->resizeColumnsToContents();
    table_->horizontalHeader()->setSectionResizeMode(1, QHeaderView::Stretch);
}

void ReExamineDialog::fillGroups(const std::vector<ChangedGroup>& groups, bool families) {
    const QStringList heads{families ? tr("Family") : tr("Machine"),
                            tr("Verdicts"),
                            tr("Appeared"),
                            tr("More urgent"),
                            tr("Vanished"),
                            tr("Less urgent"),
                            tr("Moved"),
                            tr("Largest move, decibans")};
    table_->setColumnCount(int(heads.size()));
    table_->setHorizontalHeaderLabels(heads);
    table_->setRowCount(int(std::min<std::size_t>(kMostVerdicts, groups.size())));
    for (int row = 0; row < table_->rowCount(); ++row) {
        const ChangedGroup& group = groups[std::size_t(row)];
        const ChangeCounts& counts = group.counts;
        table_->setItem(row, 0, cell(families ? faultWords(group.name, "") : shown(group.name)));
        int column = 1;
        for (const std::size_t count :
             {group.verdicts, counts.appeared, counts.raised, counts.vanished, counts.lowered, counts.moved})
            table_->setItem(row, column++, cell(countText(count), true));
        table_->setItem(row, column, cell(fixedText(group.mostDban, 1), true));
    }
    table_->resizeColumnsToContents();
    table_->horizontalHeader()->setSectionResizeMode(0, QHeaderView::Stretch);
}

}  // namespace fettle
