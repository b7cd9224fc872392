#include "core/store/retention_store.h"

#include "core/base/text.h"
#include "core/store/database.h"
#include "core/store/day.h"
#include "core/store/spectrum_spans.h"

namespace fettle {

namespace {

constexpr std::size_t kNewestAsked = 50;

// As measured over whole tables of a fleet file, with their share of the pages and indexes; a recording's
// are its row, its sidecar and the rows of its channels.
constexpr double kRecordingBytes = 400, kTrendBytes = 160, kWeightBytes = 31, kMeasuredBytes = 30;

const char* columnOf(KeptKind kind) {
    switch (kind) {
        case KeptKind::Waveform:
            return "waveform";
        case KeptKind::Spectra:
            return "spectra";
        case KeptKind::Examination:
            break;
    }
    return "examination";
}

Status removeSpectra(Database& database, std::int64_t recording) {
    return database.run(
        "DELETE FROM spectrum WHERE (channel, kind, time, recording) IN (SELECT rc.channel, k.kind, r.time, "
        "r.id "
        "FROM recording r JOIN recording_channel rc ON rc.recording = r.id CROSS JOIN "
        "(SELECT 1 AS kind UNION ALL SELECT 2 UNION ALL SELECT 3) k WHERE r.id = ?)",
        recording);
}

Status remove(Database& database, KeptKind kind, std::int64_t recording) {
    switch (kind) {
        case KeptKind::Waveform:
            return database.run("DELETE FROM waveform WHERE recording = ?", recording);
        case KeptKind::Spectra:
            return removeSpectra(database, recording);
        case KeptKind::Examination:
            break;
    }
    return database.run("DELETE FROM examination WHERE recording = ?", recording);
}

}  // namespace

Result<RetentionRules> RetentionStore::rules() {
    RetentionRules rules;
    Statement rows(database_, "SELECT what, all_days, daily_days, weekly_days FROM retention_rule");
    while (rows.next()) {
        std::string what;
        KeepRule rule;
        rows.into(what, rule.allDays, rule.dailyDays, rule.weeklyDays);
        for (const KeptKind kind : kAllKept)
            if (what == keyOf(kind)) rules.rule(kind) = rule;
    }
    if (auto good = rows.status(); !good) return fail(good.error());
    if (auto good = checkRules(rules); !good) {
        Error error = good.error();
        error.file = database_.path();
        return fail(error);
    }
    return rules;
}

Status RetentionStore::setRules(const RetentionRules& rules) {
    if (auto good = checkRules(rules); !good) return good;
    Transaction transaction(database_);
    if (!transaction.begun()) return transaction.begun();
    for (const KeptKind kind : kAllKept) {
        const KeepRule& rule = rules.rule(kind);
        if (auto good = database_.run("INSERT OR REPLACE INTO retention_rule(what, all_days, daily_days, "
                                      "weekly_days) VALUES (?,?,?,?)",
                                      keyOf(kind), rule.allDays, rule.dailyDays, rule.weeklyDays);
            !good)
            return good;
    }
    return transaction.commit();
}

// Measures are asked by their key, (channel, measure, time, recording).
Result<double> RetentionStore::trendBytesEach(std::int64_t machine, Instant from) {
    Statement rows(
        database_,
        "WITH newest AS MATERIALIZED (SELECT id, machine, time FROM recording WHERE machine = ?1 AND time >= "
        "?2 ORDER BY time DESC LIMIT ?3) "
        "SELECT (SELECT count(*) FROM newest), "
        "(SELECT count(*) FROM newest n JOIN recording_channel rc ON rc.recording = n.id), "
        "(SELECT count(*) FROM newest n JOIN weight w ON w.machine = n.machine AND w.time = n.time AND "
        "w.recording = n.id), "
        "(SELECT count(*) FROM channel c CROSS JOIN measure m CROSS JOIN measured d ON d.channel = c.id AND "
        "d.measure = m.id AND d.time >= (SELECT min(time) FROM newest) AND d.recording IN (SELECT id FROM "
        "newest) WHERE c.machine = ?1)");
    double count = 0, channels = 0, weights = 0, measured = 0;
    if (rows.bind(machine, from, kNewestAsked).next()) rows.into(count, channels, weights, measured);
    if (auto good = rows.status(); !good) return fail(good.error());
    if (!(count > 0)) return 0.0;
    return kRecordingBytes +
           (channels * kTrendBytes + weights * kWeightBytes + measured * kMeasuredBytes) / count;
}

Result<std::string> RetentionStore::standing() {
    const auto text = database_.one<std::string>(
        "SELECT json_array("
        "(SELECT json_array(count(*), max(id), count(closed)) FROM round), "
        "(SELECT json_array(count(*), max(id)) FROM decision), "
        "(SELECT json_array(count(*), max(time)) FROM round_mark), "
        "(SELECT json_array(count(*), max(id)) FROM event), "
        "(SELECT json_array(count(*), max(id)) FROM feedback), "
        "(SELECT json_array(count(*), max(id), group_concat(state)) FROM job), "
        "(SELECT json_array(count(*), max(id)) FROM job_step), "
        "(SELECT json_array(count(*), max(id)) FROM photo), "
        "(SELECT json_array(count(*), max(answered), sum(recording)) FROM request), "
        "(SELECT json_array(count(*), max(changed), count(closed)) FROM workshop), "
        "(SELECT json_array(count(*), max(recorded), max(replaced)) FROM description), "
        "(SELECT json_array(count(*), max(id), count(acknowledged), count(ended)) FROM alert), "
        "(SELECT json_array(count(*), max(last_seen), sum(answered)) FROM refusal), "
        "(SELECT json_array(sum(by_hand), count(*)) FROM machine), "
        "(SELECT json_group_array(json_array(what, all_days, daily_days, weekly_days)) FROM "
        "retention_rule))");
    if (!text) return fail(text.error());
    return text->value_or("");
}

Result<std::vector<RetentionStore::InRound>> RetentionStore::roundsWith(const std::string& machine) {
    Statement rows(
        database_,
        "SELECT r.id, r.from_day, r.until_day, r.closed IS NULL, w.in_sample, w.urgency FROM round r "
        "CROSS JOIN round_row w ON w.round = r.id AND w.machine = ? ORDER BY r.id");
    rows.bind(machine);
    return allRows<InRound>(rows, [](Statement& row, InRound& one) {
        row.into(one.round, one.from, one.until, one.open, one.inSample, one.urgency);
    });
}

Result<std::vector<Instant>> RetentionStore::standingAlerts(std::int64_t machine) {
    Statement rows(database_,
                   "SELECT since FROM alert WHERE machine = ? AND (acknowledged IS NULL OR ended IS NULL)");
    rows.bind(machine);
    return allRows<Instant>(rows, [](Statement& row, Instant& since) { row.into(since); });
}

Result<std::vector<std::string>> RetentionStore::refusedPaths() {
    Statement rows(database_, "SELECT DISTINCT path FROM refusal WHERE answered = 0 ORDER BY path");
    return allRows<std::string>(rows, [](Statement& row, std::string& path) { row.into(path); });
}

Result<std::int64_t> RetentionStore::examinationsThinned(Instant from, Instant until) {
    const auto count = database_.one<std::int64_t>(
        "SELECT count(*) FROM recording r JOIN thinned t ON t.recording = r.id WHERE r.time BETWEEN ? AND ? "
        "AND "
        "t.examination IS NOT NULL",
        from, until);
    if (!count) return fail(count.error());
    return count->value_or(0);
}

Result<std::int64_t> RetentionStore::beginRun(const std::string& by, const std::string& rules) {
    if (auto good = database_.run("INSERT INTO retention_run(started, by, rules) VALUES (?,?,?)", nowUtc(),
                                  by, rules);
        !good)
        return fail(good.error());
    return database_.lastId();
}

Status RetentionStore::buildSpans(std::int64_t machine) {
    const auto channels = [&] {
        Statement rows(database_,
                       "SELECT w.channel, w.kind FROM channel c JOIN spans_to_build w ON w.channel = "
                       "c.id WHERE c.machine = ?");
        rows.bind(machine);
        return allRows<SpectrumSeries>(
            rows, [](Statement& row, SpectrumSeries& one) { row.into(one.channel, one.kind); });
    }();
    if (!channels) return fail(channels.error());
    for (const SpectrumSeries& series : *channels) {
        Transaction transaction(database_);
        if (!transaction.begun()) return transaction.begun();
        SpectrumSpans spans(database_);
        const auto waits = spans.waits(series);  // somebody else may have built them since
        if (!waits) return fail(waits.error());
        if (!*waits) continue;
        if (auto good = spans.build(series); !good) return good;
        if (auto good = transaction.commit(); !good) return good;
    }
    return {};
}

Status RetentionStore::thin(std::int64_t run, std::span<const Thinning> list) {
    for (const Thinning& one : list)
        for (const KeptKind kind : kAllKept) {
            if (!one.takes[std::size_t(kind)]) continue;
            if (auto good = remove(database_, kind, one.recording); !good) return good;
            if (database_.changes() == 0) continue;  // another one was faster
            const std::string column = columnOf(kind);
            if (auto good =
                    database_.run("INSERT INTO thinned(recording, " + column +
                                      ") VALUES (?1, ?2) ON CONFLICT DO UPDATE SET " + column + " = ?2",
                                  one.recording, run);
                !good)
                return good;
        }
    return {};
}

}  // namespace fettle
