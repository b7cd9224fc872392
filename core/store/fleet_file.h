// Why: the fleet file is the SQLite database of one site: register, recordings with their waveforms, trends,
// spectra, examinations as weighed, events, rounds, decisions, jobs. This is the door: make, open, say how it
// was opened. One FleetFile is one connection with its stores; it is used from one thread at a time, several
// threads or programs open several (WAL, busy timeout). Errors: sentences that name the file and the rule; a
// file that is damaged, foreign or newer is never changed. Schema: core/store/schema.cpp, README section "The
// fleet file".
#pragma once

#include <memory>
#include <string>

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/store/log_store.h"
#include "core/store/recording_store.h"
#include "core/store/register_store.h"
#include "core/store/round_store.h"
#include "core/store/trend_store.h"

namespace fettle {

class Database;

enum class OpenMode { ReadWrite, ReadOnly };

// What opening found. Refusals (foreign, damaged, newer than can be read, locked) are errors, not outcomes.
enum class OpenOutcome {
    Current,    // this program's schema, writable
    Upgraded,   // migrated just now, writable
    NewerFile,  // made by a newer program, which says that this one may read it: read-only
    ReadOnly    // asked for, or folder or file not writable: read-only, `word` says why
};

struct SiteSettings {
    std::string site;              // "Hollin Edge Lime Works"
    std::string timeZone = "UTC";  // IANA name; rounds run by this zone's calendar
    double alpha = 0.1;            // mean share of chance entries of the list
};

class FleetFile {
  public:
    // Refuses where a file is already there.
    static Result<std::unique_ptr<FleetFile>> create(const std::string& path, const SiteSettings& site);
    static Result<std::unique_ptr<FleetFile>> open(const std::string& path,
                                                   OpenMode mode = OpenMode::ReadWrite);
    ~FleetFile();
    FleetFile(const FleetFile&) = delete;
    FleetFile& operator=(const FleetFile&) = delete;

    const std::string& path() const;
    OpenOutcome outcome() const;
    const std::string& word() const;  // one sentence for the user; empty where Current
    bool writable() const;

    Result<SiteSettings> site();
    Status setSite(const SiteSettings& site);

    RegisterStore& machines();
    RecordingStore& recordings();
    TrendStore& trends();
    RoundStore& rounds();
    LogStore& log();

    // Problems found, one sentence each; empty: clean. SQLite's integrity and foreign keys, every waveform
    // decodes to the samples that were put in, every examination reads back, no recording stands twice.
    // `deep` false: structure only.
    Result<std::vector<std::string>> check(bool deep, const Progress& progress = {},
                                           const CancelToken& cancel = {});
    // A consistent copy while others write; refuses where `path` is there.
    Status backup(const std::string& path, const Progress& progress = {}, const CancelToken& cancel = {});

  private:
    struct Parts;
    explicit FleetFile(std::unique_ptr<Parts> parts);
    std::unique_ptr<Parts> parts_;
};

}  // namespace fettle
