// Why: what somebody stands on is never thinned: this gathers, for one machine, which recordings that are and
// why. Only what still holds something is asked: where the recording next to an event told late is thinned
// already, the next one that is not is held. An open round: the week's examinations and spectra of each of
// its machines, and waveforms of those not on leave and of the sample; a kept round: the recordings its rows
// show, the newest of each point. A finding: the strongest recording of each week (calendar weeks, rounds'
// weeks and the newest seven days) of each fault that reached 20 decibans. A baseline: its days. A trial: all
// of its spans; a balancing: from a day before it was begun to a day after its last change, and recordings
// named in it. A done job: what its verification compares (no waveforms: it reads none). Events, reports,
// jobs and alerts: the last running recording before and the first after, at each point. Answered requests.
// Files with a refusal nobody answered. Thread: as the FleetFile; reads only. Errors: those of the stores.
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "core/fleet/cure_figures.h"
#include "core/fleet/retention_choice.h"
#include "core/store/fleet_file.h"
#include "core/workshop/trial.h"

namespace fettle {

// From so many days before its newest recording the rate of a machine is taken, and its weights in one go.
inline constexpr int kLatelyDays = 30;

class HoldFinder {
  public:
    explicit HoldFinder(FleetFile& fleet) : fleet_(fleet) {}

    // What is asked of the fleet as a whole; again whenever RetentionStore::standing has changed.
    Status read();
    Result<Holds> of(const MachineEntry& machine, const KeptOfMachine& kept);

  private:
    struct Span {
        Instant from{}, until{};
        bool holds(Instant time) const { return time >= from && time <= until; }
    };
    // One machine while it is asked.
    struct Case {
        const MachineEntry& machine;
        const KeptOfMachine& kept;
        std::vector<WeightEntry> weights;  // of its recordings, those that reach a finding's
        Holds holds;
    };
    struct Verified {
        MachineRuns runs;
        VerifyWindow window;
    };
    Status readDocuments();
    Result<Span> daysOf(const std::string& from, const std::string& until) const;
    Status addRounds(Case& one);
    Status addRound(Case& one, const RetentionStore::InRound& round, const Span& span);
    Result<std::vector<std::string>> shownIn(std::int64_t round, const std::string& tag);
    Status readWeights(Case& one);
    void addStrongest(Case& one, const Span& span) const;
    Status addFindings(Case& one);
    Status addBaselines(Case& one);
    Result<Verified> verifiedBy(const Case& one, Instant done, const VerifyOptions& options) const;
    Status addJobs(Case& one);
    Status addAnchors(Case& one);
    void addNewest(Case& one, const Span& span, KeptFor why) const;
    void addAround(Case& one, Instant moment, KeptFor why) const;
    void addSpan(Case& one, const Span& span, KeptFor why, const std::array<bool, kKeptKinds>& kinds) const;
    void addSpans(Case& one) const;
    void addSingle(Case& one) const;

    FleetFile& fleet_;
    SiteSettings site_;
    Instant newest_{};  // of the fleet
    std::vector<TrialSpan> trials_;
    std::map<std::string, std::vector<Span>> balances_;  // by tag
    std::set<std::int64_t> named_, answered_;            // recordings of balancing documents, of requests
    std::set<std::string> refused_;
    std::map<std::string, std::vector<Job>> jobs_;
    std::map<std::string, std::vector<Instant>> reports_;
    // Files that a closed round's rows show: it never changes.
    std::map<std::pair<std::int64_t, std::string>, std::vector<std::string>> shown_;
};

}  // namespace fettle
