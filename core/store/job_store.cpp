#include "core/store/job_store.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/store/database.h"

namespace fettle {

Result<Job> JobStore::get(std::int64_t id) {
    const auto jobs = LogStore(database_).jobs();
    if (!jobs) return fail(jobs.error());
    const auto found = std::find_if(jobs->begin(), jobs->end(), [id](const Job& j) { return j.id == id; });
    if (found == jobs->end())
        return fail(ErrorKind::NotFound, database_.path(), fmt::format("job {}", id),
                    "is not in the fleet file");
    return *found;
}

Result<std::int64_t> JobStore::addStep(const JobStep& step) {
    const auto job = database_.one<std::int64_t>("SELECT id FROM job WHERE id=?", step.job);
    if (!job) return fail(job.error());
    if (!*job)
        return fail(ErrorKind::NotFound, database_.path(), fmt::format("job {}", step.job),
                    "is not in the fleet file");
    const auto& states = jobStates();
    if (std::find(states.begin(), states.end(), step.state) == states.end())
        return fail(ErrorKind::Invalid, database_.path(), "state of the step",
                    fmt::format("\"{}\" is no state of a job", step.state));
    if (auto good = database_.run("INSERT INTO job_step(job, state, time, text, by) VALUES (?,?,?,?,?)",
                                  step.job, step.state, step.time, step.text, step.by);
        !good)
        return fail(good.error());
    return database_.lastId();
}

Result<std::vector<JobStep>> JobStore::steps(std::int64_t job) {
    Statement rows(database_,
                   "SELECT id, job, state, time, text, by FROM job_step WHERE ?1 = 0 OR job = ?1 "
                   "ORDER BY time, id");
    rows.bind(job);
    return allRows<JobStep>(rows, [](Statement& row, JobStep& step) {
        row.into(step.id, step.job, step.state, step.time, step.text, step.by);
    });
}

Result<std::int64_t> JobStore::put(const Job& job, JobStep step) {
    Transaction transaction(database_);
    if (!transaction.begun()) return fail(transaction.begun().error());
    const auto id = LogStore(database_).putJob(job);
    if (!id) return id;
    step.job = *id;
    if (auto kept = addStep(step); !kept) return kept;
    if (auto done = transaction.commit(); !done) return fail(done.error());
    return id;
}

}  // namespace fettle
