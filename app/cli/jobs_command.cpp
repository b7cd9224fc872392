// Why: a job groups findings of one machine for the planner: drafted from the sheet's dates, moved from state
// to state, revised into a new one that replaces it, verified once it is done. Without options it lists them.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "app/cli/open_fleet.h"
#include "app/cli/verify_answer.h"
#include "core/base/text.h"
#include "core/fleet/job_done.h"
#include "core/fleet/sheet_content.h"
#include "core/fleet/verification.h"
#include "core/fleet/who.h"
#include "core/round/round.h"
#include "core/store/day.h"

namespace fettle {

namespace {

struct JobsCommand {
    std::string fleet, machine, state, workOrder, plannedStop, on, until;
    std::vector<std::size_t> findings;
    std::int64_t id = 0, revise = 0;
    bool json = false, verify = false;

    bool changes() const {
        return !state.empty() || !workOrder.empty() || !plannedStop.empty() || !on.empty();
    }
};

Json toJson(const Job& job) {
    const auto orNull = [](const std::string& text) { return text.empty() ? Json() : Json(text); };
    return {{"id", job.id},
            {"machine", job.machine},
            {"findings", job.findings},
            {"state", job.state},
            {"urgency", orNull(job.urgency)},
            {"work_order", orNull(job.workOrder)},
            {"revision", job.revision},
            {"replaces", job.replaces ? Json(*job.replaces) : Json()},
            {"order_parts_by", orNull(job.orderPartsBy)},
            {"run_until", orNull(job.runUntil)},
            {"planned_stop", orNull(job.plannedStop)},
            {"created_at", formatUtc(job.createdAt)}};
}

std::string lineOf(const Job& job) {
    std::string line = fmt::format("{}  {}  {}  {}", job.id, oneLine(job.machine), job.state,
                                   oneLine(joined(job.findings, ", ")));
    if (job.revision > 1) line += fmt::format("  revision {}", job.revision);
    if (job.replaces) line += fmt::format("  replaces {}", *job.replaces);
    if (!job.workOrder.empty()) line += "  work order " + oneLine(job.workOrder);
    if (!job.orderPartsBy.empty()) line += "  order by " + job.orderPartsBy;
    if (!job.runUntil.empty()) line += "  not beyond " + job.runUntil;
    if (!job.plannedStop.empty()) line += "  stop " + job.plannedStop;
    return line + "\n";
}

int showAll(FleetFile& fleet, const JobsCommand& command) {
    const auto jobs = fleet.log().jobs(command.machine);
    if (!jobs) return couldNotRun(jobs.error());
    if (command.json) {
        Json all = headedJson();
        all["jobs"] = Json::array();
        for (const Job& job : *jobs)
            all["jobs"].push_back(toJson(job));
        printJson(all);
        return kDone;
    }
    if (jobs->empty()) print("no jobs\n");
    for (const Job& job : *jobs)
        print(lineOf(job));
    return kDone;
}

void apply(const JobsCommand& command, Job& job) {
    if (!command.state.empty()) job.state = command.state;
    if (!command.workOrder.empty()) job.workOrder = command.workOrder;
    if (!command.plannedStop.empty()) job.plannedStop = command.plannedStop;
}

// When it was done belongs to the machine's history; without it the job cannot be verified.
Status keepWhenDone(FleetFile& fleet, const JobsCommand& command, const Job& job) {
    if (!command.on.empty()) return keepDone(fleet, job, command.on, "");
    if (command.state != "done") return {};
    const auto events = fleet.log().events(job.machine);
    if (!events) return fail(events.error());
    if (!doneOf(job, *events))
        tell(
            fmt::format("note: when was it done? jobs FLEET --id {} --on 2026-05-04 tells it; without it the "
                        "job cannot be verified",
                        job.id));
    return {};
}

// What verification said when somebody took it for verified stays in the machine's history.
Status keepOutcome(FleetFile& fleet, const JobsCommand& command, const Job& job) {
    if (command.state != "verified") return {};
    const auto v = verifyJob(fleet, job);
    if (!v) return fail(v.error());
    if (!v->verdict) {
        tell("note: taken for verified before verification is over: " + v->words());
        return {};
    }
    Event event;
    event.machine = job.machine;
    event.time = nowUtc();
    event.kind = "note";
    event.text = fmt::format("job {} verified, {}", job.id, v->words());
    event.by = orLoginName("");
    return fleet.log().addEvent(event).map([](std::int64_t) {});
}

int keep(FleetFile& fleet, const JobsCommand& command, Job job) {
    apply(command, job);
    const bool isNew = job.id == 0;
    if (auto good = isNew ? Status() : keepWhenDone(fleet, command, job); !good)
        return couldNotRun(good.error());
    const auto id = fleet.log().putJob(job);
    if (!id) return couldNotRun(id.error());
    job.id = *id;
    if (auto good = isNew ? keepWhenDone(fleet, command, job) : Status(); !good)
        return couldNotRun(good.error());
    if (auto good = keepOutcome(fleet, command, job); !good) return couldNotRun(good.error());
    if (command.json) {
        Json one = headedJson();
        one.update(toJson(job));
        printJson(one);
    } else
        print(lineOf(job));
    return kDone;
}

// The soonest of the findings' dates and the gravest of their urgencies hold for the job.
void takeDates(const SheetContent& sheet, Job& job) {
    const auto sooner = [](std::string& date, const std::string& other) {
        if (date.empty() || (!other.empty() && other < date)) date = other;
    };
    sooner(job.orderPartsBy, sheet.dates[0].date);
    sooner(job.runUntil, sheet.dates[1].date);
    if (job.urgency.empty() || groupOf(sheet.urgency) < groupOf(job.urgency)) job.urgency = sheet.urgency;
}

// A sheet may stand for a note by hand alone.
bool isByHandOnly(const SheetContent& sheet) {
    return sheet.fault.empty() && sheet.provedOn.starts_with("nothing:");
}

int draft(FleetFile& fleet, const JobsCommand& command) {
    Job job;
    job.machine = command.machine;
    for (const std::size_t number : command.findings) {
        const auto sheet = sheetContent(fleet, {command.machine, number, {}});
        if (!sheet) return couldNotRun(sheet.error());
        if (isByHandOnly(*sheet))
            return couldNotRun({ErrorKind::Invalid, "", command.machine,
                                "has no finding: there is nothing to draft a job for"});
        job.findings.push_back(sheet->fault + " @ " + sheet->at);
        takeDates(*sheet, job);
    }
    return keep(fleet, command, job);
}

Result<Job> jobOf(FleetFile& fleet, std::int64_t id) {
    const auto jobs = fleet.log().jobs();
    if (!jobs) return fail(jobs.error());
    const auto found = std::find_if(jobs->begin(), jobs->end(), [id](const Job& j) { return j.id == id; });
    if (found == jobs->end())
        return fail(ErrorKind::NotFound, fleet.path(), fmt::format("job {}", id), "is not in the fleet file");
    return *found;
}

// Work that was done cannot be taken back into a draft; a revision can.
bool isTakenBack(const JobsCommand& command, const Job& job) {
    const bool over = job.state == "done" || job.state == "verified" || job.state == "closed";
    return command.id && command.state == "drafted" && over;
}

int change(FleetFile& fleet, const JobsCommand& command) {
    auto job = jobOf(fleet, command.id ? command.id : command.revise);
    if (!job) return couldNotRun(job.error());
    if (isTakenBack(command, *job))
        return couldNotRun({ErrorKind::Invalid, "", fmt::format("job {}", job->id),
                            "is " + job->state + " and cannot be drafted again; --revise makes a new one"});
    if (command.revise) {
        job->replaces = job->id;
        job->id = 0;
        job->createdAt = {};
        job->state = "drafted";
        ++job->revision;
    }
    return keep(fleet, command, *job);
}

int run(const JobsCommand& command) {
    const bool one = command.id || command.revise;
    const bool writes = one || !command.findings.empty();
    if (command.changes() && !writes) {
        tell("jobs: --state, --work-order, --planned-stop and --on need --id, --revise or --finding");
        return kWrongUsage;
    }
    if (!command.findings.empty() && command.machine.empty()) {
        tell("jobs: --finding needs --machine");
        return kWrongUsage;
    }
    if (command.verify && (command.changes() || command.revise || !command.findings.empty())) {
        tell("jobs: --verify changes nothing; it takes --machine, --id, --until and --json");
        return kWrongUsage;
    }
    const auto fleet = openFleet(command.fleet, writes && !command.verify);
    if (!fleet) return kCouldNotRun;
    if (command.verify)
        return answerVerify(*fleet, {command.machine, command.id, command.until, command.json});
    if (one) return change(*fleet, command);
    return command.findings.empty() ? showAll(*fleet, command) : draft(*fleet, command);
}

}  // namespace

void addJobsCommand(CLI::App& app, int& status) {
    auto command = std::make_shared<JobsCommand>();
    CLI::App* sub = app.add_subcommand("jobs", "List, draft and change jobs");
    sub->add_option("FLEET", command->fleet, "fleet file")->required();
    auto* machine = sub->add_option("--machine", command->machine, "tag");
    auto* finding = sub->add_option("--finding", command->findings,
                                    "draft a job for this finding of the machine; may be given several times")
                        ->allow_extra_args(false)
                        ->check(CLI::Range(1, 1000));
    auto* id = sub->add_option("--id", command->id, "change this job")->check(CLI::PositiveNumber);
    auto* revise = sub->add_option("--revise", command->revise, "a new revision that replaces this job")
                       ->check(CLI::PositiveNumber);
    id->excludes(finding)->excludes(machine)->excludes(revise);
    revise->excludes(finding)->excludes(machine);
    sub->add_option("--state", command->state, "drafted issued scheduled done verified closed")
        ->check(CLI::IsMember({"drafted", "issued", "scheduled", "done", "verified", "closed"}));
    sub->add_option("--work-order", command->workOrder, "its number in the work-order system");
    sub->add_option("--planned-stop", command->plannedStop, "day of the stop, 2026-05-04");
    sub->add_option("--on", command->on,
                    "day on which the work was done, 2026-05-04 (or a UTC time): kept as an event");
    auto* verify = sub->add_flag("--verify", command->verify,
                                 "whether jobs that are done cured the machine, with the figures");
    sub->add_option("--until", command->until, "with --verify: as known on that day (newest recording)")
        ->needs(verify);
    sub->add_flag("--json", command->json, "JSON instead of lines");
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
