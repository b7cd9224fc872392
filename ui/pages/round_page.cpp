#include "ui/pages/round_page.h"

#include <QHBoxLayout>
#include <QMenu>
#include <QPushButton>
#include <QStackedWidget>
#include <QToolBar>
#include <QVBoxLayout>

#include "core/fleet/who.h"
#include "ui/model/shortcuts.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"
#include "ui/pages/round_heading.h"
#include "ui/pages/round_ledger.h"

namespace fettle {

namespace {

constexpr const char* kFootActions[] = {"round.look",   "round.accept", "round.dispute", "round.defer",
                                        "round.unseen", "round.next",   "round.leave"};

constexpr int kLowEms = 30;

QPushButton* button(const QString& text, const char* name, QWidget* parent) {
    auto* made = new QPushButton(text, parent);
    made->setObjectName(QString::fromLatin1(name));
    made->setAutoDefault(false);
    return made;
}

// The whole of what stands in the line, where a column is too narrow for it or has no room at all.
QString detailOf(const LedgerModel& model, const RoundMachine& machine, bool allColumns) {
    QStringList parts;
    if (!machine.findings.empty()) parts << shown(machine.findings.front().finding.sentence);
    parts << shown(machine.changed) << model.weightNote(machine);
    if (!allColumns) parts << model.levelAndAge(machine) + u'.';
    parts.removeAll(QString());
    return QStringLiteral("%1: %2").arg(shown(machine.tag), parts.join(u' '));
}

Instant now() {
    return std::chrono::time_point_cast<std::chrono::milliseconds>(std::chrono::system_clock::now());
}

QString withKey(const QAction& action) {
    const QString key = action.shortcut().toString(QKeySequence::NativeText);
    const QString text = action.text().remove(u'&');
    return key.isEmpty() ? text : QStringLiteral("%1  (%2)").arg(text, key);
}

}  // namespace

RoundPage::RoundPage(FleetWork& work, Selection& selection, const Theme& theme, QWidget* parent)
    : QWidget(parent), work_(work), selection_(selection), theme_(theme) {
    setObjectName(QStringLiteral("roundPage"));
    build();
    connect(&work_, &FleetWork::changedFleet, this, &RoundPage::read);
    read();
}

QAction* RoundPage::add(const char* id, void (RoundPage::*slot)()) {
    QAction* action = actionFor(id, this);
    connect(action, &QAction::triggered, this, slot);
    actions_[id] = action;
    const bool everywhere = std::string(id) == "round.find";
    (everywhere ? static_cast<QWidget*>(this) : ledger_)->addAction(action);
    return action;
}

void RoundPage::build() {
    heading_ = new RoundHeading(theme_, this);
    ledger_ = new RoundLedger(model_, theme_, this);
    add("round.look", &RoundPage::lookAtCurrent);
    add("round.accept", &RoundPage::acceptCurrent);
    add("round.dispute", &RoundPage::disputeCurrent);
    add("round.defer", &RoundPage::deferCurrent);
    add("round.unseen", &RoundPage::answerCurrent);
    add("round.next", &RoundPage::goToNextUndecided);
    add("round.leave", &RoundPage::acceptLeave);
    add("round.fold", &RoundPage::foldCurrent);
    add("round.find", &RoundPage::find);

    auto* nothing = new QWidget(this);
    empty_ = new QLabel(nothing);
    empty_->setObjectName(QStringLiteral("roundEmpty"));
    empty_->setWordWrap(true);
    emptyRegister_ = button(tr("Take a machine into the register"), "emptyRegister", nothing);
    emptyImport_ = button(tr("Import recordings…"), "emptyImport", nothing);
    auto* lines = new QVBoxLayout(nothing);
    lines->setContentsMargins(16, 24, 16, 16);
    lines->addWidget(empty_);
    lines->addWidget(emptyRegister_, 0, Qt::AlignLeft);
    lines->addWidget(emptyImport_, 0, Qt::AlignLeft);
    lines->addStretch(1);
    middle_ = new QStackedWidget(this);
    middle_->addWidget(ledger_);
    middle_->addWidget(nothing);
    middle_->setContentsMargins(8, 0, 0, 0);

    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(0);
    all->addWidget(heading_);
    all->addWidget(middle_, 1);
    all->addWidget(new ThinRule(theme_, this));
    all->addWidget(foot());

    connect(heading_, &RoundHeading::filterChanged, this, [this](const LedgerFilter& filter) {
        model_.setFilter(filter);
        refreshActions();
    });
    connect(heading_, &RoundHeading::roundWanted, this, &RoundPage::showRound);
    connect(ledger_, &RoundLedger::currentMachineChanged, this, &RoundPage::refreshActions);
    connect(ledger_, &RoundLedger::columnsChanged, this, &RoundPage::refreshActions);
    connect(ledger_->selectionModel(), &QItemSelectionModel::selectionChanged, this,
            &RoundPage::refreshActions);
    connect(ledger_, &RoundLedger::machineOpened, this, &RoundPage::look);
    connect(ledger_, &RoundLedger::menuWanted, this, [this](const QPoint& at) {
        auto* menu = new QMenu(this);
        menu->setAttribute(Qt::WA_DeleteOnClose);
        for (const char* id : kFootActions)
            menu->addAction(actions_.at(id));
        menu->popup(at);
    });
    setFocusProxy(ledger_);
    connect(emptyRegister_, &QPushButton::clicked, this, &RoundPage::registerWanted);
    connect(emptyImport_, &QPushButton::clicked, this, &RoundPage::importWanted);
}

// In a low window the letters need the room of the margins.
void RoundPage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    const bool low = height() < kLowEms * fontMetrics().height();
    heading_->layout()->setContentsMargins(16, low ? 4 : 12, 16, low ? 2 : 8);
    foot_->layout()->setContentsMargins(16, low ? 2 : 8, 16, low ? 2 : 8);
}

