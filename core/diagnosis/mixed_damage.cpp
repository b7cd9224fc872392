#include "core/diagnosis/mixed_damage.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/base/text.h"
#include "core/diagnosis/family.h"

namespace fettle {

namespace {

constexpr double kSameShift = 0.0015;  // true pairs agree within 0.0005 on open records; the grid adds to it

std::optional<BearingElement> elementOf(const Hypothesis& h) {
    for (const BearingElement element : kBearingElements)
        if (h.weightDban && !h.sentence.empty() && h.fault == faultKey(element)) return element;
    return std::nullopt;
}

// The rolling element has a spread of its own and is not tied to the cage.
bool tied(BearingElement element) {
    return element != BearingElement::RollingElement;
}

void wordOne(Hypothesis& h, const std::vector<Hypothesis>& all) {
    const auto own = elementOf(h);
    std::vector<std::string> others;
    for (const Hypothesis& other : all) {
        const auto element = elementOf(other);
        if (!element || element == own || other.at != h.at) continue;
        others.push_back(fmt::format("{} ({:.0f} decibans)", plainName(*element), *other.weightDban));
        const double apart = std::abs(other.best.cageShift - h.best.cageShift);
        if (tied(*own) && tied(*element) && apart > kSameShift)
            h.against.push_back(fmt::format(
                "cage shift {:+.2f} % here and {:+.2f} % on the {}: lines of one bearing agree on it",
                h.best.cageShift * 100, other.best.cageShift * 100, plainName(*element)));
    }
    if (others.empty()) return;
    h.sentence += fmt::format(
        " Found in this bearing as well: {}. The bearing is damaged; which element failed first cannot be "
        "told "
        "from lines.",
        joined(others, ", "));
}

}  // namespace

void wordMixedDamage(std::vector<Hypothesis>& hypotheses) {
    const std::vector<Hypothesis> as = hypotheses;
    for (Hypothesis& h : hypotheses)
        if (elementOf(h)) wordOne(h, as);
}

}  // namespace fettle
