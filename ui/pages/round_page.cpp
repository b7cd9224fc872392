#include "ui/pages/round_page.h"

#include <QHBoxLayout>
#include <QMenu>
#include <QPushButton>
#include <QStackedWidget>
#include <QToolBar>
#include <QVBoxLayout>
#include <set>

#include "ui/model/round_words.h"
#include "ui/model/shortcuts.h"
#include "ui/model/unit_words.h"
#include "ui/model/words.h"
#include "ui/pages/page_parts.h"
#include "ui/pages/round_before.h"
#include "ui/pages/round_filters.h"
#include "ui/pages/round_heading.h"
#include "ui/pages/round_ledger.h"

namespace fettle {

namespace {

constexpr const char* kFootActions[] = {"round.look",   "round.accept", "round.dispute", "round.defer",
                                        "round.unseen", "round.next",   "round.leave",   "round.undo"};

constexpr int kLowRoundEms = 30;

QPushButton* button(const QString& text, const char* name, QWidget* parent) {
    auto* made = new QPushButton(text, parent);
    made->setObjectName(QString::fromLatin1(name));
    made->setAutoDefault(false);
    return made;
}

// The whole of what stands in the line, where a column is too narrow for it or has no room at all.
QString detailOf(const LedgerModel& model, const RoundMachine& machine, bool allColumns) {
    QStringList parts;
    if (!machine.findings.empty())
        parts << withUnitsBeside(weighedAlone(shown(machine.findings.front().finding.sentence)),
                                 model.units());
    parts << model.changedText(machine) << model.weightNote(machine);
    if (!allColumns) parts << model.levelAndAge(machine) + u'.';
    parts.removeAll(QString());
    return QStringLiteral("%1: %2").arg(shown(machine.tag), parts.join(u' '));
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
    model_.setUnits(selection_.units());
    connect(&work_, &FleetWork::changedFleet, this, &RoundPage::read);
    connect(&selection_, &Selection::unitsChanged, this, [this] {
        model_.setUnits(selection_.units());
        heading_->show(model_);
        refreshActions();
    });
    read();
}

QAction* RoundPage::add(const char* id, void (RoundPage::*slot)()) {
    QAction* action = actionFor(id, this);
    connect(action, &QAction::triggered, this, slot);
    actions_[id] = action;
    static const std::set<std::string> everywhere{"round.find", "round.before", "round.undo", "round.older",
                                                  "round.newer"};
    (everywhere.count(id) ? static_cast<QWidget*>(this) : ledger_)->addAction(action);
    return action;
}

void RoundPage::build() {
    heading_ = new RoundHeading(theme_, this);
    ledger_ = new RoundLedger(model_, theme_, this);
    const std::pair<const char*, void (RoundPage::*)()> acts[] = {
        {"round.look", &RoundPage::lookAtCurrent},     {"round.accept", &RoundPage::acceptCurrent},
        {"round.dispute", &RoundPage::disputeCurrent}, {"round.defer", &RoundPage::deferCurrent},
        {"round.unseen", &RoundPage::answerCurrent},   {"round.next", &RoundPage::goToNextUndecided},
        {"round.leave", &RoundPage::acceptLeave},      {"round.undo", &RoundPage::undo},
        {"round.fold", &RoundPage::foldCurrent},       {"round.find", &RoundPage::find},
        {"round.before", &RoundPage::visitBefore},     {"round.sort", &RoundPage::stepOrder},
        {"round.turn", &RoundPage::turnOrder},         {"round.group", &RoundPage::stepGrouping},
        {"round.older", &RoundPage::showOlder},        {"round.newer", &RoundPage::showNewer}};
    for (const auto& [id, slot] : acts)
        add(id, slot);
    buildEmpty();
    middle_ = new QStackedWidget(this);
    middle_->addWidget(ledger_);
    middle_->addWidget(nothing_);
    middle_->setContentsMargins(8, 0, 0, 0);

    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->setSpacing(0);
    all->addWidget(heading_);
    all->addWidget(middle_, 1);
    all->addWidget(new ThinRule(theme_, this));
    all->addWidget(foot());
    connectParts();
    setFocusProxy(ledger_);
}

void RoundPage::buildEmpty() {
    nothing_ = new QWidget(this);
    empty_ = new QLabel(nothing_);
    empty_->setObjectName(QStringLiteral("roundEmpty"));
    empty_->setWordWrap(true);
    emptyRegister_ = button(tr("Take a machine into the register"), "emptyRegister", nothing_);
    emptyImport_ = button(tr("Import recordings…"), "emptyImport", nothing_);
    auto* lines = new QVBoxLayout(nothing_);
    lines->setContentsMargins(16, 24, 16, 16);
    lines->addWidget(empty_);
    lines->addWidget(emptyRegister_, 0, Qt::AlignLeft);
    lines->addWidget(emptyImport_, 0, Qt::AlignLeft);
    lines->addStretch(1);
    connect(emptyRegister_, &QPushButton::clicked, this, &RoundPage::registerWanted);
    connect(emptyImport_, &QPushButton::clicked, this, &RoundPage::importWanted);
}

void RoundPage::connectParts() {
    RoundFilters& filters = heading_->filters();
    connect(&filters, &RoundFilters::filterChanged, this, [this](const LedgerFilter& filter) {
        model_.setFilter(filter);
        refreshActions();
    });
    connect(&filters, &RoundFilters::groupingWanted, this, &RoundPage::setGrouping);
    connect(&filters, &RoundFilters::orderWanted, this,
            [this](LedgerModel::Order order) { setOrder(order, false); });
    connect(&heading_->before(), &RoundBefore::machineWanted, this, &RoundPage::goTo);
    connect(&heading_->before(), &RoundBefore::left, ledger_, [this] { ledger_->setFocus(); });
    connect(&heading_->before(), &RoundBefore::unseenWanted, this, [this](const QString& reason) {
        heading_->filters().setUrgencyAndText("unseen", unseenReasonWord(kept(reason)));
        ledger_->chooseFirst();
        ledger_->setFocus();
    });
    connect(heading_, &RoundHeading::roundWanted, this, &RoundPage::showRound);
    connect(ledger_, &RoundLedger::orderWanted, this, &RoundPage::setOrder);
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
}

// In a low window the letters need the room of the margins.
void RoundPage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    const bool low = height() < kLowRoundEms * fontMetrics().height();
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
    const RoundLedger::Standing standing = ledger_->standing();
    const std::int64_t before = stepsOf_;
    model_.setRound(std::move(*round));
    const std::int64_t id = model_.round().entry ? model_.round().entry->id : 0;
    if (id != stepsOf_) steps_.clear();
    stepsOf_ = id;
    if (id == before) ledger_->standAgain(standing);
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
    actions_["round.look"]->setEnabled(machine != nullptr);
    for (const char* id : {"round.accept", "round.dispute", "round.defer"})
        actions_[id]->setEnabled(open && decidable);
    actions_["round.undo"]->setEnabled(open && !steps_.empty());
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

}  // namespace fettle
