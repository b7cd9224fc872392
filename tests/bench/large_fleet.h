// Why: what the desktop takes at size is measured on a fleet of the size it is promised for: 1,500 machines
// in the register, each with 26 weekly recordings and one in the last week, 1 in 20 silent since three weeks;
// one machine (kYearTag) with a recording every 20 minutes for a year, 800-line spectra of three kinds, trend
// rows, measures and weights of every one. Put in through the stores, from two simulated recordings that were
// really examined; levels, lines and peaks are varied from one to the next by a seeded generator. Full
// waveforms are kept only of the newest of them; the others hold a few samples. A round is opened at the end.
#pragma once

#include <string>

namespace fettle::bench {

inline constexpr const char* kYearTag = "M-0001";
inline constexpr const char* kOtherTag = "M-0040";  // with a fault
inline constexpr const char* kLastDay = "2026-06-28";

struct LargeFleetOptions {
    std::string folder;  // "large.fettle" is made there
    int machines = 1500;
    int rows = 26'280;
    int weeks = 26;
};
int makeLargeFleet(const LargeFleetOptions& options);  // exit code; says on stderr what went wrong

}  // namespace fettle::bench
