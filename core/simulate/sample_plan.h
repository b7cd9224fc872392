// Why: which recordings the sample fleet has, when, and under which names; the papers that go with them. No
// file is written here. Times: spread over each week, moved by up to two hours so that no two machines are
// sampled together; whole seconds, UTC.
#pragma once

#include "core/simulate/scenario.h"

namespace fettle::sim {

struct SampleOptions {
    int weeks = 0;          // the last so many weeks of the story; 0: all
    int perWeek = 1;        // recordings of a node a week; denser spans of the scenario may ask for more
    std::string machine;    // one tag only; empty: all
    std::uint64_t key = 1;  // another key, other noise: the stories stay
};

struct PlannedRecording {
    std::size_t machine = 0, node = 0, capture = 0;
    Instant time;
    std::string name;  // "2026-01-08T114512Z_M-DE", without extension
    std::string captureId;
};

// In order of machine, then time.
std::vector<PlannedRecording> planRecordings(const Scenario& scenario, const SampleOptions& options);

SimulationSetup setupOf(const Scenario& scenario, const PlannedRecording& planned, std::uint64_t key);

// Who made the recordings: the simulator's own version and the checksum of the scenario, so that two folders
// with equal words hold equal samples. "simulate-1 0123456789abcdef"
std::string engineOf(const Scenario& scenario);

// The sidecar of a recording.
Json sidecarOf(const Scenario& scenario, const PlannedRecording& planned,
               const SimulatedRecording& recording);

// truth.json: one entry a story, and one for each machine that has none.
Json truthOf(const Scenario& scenario, const SampleOptions& options);

}  // namespace fettle::sim
