// Why: old verdicts beside new ones, so that an engineer sees within a minute what another engine or a
// corrected description changed: which verdicts appear, vanish, change urgency, or move by more than a stated
// number of decibans; counted by family and by machine, worst first. Worst: by the more urgent of the two
// sides, then by what it did (appeared and raised before vanished, lowered and moved), then by decibans.
// Memory: a row for each fault at each place of each machine, not for each recording. Thread: that of the
// FleetFile. Errors: NotFound where there is no such run, or none at all.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/store/fleet_file.h"
#include "core/store/re_examination_store.h"

namespace fettle {

inline constexpr double kToldMoveDban = 3;  // a factor of two in the e-value

enum class ChangeKind { Appeared, Raised, Vanished, Lowered, Moved };
std::string toText(ChangeKind kind);  // "appeared" ...

// How it came out in one recording; nothing: within `leastDban`, and as urgent as before.
std::optional<ChangeKind> kindOf(const VerdictChange& change, double leastDban);

// Recordings by what the verdict did in them.
struct ChangeCounts {
    std::size_t appeared = 0, raised = 0, vanished = 0, lowered = 0, moved = 0;
    std::size_t all() const { return appeared + raised + vanished + lowered + moved; }
    void add(ChangeKind kind);
};

struct ChangedVerdict {
    std::string machine, fault, at;
    ChangeCounts counts;
    ChangeKind worst = ChangeKind::Moved;
    double mostDban = 0;       // largest move of its weight in any recording
    VerdictChangeRow example;  // the recording in which it changed worst
};

struct ChangedGroup {
    std::string name;  // fault key, or tag
    ChangeCounts counts;
    std::size_t verdicts = 0;  // faults at places
    double mostDban = 0;       // largest move of a weight
};

struct ReExaminationDifference {
    ReExaminationRun run;
    double leastDban = kToldMoveDban;
    std::vector<WeighedBefore> weighedBefore;  // by which engines
    std::size_t weighed = 0;                   // recordings of the run
    std::vector<ChangedVerdict> verdicts;      // worst first
    std::vector<ChangedGroup> families, machines;
};

// `run` empty: the newest one.
Result<ReExaminationDifference> differenceOf(FleetFile& fleet, std::optional<std::int64_t> run = {},
                                             double leastDban = kToldMoveDban);

}  // namespace fettle
