// Why: weighs one hypothesis on one recording: a mean of products of e-values over views, cage shifts,
// channels and internal geometries. A weighted mean of e-values is an e-value under any dependence, so the
// search is paid for. Source: Vovk and Wang, Ann. Statist. 49 (2021) 1736-1754, section 3; weights in
// decibans: Good, Probability and the Weighing of Evidence (1950). Cost: lines x shifts x views look-ups, no
// transforms.
#pragma once

#include <string>
#include <vector>

#include "core/diagnosis/examination.h"
#include "core/diagnosis/family.h"
#include "core/diagnosis/ordinary_lines.h"
#include "core/diagnosis/view.h"

namespace fettle {

// What a channel says with the lines claimed so far made neutral. Copied before claims are made in it.
struct ChannelEvidence {
    const ChannelViews* views = nullptr;
    std::string channelName;
    std::vector<std::vector<float>> factors;  // of each envelope view: its `factor`, claims set to 1
    Blocked blocked;                          // ordinary lines and claims
    std::vector<std::uint16_t> sideLines;  // where farther sidebands of a claim stand: neutral in the views
                                           // that show a line there; reasons are blocked.reasons
};

struct Hearing {
    std::size_t channel = 0;  // index into the evidence
    double share = 1;         // shares of one hypothesis sum to 1
    double wCut = 1;          // w of every line is cut by this along the path
};

// Where a hypothesis is looked for.
struct BearingHypothesis {
    std::string fault, at;
    double shaftRatio = 1;          // own shaft's speed over the driver's
    std::vector<Family> variants;   // at least one, each with equal prior
    std::vector<Hearing> hearings;  // at least one
    std::string path = {};          // how they hear it (core/machine/path.h); empty: nothing is taken away
};

Weighing weigh(const BearingHypothesis& hypothesis, const std::vector<ChannelEvidence>& evidence,
               double driverHz, const WeighingSettings& settings);

// The row of one line in one view, as a table shows it. `capped`: its family's first carrier stands in an
// ordinary line.
LineRow lineRow(const FamilyLine& line, double shift, double shaftHz, double wCut,
                const ChannelEvidence& channel, std::size_t view, bool capped);

// Makes positions startHz + j x shaftHz (j any whole number) neutral in the views that show a line there.
void neutralWhereFound(ChannelEvidence& channel, double startHz, double shaftHz, double halfWidthHz,
                       const std::string& reason);

// Makes the lines of a found family, with their shaft sidebands, neutral for everything else on every
// channel. Farther sidebands (any whole number of shaft orders away) are made neutral only where a view does
// show a line: lines that a loose or loaded shaft draws round a true fault, met on open records up to 20
// orders away.
void claim(const BearingHypothesis& hypothesis, const Weighing& found, std::vector<ChannelEvidence>& evidence,
           const Rates& rates, const WeighingSettings& settings);

}  // namespace fettle
