// The list of jobs, see job_desk.h.
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <tuple>

#include "core/fleet/job_dates.h"
#include "core/fleet/job_desk.h"

namespace fettle {

namespace {

int stateOf(const Job& job) {
    const auto& all = jobStates();
    return int(std::find(all.begin(), all.end(), job.state) - all.begin());
}

bool isOpen(const JobRow& row) {
    return !row.replacedBy && stateOf(row.job) < 3;  // before "done"
}

// Overdue, open, done, over, replaced.
int jobGroup(const JobRow& row) {
    if (row.replacedBy) return 5;
    if (row.overdue) return 0;
    return isOpen(row) ? 1 : stateOf(row.job) - 1;
}

bool comesFirst(const JobRow& a, const JobRow& b) {
    const int group = jobGroup(a);
    if (group != jobGroup(b)) return group < jobGroup(b);
    if (group > 1) return a.job.id > b.job.id;
    return std::tuple(a.due.empty(), a.due, a.priority, a.job.id) <
           std::tuple(b.due.empty(), b.due, b.priority, b.job.id);
}

std::map<std::int64_t, std::string> newestWords(const std::vector<JobStep>& steps) {
    std::map<std::int64_t, std::string> words;
    for (const JobStep& step : steps)
        words[step.job] = step.text.empty() ? step.state : step.state + ": " + step.text;
    return words;
}

}  // namespace

Result<std::vector<JobRow>> jobRows(FleetFile& fleet, const std::string& machine, const std::string& today) {
    const auto jobs = fleet.log().jobs();
    if (!jobs) return fail(jobs.error());
    const auto steps = fleet.jobs().steps();
    if (!steps) return fail(steps.error());
    const auto machines = fleet.machines().all();
    if (!machines) return fail(machines.error());
    const auto dates = JobDatesTable::load();
    if (!dates) return fail(dates.error());
    std::map<std::string, const MachineEntry*> byTag;
    for (const MachineEntry& entry : *machines)
        byTag[entry.tag] = &entry;
    std::map<std::int64_t, std::int64_t> replacedBy;
    for (const Job& job : *jobs)
        if (job.replaces) replacedBy[*job.replaces] = job.id;
    auto words = newestWords(*steps);
    std::vector<JobRow> rows;
    for (const Job& job : *jobs) {
        if (!machine.empty() && job.machine != machine) continue;
        JobRow row{job,   "",           4, {}, job.plannedStop.empty() ? job.runUntil : job.plannedStop,
                   false, words[job.id]};
        if (const auto found = byTag.find(job.machine); found != byTag.end()) {
            row.service = found->second->service;
            row.priority = dates->priority(job.urgency, found->second->criticality, found->second->standby);
        }
        if (const auto found = replacedBy.find(job.id); found != replacedBy.end())
            row.replacedBy = found->second;
        row.overdue = isOpen(row) && !row.due.empty() && row.due < today;
        rows.push_back(std::move(row));
    }
    std::stable_sort(rows.begin(), rows.end(), comesFirst);
    return rows;
}

}  // namespace fettle
