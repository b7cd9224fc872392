#include <algorithm>

#include "core/fleet/who.h"
#include "ui/model/words.h"
#include "ui/pages/round_before.h"
#include "ui/pages/round_filters.h"
#include "ui/pages/round_heading.h"
#include "ui/pages/round_ledger.h"
#include "ui/pages/round_page.h"

namespace fettle {

namespace {

Instant now() {
    return std::chrono::time_point_cast<std::chrono::milliseconds>(std::chrono::system_clock::now());
}

}  // namespace

void RoundPage::keepLast(const std::vector<Decision>& decisions) {
    std::vector<Held> step;
    for (const Decision& decision : decisions) {
        const Decision* held = model_.decisionOf(decision.machine);
        step.push_back({decision.machine, held ? std::optional(*held) : std::nullopt});
    }
    steps_.push_back(std::move(step));
}

void RoundPage::decide(std::vector<Decision> decisions) {
    if (!openRoundId() || decisions.empty()) return;
    keepLast(decisions);
    put(std::move(decisions));
}

// A decision is never changed: the one that held before is given again, or the last one withdrawn.
void RoundPage::undo() {
    if (!openRoundId() || steps_.empty()) return;
    std::vector<Decision> back;
    QStringList tags;
    for (const Held& held : steps_.back()) {
        Decision decision = held.before.value_or(Decision{});
        decision.id = 0;
        decision.machine = held.machine;
        if (!held.before) decision.kind = DecisionKind::Withdraw;
        back.push_back(std::move(decision));
        tags << shown(held.machine);
    }
    steps_.pop_back();
    put(std::move(back));
    goTo(tags.front());
    emit said(tr("Taken back: %1.").arg(tags.join(QStringLiteral(", "))));
}

void RoundPage::put(std::vector<Decision> decisions) {
    const auto id = openRoundId();
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
    goTo(shown(next));
}

void RoundPage::goTo(const QString& tag) {
    const std::string wanted = kept(tag);
    const auto& machines = model_.round().list.machines;
    const bool listed =
        std::any_of(machines.begin(), machines.end(), [&](const RoundMachine& m) { return m.tag == wanted; });
    if (!listed) {
        selection_.setMachine(tag);
        return emit machineWanted(tag);
    }
    ledger_->setCurrent(wanted);
    if (model_.rowOf(wanted) < 0) {
        heading_->filters().clear();
        ledger_->setCurrent(wanted);
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

void RoundPage::askReasonFor(DecisionKind kind) {
    QStringList tags;
    for (const RoundMachine* machine : chosenMachines())
        if (model_.decidable(*machine)) tags << shown(machine->tag);
    if (!tags.isEmpty()) emit reasonWanted(tags, kind);
}

void RoundPage::disputeCurrent() {
    askReasonFor(DecisionKind::Dispute);
}

void RoundPage::deferCurrent() {
    askReasonFor(DecisionKind::Defer);
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
    heading_->filters().focusText();
}

void RoundPage::visitBefore() {
    heading_->before().visit();
}

void RoundPage::setOrder(LedgerModel::Order order, bool backwards) {
    model_.setOrder(order, backwards);
    heading_->filters().showOrder(model_.grouping(), order, backwards);
    ledger_->showOrder();
}

void RoundPage::setGrouping(LedgerModel::Grouping grouping) {
    model_.setGrouping(grouping);
    heading_->filters().showOrder(grouping, model_.order(), model_.backwards());
}

void RoundPage::stepOrder() {
    setOrder(LedgerModel::Order((model_.order() + 1) % LedgerModel::Orders), false);
}

void RoundPage::turnOrder() {
    setOrder(model_.order(), !model_.backwards());
}

void RoundPage::stepGrouping() {
    setGrouping(LedgerModel::Grouping((model_.grouping() + 1) % LedgerModel::Groupings));
}

void RoundPage::showOlder() {
    heading_->step(-1);
}

void RoundPage::showNewer() {
    heading_->step(1);
}

}  // namespace fettle
