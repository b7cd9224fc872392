// Why: weighed again, a verdict may change, and nobody should have to look for it: each run of
// re-examination keeps which recordings it weighed, by which engine they had been weighed before, and where a
// hypothesis came out differently. A run that was cut short is found again and carried on. What is to be
// weighed is found along the recordings of a machine; tables of levels are none. Units: decibans, UTC.
// Thread: that of the FleetFile. Errors: those of the database; NotFound for a run that is not there.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/base/time.h"

namespace fettle {

class Database;

struct ReExaminationRun {
    std::int64_t id = 0;
    std::string engine, machine;  // machine: tag; empty: all
    bool evenCurrent = false;
    Instant started{};
    std::optional<Instant> finished;
};

// A hypothesis before and after. Urgency empty: not named.
struct VerdictChange {
    std::string fault, at;
    std::optional<double> oldDban, newDban;
    std::string oldUrgency, newUrgency;
};

struct ToWeighAgain {
    std::int64_t recording = 0;
    Instant time{};
    std::string engine;  // that weighed it
};

// Of one machine.
struct KeptRaw {
    std::vector<ToWeighAgain> toWeigh;  // oldest first
    std::size_t current = 0;            // weighed by this engine, or in this run, already
    // Waveform or examination was thinned: keep the verdict and the engine they have.
    std::size_t withoutWaveform = 0;
};

struct VerdictChangeRow {
    std::string machine;  // tag
    std::int64_t recording = 0;
    Instant time{};
    std::string file, oldEngine;
    VerdictChange change;
};

struct WeighedBefore {
    std::string engine;
    std::size_t recordings = 0;
};

class ReExaminationStore {
  public:
    explicit ReExaminationStore(Database& database) : database_(database) {}

    // The newest run of that kind that did not come to its end.
    Result<std::optional<ReExaminationRun>> unfinished(const std::string& engine, const std::string& machine,
                                                       bool evenCurrent);
    Result<ReExaminationRun> begin(const std::string& engine, const std::string& machine, bool evenCurrent);
    Status finish(std::int64_t run);
    // `run`: one that is carried on; empty: none.
    Result<KeptRaw> choose(std::int64_t machine, const std::string& engine, bool evenCurrent,
                           std::optional<std::int64_t> run);
    Status note(std::int64_t run, std::int64_t recording, const std::string& oldEngine,
                const std::vector<VerdictChange>& changes);

    Result<std::vector<ReExaminationRun>> runs();  // newest first
    Result<ReExaminationRun> run(std::int64_t id);
    Result<std::vector<WeighedBefore>> weighedBefore(std::int64_t run);  // most first
    // By machine, oldest first; held nowhere, so that a run of any size can be read.
    Status eachChange(std::int64_t run, const std::function<void(const VerdictChangeRow&)>& take);

  private:
    Database& database_;
};

}  // namespace fettle
