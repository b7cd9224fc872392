// Why: blind spots are kept one a fault and place; a reader wants each reason once, with all that it hides,
// and what is cured alike together. Also: every fault key of the program held against one machine, so that
// none is passed over in silence: seen, blind somewhere, blind everywhere, or no concern of this machine.
// Thread: pure.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/diagnosis/examination.h"
#include "core/machine/machine.h"

namespace fettle {

struct BlindRow {
    std::vector<std::string> faults, places;  // keys and places, each once; no fault: all that is read there
    std::string why, cure;
};
std::vector<BlindRow> blindRows(const std::vector<BlindSpot>& spots);

// "worn gear mesh, damaged gear tooth at G1, G2"; `wordsOf` words a place.
std::string blindWhat(const BlindRow& row, const std::function<std::string(const std::string&)>& wordsOf);
std::string blindWhat(const BlindRow& row);  // places as they are

// All that a finding may be, but for "sensor".
const std::vector<std::string>& faultKeys();

struct FaultSight {
    enum class State { Seen, BlindSomewhere, Blind, NoConcern };
    std::string fault;
    State state = State::Seen;
};
// One a key, of a machine over the recordings of the examination.
std::vector<FaultSight> faultSights(const Machine& machine, const Examination& examination);

}  // namespace fettle
