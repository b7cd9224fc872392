// Why: every weight stands on the shaft speed. A given speed is refined, a missing one is looked for within
// what the nameplate allows, both by the comb of shaft orders in the spectrum and in the envelope, with a
// stated uncertainty. Units: r/min outside, Hz inside. The uncertainty is a half-width, not a standard
// deviation.
#pragma once

#include <vector>

#include "core/diagnosis/examination.h"
#include "core/diagnosis/view.h"
#include "core/machine/machine.h"

namespace fettle {

// Speeds the nameplate allows, r/min.
struct SpeedRange {
    double least = 0, most = 0;
    std::string from;  // "nameplate: 4 poles, 60 Hz, rated 1730 r/min"
};
// IEC 60034-1 allows 20 % on the rated slip; heat adds about a quarter: 1.6 times the rated slip is the lower
// end, the synchronous speed (with the grid's spread) the upper. Empty where the nameplate says neither poles
// nor speed.
std::optional<SpeedRange> speedRange(const Machine& machine);

// Refines `givenRpm` or finds the speed in the nameplate's range. No speed: rpm empty and `from` says why.
SpeedResult findSpeed(const Machine& machine, std::optional<double> givenRpm,
                      const std::vector<ChannelViews>& channels, const WeighingSettings& settings);

}  // namespace fettle
