// Why: a comb that no described bearing explains (another machine's bearing, or one that is not what the
// plate says) draws lines where described families look as well. It is a true cause like any other: it claims
// its lines, and whatever is weaker is weighed again without them. On open records with such combs, bearings
// that are not in the machine reached 30 decibans in 0.4 % before and stay under the bound since (phantoms).
// Thread: pure.
#pragma once

#include <vector>

#include "core/diagnosis/explain_away.h"
#include "core/diagnosis/hypotheses.h"

namespace fettle {

struct BearingsWeighed {
    std::vector<Weighed> described;         // in the order of asked.hypotheses
    std::vector<Hypothesis> unknown;        // unknownBearings, before any of them claimed
    std::vector<std::vector<Rival>> combs;  // of each described one: the combs that claimed lines of it
};

// `evidence` comes back with all claims made in it.
BearingsWeighed weighBearings(const Machine& machine, const PreparedRecording& prepared,
                              const AskedBearings& asked, std::vector<ChannelEvidence>& evidence,
                              const WeighingSettings& settings);

}  // namespace fettle
