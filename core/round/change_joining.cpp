#include "core/round/change_joining.h"

#include <algorithm>

#include "core/round/urgency_rule.h"
#include "core/round/words.h"

namespace fettle {

namespace {

constexpr double kMostDb = 3;        // a level that grew by so much was mostly added
constexpr double kMostJoined = 0.5;  // of a level

bool isShaftCause(const RoundFinding& f) {
    constexpr const char* kCauses[] = {"unbalance", "misalignment", "bent_shaft", "looseness",
                                       "soft_foot", "resonance",    "rub"};
    return std::find(std::begin(kCauses), std::end(kCauses), f.finding.fault) != std::end(kCauses);
}

void takeUp(RoundFinding& f, const RoundFinding& change) {
    f.change = change.change;
    f.finding.weightDban = change.finding.weightDban;
    f.persistence = change.persistence;
    f.finding.persistence = change.persistence;
    if (change.finding.fault == f.finding.fault && change.causeShare)
        f.causeShare = f.finding.causeShare = change.causeShare;
    f.finding.urgency = graverOf(f.finding.urgency, change.finding.urgency);
    f.finding.sentence += " " + change.finding.sentence;
}

// What a zone's recordings still name as the cause stands; the change is its evidence.
bool takenUp(std::vector<RoundFinding>& findings, std::size_t byZone, const RoundFinding& change,
             const std::string& told) {
    bool taken = false;
    for (std::size_t i = 0; i < byZone; ++i) {
        RoundFinding& f = findings[i];
        const bool same = f.finding.fault == change.finding.fault;
        if (componentOf(f.finding.at) != componentOf(change.finding.at)) continue;
        if (!same && !(isShaftCause(f) && isShaftCause(change))) continue;
        taken = true;
        if (f.change) continue;
        RoundFinding as = change;
        if (!same) as.finding.sentence = told + ".";
        takeUp(f, as);
    }
    return taken;
}

// Whether most of a component's level was added since its baseline.
bool mostWasAdded(const MachineWeek& week, const std::string& component) {
    return std::any_of(week.changes.begin(), week.changes.end(), [&](const FollowedChange& one) {
        return one.quantity == Followed::Velocity && componentOf(one.at) == component && one.week.change &&
               one.week.change->step >= kMostDb;
    });
}

// Causes by the pattern of single recordings that what was added does not name.
void dropOutvoted(const MachineWeek& week, std::vector<RoundFinding>& findings,
                  std::vector<RoundFinding>& changes) {
    std::erase_if(findings, [&](const RoundFinding& f) {
        const std::string component = componentOf(f.finding.at);
        if (!isShaftCause(f) || !mostWasAdded(week, component)) return false;
        const auto here = [&](const RoundFinding& change) {
            return isShaftCause(change) && componentOf(change.finding.at) == component;
        };
        const auto first = std::find_if(changes.begin(), changes.end(), here);
        const bool named = std::any_of(changes.begin(), changes.end(), [&](const RoundFinding& change) {
            return here(change) && change.finding.fault == f.finding.fault;
        });
        if (first == changes.end() || named) return false;
        first->finding.sentence +=
            " The pattern of a single recording looks like " + findingName(f.finding) + ".";
        return true;
    });
}

// A level without a named cause, most of which these lines make up.
bool explainsLevel(const RoundFinding& change, const RoundFinding& level) {
    if (!change.change || change.change->unit != "mm/s" || !level.finding.severity.level) return false;
    const double now = change.change->now;
    return now * now >= kMostJoined * *level.finding.severity.level * *level.finding.severity.level;
}

void dropExplained(std::vector<RoundFinding>& findings, const std::vector<RoundFinding>& changes) {
    std::erase_if(findings, [&](const RoundFinding& f) {
        return f.finding.fault.empty() &&
               std::any_of(changes.begin(), changes.end(), [&](const RoundFinding& change) {
                   return isShaftCause(change) || explainsLevel(change, f);
               });
    });
}

}  // namespace

void joinChanges(const MachineWeek& week, std::vector<RoundFinding>& findings,
                 std::vector<RoundFinding> changes) {
    dropExplained(findings, changes);
    dropOutvoted(week, findings, changes);
    // The same cause first, so that it keeps its own words.
    std::stable_partition(changes.begin(), changes.end(), [&](const RoundFinding& change) {
        return std::any_of(findings.begin(), findings.end(),
                           [&](const RoundFinding& f) { return f.finding.fault == change.finding.fault; });
    });
    const std::size_t byZone = findings.size();
    for (RoundFinding& change : changes) {
        const std::string& sentence = change.finding.sentence;
        if (!takenUp(findings, byZone, change, sentence.substr(0, sentence.find(". By what was added"))))
            findings.push_back(std::move(change));
    }
}

}  // namespace fettle
