// Why: what became of a job is a line of facts, each with its day, its words and a name: drafted, issued,
// scheduled, done, verified, closed. The job itself (log_store.h) holds the state it has now; the steps here
// are appended and never change. Times UTC. Thread: that of the FleetFile. Errors: NotFound for a job that is
// not there, Invalid for a state that is none.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/base/time.h"
#include "core/store/log_store.h"

namespace fettle {

class Database;

struct JobStep {
    std::int64_t id = 0;
    std::int64_t job = 0;
    std::string state;  // as Job::state
    Instant time{};
    std::string text, by;
};

class JobStore {
  public:
    explicit JobStore(Database& database) : database_(database) {}

    Result<Job> get(std::int64_t id);
    Result<std::int64_t> addStep(const JobStep& step);
    Result<std::vector<JobStep>> steps(std::int64_t job = 0);  // oldest first; 0: of all jobs
    // Job and step together or not at all; `job.id` 0 makes a new one. The step's job is set here.
    Result<std::int64_t> put(const Job& job, JobStep step);

  private:
    Database& database_;
};

}  // namespace fettle
