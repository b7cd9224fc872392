// Why: which recordings the sample fleet has, when, and under which names; the sidecar that goes with each.
// No file is written here. Times: spread over each week, moved by up to two hours so that no two machines are
// sampled together; whole seconds, UTC. A node's usual captures come every day (fewer or more where asked
// for), those with days of their own five minutes after the usual ones of that day.
#pragma once

#include "core/simulate/scenario.h"

namespace fettle::sim {

struct SampleOptions {
    int weeks = 0;          // the last so many weeks of the story; 0: all
    int perWeek = 7;        // usual captures of a node a week; denser spans of the scenario may ask for more
    std::string machine;    // one tag only; empty: all
    std::uint64_t key = 1;  // another key, other noise: the stories stay
    std::string extension = "flac";  // of the files, for truth.json
};

struct PlannedRecording {
    std::size_t machine = 0, node = 0, capture = 0;
    Instant time;              // when it is made
    Instant stated, received;  // when the node says it was made, when it arrives
    std::string name;          // "2026-01-08T114512Z_M-DE", without extension
    std::string captureId;
    std::optional<std::size_t> trouble;  // of the scenario's intake
};

// The first week that is made, counted from the scenario's start.
int firstWeek(const Scenario& scenario, const SampleOptions& options);

// In order of machine, then time.
std::vector<PlannedRecording> planRecordings(const Scenario& scenario, const SampleOptions& options);

SimulationSetup setupOf(const Scenario& scenario, const PlannedRecording& planned, std::uint64_t key);

// Who made the recordings: the simulator's own version and the checksum of the scenario, so that two folders
// with equal words hold equal samples. "simulate-1 0123456789abcdef"
std::string engineOf(const Scenario& scenario);

// The sidecar of a recording.
Json sidecarOf(const Scenario& scenario, const PlannedRecording& planned,
               const SimulatedRecording& recording);

}  // namespace fettle::sim