// Below the ledger: the whole sentence of the current machine, and what can be done with it.
QWidget* RoundPage::foot() {
    auto* foot = foot_ = new QWidget(this);
    detail_ = new QLabel(foot);
    detail_->setObjectName(QStringLiteral("roundDetail"));
    detail_->setWordWrap(true);
    detail_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    detail_->setMinimumHeight(3 * detail_->fontMetrics().lineSpacing());
    detail_->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    auto* acts = new QToolBar(foot);  // what does not fit stands behind an arrow
    acts->setToolButtonStyle(Qt::ToolButtonTextOnly);
    for (const char* id : kFootActions) {
        QAction* action = actions_.at(id);
        action->setIconText(withKey(*action));
        acts->addAction(action);
        QWidget* act = acts->widgetForAction(action);
        act->setObjectName(action->objectName() + QStringLiteral(".button"));
        act->setAccessibleName(action->text().remove(u'&'));
        act->setFocusPolicy(Qt::TabFocus);
    }
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(acts, 1);
    start_ = button(tr("Open a round…"), "startRound", foot);
    close_ = button(tr("Close the round…"), "closeRound", foot);
    connect(start_, &QPushButton::clicked, this, &RoundPage::startWanted);
    connect(close_, &QPushButton::clicked, this, &RoundPage::closeWanted);
    buttons->addWidget(start_);
    buttons->addWidget(close_);
    auto* all = new QVBoxLayout(foot);
    all->setContentsMargins(16, 8, 16, 8);
    all->addWidget(detail_);
    all->addLayout(buttons);
    return foot;
}

void RoundPage::showRound(std::optional<std::int64_t> id) {
    wanted_ = id;
    read();
}

void RoundPage::read() {
    loading_ = true;
    if (model_.round().list.machines.empty()) heading_->say(tr("The round is being read."), false);
    work_.ask<RoundShown>(
        this, QStringLiteral("round"),
        [id = wanted_](FleetFile& fleet, const CancelToken& cancel) { return readRound(fleet, id, cancel); },
        [this](Result<RoundShown> round) { take(std::move(round)); });
}

