#include "core/intake/verdict_changes.h"

#include <algorithm>
#include <cmath>

#include "core/diagnosis/urgency.h"

namespace fettle {

namespace {

constexpr double kWorthTellingDban = 10, kMovedDban = 1;

struct Stand {
    std::optional<double> weightDban;
    std::string urgency;
};

Stand standOf(const Examination& examination, const Hypothesis& asked) {
    Stand stand;
    const auto isAsked = [&](const Hypothesis& h) { return h.fault == asked.fault && h.at == asked.at; };
    for (const Hypothesis& h : examination.considered)
        if (isAsked(h) && h.weightDban)
            stand.weightDban = std::max(*h.weightDban, stand.weightDban.value_or(*h.weightDban));
    for (const Hypothesis& h : examination.findings)
        if (isAsked(h) && urgencyRank(h.urgency) >= urgencyRank(stand.urgency)) stand.urgency = h.urgency;
    return stand;
}

bool differs(const VerdictChange& change) {
    if (change.oldUrgency != change.newUrgency) return true;
    const double low = -1e9;  // not weighed
    const double from = change.oldDban.value_or(low), to = change.newDban.value_or(low);
    return std::max(from, to) >= kWorthTellingDban && std::abs(from - to) >= kMovedDban;
}

void addAsked(const std::vector<Hypothesis>& from, std::vector<const Hypothesis*>& asked) {
    for (const Hypothesis& h : from) {
        const bool known = std::any_of(asked.begin(), asked.end(), [&](const Hypothesis* a) {
            return a->fault == h.fault && a->at == h.at;
        });
        if (!known) asked.push_back(&h);
    }
}

}  // namespace

double movedDban(const VerdictChange& change) {
    return std::abs(change.newDban.value_or(0) - change.oldDban.value_or(0));
}

std::vector<VerdictChange> verdictChanges(const Examination& before, const Examination& after) {
    std::vector<const Hypothesis*> asked;
    for (const Examination* side : {&after, &before}) {
        addAsked(side->considered, asked);
        addAsked(side->findings, asked);
    }
    std::vector<VerdictChange> changes;
    for (const Hypothesis* h : asked) {
        const Stand from = standOf(before, *h), to = standOf(after, *h);
        const VerdictChange change{h->fault, h->at, from.weightDban, to.weightDban, from.urgency, to.urgency};
        if (differs(change)) changes.push_back(change);
    }
    return changes;
}

}  // namespace fettle
