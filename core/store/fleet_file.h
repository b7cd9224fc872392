// Why: the fleet file is the SQLite database of one site: register, recordings with their waveforms, trends,
// spectra, examinations as weighed, events, rounds, decisions, jobs. This is the door: make, open, say how it
// was opened. One FleetFile is one connection with its stores; it is used from one thread at a time, several
// threads or programs open several (WAL, busy timeout). While one is open nothing else in the program may
// open and close that file by other means: POSIX locks go with the first close. Errors: sentences that name
// the file and the rule; a file that is damaged, foreign or newer is never changed. Schema:
// core/store/schema.cpp, README section "The fleet file".
#pragma once

#include <functional>
#include <memory>
#include <string>

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/store/alert_store.h"
#include "core/store/job_store.h"
#include "core/store/log_store.h"
#include "core/store/photo_store.h"
#include "core/store/reading_rule_store.h"
#include "core/store/recording_store.h"
#include "core/store/register_store.h"
#include "core/store/request_store.h"
#include "core/store/retention_store.h"
#include "core/store/round_store.h"
#include "core/store/trend_store.h"
#include "core/store/workshop_store.h"

namespace fettle {

class Database;
class ReExaminationStore;  // core/store/re_examination_store.h
struct Migration;

// Files up to this size are read through once at opening (quick_check, 1 ms a MB as measured); of larger
// ones only head, schema and site. A page damaged elsewhere gives a Damaged error when it is read.
inline constexpr std::uint64_t kQuickCheckBytes = std::uint64_t(64) << 20;

// What a test, or a program that knows better, may set another way.
struct FleetTuning {
    std::string vfs;  // SQLite's name of the way to the disk; empty: the usual one
    const std::vector<Migration>* steps = nullptr;  // of the schema; null: migrations()
    std::uint64_t quickCheckBytes = kQuickCheckBytes;
    // Name of the kind of network drive a path lies on, or empty; not set: the system is asked.
    std::function<std::string(const std::string&)> networkDrive = {};
};

enum class OpenMode {
    ReadWrite,
    ReadOnly,
    // As ReadOnly, and a file of an older form as well (OpenOutcome::OlderFile): tables that came later are
    // there as upgrading would make them, for this FleetFile alone; the file stays as it is.
    ReadAnyForm
};

// What opening found. Refusals (foreign, damaged, newer than can be read, locked) are errors, not outcomes.
enum class OpenOutcome {
    Current,    // this program's schema, writable
    Upgraded,   // migrated just now, writable
    NewerFile,  // made by a newer program, which says that this one may read it: read-only
    OlderFile,  // made by an older program, read as it is (OpenMode::ReadAnyForm)
    ReadOnly    // asked for, or folder or file not writable: read-only, `word` says why
};

struct SiteSettings {
    std::string site;              // "Hollin Edge Lime Works"
    std::string timeZone = "UTC";  // IANA name; rounds run by this zone's calendar
    double alpha = 0.1;            // mean share of chance entries of the list
};

class FleetFile {
  public:
    // Refuses where a file is already there. Made beside `path` and renamed: after a kill there is no fleet
    // file of that name, or a whole one.
    static Result<std::unique_ptr<FleetFile>> create(const std::string& path, const SiteSettings& site,
                                                     const FleetTuning& tuning = {});
    static Result<std::unique_ptr<FleetFile>> open(const std::string& path,
                                                   OpenMode mode = OpenMode::ReadWrite,
                                                   const FleetTuning& tuning = {});
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
    JobStore& jobs();
    PhotoStore& photos();
    WorkshopStore& workshop();
    ReadingRuleStore& readingRules();
    RequestStore& requests();
    RetentionStore& retention();
    ReExaminationStore& reExaminations();

    // Another number than before where another connection, of this program or another, has written since.
    Result<std::int64_t> changesByOthers();
    AlertStore& alerts();

    // All that `work` writes through the stores, or nothing of it where it returns an error.
    Status together(const std::function<Status()>& work);
    // What `work` reads is of one moment, whatever others write meanwhile, and the file is locked once for
    // all of its questions.
    Status atOneMoment(const std::function<Status()>& work);

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
