// Why: a job is verified on recordings that can be compared: those of the week before the work, and those
// from the first running at like speed and load after it. A bearing runs in first (grease and cage settle):
// 24 h after a greasing, 72 h after any other work on one, from that first running on. Then three days, of
// which at most 20 moments count, spread over the three days; where they hold fewer than three, the next ones
// until there are three, for two weeks at most. The day of the work is not counted as before it: it may hold
// both. Source: practice of acceptance after a repair (24 to 72 h of run-in, the figures: common practice, no
// source). Times as given, days by the clock of the given times (the site's). Thread: pure.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/trend/condition.h"

namespace fettle {

struct VerifyOptions {
    int beforeDays = 7;  // the week compared with; its last day is the last one of running before the work
    int beforeLookBack = 42;  // that day lies no farther back
    double runInHours = 0;
    double collectHours = 72;
    std::size_t mostMoments = 20, fewestMoments = 3;
    double longestHours = 336;  // to wait for the fewest moments after the run-in
};
// Hours of run-in of a job with these faults; `greasedOnly`: nothing was changed but the grease.
double runInHours(std::span<const std::string> faults, bool greasedOnly);

enum class VerifyState {
    NothingBefore,  // no running before the work to compare with
    NotRunYet,      // no running at like speed and load since
    RunIn,
    Collecting,
    TooFew,  // not enough at like speed and load within `longestHours`
    Complete
};

struct VerifyWindow {
    VerifyState state = VerifyState::NotRunYet;
    Condition like;
    std::vector<Instant> before, after;  // moments that count, oldest first
    std::optional<Instant> firstRun, runInEnds, collectingEnds;
    std::size_t unlike = 0;  // moments of running since the work at other speed or load
    std::string words;       // "7 of up to 20 moments at like speed and load; complete on 2026-05-09"
};

// `moments`: of running recordings, one of each moment, oldest first, by the site's clock; their values are
// not read. `done`: when the work was over. `known`: up to when recordings would be there.
VerifyWindow verifyWindow(std::span<const RunValue> moments, Instant done, Instant known,
                          const VerifyOptions& options);

}  // namespace fettle