void RoundPage::take(Result<RoundShown> round) {
    loading_ = false;
    if (!round) {
        heading_->say(sentence(round.error()), true);
        emit troubled(sentence(round.error()));
        return;
    }
    model_.setRound(std::move(*round));
    heading_->show(model_);
    const bool nothing = model_.round().list.machines.empty();
    middle_->setCurrentIndex(nothing ? 1 : 0);
    if (nothing) sayEmpty();
    if (!nothing && !ledger_->currentIndex().isValid()) {
        const std::string first = nextUndecided(model_.round().list, model_.round().state, "");
        ledger_->setCurrent(first.empty() ? model_.round().list.machines.front().tag : first);
    }
    refreshActions();
    emit roundShown();
}

void RoundPage::sayEmpty() {
    const RoundShown& round = model_.round();
    const bool noMachines = round.machinesInRegister == 0;
    empty_->setText(
        noMachines ? tr("The register is empty. Take the machines in first, with their nameplates, bearings "
                        "and measuring points; then import recordings; then open the first round.")
                   : tr("%1 machines are in the register, no recording yet. Import recordings, then open "
                        "the first round.")
                         .arg(round.machinesInRegister));
    emptyRegister_->setVisible(noMachines);
    emptyImport_->setEnabled(work_.writable());
}

std::string RoundPage::current() const {
    return ledger_->current();
}

const RoundMachine* RoundPage::currentMachine() const {
    return model_.machineAt(ledger_->currentIndex().row());
}

std::vector<const RoundMachine*> RoundPage::chosenMachines() const {
    std::vector<const RoundMachine*> machines;
    for (const QModelIndex& row : ledger_->selectionModel()->selectedRows())
        if (const RoundMachine* machine = model_.machineAt(row.row())) machines.push_back(machine);
    if (machines.empty() && currentMachine()) machines.push_back(currentMachine());
    return machines;
}

std::optional<std::int64_t> RoundPage::openRoundId() const {
    if (!model_.round().open() || !work_.writable()) return std::nullopt;
    return model_.round().entry->id;
}

void RoundPage::refreshActions() {
    const RoundMachine* machine = currentMachine();
    const bool open = openRoundId().has_value();
    bool decidable = false, unseen = false;
    for (const RoundMachine* one : chosenMachines()) {
        decidable = decidable || model_.decidable(*one);
        unseen = unseen || one->urgency == "unseen";
    }
    const bool one = machine && model_.decidable(*machine);
    actions_["round.look"]->setEnabled(machine != nullptr);
    actions_["round.accept"]->setEnabled(open && decidable);
    for (const char* id : {"round.dispute", "round.defer"})
        actions_[id]->setEnabled(open && one);
    actions_["round.unseen"]->setEnabled(open && unseen);
    actions_["round.next"]->setEnabled(open);
    actions_["round.leave"]->setEnabled(open && !model_.round().state.leaveAccepted &&
                                        mayAcceptLeave(model_.round().list, model_.round().state));
    actions_["round.leave"]->setToolTip(
        tr("All machines to leave are accepted together, once each of the sample was opened"));
    start_->setVisible(work_.writable() && !model_.round().open() && !model_.round().list.machines.empty());
    close_->setVisible(open);
    const bool allColumns = !ledger_->isColumnHidden(LedgerModel::Age);
    detail_->setText(machine ? detailOf(model_, *machine, allColumns) : QString());
}

void RoundPage::setState(RoundState state) {
    model_.setState(std::move(state));
    heading_->show(model_);
    refreshActions();
}

// The page was ahead of the file: where the file refused, it is read again.
void RoundPage::written(const Status& status) {
    if (status) return;
    emit troubled(sentence(status.error()));
    read();
}

