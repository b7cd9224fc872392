// Why: everything about one file that needs no writing: read, check, recognise, examine, pack. It runs on a
// worker, with a connection of its own to ask whether the recording is there already; nothing it finds wrong
// with the file stops the others. Ownership: borrows the file system and the shared state. Thread: each
// worker its own.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/intake/checks.h"
#include "core/intake/closed_periods.h"
#include "core/intake/discover.h"
#include "core/intake/rules.h"
#include "core/store/fleet_file.h"
#include "core/store/packed_recording.h"

namespace fettle {

// What all workers read.
struct IntakeShared {
    const FileSystem& files;
    std::string fleetPath;
    RegisterBook book;
    ClosedPeriods closed;
    Instant now;
    RuleBook rules;
};

struct TakenIn {
    enum class Kind {
        Examined,    // `recording` is to be stored
        Known,       // is in the fleet file
        Objected,    // `objection` says why not
        PassedOver,  // met in a folder, and no recording
        Levels,      // `table` holds ready-made levels
        Stopped      // the fleet file or the program's own tables cannot be read: `failure`
    };
    Kind kind = Kind::Stopped;
    std::string path;
    PackedRecording recording;
    Objection objection;
    std::string table;
    Error failure;
    std::vector<std::string> warnings;
    std::size_t bytes = 0;  // held
};

class IntakeWorker {
  public:
    explicit IntakeWorker(const IntakeShared& shared) : shared_(shared) {}
    TakenIn take(const FoundFile& file);

  private:
    TakenIn taken(const FoundFile& file);
    TakenIn unread(const FoundFile& file, const Error& error) const;
    Result<bool> knows(const RecordingKey& key);

    const IntakeShared& shared_;
    std::unique_ptr<FleetFile> fleet_;  // for reading; opened when first needed
};

}  // namespace fettle
