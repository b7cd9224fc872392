// Why: the plate is often missing or wrong, and another machine's bearing stands in nobody's description. A
// comb in the envelope at an order that is no shaft's is a rolling bearing's all the same. It is looked for
// after the described bearings claimed their lines, over all orders, and the search is paid: the weight is of
// the mean e-value (a tenth of it where the component's bearings are described: another one is the exception)
// over the grid of orders, the views and the channels (a mean of e-values is one under any dependence; Vovk
// and Wang, Ann. Statist. 49 (2021), section 3). Positions whose own line is no rarer than 1 in 50 are taken
// as nothing, which only lowers the mean and makes the search cheap. Orders near a whole or a half number are
// left out: a looseness or a neighbour a little slower draws those. Units: orders of the shaft at the point;
// weights in decibans. Thread: pure.
#pragma once

#include <optional>
#include <vector>

#include "core/diagnosis/prepare.h"

namespace fettle {

// One hypothesis a component that a channel of this recording sits on; `evidence` with all claims made in it.
// From findingDban up `why` says which designations of resources/tables/bearings.json fit.
std::vector<Hypothesis> unknownBearings(const Machine& machine, const PreparedRecording& prepared,
                                        const std::vector<ChannelEvidence>& evidence,
                                        const WeighingSettings& settings);

// Everything the search stands on, for the checksum of the settings.
std::string unknownBearingText();

}  // namespace fettle
