// Why: a job as people work with it, the same for the command and the window: drafted from the findings of
// the week with the soonest of their dates and the gravest of their urgencies, moved from state to state with
// words and a name, revised into a new one that replaces it. What was done cannot be undone: a job that is
// done goes on, never back, one that was replaced does not move. Dates "2026-05-04" in the site's calendar.
// Thread: as the FleetFile. Errors: Invalid with the rule broken; those of the stores.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/fleet/job_done.h"
#include "core/fleet/verification.h"
#include "core/store/fleet_file.h"

namespace fettle {

// A finding of the week that a job may be made for.
struct DraftFinding {
    std::string key;  // "bearing_outer_race @ driver DE"
    std::string name, sentence, urgency;
    std::string orderPartsBy, runUntil, plannedStop;  // of this finding alone; may be empty
    std::optional<std::int64_t> inJob;                // an open job that has it already
};
struct JobDraft {
    std::string machine, service, week;  // last day of the week
    std::vector<DraftFinding> findings;  // in the order of the list; empty: nothing to make a job for
};
// By the open or last kept round, else the week as it is now. `today`: the day of making.
Result<JobDraft> jobDraft(FleetFile& fleet, const std::string& machine, const std::string& today = "");
// Those of the draft with these numbers, from 1: soonest dates, gravest urgency. Not kept yet.
Result<Job> draftedJob(const JobDraft& draft, const std::vector<std::size_t>& numbers);

struct JobMove {
    std::string state;                                               // empty: stays
    std::string text;                                                // why, what was agreed, what was done
    std::optional<std::string> workOrder;                            // empty optional: stays
    std::optional<std::string> orderPartsBy, runUntil, plannedStop;  // days, or ""
    std::string on, kind = "repair";                                 // of the work, where it was done
    std::string by;                                                  // empty: login name
};
Result<Job> keepDraft(FleetFile& fleet, Job job, const JobMove& move = {});
// "done" with a day starts the verification; "verified" keeps what verification says in the history.
Result<Job> moveJob(FleetFile& fleet, std::int64_t id, const JobMove& move);
Result<Job> reviseJob(FleetFile& fleet, std::int64_t id, const JobMove& move);
// States a job may take from the one it has, the next one first.
std::vector<std::string> nextStates(const Job& job);

// A job in the list of jobs.
struct JobRow {
    Job job;
    std::string service;
    int priority = 4;  // of the site's table, 1 first
    std::optional<std::int64_t> replacedBy;
    std::string due;  // the day that comes next: planned stop, else not beyond; empty: none
    bool overdue = false;
    std::string words;  // its newest step, "scheduled: stop of week 21"
};
// Overdue first, then open ones by day and priority, then done, verified, closed and replaced ones, the
// newest first. An empty machine: of the fleet. `today`: the site's day.
Result<std::vector<JobRow>> jobRows(FleetFile& fleet, const std::string& machine, const std::string& today);

// All that is shown of one job.
struct JobDetail {
    Job job;
    std::vector<JobStep> steps;
    std::vector<Feedback> reports;                // on its findings, since it was drafted
    std::optional<JobVerification> verification;  // from "done" on
};
Result<JobDetail> jobDetail(FleetFile& fleet, std::int64_t id);

}  // namespace fettle
