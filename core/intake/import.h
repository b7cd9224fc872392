// Why: recordings come into the fleet file through one door: found, read, checked, deduplicated, examined and
// packed on all cores, stored in one transaction a batch by one writer. Killed at any point and started again
// it loses nothing acknowledged and doubles nothing. Refusals are listed and kept; the rest goes on. What is
// parked (a time before 1980 or in the future, local time, no machine named) is listed, never guessed.
// Recordings are stored in the order in which they were found, however many threads there are, so that two
// imports of one folder make the same file. Thread: `import` runs on the caller's thread with workers of its
// own, each with a connection of its own to look things up; every callback is called from the caller's
// thread; `files` is read from the workers. Memory: a few recordings a thread and at most 256 MiB of results
// that wait. Errors: only what stops everything (the fleet file cannot be written); what was acknowledged
// stays. Each file's own trouble is a refusal.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/base/file_system.h"
#include "core/base/progress.h"
#include "core/intake/discover.h"
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
    // Asked before a file that cannot be read as a recording is refused: true: it may still be on its way,
    // and is neither taken in nor refused now (`putOff`).
    std::function<bool(const std::string& path)> mayWait = {};
    bool evenCurrent = false;  // re-examination: also what this engine weighed, after a description changed
    Progress progress = {};
    CancelToken cancel = {};
};

// Something that did not keep a recording out but should be looked at, once for all files that share it.
struct ImportWarning {
    std::string path, text;  // of the first file
    std::size_t files = 1;
};

struct ImportReport {
    std::size_t found = 0, stored = 0, already = 0, late = 0;
    std::size_t answered = 0;  // recordings that were asked for (core/fleet/asks.h)
    std::size_t putOff = 0;    // left for later by `mayWait`
    std::size_t tables = 0;    // of ready-made levels (level_intake.h)
    std::size_t levels = 0, levelsAlready = 0, levelRowsRefused = 0;
    std::size_t passedOver = 0;      // met in a folder, and no recordings
    std::size_t foldersLeftOut = 0;  // met, and not looked into without `recursive`
    std::vector<Refusal> refusals;   // kind refused | parked
    std::vector<ImportWarning> warnings;
    bool cancelled = false;  // stopped on request; what was stored stays
};

// Paths are files or folders. Sidecars and machine descriptions met in folders are not recordings and are
// passed over; other files that no reader takes are refused when named, passed over silently when only met.
Result<ImportReport> import(FleetFile& fleet, const FileSystem& files, const std::vector<std::string>& paths,
                            const ImportOptions& options = {});
// The same with files that were found already.
Result<ImportReport> importFound(FleetFile& fleet, const FileSystem& files, const Found& found,
                                 const ImportOptions& options = {});

}  // namespace fettle
