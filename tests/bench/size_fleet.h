// Why: what is promised of a thousand machines over years is held against files of that size. Made row by row
// below the stores, because the stores would take hours: what a row holds comes from one simulated recording
// that was really examined and packed, levels varied by a seeded generator. "trends": 1,000 machines with a
// recording every 20 minutes for a year, as it is after everything else was thinned, a round kept at its end.
// "full": 100 machines, all that the shipped retention keeps of a year. `sizeBench` says how large the file
// is beside the estimate of core/fleet/retention, and how long the slowest reads take, cold (the file dropped
// from the system's cache) and warm, and the list of retention beside a plain reading of everything.
// Milliseconds by the clock.
#pragma once

#include <string>

namespace fettle::bench {

struct SizeFleetOptions {
    std::string folder;
    std::string what = "trends";  // trends | full: FOLDER/trends.fettle, FOLDER/full.fettle
    int machines = 0;             // 0: as said above
    int days = 365;
};
int makeSizeFleet(const SizeFleetOptions& options);  // exit code

int sizeBench(const std::string& fleet);

}  // namespace fettle::bench
