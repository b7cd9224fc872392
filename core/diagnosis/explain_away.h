// Why: a true fault's lines and sidebands also fall where other families look. The strongest family claims
// its lines, the others are weighed again without them, and each keeps the smaller of its weights, until
// nothing of 10 decibans is left.
#pragma once

#include <vector>

#include "core/diagnosis/weigh.h"

namespace fettle {

struct Weighed {
    Weighing now;  // the smaller of before and after claims
    double beforeClaimsDban = 0;
    std::vector<std::size_t> claimedBy;  // hypotheses whose claim lowered this one by 3 decibans or more
};

// Results in the order of `hypotheses`. `evidence` comes back with all claims made in it.
std::vector<Weighed> explainAway(const std::vector<BearingHypothesis>& hypotheses,
                                 std::vector<ChannelEvidence>& evidence, const Rates& rates,
                                 const WeighingSettings& settings);

}  // namespace fettle
