#include "core/store/re_examination_store.h"

#include <fmt/format.h>

#include "core/store/database.h"
#include "core/store/day.h"
#include "core/store/hypothesis.h"

namespace fettle {

namespace {
constexpr const char* kRun =
    "SELECT id, engine, machine, even_current, started, finished FROM re_examination ";

void readRun(Statement& row, ReExaminationRun& run) {
    row.into(run.id, run.engine, run.machine, run.evenCurrent, run.started, run.finished);
}

void readChange(Statement& row, VerdictChangeRow& one) {
    VerdictChange& change = one.change;
    row.into(one.machine, one.recording, one.time, one.file, one.oldEngine, change.fault, change.at,
             change.oldDban, change.newDban, change.oldUrgency, change.newUrgency);
}
}  // namespace

Result<std::optional<ReExaminationRun>> ReExaminationStore::unfinished(const std::string& engine,
                                                                       const std::string& machine,
                                                                       bool evenCurrent) {
    Statement rows(database_, std::string(kRun) +
                                  "WHERE engine=? AND machine=? AND even_current=? AND finished IS NULL "
                                  "ORDER BY id DESC LIMIT 1");
    rows.bind(engine, machine, evenCurrent);
    std::optional<ReExaminationRun> found;
    if (rows.next()) readRun(rows, found.emplace());
    if (auto good = rows.status(); !good) return fail(good.error());
    return found;
}

Result<ReExaminationRun> ReExaminationStore::begin(const std::string& engine, const std::string& machine,
                                                   bool evenCurrent) {
    if (auto good = database_.run(
            "INSERT INTO re_examination(engine, machine, even_current, started) VALUES (?,?,?,?)", engine,
            machine, evenCurrent, nowUtc());
        !good)
        return fail(good.error());
    return run(database_.lastId());
}

Status ReExaminationStore::finish(std::int64_t run) {
    return database_.run("UPDATE re_examination SET finished=? WHERE id=?", nowUtc(), run);
}

Result<KeptRaw> ReExaminationStore::choose(std::int64_t machine, const std::string& engine, bool evenCurrent,
                                           std::optional<std::int64_t> run) {
    Statement rows(
        database_,
        "SELECT r.id, r.time, coalesce(e.engine, ''), e.engine IS NOT NULL AND EXISTS (SELECT 1 FROM "
        "waveform w WHERE w.recording = r.id), EXISTS (SELECT 1 FROM re_examined x WHERE x.run=?2 AND "
        "x.recording = r.id) FROM recording r LEFT JOIN examination e ON e.recording = r.id "
        "WHERE r.machine=?1 AND r.format <> 'LEVELS' ORDER BY r.time, r.id");
    rows.bind(machine, run.value_or(0));
    KeptRaw kept;
    while (rows.next()) {
        ToWeighAgain one;
        bool raw = false, done = false;
        rows.into(one.recording, one.time, one.engine, raw, done);
        if (!raw)
            ++kept.withoutWaveform;
        else if (done || (!evenCurrent && one.engine == engine))
            ++kept.current;
        else
            kept.toWeigh.push_back(std::move(one));
    }
    if (auto good = rows.status(); !good) return fail(good.error());
    return kept;
}

// Weighed twice in one run (it was carried on by two programs at once): the first verdict is the old one.
Status ReExaminationStore::note(std::int64_t run, std::int64_t recording, const std::string& oldEngine,
                                const std::vector<VerdictChange>& changes) {
    if (auto good = database_.run(
            "INSERT INTO re_examined(run, recording, old_engine) VALUES (?,?,?) ON CONFLICT DO NOTHING", run,
            recording, oldEngine);
        !good)
        return good;
    if (database_.changes() == 0) return {};
    for (const VerdictChange& change : changes) {
        const auto hypothesis = hypothesisId(database_, change.fault, change.at);
        if (!hypothesis) return fail(hypothesis.error());
        if (auto good = database_.run(
                "INSERT INTO re_examined_verdict(run, recording, hypothesis, old_dban, new_dban, "
                "old_urgency, new_urgency) VALUES (?,?,?,?,?,?,?)",
                run, recording, *hypothesis, change.oldDban, change.newDban, change.oldUrgency,
                change.newUrgency);
            !good)
            return good;
    }
    return {};
}

Result<std::vector<ReExaminationRun>> ReExaminationStore::runs() {
    Statement rows(database_, std::string(kRun) + "ORDER BY id DESC");
    return allRows<ReExaminationRun>(rows, readRun);
}

Result<ReExaminationRun> ReExaminationStore::run(std::int64_t id) {
    Statement rows(database_, std::string(kRun) + "WHERE id=?");
    ReExaminationRun run;
    const bool found = rows.bind(id).next();
    if (found) readRun(rows, run);
    if (auto good = rows.status(); !good) return fail(good.error());
    if (found) return run;
    return fail(ErrorKind::NotFound, database_.path(), fmt::format("re-examination {}", id),
                "is not in the fleet file");
}

Result<std::vector<WeighedBefore>> ReExaminationStore::weighedBefore(std::int64_t run) {
    Statement rows(database_,
                   "SELECT old_engine, count(*) AS n FROM re_examined WHERE run=? GROUP BY old_engine ORDER "
                   "BY n DESC, old_engine");
    rows.bind(run);
    return allRows<WeighedBefore>(rows, [](Statement& row, WeighedBefore& one) {
        std::int64_t count = 0;
        row.into(one.engine, count);
        one.recordings = std::size_t(count);
    });
}

Status ReExaminationStore::eachChange(std::int64_t run,
                                      const std::function<void(const VerdictChangeRow&)>& take) {
    Statement rows(database_,
                   "SELECT m.tag, r.id, r.time, r.file, x.old_engine, h.fault, h.at, v.old_dban, v.new_dban, "
                   "v.old_urgency, v.new_urgency FROM re_examined_verdict v JOIN re_examined x ON x.run = "
                   "v.run AND x.recording = v.recording JOIN hypothesis h ON h.id = v.hypothesis JOIN "
                   "recording r ON r.id = v.recording JOIN machine m ON m.id = r.machine WHERE v.run=? ORDER "
                   "BY m.tag, r.time, r.id, h.fault, h.at");
    rows.bind(run);
    while (rows.next()) {
        VerdictChangeRow one;
        readChange(rows, one);
        take(one);
    }
    return rows.status();
}

}  // namespace fettle
