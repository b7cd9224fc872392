#include "app/cli/verdict_count.h"

#include <algorithm>

#include "core/base/text.h"

namespace fettle {

std::vector<Label> readLabels(const std::string& text) {
    std::vector<Label> labels;
    for (const std::string_view line : split(text, '\n')) {
        const auto cells = split(line, '\t');
        if (cells.size() < 3 || cells[0] == "name") continue;
        labels.push_back({std::string(cells[0]), std::string(cells[1]), std::string(cells[2])});
    }
    return labels;
}

const Hypothesis* hypothesisOf(const Examination& e, const std::string& fault, const std::string& at) {
    for (const Hypothesis& h : e.considered)
        if (h.fault == fault && h.at == at) return &h;
    return nullptr;
}

const Hypothesis* topBearing(const Examination& e) {
    return !e.findings.empty() && e.findings[0].weightDban ? &e.findings[0] : nullptr;
}

const Hypothesis* strongest(const Examination& e) {
    const Hypothesis* best = nullptr;
    for (const Hypothesis& h : e.considered)
        if (h.weightDban && (!best || *h.weightDban > *best->weightDban)) best = &h;
    return best;
}

std::vector<const Hypothesis*> findingsElsewhere(const Examination& e, const std::string& at) {
    std::vector<const Hypothesis*> all;
    for (const Hypothesis& h : e.findings)
        if (h.weightDban && h.at != at) all.push_back(&h);
    return all;
}

Judged judged(const Label& label, const Examination& e) {
    const Hypothesis* top = topBearing(e);
    Judged verdict;
    verdict.bearing = top && top->at == label.at;
    verdict.element = verdict.bearing && top->fault == label.fault;
    verdict.elsewhere = !findingsElsewhere(e, label.at).empty();
    return verdict;
}

void VerdictCount::add(const Label& label, const Examination& e) {
    if (label.sound()) {
        ++sound;
        soundFound += topBearing(e) != nullptr;
        if (const Hypothesis* most = strongest(e))
            soundDban = std::max(soundDban.value_or(*most->weightDban), *most->weightDban);
        return;
    }
    const Judged verdict = judged(label, e);
    ++faulty;
    bearings += verdict.bearing;
    elements += verdict.element;
    elsewhere += verdict.elsewhere;
    notBall += !label.ball();
    notBallElements += !label.ball() && verdict.element;
    if (verdict.element) hitDban.push_back(*topBearing(e)->weightDban);
}

}  // namespace fettle
