// Why: a job groups findings of one machine for the planner: drafted from the sheet's dates, moved from state
// to state, revised into a new one that replaces it, verified once it is done. Without options it lists them.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <memory>

#include "app/cli/answer.h"
#include "app/cli/commands.h"
#include "app/cli/load.h"
#include "app/cli/open_fleet.h"
#include "app/cli/verify_answer.h"
#include "core/base/text.h"
#include "core/fleet/job_desk.h"
#include "core/fleet/verification.h"

namespace fettle {

namespace {

struct JobsCommand {
    std::string fleet, machine, state, workOrder, plannedStop, on, text, until;
    std::vector<std::size_t> findings;
    std::int64_t id = 0, revise = 0;
    bool json = false, verify = false;

    bool changes() const {
        return !state.empty() || !workOrder.empty() || !plannedStop.empty() || !on.empty() || !text.empty();
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

int answer(const Job& job, bool json) {
    if (json) {
        Json one = headedJson();
        one.update(toJson(job));
        printJson(one);
    } else
        print(lineOf(job));
    return kDone;
}

JobMove moveOf(const JobsCommand& command) {
    JobMove move;
    move.state = command.state;
    move.text = command.text;
    if (!command.workOrder.empty()) move.workOrder = command.workOrder;
    if (!command.plannedStop.empty()) move.plannedStop = command.plannedStop;
    return move;
}

// Without its moment a job that is done cannot be verified.
Status tellWhenDone(FleetFile& fleet, const JobsCommand& command, const Job& job) {
    if (command.state != "done" || !command.on.empty()) return {};
    const auto events = fleet.log().events(job.machine);
    if (!events) return fail(events.error());
    if (!doneOf(job, *events))
        tell(
            fmt::format("note: when was it done? jobs FLEET --id {} --on 2026-05-04 tells it; without it the "
                        "job cannot be verified",
                        job.id));
    return {};
}

Status tellWhetherOver(FleetFile& fleet, const JobsCommand& command, const Job& job) {
    if (command.state != "verified") return {};
    const auto v = verifyJob(fleet, job);
    if (!v) return fail(v.error());
    if (!v->verdict) tell("note: taken for verified before verification is over: " + v->words());
    return {};
}

int end(FleetFile& fleet, const JobsCommand& command, const Result<Job>& job) {
    if (!job) return couldNotRun(job.error());
    if (auto good = tellWhenDone(fleet, command, *job); !good) return couldNotRun(good.error());
    if (auto good = tellWhetherOver(fleet, command, *job); !good) return couldNotRun(good.error());
    return answer(*job, command.json);
}

// A new job, and when it was done where that is said: both or neither.
template <class Make>
int endNew(FleetFile& fleet, const JobsCommand& command, Make make) {
    Result<Job> job;
    const auto done = fleet.together([&]() -> Status {
        job = make();
        if (!job) return fail(job.error());
        return command.on.empty() ? Status() : keepDone(fleet, *job, {command.on}, "");
    });
    if (!done) return couldNotRun(done.error());
    return end(fleet, command, job);
}

int draft(FleetFile& fleet, const JobsCommand& command) {
    const auto draft = jobDraft(fleet, command.machine);
    if (!draft) return couldNotRun(draft.error());
    const auto job = draftedJob(*draft, command.findings);
    if (!job) return couldNotRun(job.error());
    return endNew(fleet, command, [&] { return keepDraft(fleet, *job, moveOf(command)); });
}

int change(FleetFile& fleet, const JobsCommand& command) {
    JobMove move = moveOf(command);
    if (command.revise) return endNew(fleet, command, [&] { return reviseJob(fleet, command.revise, move); });
    move.on = command.on;
    return end(fleet, command, moveJob(fleet, command.id, move));
}

int run(const JobsCommand& command) {
    const bool one = command.id || command.revise;
    const bool writes = one || !command.findings.empty();
    if (command.changes() && !writes) {
        tell("jobs: --state, --work-order, --planned-stop, --on and --text need --id, --revise or --finding");
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
    sub->add_option("--text", command->text, "why, what was agreed, what was done: kept with the job");
    auto* verify = sub->add_flag("--verify", command->verify,
                                 "whether jobs that are done cured the machine, with the figures");
    sub->add_option("--until", command->until, "with --verify: as known on that day (newest recording)")
        ->needs(verify);
    sub->add_flag("--json", command->json, "JSON instead of lines");
    sub->callback([command, &status] { status = run(*command); });
}

}  // namespace fettle
