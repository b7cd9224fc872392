// Why: before anything comes in, a person can see what each file was taken for, and from where each fact
// came: the file, its sidecar, a rule, the register. Nothing is stored and nothing is weighed: files are
// read, rules applied, and the same checks asked that an import asks, so that "ready" here is "taken" there.
// Files of one kind stand together, so that hundreds can be looked over. Memory: an outline of the first
// channel a file, no samples. Thread: the caller's; `progress` is called from it. Errors: only of the fleet
// file; a file's own trouble is its preview.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/intake/checks.h"
#include "core/intake/rules.h"

namespace fettle {

enum class FactFrom { Nobody, File, Sidecar, Rule, Register };
const char* wordOf(FactFrom from);  // "" file sidecar rule register

struct Fact {
    std::string value;  // empty: nobody says
    FactFrom from = FactFrom::Nobody;
};

struct PreviewChannel {
    Fact name, quantity, unit, scale, direction, point;
};

struct FilePreview {
    enum class State { Ready, Known, Parked, Refused };
    std::string path, format;
    std::string dialect;  // of a CSV file: how it is parted and its decimal mark
    double rateHz = 0, seconds = 0;
    Fact machine, point, time, speedRpm;
    std::vector<PreviewChannel> channels;
    std::vector<std::string> rules;  // patterns of those that filled something
    std::vector<std::string> notes;  // warnings, without the path
    State state = State::Refused;
    Objection objection;                        // where parked or refused
    std::vector<std::array<float, 2>> outline;  // least and most of the first channel, in stretches
};
const char* wordOf(FilePreview::State state);  // ready known parked refused

// Files that were taken for the same: format, rate, channels with units, state and rule broken.
struct PreviewGroup {
    std::vector<std::size_t> files;  // places in Preview::files
    std::string pattern;             // that all of them match, to make a rule of
};

struct Preview {
    std::vector<FilePreview> files;
    std::vector<PreviewGroup> groups;  // what cannot come in first, then the larger
    std::size_t passedOver = 0;
    bool cancelled = false;
};

struct PreviewOptions {
    bool recursive = false;
    std::optional<Instant> now;
    std::size_t stretches = 160;  // of an outline
    Progress progress = {};
    CancelToken cancel = {};
};
Result<Preview> preview(FleetFile& fleet, const FileSystem& files, const std::vector<std::string>& paths,
                        const PreviewOptions& options = {});

}  // namespace fettle
