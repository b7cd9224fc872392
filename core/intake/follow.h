// Why: recordings are taken in as they arrive, for months, with nobody looking. What lies in the folder at
// the start is taken in first, so that a new start carries on where the last one ended; then the system's
// word of new files, or looking again and again, brings the rest, in batches through the one door of import.
// Paths wait in a bounded list, never contents: while the writer is behind, nothing is read. What stops an
// import for a while (the fleet file is being written by another program, the disk is full, the folder is not
// there) is said once and tried again. It ends on request, after a whole batch. Thread: the caller's, with
// the workers of import; callbacks on the caller's. Errors: NotFound where there is no folder at the start;
// else only what trying again cannot mend (the fleet file is damaged or gone), and with `once` everything.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "core/intake/import.h"

namespace fettle {

struct FollowOptions {
    bool recursive = false;
    bool once = false;  // ends when nothing waits any more
    bool poll = false;  // looks again and again also where the system could tell
    std::optional<std::chrono::milliseconds> settle;  // unchanged so long before it is read; empty: 2 s, and
                                                      // none where the system says that a file was closed
    std::chrono::milliseconds patience{60000};        // for what cannot be read, or has no sidecar yet
    std::chrono::milliseconds lookEvery{5000};        // polling; without, every ten minutes to be sure
    std::chrono::milliseconds pause{5000};            // before trying again what failed
    std::size_t mostWaiting = 4096;                   // paths
    std::size_t mostAtOnce = 256;                     // files in one import
    ImportOptions import;  // threads, batch, now, acknowledged, refused (each once), cancel
    // After each import that stored something, and every ten minutes; an error is said and follow goes on.
    std::function<Status(FleetFile&)> afterwards = {};
    std::function<void(const std::string& sentence)> say = {};  // what happened to the folder or the file
    // After each import: what came in so far, and how many paths wait.
    std::function<void(const struct FollowReport&, std::size_t waiting)> progress = {};
};

struct FollowReport {
    std::size_t stored = 0, already = 0, late = 0, answered = 0;
    std::size_t tables = 0, levels = 0;   // tables of ready-made levels, and levels stored out of them
    std::size_t refused = 0, parked = 0;  // files, each once for each reason
    std::size_t imports = 0, looks = 0;
    bool polled = false;  // the system was not asked, or could not tell
    bool cancelled = false;
};

Result<FollowReport> follow(FleetFile& fleet, const std::string& folder, const FollowOptions& options = {});

}  // namespace fettle
