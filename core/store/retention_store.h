// Why: a fleet file that only grows fills its disk, so what is old is thinned: waveforms, spectra and
// examinations by rules of their own; recordings, trends, weights and measures stay for ever. Here is what
// the file knows of it: the rules, what is still kept of each recording and how large it is, taking away with
// a note that stays, and giving space back to the disk. What must not be taken away is decided in core/fleet.
// Bytes: as packed in the file. Times UTC. Thread: that of the FleetFile. Errors: Invalid for a rule that is
// none; Unwritable (full disk: the step is undone); Cancelled.
#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <unordered_map>
#include <vector>

#include "core/base/progress.h"
#include "core/base/result.h"
#include "core/base/time.h"
#include "core/store/recording_store.h"

namespace fettle {

class Database;

enum class KeptKind { Waveform, Spectra, Examination };
inline constexpr std::size_t kKeptKinds = 3;
inline constexpr std::array<KeptKind, kKeptKinds> kAllKept = {KeptKind::Waveform, KeptKind::Spectra,
                                                              KeptKind::Examination};
const char* keyOf(KeptKind kind);  // waveforms | spectra | examinations

// Every one for allDays, then one a day for dailyDays, then one a week for weeklyDays, then none. Empty: for
// ever.
struct KeepRule {
    int allDays = 30;
    std::optional<int> dailyDays, weeklyDays;
    bool operator==(const KeepRule&) const = default;
};
struct RetentionRules {
    std::array<KeepRule, kKeptKinds> of = {KeepRule{2, 90, {}}, KeepRule{30, {}, {}}, KeepRule{30, {}, {}}};
    const KeepRule& rule(KeptKind kind) const { return of[std::size_t(kind)]; }
    KeepRule& rule(KeptKind kind) { return of[std::size_t(kind)]; }
    bool operator==(const RetentionRules&) const = default;
};
// "waveforms: all for 2 days, then one a day for 90 days, then one a week"
std::string inWords(KeptKind kind, const KeepRule& rule);
// "waveforms.all=2", "waveforms.daily=90", "spectra.daily=ever": days, or for ever.
Status setRule(RetentionRules& rules, const std::string& keyAndValue);
Status checkRules(const RetentionRules& rules);

struct Thinning {
    std::int64_t recording = 0;
    std::array<bool, kKeptKinds> takes{};
};

// A recording and what of it is still there.
struct KeptRecording {
    std::int64_t id = 0;
    Instant time{};
    std::string point, running, file;
    std::array<std::int64_t, kKeptKinds> bytes{};  // 0: not there
    std::optional<double> evidenceDban;            // the largest weight; empty: nothing was weighed
    std::optional<double> levelMmS;                // the largest velocity r.m.s.
    bool has(KeptKind kind) const { return bytes[std::size_t(kind)] > 0; }
};

// Waveforms and examinations that are still there, of every machine: they are found by their recording alone,
// so all are read in one go, in the order of the file.
struct StillThere {
    struct One {
        std::int64_t recording = 0, bytes = 0;
    };
    using OfMachine = std::array<std::vector<One>, kKeptKinds>;  // by kind, in the order of ids; no spectra
    std::unordered_map<std::int64_t, OfMachine> machines;
    void take(std::int64_t machine, const Thinning& thinning);
};

struct KeptOfMachine {
    // Of which something is still there, in the order of time; without their ranks.
    std::vector<KeptRecording> recordings;
    // Newest of each point and of the machine (empty: it has none), whether anything is left of them or not.
    std::map<std::string, Instant> newest;
    std::optional<Instant> last;
    // How many there were in the days asked for, whatever is left of them, and of which points.
    std::size_t lately = 0;
    std::set<std::string> latelyPoints;
};

// Pages of the file that hold something, and those that are free within it.
struct FileSpace {
    std::uint64_t bytes = 0, freeBytes = 0;
    bool givesBack = false;  // free pages can be given back bit by bit; else by compacting alone
};

class RetentionStore {
  public:
    explicit RetentionStore(Database& database) : database_(database) {}

    Result<RetentionRules> rules();
    Status setRules(const RetentionRules& rules);

    // Cost goes with what is still there, not with what was thinned; Cancelled where asked to stop.
    Result<StillThere> stillThere(const Progress& progress = {}, const CancelToken& cancel = {});
    // `lately`: how many days before the newest recording are counted.
    Result<KeptOfMachine> kept(std::int64_t machine, const StillThere& there, int lately);
    // Fills evidenceDban and levelMmS.
    Status rank(std::int64_t machine, KeptRecording& recording);
    // Weights of at least so many decibans of these recordings (in the order of time), oldest first; those
    // after `denseFrom` are read in one go.
    Result<std::vector<WeightEntry>> weights(std::int64_t machine, std::span<const KeptRecording> recordings,
                                             double leastDban, Instant denseFrom);
    // Bytes a recording of trends, weights and measures takes for ever, from the newest ones of a machine.
    Result<double> trendBytesEach(std::int64_t machine, Instant from);
    // Changes whenever somebody did something that recordings may be kept for: a round, a decision, an event,
    // a job, a description, a request, the workshop, an alert, a rule of these.
    Result<std::string> standing();

    struct InRound {
        std::int64_t round = 0;
        std::string from, until;  // days of the site
        bool open = false, inSample = false;
        std::string urgency;
    };
    Result<std::vector<InRound>> roundsWith(const std::string& machine);
    Result<std::vector<Instant>> standingAlerts(std::int64_t machine);  // since when
    Result<std::vector<std::string>> refusedPaths();                    // nobody has answered yet

    Result<std::int64_t> examinationsThinned(Instant from, Instant until);

    Result<std::int64_t> beginRun(const std::string& by, const std::string& rules);
    // Spans of the machine's spectra (spectrum_spans.h) that are still to be built: what is thinned would be
    // lost to them. A transaction each.
    Status buildSpans(std::int64_t machine);
    // Within a transaction of the caller (FleetFile::together).
    Status thin(std::int64_t run, std::span<const Thinning> list);

    Result<FileSpace> space();
    // Free pages at the end of the file go back to the disk, some at a time.
    Status giveBack(const Progress& progress, const CancelToken& cancel);
    // The file is written anew without its free pages, in one transaction: after a kill or a full disk it is
    // as it was. Others wait meanwhile. Needs twice the room of what stays; refused where that is not there.
    // From then on free pages can be given back bit by bit.
    Status compact(const CancelToken& cancel);

  private:
    Database& database_;
};

}  // namespace fettle
