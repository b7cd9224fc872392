#include "core/store/fleet_check.h"

#include <fmt/format.h>

#include "core/base/json_object.h"
#include "core/store/packing.h"
#include "core/store/sidecar_rows.h"
#include "core/store/span_check.h"
#include "core/store/waveform_codec.h"

namespace fettle {

namespace {
constexpr std::size_t kMostFaults = 1000;

struct Faults {
    Database& database;
    std::vector<std::string> found;
    bool cancelled = false;

    bool full() const { return cancelled || found.size() >= kMostFaults; }
    void add(const std::string& place, const std::string& rule) {
        found.push_back(Error{ErrorKind::Damaged, database.path(), place, rule}.sentence());
    }
    // True where there was none.
    bool none(const Status& status, const std::string& place) {
        if (status) return true;
        if (status.error().kind == ErrorKind::Cancelled)
            cancelled = true;
        else
            add(place, status.error().rule);
        return false;
    }
};

void askSqlite(Faults& faults, const char* pragma, const char* place) {
    Statement rows(faults.database, pragma);
    while (rows.next()) {
        std::string said;
        rows.into(said);
        if (said != "ok") faults.add(place, said);
    }
    faults.none(rows.status(), place);
}

void askForeignKeys(Faults& faults) {
    Statement rows(faults.database, "PRAGMA foreign_key_check");
    while (!faults.full() && rows.next()) {
        std::string table, parent;
        std::optional<std::int64_t> row;
        rows.into(table, row, parent);
        faults.add(row ? fmt::format("table {}, row {}", table, *row) : "table " + table,
                   fmt::format("belongs to a row of {} that is not there", parent));
    }
    faults.none(rows.status(), "foreign keys");
}

struct Rule {
    const char* place;
    const char* rule;
    const char* sql;  // one row a fault: its name
};

constexpr Rule kRules[] = {
    {"recordings", "stand twice, by bytes, point, channels and time",
     "SELECT group_concat(id, ', ') FROM recording NOT INDEXED GROUP BY key HAVING count(*) > 1"},
    {"recordings", "have no channel",
     "SELECT id FROM recording WHERE NOT EXISTS (SELECT 1 FROM recording_channel WHERE recording = id)"},
    {"recordings", "have no examination",
     "SELECT id FROM recording WHERE format <> 'LEVELS' AND NOT EXISTS (SELECT 1 FROM examination WHERE "
     "recording = id) AND NOT "
     "EXISTS (SELECT 1 FROM thinned WHERE recording = id AND examination IS NOT NULL)"},
    {"recordings", "have channels of another machine",
     "SELECT DISTINCT r.id FROM recording r JOIN recording_channel rc ON rc.recording = r.id "
     "JOIN channel c ON c.id = rc.channel WHERE c.machine <> r.machine"},
    {"trend rows of recordings", "are of another channel or time than the recording",
     "SELECT DISTINCT t.recording FROM trend t JOIN recording r ON r.id = t.recording WHERE r.time <> t.time "
     "OR "
     "NOT EXISTS (SELECT 1 FROM recording_channel rc WHERE rc.recording = r.id AND rc.channel = t.channel)"},
    {"spectra of recordings", "are of another channel or time than the recording",
     "SELECT DISTINCT t.recording FROM spectrum t JOIN recording r ON r.id = t.recording WHERE r.time <> "
     "t.time OR "
     "NOT EXISTS (SELECT 1 FROM recording_channel rc WHERE rc.recording = r.id AND rc.channel = t.channel)"},
    {"measures of recordings", "are of another channel or time than the recording",
     "SELECT DISTINCT t.recording FROM measured t JOIN recording r ON r.id = t.recording WHERE r.time <> "
     "t.time OR "
     "NOT EXISTS (SELECT 1 FROM recording_channel rc WHERE rc.recording = r.id AND rc.channel = t.channel)"},
    {"weights of recordings", "are of another machine or time than the recording",
     "SELECT DISTINCT w.recording FROM weight w JOIN recording r ON r.id = w.recording WHERE r.time <> "
     "w.time OR "
     "r.machine <> w.machine"},
};

void askRule(Faults& faults, const Rule& rule) {
    Statement rows(faults.database, rule.sql);
    while (!faults.full() && rows.next()) {
        std::string name;
        rows.into(name);
        faults.add(fmt::format("{} {}", rule.place, name), rule.rule);
    }
    faults.none(rows.status(), rule.place);
}

void askWaveforms(Faults& faults, std::int64_t recording) {
    const std::string place = fmt::format("waveform of recording {}", recording);
    Statement rows(
        faults.database,
        "SELECT r.samples, w.digest, w.data FROM waveform w JOIN recording r ON r.id = w.recording "
        "WHERE w.recording = ? ORDER BY w.place");
    rows.bind(recording);
    while (rows.next()) {
        std::int64_t samples = 0, digest = 0;
        rows.into(samples, digest);
        const auto unpacked = unpackWaveform(rows.blob(), std::uint64_t(samples));
        if (!unpacked)
            faults.add(place, unpacked.error());
        else if (digestOf(*unpacked) != std::uint64_t(digest))
            faults.add(place, "is not what was put in");
    }
    faults.none(rows.status(), place);
}

void askExamination(Faults& faults, std::int64_t recording) {
    const std::string place = fmt::format("examination of recording {}", recording);
    Statement rows(faults.database, "SELECT json FROM examination WHERE recording = ?");
    if (rows.bind(recording).next()) {
        const auto text = unpack(rows.blob(), kMostPackedText);
        if (!text)
            faults.add(place, text.error());
        else if (const auto json = parseJson(*text, ""); !json)
            faults.add(place, json.error().rule);
    }
    faults.none(rows.status(), place);
}

void askSidecar(Faults& faults, std::int64_t recording) {
    if (const auto text = sidecarOf(faults.database, recording); !text)
        faults.none(fail(text.error()), fmt::format("sidecar of recording {}", recording));
}

void askSpans(Faults& faults, const CancelToken& cancel) {
    const auto add = [&](const std::string& place, const std::string& rule) {
        faults.add(place, rule);
        return !faults.full();
    };
    if (!faults.full()) faults.none(checkSpans(faults.database, add, cancel), "spans of spectra");
}

std::vector<std::int64_t> recordingIds(Faults& faults) {
    Statement rows(faults.database, "SELECT id FROM recording ORDER BY id");
    std::vector<std::int64_t> ids;
    while (rows.next())
        rows.into(ids.emplace_back());
    faults.none(rows.status(), "recordings");
    return ids;
}

void askEveryRecording(Faults& faults, const Progress& progress, const CancelToken& cancel) {
    const std::vector<std::int64_t> ids = recordingIds(faults);
    for (std::size_t i = 0; i < ids.size() && !faults.full(); ++i) {
        if (cancel.cancelled()) faults.cancelled = true;
        if (progress) progress(i, ids.size(), "recordings");
        askWaveforms(faults, ids[i]);
        askExamination(faults, ids[i]);
        askSidecar(faults, ids[i]);
    }
}
}  // namespace

Result<std::vector<std::string>> findFaults(Database& database, bool deep, const Progress& progress,
                                            const CancelToken& cancel) {
    Faults faults{database, {}, false};
    database.watch(&cancel);
    askSqlite(faults, deep ? "PRAGMA integrity_check" : "PRAGMA quick_check", "pages");
    if (deep) {
        askForeignKeys(faults);
        for (const Rule& rule : kRules)
            if (!faults.full()) askRule(faults, rule);
        askSpans(faults, cancel);
        askEveryRecording(faults, progress, cancel);
    }
    database.watch(nullptr);
    if (faults.cancelled) return fail(ErrorKind::Cancelled, database.path(), "", "stopped on request");
    return faults.found;
}

}  // namespace fettle
