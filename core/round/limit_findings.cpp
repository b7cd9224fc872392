#include "core/round/limit_findings.h"

namespace fettle {

namespace {

bool namedByLimit(const Hypothesis& h) {
    const bool graded = h.severity.kind == "db_below_carrier" || h.severity.kind == "stage";
    return !h.weightDban && graded && !h.sentence.empty();
}

}  // namespace

std::vector<RoundFinding> limitFindings(const std::vector<Hypothesis>& hypotheses,
                                        const std::string& criticality, const UrgencyRule& rule) {
    std::vector<RoundFinding> findings;
    for (const Hypothesis& h : hypotheses) {
        if (!namedByLimit(h)) continue;
        RoundFinding f;
        f.finding = h;
        f.finding.best = {};
        f.finding.urgency = rule.of(h.severity, criticality, false);
        f.persistence = h.persistence.value_or(1);
        findings.push_back(std::move(f));
    }
    return findings;
}

}  // namespace fettle
