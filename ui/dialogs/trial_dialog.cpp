#include "ui/dialogs/trial_dialog.h"

#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QSignalBlocker>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "core/store/day.h"
#include "ui/dialogs/trial_form.h"
#include "ui/dialogs/trial_sheet_dialog.h"
#include "ui/dialogs/trial_steps.h"
#include "ui/dialogs/trial_view.h"
#include "ui/model/site_time.h"
#include "ui/model/trial_words.h"
#include "ui/pages/page_parts.h"

namespace fettle {

TrialDialog::TrialDialog(FleetWork& work, const Theme& theme, const QString& machine, const Units& units,
                         QWidget* parent)
    : QDialog(parent), work_(work), theme_(theme), machine_(machine), units_(units) {
    setObjectName(QStringLiteral("trialDialog"));
    setWindowTitle(tr("Seeded-fault trials of %1").arg(machine));
    setAttribute(Qt::WA_DeleteOnClose);
    build(theme);
    connect(&work_, &FleetWork::changedFleet, this, &TrialDialog::read);
    readPlan({});
    read();
}

void TrialDialog::build(const Theme& theme) {
    list_ = new QListWidget(this);
    list_->setObjectName(QStringLiteral("trialList"));
    list_->setAccessibleName(tr("Trials of this machine"));
    list_->setWordWrap(true);
    new_ = new QPushButton(tr("&New trial"), this);
    new_->setObjectName(QStringLiteral("trialNew"));
    new_->setToolTip(tr("Plan another trial of this machine"));
    new_->setAutoDefault(false);
    new_->setEnabled(work_.writable());
    trouble_ = new QLabel(this);
    trouble_->setObjectName(QStringLiteral("trouble"));
    trouble_->setWordWrap(true);
    trouble_->hide();
    setInk(*trouble_, theme, Role::Trouble);
    form_ = new TrialForm(theme, units_, work_.writable(), this);
    view_ = new TrialView(theme, units_, work_.writable(), this);
    middle_ = new QStackedWidget(this);
    middle_->addWidget(form_);
    middle_->addWidget(view_);
    auto* left = new QVBoxLayout;
    left->addWidget(list_, 1);
    left->addWidget(new_);
    auto* row = new QHBoxLayout;
    row->addLayout(left, 2);
    row->addWidget(middle_, 9);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    auto* all = new QVBoxLayout(this);
    all->addWidget(trouble_);
    all->addLayout(row, 1);
    all->addWidget(buttons);
    resize(66 * fontMetrics().height(), 40 * fontMetrics().height());
    connect(list_, &QListWidget::currentRowChanged, this, &TrialDialog::choose);
    connect(new_, &QPushButton::clicked, this, &TrialDialog::planNew);
    connect(form_, &TrialForm::keepWanted, this, [this](const Trial& trial) { keep(trial, false); });
    connect(form_, &TrialForm::startWanted, this, [this](const Trial& trial) { keep(trial, true); });
    connect(form_, &TrialForm::beforeChanged, this, [this](Instant from) { readPlan(from); });
    connect(view_, &TrialView::changeWanted, this, &TrialDialog::askChange);
    connect(view_, &TrialView::closeWanted, this, &TrialDialog::askClose);
    connect(view_, &TrialView::sheetWanted, this,
            [this] { (new TrialSheetDialog(work_, theme_, shown_, units_, this))->open(); });
}

void TrialDialog::read() {
    work_.ask<std::vector<TrialEntry>>(
        this, QStringLiteral("trials"),
        [tag = kept(machine_)](FleetFile& fleet, const CancelToken&) { return trialsOf(fleet, tag); },
        [this](Result<std::vector<TrialEntry>> trials) { takeTrials(std::move(trials)); });
}

void TrialDialog::readPlan(std::optional<Instant> beforeFrom) {
    work_.ask<TrialPlan>(
        this, QStringLiteral("trial plan"),
        [tag = kept(machine_), beforeFrom](FleetFile& fleet, const CancelToken&) {
            return trialPlan(fleet, tag, beforeFrom);
        },
        [this](Result<TrialPlan> plan) {
            if (!plan) return say(sentence(plan.error()));
            const bool first = !plan_;
            plan_ = std::make_shared<const TrialPlan>(std::move(*plan));
            form_->setPlan(plan_);
            const TrialEntry* entry = chosen();
            if (first && entry && !entry->trial.started()) form_->setTrial(entry->trial);
            if (first && entry && entry->trial.started()) readResult(*entry);  // by the site's clock
        });
}

void TrialDialog::takeTrials(Result<std::vector<TrialEntry>> trials) {
    if (!trials) return say(sentence(trials.error()));
    trials_ = std::move(*trials);
    int row = -1;
    {
        const QSignalBlocker quiet(list_);
        list_->clear();
        for (const TrialEntry& entry : trials_) {
            if (entry.id == shown_) row = list_->count();
            list_->addItem(tr("%1\n%2").arg(shown(entry.trial.name),
                                            trialStateWord(entry.trial, entry.closedAt.has_value())));
        }
    }
    if (planning_) return;
    if (row < 0 && list_->count() > 0) row = 0;
    const QSignalBlocker quiet(list_);
    list_->setCurrentRow(row);
    choose(row);
}

const TrialEntry* TrialDialog::chosen() const {
    for (const TrialEntry& entry : trials_)
        if (entry.id == shown_) return &entry;
    return nullptr;
}

void TrialDialog::choose(int row) {
    if (row < 0 || row >= int(trials_.size())) return planNew();
    const TrialEntry& entry = trials_[std::size_t(row)];
    shown_ = entry.id;
    planning_ = false;
    if (entry.trial.started()) {
        middle_->setCurrentWidget(view_);
        return readResult(entry);
    }
    middle_->setCurrentWidget(form_);
    if (inForm_ == entry.id) return;
    inForm_ = entry.id;
    form_->setTrial(entry.trial);
    if (entry.trial.beforeFrom) readPlan(entry.trial.beforeFrom);
}

void TrialDialog::planNew() {
    shown_ = inForm_ = 0;
    planning_ = true;
    const QSignalBlocker quiet(list_);
    list_->setCurrentRow(-1);
    middle_->setCurrentWidget(form_);
    form_->setTrial({});
}

void TrialDialog::readResult(const TrialEntry& entry) {
    if (view_->entry().id != entry.id) view_->say(tr("The recordings are read…"));
    work_.ask<TrialResult>(
        this, QStringLiteral("trial result"),
        [entry](FleetFile& fleet, const CancelToken&) { return trialResult(fleet, entry); },
        [this, entry](Result<TrialResult> result) {
            if (!result) return view_->say(sentence(result.error()));
            view_->show(entry, *result, siteZone(plan_ ? plan_->timeZone : std::string("UTC")));
        });
}

void TrialDialog::keep(const Trial& trial, bool start) {
    work_.write<TrialEntry>(
        this,
        [id = shown_, trial, start](FleetFile& fleet) -> Result<TrialEntry> {
            const auto kept = keepTrial(fleet, id, trial);
            if (!kept) return fail(kept.error());
            return start ? startTrial(fleet, *kept, "", nowUtc()) : trialOf(fleet, *kept);
        },
        [this, start](const Result<TrialEntry>& entry) {
            take(entry, start ? tr("The promise is frozen.") : tr("The plan is kept."));
        });
}

// Whatever was written is read again with the rest when the fleet file says that it changed.
void TrialDialog::take(const Result<TrialEntry>& entry, const QString& done) {
    if (!entry) return say(sentence(entry.error()));
    shown_ = inForm_ = entry->id;
    planning_ = false;
    say(QString());
    emit said(done);
}

Instant TrialDialog::newest() const {
    return plan_ ? plan_->newest : nowUtc();
}

void TrialDialog::askChange() {
    const TrialEntry* entry = chosen();
    if (!entry) return;
    const Instant from = entry->trial.changeFrom.value_or(nowUtc());
    auto* dialog = new TrialChangeDialog(theme_, from, entry->trial.changeUntil.value_or(from),
                                         siteZone(plan_ ? plan_->timeZone : std::string("UTC")), this);
    connect(dialog, &TrialChangeDialog::told, this, [this, id = entry->id](Instant stopped, Instant turning) {
        work_.write<TrialEntry>(
            this, [=](FleetFile& fleet) { return tellChange(fleet, id, stopped, turning); },
            [this](const Result<TrialEntry>& changed) { take(changed, tr("The change is noted.")); });
    });
    dialog->open();
}

void TrialDialog::askClose() {
    const TrialEntry* entry = chosen();
    if (!entry) return;
    auto* dialog = new TrialCloseDialog(theme_, shown(view_->result().verdict), newest(),
                                        siteZone(plan_ ? plan_->timeZone : std::string("UTC")), this);
    connect(dialog, &TrialCloseDialog::told, this,
            [this, id = entry->id](Instant until, const QString& remarks) {
                work_.write<TrialEntry>(
                    this,
                    [id, until, words = kept(remarks)](FleetFile& fleet) {
                        return closeTrial(fleet, id, until, words);
                    },
                    [this](const Result<TrialEntry>& closed) {
                        take(closed, tr("The trial is closed and kept."));
                    });
            });
    dialog->open();
}

void TrialDialog::say(const QString& trouble) {
    trouble_->setText(trouble);
    trouble_->setVisible(!trouble.isEmpty());
}

}  // namespace fettle