void RoundPage::decide(std::vector<Decision> decisions) {
    const auto id = openRoundId();
    if (!id || decisions.empty()) return;
    RoundState state = model_.round().state;
    for (Decision& decision : decisions) {
        decision.by = orLoginName({});
        decision.at = now();
        state.decisions.push_back(decision);
    }
    setState(std::move(state));
    work_.write<void>(
        this,
        [id, decisions](FleetFile& fleet) -> Status {
            for (const Decision& decision : decisions)
                if (auto done = fettle::decide(fleet, *id, decision); !done) return done;
            return {};
        },
        [this](Status status) { written(status); });
}

void RoundPage::answerUnseen(const QStringList& machines, const QString& reason) {
    const auto id = openRoundId();
    if (!id || machines.isEmpty()) return;
    RoundState state = model_.round().state;
    std::vector<std::string> tags;
    for (const QString& machine : machines)
        tags.push_back(kept(machine));
    state.unseenAnswered.insert(state.unseenAnswered.end(), tags.begin(), tags.end());
    setState(std::move(state));
    work_.write<void>(
        this,
        [id, tags, why = kept(reason)](FleetFile& fleet) -> Status {
            for (const std::string& tag : tags)
                if (auto done = fettle::answerUnseen(fleet, *id, tag, why, orLoginName({})); !done)
                    return done;
            return {};
        },
        [this](Status status) { written(status); });
}

void RoundPage::acceptLeave() {
    const auto id = openRoundId();
    if (!id || !mayAcceptLeave(model_.round().list, model_.round().state)) return;
    RoundState state = model_.round().state;
    state.leaveAccepted = true;
    setState(std::move(state));
    work_.write<void>(
        this, [id, by = orLoginName({})](FleetFile& fleet) { return fettle::acceptLeave(fleet, *id, by); },
        [this](Status status) { written(status); });
}

void RoundPage::look(const QString& tag) {
    const int row = model_.rowOf(kept(tag));
    const RoundMachine* machine = model_.machineAt(row);
    selection_.setMachine(tag);
    if (machine && !machine->findings.empty()) {
        const Hypothesis& first = machine->findings.front().finding;
        selection_.setFault(shown(first.fault), shown(first.at));
    }
    const auto id = openRoundId();
    if (id && machine && machine->inSample && !model_.settled(*machine)) {
        RoundState state = model_.round().state;
        state.opened.push_back(kept(tag));
        setState(std::move(state));
        work_.write<void>(
            this, [id, tag = kept(tag)](FleetFile& fleet) { return markOpened(fleet, *id, tag); },
            [this](Status status) { written(status); });
    }
    emit machineWanted(tag);
}

void RoundPage::goToNextUndecided() {
    const std::string next = nextUndecided(model_.round().list, model_.round().state, current());
    if (next.empty()) return emit said(tr("Nothing is undecided."));
    ledger_->setCurrent(next);
    if (model_.rowOf(next) < 0) {
        heading_->clearFilter();
        ledger_->setCurrent(next);
    }
    ledger_->setFocus();
}

void RoundPage::lookAtCurrent() {
    if (!current().empty())
        look(shown(current()));
    else
        ledger_->foldCurrent();
}

void RoundPage::acceptCurrent() {
    std::vector<Decision> decisions;
    for (const RoundMachine* machine : chosenMachines())
        if (model_.decidable(*machine))
            decisions.push_back({0, machine->tag, {}, {}, {}, DecisionKind::Accept, {}});
    decide(std::move(decisions));
}

void RoundPage::disputeCurrent() {
    if (!current().empty()) emit reasonWanted(shown(current()), DecisionKind::Dispute);
}

void RoundPage::deferCurrent() {
    if (!current().empty()) emit reasonWanted(shown(current()), DecisionKind::Defer);
}

void RoundPage::answerCurrent() {
    QStringList tags;
    for (const RoundMachine* machine : chosenMachines())
        if (machine->urgency == "unseen") tags << shown(machine->tag);
    if (!tags.isEmpty()) emit unseenReasonWanted(tags);
}

void RoundPage::foldCurrent() {
    ledger_->foldCurrent();
}

void RoundPage::find() {
    heading_->focusFilter();
}

}  // namespace fettle
