#include "core/round/comparison.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/round/changed.h"

namespace fettle {

namespace {

using Rows = std::map<std::string, const RoundMachine*>;
using Decisions = std::map<std::string, const Decision*>;

Rows rowsOf(const RoundList& list) {
    Rows rows;
    for (const RoundMachine& machine : list.machines)
        rows[machine.tag] = &machine;
    return rows;
}

bool isListed(const RoundMachine& machine) {
    return machine.urgency != "leave" && machine.urgency != "unseen";
}

bool isUnseen(const RoundMachine* machine) {
    return machine && machine->urgency == "unseen";
}

RoundMove moveOfListed(const RoundMachine* before, const RoundMachine& after) {
    if (!before || !isListed(*before)) return RoundMove::CameOn;
    const int from = groupOf(before->urgency), to = groupOf(after.urgency);
    return to < from ? RoundMove::Up : to > from ? RoundMove::Down : RoundMove::Stayed;
}

RoundMove moveOf(const RoundMachine* before, const RoundMachine* after) {
    if (!after) return RoundMove::Removed;
    if (isListed(*after)) return moveOfListed(before, *after);
    if (isUnseen(after)) return isUnseen(before) ? RoundMove::Stayed : RoundMove::Unseen;
    if (!before) return RoundMove::Added;
    return isUnseen(before) ? RoundMove::SeenAgain : isListed(*before) ? RoundMove::Left : RoundMove::Stayed;
}

std::string strongest(const RoundMachine* machine) {
    if (!machine || machine->findings.empty()) return "";
    return findingName(machine->findings.front().finding);
}

std::string decidedIn(const Decisions& decisions, const std::string& tag) {
    const auto found = decisions.find(tag);
    return found == decisions.end() ? "" : decisionWords(*found->second);
}

std::string whyOf(const RoundMachine* before, const RoundMachine* after) {
    if (!after) return "No longer in the round.";
    return changedSentence(*after, before, false, "");
}

}  // namespace

std::string toText(RoundMove move) {
    static const char* const keys[] = {"came_on",    "up",    "unseen",  "down",  "left",
                                       "seen_again", "added", "removed", "stayed"};
    return keys[std::size_t(move)];
}

std::string decisionWords(const Decision& decision) {
    const std::string reason = decision.reason.empty() ? "" : ": " + oneLine(decision.reason);
    switch (decision.kind) {
        case DecisionKind::Dispute:
            return "disputed" + reason;
        case DecisionKind::Defer:
            return "put off to " + decision.deferTo + reason;
        case DecisionKind::Withdraw:
            return "";
        case DecisionKind::Accept:
            break;
    }
    return "accepted";
}

std::map<std::string, const Decision*> decisionsThatHold(const RoundState& state) {
    Decisions newest;
    for (const Decision& decision : state.decisions) {
        const Decision*& held = newest[decision.machine];
        if (!held || std::pair(held->at, held->id) <= std::pair(decision.at, decision.id)) held = &decision;
    }
    std::erase_if(newest, [](const auto& one) { return one.second->kind == DecisionKind::Withdraw; });
    return newest;
}

std::size_t RoundComparison::count(RoundMove move) const {
    return std::size_t(std::count_if(moves.begin(), moves.end(),
                                     [move](const MachineMove& one) { return one.move == move; }));
}

RoundComparison compareRounds(const RoundList& before, const RoundState& decidedBefore,
                              const RoundList& after, const RoundState& decidedAfter) {
    RoundComparison all{before.from, before.until, after.from, after.until, {}, 0, ""};
    if (before.engine != after.engine)
        all.note = "The two rounds were weighed by different versions (" + before.engine + ", " +
                   after.engine + "): a move may come of that.";
    const Rows then = rowsOf(before), now = rowsOf(after);
    const Decisions heldThen = decisionsThatHold(decidedBefore), heldNow = decisionsThatHold(decidedAfter);
    const auto add = [&](const RoundMachine* was, const RoundMachine* is) {
        const RoundMachine& one = is ? *is : *was;
        const RoundMove move = moveOf(was, is);
        if (move == RoundMove::Stayed && is->urgency == "leave") {
            ++all.quiet;
            return;
        }
        all.moves.push_back({one.tag, one.service, one.area, move, was ? was->urgency : "",
                             is ? is->urgency : "", strongest(was), strongest(is), whyOf(was, is),
                             decidedIn(heldThen, one.tag), decidedIn(heldNow, one.tag)});
    };
    for (const RoundMachine& machine : after.machines) {
        const auto was = then.find(machine.tag);
        add(was == then.end() ? nullptr : was->second, &machine);
    }
    for (const RoundMachine& machine : before.machines)
        if (!now.count(machine.tag)) add(&machine, nullptr);
    std::stable_sort(all.moves.begin(), all.moves.end(),
                     [](const MachineMove& a, const MachineMove& b) { return a.move < b.move; });
    return all;
}

}  // namespace fettle
