// Why: every weight stands on the shaft speed. It is read from what the recording itself shows, stray flux
// first, then the comb of shaft orders in vibration; a given speed is refined by them; readings that do not
// agree are told. Where two speeds fit nearly alike it is said that the speed cannot be known: a wrong speed
// is a wrong bearing. Units: r/min outside, Hz inside, both in the recording's clock. Uncertainties are
// half-widths, not standard deviations.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/diagnosis/examination.h"
#include "core/diagnosis/mains.h"
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
// The same below the synchronous speed of a mains that was measured: in the recording's own clock, and narrow
// for an inverter too.
std::optional<SpeedRange> speedRangeAt(const Machine& machine, const Mains& mains);

struct SpeedQuestion {
    const Machine& machine;
    const Recording& recording;
    std::optional<double> givenRpm;
    const std::vector<ChannelViews>& views;
    const std::vector<FluxView>& flux;
    const WeighingSettings& settings;
};

struct SpeedAnswer {
    SpeedResult speed;  // no speed: rpm empty and `from` says why
    Mains mains;
    std::vector<QualityNote> notes;  // speed_disagrees
    bool inFlux = false;             // the motor's own turning is seen in its flux
    bool combSeen = false;           // shaft orders stand out in vibration
};
SpeedAnswer findSpeed(const SpeedQuestion& question);

// Slip as a share of synchronous speed. `known`: speed and mains both measured in this recording and
// together good for 0.02 %, as slip needs (one part in fifty of a rated slip of 1 %).
struct SlipReading {
    double share = 0, plusMinus = 0;
    bool known = false;
};
std::optional<SlipReading> slipReading(const Machine& machine, const SpeedResult& speed, const Mains& mains);

}  // namespace fettle
