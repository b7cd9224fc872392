#include "core/round/judge.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/round/change_findings.h"
#include "core/round/change_joining.h"
#include "core/round/limit_findings.h"
#include "core/round/words.h"
#include "core/round/zone_findings.h"

namespace fettle {

namespace {

constexpr double kPersistsDban = 10;

double persistenceOf(const Hypothesis& h) {
    if (h.persistence) return *h.persistence;
    return h.weightDban.value_or(0) >= kPersistsDban ? 1 : 0;
}

void keepVerdictOnly(Hypothesis& h) {
    Weighing kept;
    kept.view = h.best.view;
    kept.variant = h.best.variant;
    kept.cageShift = h.best.cageShift;
    h.best = std::move(kept);
}

// Strongest first.
std::vector<const Hypothesis*> weighedOf(const std::vector<Hypothesis>& hypotheses) {
    std::vector<const Hypothesis*> weighed;
    for (const Hypothesis& h : hypotheses)
        if (h.weightDban) weighed.push_back(&h);
    std::stable_sort(weighed.begin(), weighed.end(), [](const Hypothesis* a, const Hypothesis* b) {
        return *a->weightDban > *b->weightDban;
    });
    return weighed;
}

std::string weakSentence(const Hypothesis& h, double findingDban) {
    return fmt::format(
        "{}: {:.1f} decibans in the week's mean, the strongest found here; a finding by itself needs {:.0f}.",
        capitalised(findingName(h)), *h.weightDban, findingDban);
}

std::string belowTheList(const ListCut& cut) {
    return fmt::format(
        " Watch only: the machine as a whole stands at {:.1f} decibans, the list needs {:.1f} this week.",
        cut.hasDban, cut.needsDban);
}

RoundFinding evidenceFinding(const Hypothesis& h, const std::string& criticality, const ListCut& cut,
                             double findingDban, const UrgencyRule& rule) {
    RoundFinding f;
    f.finding = h;
    f.persistence = persistenceOf(h);
    f.finding.persistence = f.persistence;
    keepVerdictOnly(f.finding);
    const bool strong = *h.weightDban >= findingDban;
    if (!strong || h.sentence.empty()) f.finding.sentence = weakSentence(h, findingDban);
    f.finding.urgency = strong ? rule.of(h.severity, criticality, false) : "watch";
    if (cut.listed) f.finding.urgency = graverOf(f.finding.urgency, "watch");
    if (!cut.listed) {
        f.finding.urgency = calmerOf(f.finding.urgency, "watch");
        f.finding.sentence += belowTheList(cut);
    }
    return f;
}

std::vector<RoundFinding> evidenceFindings(const MachineWeek& week, const std::vector<Hypothesis>& hypotheses,
                                           const ListCut& cut, double findingDban, const UrgencyRule& rule) {
    std::vector<RoundFinding> findings;
    for (const Hypothesis* h : weighedOf(hypotheses)) {
        const bool asStrongest = cut.listed && findings.empty();
        if (*h->weightDban < findingDban && !asStrongest) break;
        findings.push_back(evidenceFinding(*h, week.criticality, cut, findingDban, rule));
    }
    return findings;
}

bool moreUrgent(const RoundFinding& a, const RoundFinding& b) {
    const int rankA = urgencyRank(a.finding.urgency), rankB = urgencyRank(b.finding.urgency);
    if (rankA != rankB) return rankA > rankB;
    return a.finding.weightDban > b.finding.weightDban;
}

std::string gravest(const std::vector<RoundFinding>& findings) {
    std::string urgency = "leave";
    for (const RoundFinding& f : findings)
        urgency = graverOf(urgency, f.finding.urgency);
    return urgency;
}

}  // namespace

Verdict judge(const MachineWeek& week, const std::vector<Hypothesis>& hypotheses, const ListCut& cut,
              const RoundSettings& settings, const UrgencyRule& rule) {
    Verdict verdict;
    verdict.findings = evidenceFindings(week, hypotheses, cut, settings.findingDban, rule);
    std::vector<RoundFinding> byLevel = zoneFindings(week, hypotheses, settings, rule);
    for (RoundFinding& f : limitFindings(hypotheses, week.criticality, rule))
        byLevel.push_back(std::move(f));
    const bool zoneLists = gravest(byLevel) != "leave";
    std::vector<RoundFinding> changes = changeFindings(week, hypotheses, settings, rule);
    const bool changeLists = !changes.empty();
    joinChanges(week, byLevel, std::move(changes));
    verdict.findings.insert(verdict.findings.end(), byLevel.begin(), byLevel.end());
    std::stable_sort(verdict.findings.begin(), verdict.findings.end(), moreUrgent);
    verdict.urgency = gravest(verdict.findings);
    if (week.byHand) verdict.urgency = graverOf(verdict.urgency, "watch");
    verdict.listedBy = cut.listed    ? ListedBy::Evidence
                       : changeLists ? ListedBy::Change
                       : zoneLists   ? ListedBy::Zone
                       : week.byHand ? ListedBy::Hand
                                     : ListedBy::None;
    return verdict;
}

}  // namespace fettle
