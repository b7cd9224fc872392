#include "ui/dialogs/job_dialogs.h"

#include <QComboBox>
#include <QCoreApplication>
#include <QDateEdit>
#include <QFormLayout>
#include <QLineEdit>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QSignalBlocker>
#include <algorithm>

#include "ui/dialogs/optional_date.h"
#include "ui/model/job_model.h"
#include "ui/model/words.h"

namespace fettle {

namespace {

QString findingText(const DraftFinding& finding) {
    const QString words = QStringLiteral("%1: %2").arg(shown(finding.name), urgencyWord(finding.urgency));
    return finding.inJob
               ? QCoreApplication::translate("Jobs", "%1 (already in job %2)").arg(words).arg(*finding.inJob)
               : words;
}

std::optional<std::string> differing(const std::string& before, const std::string& after) {
    return before == after ? std::nullopt : std::optional(after);
}

}  // namespace

JobFields::JobFields(QWidget* parent)
    : QObject(parent),
      workOrder(new QLineEdit(parent)),
      orderPartsBy(new OptionalDate({}, parent)),
      runUntil(new OptionalDate({}, parent)),
      plannedStop(new OptionalDate({}, parent)),
      text(new QPlainTextEdit(parent)) {
    text->setTabChangesFocus(true);
    text->setFixedHeight(text->fontMetrics().lineSpacing() * 4);
}

void JobFields::show(const Job& job) {
    workOrder->setText(shown(job.workOrder));
    orderPartsBy->setDay(job.orderPartsBy);
    runUntil->setDay(job.runUntil);
    plannedStop->setDay(job.plannedStop);
}

void JobFields::read(const Job& before, JobMove& move) const {
    move.workOrder = differing(before.workOrder, kept(workOrder->text()));
    move.orderPartsBy = differing(before.orderPartsBy, orderPartsBy->day());
    move.runUntil = differing(before.runUntil, runUntil->day());
    move.plannedStop = differing(before.plannedStop, plannedStop->day());
    move.text = kept(text->toPlainText());
}

void JobFields::show(const JobMove& move) {
    if (move.workOrder) workOrder->setText(shown(*move.workOrder));
    if (move.orderPartsBy) orderPartsBy->setDay(*move.orderPartsBy);
    if (move.runUntil) runUntil->setDay(*move.runUntil);
    if (move.plannedStop) plannedStop->setDay(*move.plannedStop);
    text->setPlainText(shown(move.text));
}

JobDraftDialog::JobDraftDialog(const Theme& theme, const JobDraft& draft, QWidget* parent)
    : AnswerDialog(theme, QStringLiteral("jobDraftDialog"), tr("New job: %1").arg(shown(draft.machine)),
                   tr("Draft the job"), parent),
      draft_(draft),
      findings_(new QListWidget(this)),
      fields_(new JobFields(this)) {
    explain(
        tr("Findings of the week to %1. One job takes all that one stop can mend; its dates are the soonest "
           "of them.")
            .arg(dateText(draft.week)));
    for (const DraftFinding& finding : draft_.findings) {
        auto* item = new QListWidgetItem(findingText(finding), findings_);
        item->setFlags(item->flags() | Qt::ItemIsUserCheckable);
        item->setCheckState(finding.inJob ? Qt::Unchecked : Qt::Checked);
        item->setToolTip(shown(finding.sentence));
    }
    findings_->setFixedHeight(fontMetrics().lineSpacing() * 6);
    addField(tr("For these findings"), findings_, "findings");
    addField(tr("Order parts by"), fields_->orderPartsBy, "orderPartsBy");
    addField(tr("Do not run beyond"), fields_->runUntil, "runUntil");
    addField(tr("Planned stop"), fields_->plannedStop, "plannedStop");
    addField(tr("Work order"), fields_->workOrder, "workOrder");
    addField(tr("In words"), fields_->text, "text");
    connect(findings_, &QListWidget::itemChanged, this, &JobDraftDialog::chooseAgain);
    connect(this, &QDialog::accepted, this, [this] {
        JobMove move;
        fields_->read(job_, move);
        emit drafted(job_, move);
    });
    chooseAgain();
}

std::vector<std::size_t> JobDraftDialog::numbers() const {
    std::vector<std::size_t> chosen;
    for (int i = 0; i < findings_->count(); ++i)
        if (findings_->item(i)->checkState() == Qt::Checked) chosen.push_back(std::size_t(i) + 1);
    return chosen;
}

void JobDraftDialog::setAnswer(const std::vector<std::size_t>& numbers, const JobMove& move) {
    {
        const QSignalBlocker quiet(findings_);
        for (int i = 0; i < findings_->count(); ++i) {
            const bool chosen =
                std::find(numbers.begin(), numbers.end(), std::size_t(i) + 1) != numbers.end();
            findings_->item(i)->setCheckState(chosen ? Qt::Checked : Qt::Unchecked);
        }
    }
    chooseAgain();
    fields_->show(move);
}

void JobDraftDialog::chooseAgain() {
    const auto job = draftedJob(draft_, numbers());
    if (job) {
        job_ = *job;
        const QString order = fields_->workOrder->text();
        fields_->show(job_);
        fields_->workOrder->setText(order);
    }
    check();
}

void JobDraftDialog::check() {
    if (draft_.findings.empty())
        return lacks(tr("Nothing was found in this week: there is no job to draft."));
    lacks(numbers().empty() ? tr("Choose at least one finding.") : QString());
}

JobMoveDialog::JobMoveDialog(const Theme& theme, const Job& job, What what, QWidget* parent)
    : AnswerDialog(
          theme, QStringLiteral("jobMoveDialog"),
          what == What::Step ? tr("Job %1: what happened").arg(job.id) : tr("Revision of job %1").arg(job.id),
          what == What::Step ? tr("Keep") : tr("Make the revision"), parent),
      job_(job),
      what_(what),
      fields_(new JobFields(this)) {
    fields_->show(job_);
    explain(
        what == What::Step
            ? QStringLiteral("%1: %2").arg(shown(job.machine), jobFindingWords(job))
            : tr("Revision %1 replaces revision %2: the old job stays as it is and is marked as replaced, "
                 "the new one is drafted again.")
                  .arg(job.revision + 1)
                  .arg(job.revision));
    if (what == What::Step) addStep();
    addField(tr("Order parts by"), fields_->orderPartsBy, "orderPartsBy");
    addField(tr("Do not run beyond"), fields_->runUntil, "runUntil");
    addField(tr("Planned stop"), fields_->plannedStop, "plannedStop");
    addField(tr("Work order"), fields_->workOrder, "workOrder");
    addField(what == What::Step ? tr("In words") : tr("Why it is revised"), fields_->text, "text");
    connect(fields_->text, &QPlainTextEdit::textChanged, this, &JobMoveDialog::check);
    connect(this, &QDialog::accepted, this, [this] { emit moved(move()); });
    check();
}

void JobMoveDialog::addStep() {
    state_ = new QComboBox(this);
    for (const std::string& state : nextStates(job_))
        state_->addItem(jobStateWord(state), shown(state));
    state_->addItem(tr("stays %1").arg(jobStateWord(job_.state)), QString());
    on_ = new QDateEdit(QDate::currentDate(), this);
    on_->setDisplayFormat(dateFormat());
    on_->setCalendarPopup(true);
    on_->setMaximumDate(QDate::currentDate().addDays(1));
    kind_ = new QComboBox(this);
    for (const Word& word : eventKinds())
        for (const char* work : {"repair", "part", "cleaning", "greasing"})
            if (word.key == work) kind_->addItem(word.text, shown(word.key));
    addField(tr("It is now"), state_, "state");
    addField(tr("Done on"), on_, "on");
    addField(tr("Kind of work"), kind_, "kind");
    connect(state_, &QComboBox::currentIndexChanged, this, &JobMoveDialog::check);
}

bool JobMoveDialog::isDone() const {
    return state_ && state_->currentData().toString() == QStringLiteral("done");
}

void JobMoveDialog::check() {
    const bool worded = !kept(fields_->text->toPlainText()).empty();
    if (what_ == What::Revision) return lacks(worded ? QString() : tr("Say what the revision changes."));
    for (QWidget* field : std::initializer_list<QWidget*>{on_, kind_}) {
        field->setVisible(isDone());
        form()->labelForField(field)->setVisible(isDone());
    }
    lacks(isDone() && !worded ? tr("Say what was done: the work starts the verification and stands in the "
                                   "machine's history.")
                              : QString());
}

JobMove JobMoveDialog::move() const {
    JobMove move;
    fields_->read(job_, move);
    if (what_ == What::Revision) return move;
    move.state = kept(state_->currentData().toString());
    if (isDone()) {
        move.on = kept(on_->date().toString(Qt::ISODate));
        move.kind = kept(kind_->currentData().toString());
    }
    return move;
}

}  // namespace fettle
