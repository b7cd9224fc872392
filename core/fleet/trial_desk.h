// Why: a seeded-fault trial lives in the fleet file: its document (core/workshop/trial_json.h) and the
// recordings that arrive before and after the change. Here trials are planned on what is known of the
// machine, started, told of the change, read as they stand and closed. A promise is frozen when the trial is
// started; a closed trial never changes. The weight of a change (1x, looseness, velocity) is that of one
// recording against the running recordings before it, by the rule of core/trend/change.h; recordings before
// are weighed against the others of them. Times UTC. Thread: as the FleetFile. Errors: those of the stores;
// Invalid for what a trial may not do, with the reason.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/store/fleet_file.h"
#include "core/workshop/trial.h"
#include "core/workshop/trial_expect.h"

namespace fettle {

inline constexpr int kTrialDaysBefore = 14;

struct TrialChannel {
    std::string point, name, direction;
    std::optional<double> onceMmS;  // median of the span
    std::size_t recordings = 0;     // running, in the span
};

// What a trial of this machine can be planned on.
struct TrialPlan {
    std::shared_ptr<const Machine> machine;
    std::string timeZone;
    Instant beforeFrom{}, newest{};      // span before: so many days up to the newest recording
    std::vector<std::string> places;     // driver, driven, bearings
    std::vector<TrialChannel> channels;  // of vibration
    TrialGround ground;                  // but for the channel's own
};
// `beforeFrom`: where the span before begins; empty: kTrialDaysBefore.
Result<TrialPlan> trialPlan(FleetFile& fleet, const std::string& tag, std::optional<Instant> beforeFrom = {});
TrialGround groundOf(const TrialPlan& plan, const TrialChange& change);

struct TrialEntry {
    std::int64_t id = 0;
    Instant createdAt{};
    std::optional<Instant> closedAt;
    Trial trial;
};
Result<std::vector<TrialEntry>> trialsOf(FleetFile& fleet, const std::string& tag = "");  // newest first
Result<TrialEntry> trialOf(FleetFile& fleet, std::int64_t id);

// id 0: a new one. What a started trial changes and promises stays as it is.
Result<std::int64_t> keepTrial(FleetFile& fleet, std::int64_t id, const Trial& trial);
// Why it may not be started yet, one clause each; empty: it may.
std::vector<std::string> startLacks(const Trial& trial);
// Freezes the promise. `by` empty: the user's login name.
Result<TrialEntry> startTrial(FleetFile& fleet, std::int64_t id, const std::string& by, Instant now);
// Taken out of service, and turning again with the change in it.
Result<TrialEntry> tellChange(FleetFile& fleet, std::int64_t id, Instant from, Instant until);
// With the result as it is then; `until`: the change was taken back, or the trial ends.
Result<TrialEntry> closeTrial(FleetFile& fleet, std::int64_t id, Instant until, const std::string& remarks);

// As it stands; of a closed one what was kept.
Result<TrialResult> trialResult(FleetFile& fleet, const TrialEntry& entry);

// Of all trials that were started: recordings whose waveforms are to be kept as long as the trials are.
Result<std::vector<TrialSpan>> trialSpans(FleetFile& fleet, Instant now);

}  // namespace fettle
