// Why: which faults can be asked for on which channel. The nearest points of a recording speak for a bearing,
// with w cut along the way (core/machine/path.h). Two positions on the same channels whose orders agree
// within the record's resolution, or within the spread of slip, are one hypothesis ("driver DE or NDE").
// Plain bearings are not asked for.
#pragma once

#include <vector>

#include "core/diagnosis/prepare.h"

namespace fettle {

inline constexpr const char* kNotHeard = "no point of this recording hears it";

// Positions with everything an examination may ask of them on this recording; `whyNot` holds the rest.
struct AskedBearings {
    struct NotAsked {
        std::string at, why, cure;
    };
    std::vector<BearingHypothesis> hypotheses;  // four elements a position
    std::vector<NotAsked> notAsked;
};
AskedBearings askBearings(const Machine& machine, const PreparedRecording& prepared,
                          const WeighingSettings& settings = {});

// The channels of this recording that may speak for a position, shares summing to 1; empty: none hears it.
std::vector<Hearing> hearingsOf(const Machine& machine, const BearingPlace& place,
                                const PreparedRecording& prepared);

}  // namespace fettle
