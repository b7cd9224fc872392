#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "core/base/text.h"
#include "core/round/round.h"

namespace fettle {

namespace {

constexpr std::size_t kMostTags = 5;

enum class Asks { Decision, Reason, Opening, Nothing };

// What a round asks of a machine, and whether it was answered.
class Answers {
  public:
    explicit Answers(const RoundState& state)
        : opened_(state.opened.begin(), state.opened.end()),
          answered_(state.unseenAnswered.begin(), state.unseenAnswered.end()) {
        for (const Decision& d : state.decisions) {
            const Decision*& newest = decisions_[d.machine];
            if (!newest || std::pair(newest->at, newest->id) <= std::pair(d.at, d.id)) newest = &d;
        }
    }

    static Asks asks(const RoundMachine& m) {
        if (m.urgency == "unseen") return Asks::Reason;
        if (m.urgency != "leave") return Asks::Decision;
        return m.inSample ? Asks::Opening : Asks::Nothing;
    }

    bool done(const RoundMachine& m) const {
        switch (asks(m)) {
            case Asks::Decision:
                return decided(m.tag);
            case Asks::Reason:
                return answered_.count(m.tag) > 0;
            case Asks::Opening:
                return opened_.count(m.tag) > 0;
            case Asks::Nothing:
                break;
        }
        return true;
    }

  private:
    bool decided(const std::string& tag) const {
        const auto at = decisions_.find(tag);
        if (at == decisions_.end()) return false;
        const Decision& d = *at->second;
        if (d.kind == DecisionKind::Withdraw) return false;
        const bool reason = !trimmed(d.reason).empty();
        return d.kind == DecisionKind::Accept || (reason && d.kind == DecisionKind::Dispute) ||
               (reason && !d.deferTo.empty());
    }

    std::map<std::string, const Decision*> decisions_;
    std::set<std::string> opened_, answered_;
};

// "KL-ID-01, PK-FN-04 and 3 more"
std::string someOf(std::vector<std::string> tags) {
    const std::size_t all = tags.size();
    if (all <= kMostTags) return joined(tags, ", ");
    tags.resize(kMostTags);
    return fmt::format("{} and {} more", joined(tags, ", "), all - kMostTags);
}

void addMissing(std::vector<std::string>& missing, const std::vector<std::string>& tags, const char* one,
                const char* several) {
    if (!tags.empty())
        missing.push_back(
            fmt::format("{} {}: {}", tags.size(), tags.size() == 1 ? one : several, someOf(tags)));
}

bool hasLeave(const RoundList& list) {
    return std::any_of(list.machines.begin(), list.machines.end(),
                       [](const RoundMachine& m) { return m.urgency == "leave"; });
}

}  // namespace

std::string toText(DecisionKind kind) {
    switch (kind) {
        case DecisionKind::Dispute:
            return "dispute";
        case DecisionKind::Defer:
            return "defer";
        case DecisionKind::Withdraw:
            return "withdraw";
        case DecisionKind::Accept:
            break;
    }
    return "accept";
}

RoundProgress progressOf(const RoundList& list, const RoundState& state) {
    const Answers answers(state);
    RoundProgress progress;
    std::map<Asks, std::vector<std::string>> open;
    for (const RoundMachine& m : list.machines) {
        const bool done = answers.done(m);
        const Asks asks = Answers::asks(m);
        progress.listed += asks == Asks::Decision;
        progress.decided += asks == Asks::Decision && done;
        progress.unseen += asks == Asks::Reason;
        progress.unseenDone += asks == Asks::Reason && done;
        progress.sample += asks == Asks::Opening;
        progress.sampleOpened += asks == Asks::Opening && done;
        if (!done) open[asks].push_back(m.tag);
    }
    progress.leaveAccepted = state.leaveAccepted;
    addMissing(progress.missing, open[Asks::Decision], "listed machine has no decision",
               "listed machines have no decision");
    addMissing(progress.missing, open[Asks::Reason], "unseen machine has no confirmed reason",
               "unseen machines have no confirmed reason");
    addMissing(progress.missing, open[Asks::Opening], "machine of the sample was not opened",
               "machines of the sample were not opened");
    if (hasLeave(list) && !state.leaveAccepted)
        progress.missing.push_back("the machines on leave are not accepted as a block");
    return progress;
}

bool mayAcceptLeave(const RoundList& list, const RoundState& state) {
    const RoundProgress progress = progressOf(list, state);
    return progress.sampleOpened == progress.sample && (progress.sample > 0 || !hasLeave(list));
}

std::string nextUndecided(const RoundList& list, const RoundState& state, const std::string& tag) {
    const Answers answers(state);
    const auto& machines = list.machines;
    const auto at =
        std::find_if(machines.begin(), machines.end(), [&](const RoundMachine& m) { return m.tag == tag; });
    const std::size_t start = at == machines.end() ? 0 : std::size_t(at - machines.begin()) + 1;
    for (std::size_t i = 0; i < machines.size(); ++i) {
        const RoundMachine& m = machines[(start + i) % machines.size()];
        if (!answers.done(m)) return m.tag;
    }
    return "";
}

}  // namespace fettle
