#include "core/workshop/trial.h"

#include <algorithm>

namespace fettle {

std::string toText(TrialKind kind) {
    switch (kind) {
        case TrialKind::Mass:
            return "mass";
        case TrialKind::Bearing:
            return "bearing";
        case TrialKind::Bolt:
            return "bolt";
        case TrialKind::Other:
            break;
    }
    return "other";
}

std::string toText(TrialFollows follows) {
    switch (follows) {
        case TrialFollows::Weight:
            return "weight";
        case TrialFollows::Once:
            return "1x";
        case TrialFollows::Looseness:
            return "looseness";
        case TrialFollows::Velocity:
            break;
    }
    return "velocity";
}

std::string toText(TrialMark mark) {
    if (mark == TrialMark::Passed) return "passed";
    return mark == TrialMark::Failed ? "failed" : "open";
}

std::vector<TrialSpan> spansOf(const Trial& trial, Instant now) {
    std::vector<TrialSpan> spans;
    const auto add = [&](Instant from, Instant until) {
        if (from <= until) spans.push_back({trial.name, trial.machine, from, until});
    };
    if (trial.started() && trial.beforeFrom) add(*trial.beforeFrom, trial.changeFrom.value_or(now));
    if (trial.started() && trial.changeUntil) add(*trial.changeUntil, trial.afterUntil.value_or(now));
    return spans;
}

}  // namespace fettle
