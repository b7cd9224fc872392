#include "core/store/log_store.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/base/text.h"
#include "core/store/database.h"
#include "core/store/day.h"
#include "core/store/text_list.h"

namespace fettle {

namespace {
using Words = std::vector<std::string>;
const Words kEventKinds = {"repair",     "greasing", "part",       "moved_node",  "cleaning",
                           "inspection", "note",     "rebaseline", "low_battery", "other"};
const Words kOutcomes = {"confirmed", "not_found", "another_fault", "not_opened"};
const Words kRefusalKinds = {"refused", "parked"};

Status checkWord(const std::string& word, const Words& allowed, const std::string& file,
                 const std::string& place) {
    if (std::find(allowed.begin(), allowed.end(), word) != allowed.end()) return {};
    return fail(ErrorKind::Invalid, file, place,
                fmt::format("is \"{}\", must be one of {}", word, joined(allowed, ", ")));
}

Result<std::int64_t> machineOf(Database& database, const std::string& tag) {
    const auto id = database.one<std::int64_t>("SELECT id FROM machine WHERE tag=?", tag);
    if (!id) return fail(id.error());
    if (!*id)
        return fail(ErrorKind::NotFound, database.path(), fmt::format("machine {}", tag),
                    "is not in the register");
    return **id;
}

Status checkChanged(Database& database, const Status& done, const std::string& what) {
    if (!done) return done;
    if (database.changes() > 0) return {};
    return fail(ErrorKind::NotFound, database.path(), what, "is not in the fleet file");
}

Status checkJob(const Job& job, const std::string& file) {
    if (auto good = checkWord(job.state, jobStates(), file, "state of the job"); !good) return good;
    for (const std::string* day : {&job.orderPartsBy, &job.runUntil, &job.plannedStop})
        if (auto good = checkDay(*day, file, "day of the job"); !good) return good;
    return {};
}

Status insertRefusal(Database& database, const Refusal& refusal) {
    return database.run(
        "INSERT INTO refusal(path, place, rule, kind, first_seen, last_seen, times, answered) "
        "VALUES (?,?,?,?,?,?,?,0) ON CONFLICT(path, rule) DO UPDATE SET times = times + excluded.times, "
        "place "
        "= excluded.place, kind = excluded.kind, last_seen = max(last_seen, excluded.last_seen)",
        refusal.path, refusal.place, refusal.rule, refusal.kind, refusal.firstSeen, refusal.lastSeen,
        std::max(refusal.times, 1));
}
}  // namespace

const std::vector<std::string>& jobStates() {
    static const Words states = {"drafted", "issued", "scheduled", "done", "verified", "closed"};
    return states;
}

Result<std::int64_t> LogStore::addEvent(const Event& event) {
    if (auto good = checkWord(event.kind, kEventKinds, database_.path(), "kind of the event"); !good)
        return fail(good.error());
    const auto machine = machineOf(database_, event.machine);
    if (!machine) return machine;
    if (auto good = database_.run("INSERT INTO event(machine, time, kind, at, text, by) VALUES (?,?,?,?,?,?) "
                                  "ON CONFLICT DO NOTHING",
                                  *machine, event.time, event.kind, event.at, event.text, event.by);
        !good)
        return fail(good.error());
    const auto id = database_.one<std::int64_t>(
        "SELECT id FROM event WHERE machine=? AND time=? AND kind=? AND at=? AND text=?", *machine,
        event.time, event.kind, event.at, event.text);
    if (!id) return fail(id.error());
    return id->value_or(0);
}

Result<std::vector<Event>> LogStore::events(const std::string& machine) {
    Statement rows(
        database_,
        "SELECT e.id, m.tag, e.time, e.kind, e.at, e.text, e.by FROM event e JOIN machine m ON m.id "
        "= e.machine WHERE ?1 = '' OR m.tag = ?1 ORDER BY e.time, e.id");
    rows.bind(machine);
    return allRows<Event>(rows, [](Statement& row, Event& event) {
        row.into(event.id, event.machine, event.time, event.kind, event.at, event.text, event.by);
    });
}

Result<std::int64_t> LogStore::addFeedback(const Feedback& feedback) {
    if (auto good = checkWord(feedback.outcome, kOutcomes, database_.path(), "outcome"); !good)
        return fail(good.error());
    const auto machine = machineOf(database_, feedback.machine);
    if (!machine) return machine;
    if (auto good = database_.run("INSERT INTO feedback(machine, time, fault, at, outcome, code, text, by) "
                                  "VALUES (?,?,?,?,?,?,?,?)",
                                  *machine, feedback.time, feedback.fault, feedback.at, feedback.outcome,
                                  feedback.code, feedback.text, feedback.by);
        !good)
        return fail(good.error());
    return database_.lastId();
}

Result<std::vector<Feedback>> LogStore::feedback() {
    Statement rows(
        database_,
        "SELECT f.id, m.tag, f.fault, f.at, f.outcome, f.code, f.text, f.by, f.time FROM feedback f "
        "JOIN machine m ON m.id = f.machine ORDER BY f.time, f.id");
    return allRows<Feedback>(rows, [](Statement& row, Feedback& one) {
        row.into(one.id, one.machine, one.fault, one.at, one.outcome, one.code, one.text, one.by, one.time);
    });
}

Result<std::int64_t> LogStore::putJob(const Job& job) {
    if (auto good = checkJob(job, database_.path()); !good) return fail(good.error());
    const auto machine = machineOf(database_, job.machine);
    if (!machine) return machine;
    const std::string findings = toJsonText(job.findings);
    if (job.id == 0) {
        const Instant created = job.createdAt == Instant{} ? nowUtc() : job.createdAt;
        if (auto good = database_.run(
                "INSERT INTO job(machine, findings, work_order, state, urgency, revision, replaces, "
                "order_parts_by, run_until, planned_stop, created) VALUES (?,?,?,?,?,?,?,?,?,?,?)",
                *machine, findings, job.workOrder, job.state, job.urgency, job.revision, job.replaces,
                job.orderPartsBy, job.runUntil, job.plannedStop, created);
            !good)
            return fail(good.error());
        return database_.lastId();
    }
    const auto done = database_.run(
        "UPDATE job SET machine=?, findings=?, work_order=?, state=?, urgency=?, revision=?, replaces=?, "
        "order_parts_by=?, run_until=?, planned_stop=? WHERE id=?",
        *machine, findings, job.workOrder, job.state, job.urgency, job.revision, job.replaces,
        job.orderPartsBy, job.runUntil, job.plannedStop, job.id);
    if (auto good = checkChanged(database_, done, fmt::format("job {}", job.id)); !good)
        return fail(good.error());
    return job.id;
}

Result<std::vector<Job>> LogStore::jobs(const std::string& machine) {
    Statement rows(
        database_,
        "SELECT j.id, m.tag, j.findings, j.work_order, j.state, j.urgency, j.revision, j.replaces, "
        "j.order_parts_by, j.run_until, j.planned_stop, j.created FROM job j JOIN machine m ON m.id "
        "= j.machine WHERE ?1 = '' OR m.tag = ?1 ORDER BY j.id");
    rows.bind(machine);
    return allRows<Job>(rows, [](Statement& row, Job& job) {
        std::string findings;
        row.into(job.id, job.machine, findings, job.workOrder, job.state, job.urgency, job.revision,
                 job.replaces, job.orderPartsBy, job.runUntil, job.plannedStop, job.createdAt);
        job.findings = fromJsonText(findings);
    });
}

Status LogStore::putRefusal(const Refusal& refusal) {
    if (auto good = checkWord(refusal.kind, kRefusalKinds, database_.path(), "kind of the refusal"); !good)
        return good;
    Transaction transaction(database_);
    if (!transaction.begun()) return transaction.begun();
    if (auto good = database_.run("DELETE FROM refusal WHERE path=? AND rule<>?", refusal.path, refusal.rule);
        !good)
        return good;
    if (auto good = insertRefusal(database_, refusal); !good) return good;
    return transaction.commit();
}

Result<std::vector<Refusal>> LogStore::refusals(bool answeredToo) {
    Statement rows(database_,
                   "SELECT id, path, place, rule, kind, first_seen, last_seen, times, answered FROM refusal "
                   "WHERE answered <= ? ORDER BY first_seen, id");
    rows.bind(answeredToo);
    return allRows<Refusal>(rows, [](Statement& row, Refusal& one) {
        row.into(one.id, one.path, one.place, one.rule, one.kind, one.firstSeen, one.lastSeen, one.times,
                 one.answered);
    });
}

Status LogStore::answerRefusal(std::int64_t id) {
    return checkChanged(database_, database_.run("UPDATE refusal SET answered=1 WHERE id=?", id),
                        fmt::format("refusal {}", id));
}

Status LogStore::clearRefusal(const std::string& path) {
    return database_.run("DELETE FROM refusal WHERE path=?", path);
}

}  // namespace fettle
