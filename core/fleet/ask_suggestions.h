// Why: which recordings would settle what a verdict leaves open. From its blind spots (longer, wider, another
// direction or place, a tachometer), from what its fault is decided by (two radial directions, flux or
// current of rotor bars), from its rivals (the other place, phase), from a way that only reaches through a
// coupling or a belt, and from its urgency (a reading by hand before the job, which is the value to compare
// with afterwards). What no recording can bring (a designation, the range of a sensor) is not asked for.
// Bands and lengths of hand readings: common practice, no source. Thread: pure.
#pragma once

#include <string>
#include <vector>

#include "core/diagnosis/examination.h"
#include "core/fleet/ask_spec.h"
#include "core/machine/machine.h"

namespace fettle {

struct AskSuggestion {
    bool byHand = false;
    std::string point;      // id of a point, or a place
    std::string direction;  // horizontal vertical axial radial, or ''
    AskSpec spec;
    std::string why;
};

// For one hypothesis: each place and direction once, with the longest and widest of what is wanted there.
std::vector<AskSuggestion> askSuggestions(const Machine& machine, const Examination& examination,
                                          const Hypothesis& hypothesis);

}  // namespace fettle
