// Why: after the job the engineer knows whether it cured the machine: the week before the work against like
// recordings after it, finding by finding. Aim: the fault's lines back in the sound baseline (mean + 3
// spreads of its daily medians, a spread counted as 1 dB at least, at most of any day in it), its weight
// below 10 decibans, overall vibration at most 1.25 times the A/B boundary. Only what stood out before the
// work can tell of a cure. All limits: common practice, no source. Weights in decibans (10 log10 of a mean of
// e-values). Thread: pure.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/trend/baseline.h"

namespace fettle {

inline constexpr double kNamedDban = 10;   // a recording at that weight names the fault
inline constexpr double kAimShare = 1.25;  // of A/B

// A number that the fault raises: the line at 1x, the band above 1 kHz, a measure of its own.
struct CureLine {
    std::string name, where, unit;  // "1x", "M-DE x", "mm/s"
    Scale scale = Scale::Decibels;
    std::optional<double> before, after;  // medians
    std::optional<double> soundMost;      // upper edge of the sound baseline; empty: no baseline
    std::string baseline;                 // "42 days from 2026-01-05 to 2026-02-20", or why there is none
};
double soundMostOf(const Baseline& baseline);
// How far it stood above the baseline before the work, on the scale; 0 where one of them is not known.
double raisedBefore(const CureLine& line);

struct CureLevel {
    std::string where, unit;  // "M-DE x velocity r.m.s.", "mm/s"
    std::optional<double> before, after;
    std::optional<double> limitAB, limitBC;  // empty: no limits apply
};

struct CureFinding {
    std::string fault, at, name;                      // name: "outer-race defect, driver DE"
    std::optional<double> weightBefore, weightAfter;  // of the mean e-value; empty: not weighed
    std::vector<CureLine> lines;
};

struct CureCase {
    std::vector<CureFinding> findings;
    std::vector<CureLevel> levels;   // of every channel of vibration, both sides at the same place
    std::vector<std::string> fresh;  // names of findings that neither the job nor the week before had
    std::string notComparable;       // why; empty: it is comparable
    bool ofJob = true;               // false: of an event without a job, by what stood out before it
};

enum class CureOutcome { Cured, Better, Unchanged, Worse, AnotherFault, NotComparable };
std::string toText(CureOutcome outcome);   // cured better unchanged worse another_fault not_comparable
std::string inWords(CureOutcome outcome);  // "another fault"

enum class FindingCourse { NotTold, Gone, Fallen, Same, Risen };  // not told: it did not stand out before
FindingCourse courseOf(const CureFinding& finding, const std::vector<CureLevel>& levels);

struct CureVerdict {
    CureOutcome outcome = CureOutcome::NotComparable;
    std::string reason;  // one sentence with the figures
};
CureVerdict judgeCure(const CureCase& cureCase);

}  // namespace fettle
