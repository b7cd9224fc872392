#include "core/round/evidence.h"

#include <algorithm>
#include <map>
#include <string>

#include "core/round/e_bh.h"

namespace fettle {

std::vector<Hypothesis> hypothesesOf(const Examination& week) {
    std::vector<Hypothesis> all = week.findings;
    for (const Hypothesis& one : week.considered) {
        const bool known = std::any_of(week.findings.begin(), week.findings.end(), [&](const Hypothesis& f) {
            return f.fault == one.fault && f.at == one.at;
        });
        if (!known) all.push_back(one);
    }
    return all;
}

std::optional<double> machineDban(const std::vector<Hypothesis>& hypotheses) {
    std::map<std::string, std::vector<double>> byPlace;
    for (const Hypothesis& one : hypotheses)
        if (one.weightDban) byPlace[one.at].push_back(*one.weightDban);
    if (byPlace.empty()) return std::nullopt;
    std::vector<double> places;
    for (const auto& [at, weights] : byPlace)
        places.push_back(meanDban(weights));
    return meanDban(places);
}

}  // namespace fettle
