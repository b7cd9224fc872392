// Why: one machine and its two recordings, sound and with a race fault, for every benchmark: made by the
// simulator, so that they are the same on every machine and need no file. Shapes: one acceleration channel in
// g, 120,000 samples at 12 kHz; 1.5 kW, 4 poles, 60 Hz, bearings 6205 and 6203.
#pragma once

#include <string>

#include "core/machine/machine.h"
#include "core/signal/recording.h"

namespace fettle::bench {

struct BenchCase {
    std::string name;  // "sound", "outer race"
    Machine machine;
    RecordingPtr recording;
};

// Made once a program. Ends the program with a word where the simulator refuses: a benchmark has nobody to
// ask.
const BenchCase& soundCase();
const BenchCase& faultyCase();
// The sound machine with a record of another length and so many channels on its one point. Made each time.
BenchCase caseOf(double seconds, int channels);

}  // namespace fettle::bench
