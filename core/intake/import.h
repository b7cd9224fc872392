// Why: recordings come into the fleet file through one door: found, read, checked, deduplicated, examined on
// all cores, stored in one transaction a batch by one writer. Killed at any point and started again it loses
// nothing acknowledged and doubles nothing. Refusals are listed and kept; the rest goes on. What is parked (a
// time before 1980 or in the future, local time, no machine named) is listed, never guessed. Thread: `import`
// runs on the caller's thread with workers of its own; progress is called from the caller's thread. Errors:
// only what stops everything (the fleet file cannot be written, cancelled); each file's own trouble is a
// refusal.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/base/file_system.h"
#include "core/base/progress.h"
#include "core/store/fleet_file.h"

namespace fettle {

struct ImportOptions {
    bool recursive = false;
    int threads = 0;         // 0: one a core
    std::size_t batch = 16;  // recordings in one transaction: what a kill can cost at most, and it is redone
    std::optional<Instant> now;  // the clock against which "in the future" is judged; empty: the system's
    // Called after each commit with the paths that are now safely in the file (stored or already there).
    std::function<void(const std::vector<std::string>&)> acknowledged = {};
    std::function<void(const Refusal&)> refused = {};
    Progress progress = {};
    CancelToken cancel = {};
};

struct ImportReport {
    std::size_t found = 0, stored = 0, already = 0, late = 0;
    std::vector<Refusal> refusals;  // kind refused | parked
    bool cancelled = false;
};

// Paths are files or folders. Sidecars and machine descriptions met in folders are not recordings and are
// passed over; other files that no reader takes are refused when named, passed over silently when only met.
Result<ImportReport> import(FleetFile& fleet, const FileSystem& files, const std::vector<std::string>& paths,
                            const ImportOptions& options = {});

// Weighs again every kept recording of a machine (empty: all), replacing examinations one by one; resumable
// by starting again with the same engine (those already weighed by it are passed over).
struct ReExamineReport {
    std::size_t weighed = 0, alreadyCurrent = 0, withoutWaveform = 0;
    std::vector<std::string>
        changed;  // "KL-ID-01 2026-05-04T06:20:00Z bearing_outer_race @ driver DE: 31 -> 12"
};
Result<ReExamineReport> reExamine(FleetFile& fleet, const std::string& tag,
                                  const ImportOptions& options = {});

}  // namespace fettle
