// Why: the folder that `sample` wrote, read back: machines, their recordings by time, and the stories that
// were put into them (truth.json). Recordings are known by their sidecars, machine descriptions by their
// `tag`, wherever they lie below the folder, so that a folder sorted by hand is read as well. Errors:
// truth.json missing or broken, a machine description refused. Recordings without a time are left out.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/file_system.h"
#include "core/base/time.h"

namespace fettle {

// One thing that was made to happen to a machine. Dates as in truth.json, "2026-05-04"; empty: before all,
// for ever.
struct Story {
    std::string tag, text, fault, at, from, to;
    std::string kind;                // the scenario's own word, "silent"
    bool decoy = false;              // looks like a fault of this machine and is none
    std::optional<double> severity;  // 0 to 1, where the file says: in the middle of the last week
    std::vector<double> byWeek;      // the worst of each week from the first one made on; may be empty
};

struct TimedPath {
    Instant time;
    std::string path;
};

struct SampleMachine {
    std::string tag, description;       // path of its description
    std::vector<TimedPath> recordings;  // oldest first
    std::vector<Story> stories;         // in the order of truth.json
};

struct SampleFolder {
    Instant start;  // the Monday the recordings start with
    int weeks = 0;
    std::vector<SampleMachine> machines;  // by tag
};

Result<SampleFolder> readSampleFolder(const FileSystem& files, const std::string& folder);

}  // namespace fettle
