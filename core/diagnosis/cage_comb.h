// Why: a cage that drags strikes once a turn of its own and draws a comb of many harmonics. Twice the spin of
// an element, whose spread is its own, finds one of them to stand on, and its sidebands a cage turn apart
// find the neighbours: eighteen lines against five, and the element outweighs the cage (simulated cages of
// "developed" severity, named as elements). The comb between decides: an element draws clusters at its
// carriers and hardly anything between, a cage's comb goes on. Source: kinematics; which lines are drawn, R.
// B. Randall and J. Antoni, MSSP 25 (2011) 485-520, section 2. Thread: pure.
#pragma once

#include <optional>
#include <string>

#include "core/diagnosis/weigh.h"

namespace fettle {

struct BearingWeighed {
    const BearingHypothesis& hypothesis;
    const Weighing& found;
};

// The cage's rate in Hz where its comb holds all that the element stands on; else nothing.
std::optional<double> cageCombOf(const BearingWeighed& element, const BearingWeighed& cage,
                                 const std::vector<ChannelEvidence>& evidence, double driverHz);

// Makes the whole comb neutral for everything else, where a view shows a line.
void claimComb(double cageHz, const std::string& at, std::vector<ChannelEvidence>& evidence,
               const WeighingSettings& settings);

// Everything the comb stands on, for the checksum of the settings.
std::string cageCombText();

}  // namespace fettle
