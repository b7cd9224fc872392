// Why: nothing is thinned without being listed first. The plan says what would go and why the rest stays;
// carrying it out looks at each machine again and works in short transactions, so that others write in
// between. In each of them it is asked whether somebody did something that a recording may be kept for (a
// decision, an event, a job ..); if so, the machine is looked at anew. What a recording still holds is
// read once, at the beginning: one that comes in meanwhile waits for the next time. A kill, a full disk or
// a stop at any point leaves a whole file with less or more of the work done; started again it goes on
// with the rest, and when there is none it writes nothing. Bytes as packed in the file. Thread: as the
// FleetFile; slow (seconds to minutes in a large fleet). Errors: those of the stores; Unwritable (full
// disk: the last step is undone, the others stay).
#pragma once

#include <array>
#include <functional>
#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/fleet/retention_choice.h"
#include "core/store/fleet_file.h"

namespace fettle {

struct Amount {
    std::size_t recordings = 0;
    std::uint64_t bytes = 0;
    void add(std::int64_t more) { ++recordings, bytes += std::uint64_t(more); }
    void add(const Amount& more) { recordings += more.recordings, bytes += more.bytes; }
};

struct KindPlan {
    Amount goes;
    std::array<Amount, kReasons> stays;
    Amount kept() const;
    void add(const KindPlan& more);
};

// What a year of a machine takes at the rate and size of its last 30 days: what the rules keep of each kind,
// and what stays for ever. Without what is held besides.
struct YearEstimate {
    std::array<double, kKeptKinds> bytes{};
    double foreverBytes = 0;  // recordings, trends, weights, measures, spans of spectra
    double recordings = 0;    // that come in
    double total() const { return bytes[0] + bytes[1] + bytes[2] + foreverBytes; }
};

struct MachinePlan {
    std::string tag;
    std::array<KindPlan, kKeptKinds> kinds;
    YearEstimate year;
    Amount goes() const;
};

struct RetentionPlan {
    RetentionRules rules;
    std::vector<MachinePlan> machines;  // by tag; those with a recording
    FileSpace space;
    KindPlan total(KeptKind kind) const;
    Amount goes() const;
    YearEstimate meanYear() const;  // of the machines that recorded lately
};

// `rules` empty: those of the file.
Result<RetentionPlan> planRetention(FleetFile& fleet, const std::optional<RetentionRules>& rules = {},
                                    const Progress& progress = {}, const CancelToken& cancel = {});

struct RetentionOptions {
    std::string by;          // empty: login name
    std::size_t batch = 64;  // recordings in a transaction
    Progress progress;
    CancelToken cancel;
    std::function<void()> afterBatch;  // for tests
};

struct RetentionDone {
    std::array<Amount, kKeptKinds> taken;
    std::size_t lookedAgain = 0;  // machines that were looked at anew, because somebody did something
    FileSpace before, after;
    bool cancelled = false;
    Amount all() const;
};

// By the rules of the file. Then what is free goes back to the disk, where the file can.
Result<RetentionDone> applyRetention(FleetFile& fleet, const RetentionOptions& options = {});

}  // namespace fettle
