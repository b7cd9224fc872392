#include "core/fleet/due.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "core/base/text.h"

namespace fettle {

namespace {

// The newest decision on each machine of rounds that ended before.
Result<std::map<std::string, Decision>> decisionsBefore(FleetFile& fleet, const std::string& until) {
    const auto rounds = fleet.rounds().all();
    if (!rounds) return fail(rounds.error());
    std::map<std::string, Decision> newest;
    for (const RoundEntry& round : *rounds) {
        if (round.until >= until) continue;
        const auto state = fleet.rounds().state(round.id);
        if (!state) return fail(state.error());
        for (const Decision& decision : state->decisions)
            newest[decision.machine] = decision;
    }
    return newest;
}

Status addDeferred(FleetFile& fleet, const std::string& until, std::vector<DueItem>& due) {
    const auto decisions = decisionsBefore(fleet, until);
    if (!decisions) return fail(decisions.error());
    for (const auto& [machine, decision] : *decisions)
        if (decision.kind == DecisionKind::Defer && decision.deferTo <= until)
            due.push_back({machine, "deferred", decision.deferTo,
                           fmt::format("deferred to {}: {}", decision.deferTo, oneLine(decision.reason))});
    return {};
}

// A job that another one replaces is not asked about.
bool isReplaced(const std::vector<Job>& jobs, std::int64_t id) {
    return std::any_of(jobs.begin(), jobs.end(), [id](const Job& job) { return job.replaces == id; });
}

std::string nameOf(const Job& job) {
    std::string name = fmt::format("job {}", job.id);
    if (!job.workOrder.empty()) name += ", work order " + oneLine(job.workOrder);
    return name;
}

Status addJobs(FleetFile& fleet, const std::string& until, std::vector<DueItem>& due) {
    const auto jobs = fleet.log().jobs();
    if (!jobs) return fail(jobs.error());
    for (const Job& job : *jobs) {
        if (isReplaced(*jobs, job.id) || job.state == "verified" || job.state == "closed") continue;
        const std::string& day = job.plannedStop.empty() ? job.runUntil : job.plannedStop;
        if (job.state == "done")
            due.push_back({job.machine, "verify", day, nameOf(job) + " is done: verify that it cured"});
        else if (!day.empty() && day < until)
            due.push_back({job.machine, "overdue", day,
                           fmt::format("{} was due {} and is {}", nameOf(job), day, job.state)});
    }
    return {};
}

void addLate(const RoundList& list, std::vector<DueItem>& due) {
    for (const RoundMachine& machine : list.machines)
        if (machine.lateRecordings > 0)
            due.push_back({machine.tag, "late", "",
                           fmt::format("{} recording{} came after the list of their week was kept",
                                       machine.lateRecordings, machine.lateRecordings == 1 ? "" : "s")});
}

}  // namespace

Result<std::vector<DueItem>> dueOf(FleetFile& fleet, const RoundList& list) {
    std::vector<DueItem> due;
    if (auto good = addDeferred(fleet, list.until, due); !good) return fail(good.error());
    if (auto good = addJobs(fleet, list.until, due); !good) return fail(good.error());
    addLate(list, due);
    std::stable_sort(due.begin(), due.end(), [](const DueItem& a, const DueItem& b) {
        return std::pair(a.day.empty(), a.day) < std::pair(b.day.empty(), b.day);
    });
    return due;
}

}  // namespace fettle
