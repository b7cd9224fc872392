#include "ui/panels/evidence_rows.h"

#include <algorithm>
#include <cmath>

#include "ui/model/engine_words.h"

namespace fettle {

namespace {

std::string capital(std::string text) {
    if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = char(text[0] - 'a' + 'A');
    return text;
}

bool heavier(const std::optional<double>& a, const std::optional<double>& b) {
    if (a.has_value() != b.has_value()) return a.has_value();
    return a && *a > *b;
}

FaultEntry entryOf(const Hypothesis& h, bool found) {
    return {h.fault,
            h.at,
            capital(faultNameText(h.fault).toStdString()),
            h.weightDban,
            h.urgency,
            found,
            h.why,
            h.severity.kind,
            h.severity.value,
            h.persistence};
}

}  // namespace

double placeHz(const ArithmeticRow& row) {
    if (!row.line) return 0;
    return row.line->state == LineState::Found && row.line->foundHz > 0 ? row.line->foundHz
                                                                        : row.line->expectedHz;
}

std::vector<FaultEntry> faultEntries(const Examination& examination) {
    std::vector<FaultEntry> found, considered;
    for (const Hypothesis& h : examination.findings)
        found.push_back(entryOf(h, true));
    for (const Hypothesis& h : examination.considered) {
        const bool listed = std::any_of(found.begin(), found.end(), [&](const FaultEntry& f) {
            return f.fault == h.fault && f.at == h.at;
        });
        if (!listed) considered.push_back(entryOf(h, false));
    }
    const auto byWeight = [](const FaultEntry& a, const FaultEntry& b) {
        return heavier(a.weightDban, b.weightDban);
    };
    std::stable_sort(found.begin(), found.end(), byWeight);
    std::stable_sort(considered.begin(), considered.end(), byWeight);
    found.insert(found.end(), considered.begin(), considered.end());
    return found;
}

const Hypothesis* hypothesisOf(const Examination& examination, const std::string& fault,
                               const std::string& at) {
    for (const auto* list : {&examination.findings, &examination.considered})
        for (const Hypothesis& h : *list)
            if (h.fault == fault && h.at == at) return &h;
    return nullptr;
}

std::vector<Claim> claimsAt(const Examination& examination, double hz, double toleranceHz) {
    std::vector<Claim> claims;
    for (const FaultEntry& entry : faultEntries(examination)) {
        const Hypothesis* h = hypothesisOf(examination, entry.fault, entry.at);
        for (const ArithmeticRow& row : arithmeticOf(*h)) {
            if (!row.line || std::abs(placeHz(row) - hz) > toleranceHz) continue;
            claims.push_back({h->fault, h->at, row.name, row.line->state, row.printed, h->weightDban});
        }
    }
    std::stable_sort(claims.begin(), claims.end(),
                     [](const Claim& a, const Claim& b) { return heavier(a.weightDban, b.weightDban); });
    return claims;
}

std::vector<std::pair<std::string, std::string>> leftOutByReason(const Hypothesis& hypothesis) {
    std::vector<std::pair<std::string, std::string>> reasons;
    for (const LineRow& row : hypothesis.best.rows) {
        if (row.state != LineState::LeftOut) continue;
        const auto at = std::find_if(reasons.begin(), reasons.end(),
                                     [&](const auto& reason) { return reason.first == row.why; });
        if (at == reasons.end())
            reasons.emplace_back(row.why, row.name);
        else
            at->second += ", " + row.name;
    }
    return reasons;
}

}  // namespace fettle
