#include "core/intake/weight_changes.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace fettle {

namespace {

constexpr double kWorthTellingDban = 10, kMovedDban = 1;

struct Stand {
    std::optional<double> weightDban;
    bool named = false;  // a finding without a weight
};

Stand standOf(const Examination& examination, const Hypothesis& asked) {
    Stand stand;
    for (const Hypothesis& h : examination.considered)
        if (h.fault == asked.fault && h.at == asked.at) stand.weightDban = h.weightDban;
    for (const Hypothesis& h : examination.findings)
        if (h.fault == asked.fault && h.at == asked.at) stand.named = !h.weightDban;
    return stand;
}

std::string wordOf(const Stand& stand) {
    if (stand.weightDban) return fmt::format("{:.0f}", *stand.weightDban);
    return stand.named ? "named" : "not named";
}

bool differs(const Stand& a, const Stand& b) {
    if (a.named != b.named) return true;
    const double low = -1e9;  // not weighed
    const double from = a.weightDban.value_or(low), to = b.weightDban.value_or(low);
    return std::max(from, to) >= kWorthTellingDban && std::abs(from - to) >= kMovedDban;
}

}  // namespace

std::vector<std::string> weightChanges(const Examination& before, const Examination& after) {
    std::vector<const Hypothesis*> asked;
    for (const Examination* side : {&after, &before})
        for (const Hypothesis& h : side->considered) {
            const bool known = std::any_of(asked.begin(), asked.end(), [&](const Hypothesis* a) {
                return a->fault == h.fault && a->at == h.at;
            });
            if (!known) asked.push_back(&h);
        }
    std::vector<std::string> changes;
    for (const Hypothesis* h : asked) {
        const Stand from = standOf(before, *h), to = standOf(after, *h);
        if (differs(from, to))
            changes.push_back(fmt::format("{} @ {}: {} -> {}", h->fault, h->at, wordOf(from), wordOf(to)));
    }
    return changes;
}

}  // namespace fettle
