#include "core/fleet/job_desk.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/base/text.h"
#include "core/fleet/sheet_content.h"
#include "core/fleet/sheet_set.h"
#include "core/fleet/who.h"
#include "core/store/day.h"

namespace fettle {

namespace {

std::string nameOf(std::int64_t id) {
    return fmt::format("job {}", id);
}

bool isOver(const Job& job) {
    return job.state == "done" || job.state == "verified" || job.state == "closed";
}

// A sheet may stand for a note by hand alone.
bool isByHandOnly(const SheetContent& sheet) {
    return sheet.fault.empty() && sheet.provedOn.starts_with("nothing:");
}

DraftFinding findingOf(const SheetContent& sheet, const std::vector<Job>& jobs) {
    DraftFinding finding;
    finding.key = toText(JobFinding{sheet.fault, sheet.at});
    finding.name = sheet.faultName + (sheet.at.empty() ? "" : ", " + sheet.at);
    finding.sentence = sheet.verdict;
    finding.urgency = sheet.urgency;
    finding.orderPartsBy = sheet.dates[0].date;
    finding.runUntil = sheet.ownDue;
    finding.plannedStop = sheet.dates[2].date;
    for (const Job& job : jobs)
        if (!isOver(job) && isOfJob(job, sheet.fault, sheet.at)) finding.inJob = job.id;
    return finding;
}

void takeSooner(std::string& date, const std::string& other) {
    if (date.empty() || (!other.empty() && other < date)) date = other;
}

void apply(const JobMove& move, Job& job) {
    if (!move.state.empty()) job.state = move.state;
    if (move.workOrder) job.workOrder = *move.workOrder;
    if (move.orderPartsBy) job.orderPartsBy = *move.orderPartsBy;
    if (move.runUntil) job.runUntil = *move.runUntil;
    if (move.plannedStop) job.plannedStop = *move.plannedStop;
}

// What a step says: the words given, and what else was changed.
std::string stepWords(const Job& before, const Job& after, const JobMove& move) {
    std::vector<std::string> parts;
    if (!trimmed(move.text).empty()) parts.emplace_back(trimmed(move.text));
    const auto told = [&](const char* what, const std::string& was, const std::string& is) {
        if (was != is) parts.push_back(fmt::format("{} {}", what, is.empty() ? "taken back" : is));
    };
    told("work order", before.workOrder, after.workOrder);
    told("order parts by", before.orderPartsBy, after.orderPartsBy);
    told("not beyond", before.runUntil, after.runUntil);
    told("planned stop", before.plannedStop, after.plannedStop);
    return joined(parts, "; ");
}

JobStep stepOf(const Job& before, const Job& after, const JobMove& move) {
    return {0, after.id, after.state, nowUtc(), stepWords(before, after, move), orLoginName(move.by)};
}

Result<Job> keep(FleetFile& fleet, const Job& before, Job after, const JobMove& move) {
    const auto id = fleet.jobs().put(after, stepOf(before, after, move));
    if (!id) return fail(id.error());
    after.id = *id;
    return after;
}

// What verification said when somebody took it for verified stays in the machine's history.
Status keepOutcome(FleetFile& fleet, const Job& job, const std::string& by) {
    const auto v = verifyJob(fleet, job);
    if (!v) return fail(v.error());
    if (!v->verdict) return {};
    Event event;
    event.machine = job.machine;
    event.time = nowUtc();
    event.kind = "note";
    event.text = fmt::format("{} verified, {}", nameOf(job.id), v->words());
    event.by = orLoginName(by);
    return fleet.log().addEvent(event).map([](std::int64_t) {});
}

Result<std::optional<std::int64_t>> replacerOf(FleetFile& fleet, std::int64_t id) {
    const auto jobs = fleet.log().jobs();
    if (!jobs) return fail(jobs.error());
    for (const Job& job : *jobs)
        if (job.replaces == id) return std::optional(job.id);
    return std::optional<std::int64_t>();
}

Result<Job> jobThatMoves(FleetFile& fleet, std::int64_t id) {
    auto job = fleet.jobs().get(id);
    if (!job) return job;
    const auto replacer = replacerOf(fleet, id);
    if (!replacer) return fail(replacer.error());
    if (!*replacer) return job;
    return fail(ErrorKind::Invalid, "", nameOf(id),
                fmt::format("was replaced by {}: change that one", nameOf(**replacer)));
}

// What is over goes on, never back; done again tells another day of it.
Status checkBack(const Job& job, const std::string& state) {
    const auto next = nextStates(job);
    if (state.empty() || !isOver(job) || state == job.state ||
        std::find(next.begin(), next.end(), state) != next.end())
        return {};
    return fail(ErrorKind::Invalid, "", nameOf(job.id),
                "is " + job.state + " and cannot be " + state + " again; a revision makes a new one");
}

}  // namespace

Result<JobDraft> jobDraft(FleetFile& fleet, const std::string& machine, const std::string& today) {
    const auto set = sheetSet(fleet);
    if (!set) return fail(set.error());
    const RoundMachine* row = rowOf(set->list, machine);
    if (!row)
        return fail(ErrorKind::NotFound, fleet.path(), machine, "is not in the round to " + set->list.until);
    const auto jobs = fleet.log().jobs(machine);
    if (!jobs) return fail(jobs.error());
    JobDraft draft{machine, row->service, set->list.until, {}};
    for (std::size_t i = 1; i <= row->findings.size(); ++i) {
        const auto sheet = sheetContent(fleet, set->list, set->round, {machine, i, {}, today});
        if (!sheet) return fail(sheet.error());
        if (!isByHandOnly(*sheet)) draft.findings.push_back(findingOf(*sheet, *jobs));
    }
    return draft;
}

Result<Job> draftedJob(const JobDraft& draft, const std::vector<std::size_t>& numbers) {
    if (draft.findings.empty())
        return fail(ErrorKind::Invalid, "", draft.machine,
                    "has no finding: there is nothing to draft a job for");
    Job job;
    job.machine = draft.machine;
    for (const std::size_t number : numbers) {
        if (number < 1 || number > draft.findings.size())
            return fail(ErrorKind::NotFound, "", draft.machine,
                        fmt::format("has {} finding{}, not a number {}", draft.findings.size(),
                                    draft.findings.size() == 1 ? "" : "s", number));
        const DraftFinding& finding = draft.findings[number - 1];
        job.findings.push_back(finding.key);
        takeSooner(job.orderPartsBy, finding.orderPartsBy);
        takeSooner(job.runUntil, finding.runUntil);
        if (job.urgency.empty() || groupOf(finding.urgency) < groupOf(job.urgency))
            job.urgency = finding.urgency;
    }
    return job;
}

Result<Job> keepDraft(FleetFile& fleet, Job job, const JobMove& move) {
    Job after = job;
    apply(move, after);
    return keep(fleet, job, after, move);
}

Result<Job> moveJob(FleetFile& fleet, std::int64_t id, const JobMove& move) {
    const auto job = jobThatMoves(fleet, id);
    if (!job) return job;
    if (auto good = checkBack(*job, move.state); !good) return fail(good.error());
    Job after = *job;
    apply(move, after);
    const auto done = fleet.together([&]() -> Status {
        if (!move.on.empty())
            if (auto told = keepDone(fleet, *job, {move.on, move.kind, move.text}, move.by); !told)
                return told;
        if (auto kept = keep(fleet, *job, after, move); !kept) return fail(kept.error());
        return move.state == "verified" ? keepOutcome(fleet, after, move.by) : Status();
    });
    if (!done) return fail(done.error());
    return after;
}

Result<Job> reviseJob(FleetFile& fleet, std::int64_t id, const JobMove& move) {
    const auto job = jobThatMoves(fleet, id);
    if (!job) return job;
    Job before = *job;
    before.replaces = before.id;
    before.id = 0;
    before.createdAt = {};
    before.state = "drafted";
    ++before.revision;
    Job after = before;
    apply(move, after);
    JobMove told = move;
    told.text = fmt::format("replaces {}", nameOf(id)) + (move.text.empty() ? "" : ": " + move.text);
    return keep(fleet, before, after, told);
}

std::vector<std::string> nextStates(const Job& job) {
    const auto& all = jobStates();
    auto now = std::find(all.begin(), all.end(), job.state);
    return now == all.end() ? all : std::vector<std::string>(std::next(now), all.end());
}

Result<JobDetail> jobDetail(FleetFile& fleet, std::int64_t id) {
    auto job = fleet.jobs().get(id);
    if (!job) return fail(job.error());
    JobDetail detail{*job, {}, {}, {}};
    auto steps = fleet.jobs().steps(id);
    if (!steps) return fail(steps.error());
    detail.steps = std::move(*steps);
    const auto reports = fleet.log().feedback();
    if (!reports) return fail(reports.error());
    for (const Feedback& report : *reports)
        if (report.machine == job->machine && report.time >= job->createdAt &&
            isOfJob(*job, report.fault, report.at))
            detail.reports.push_back(report);
    if (!isOver(*job)) return detail;
    auto verification = verifyJob(fleet, *job);
    if (!verification) return fail(verification.error());
    detail.verification = std::move(*verification);
    return detail;
}

}  // namespace fettle
