// What is still there to be thinned, found without reading what was thinned before.
#include <algorithm>

#include "core/store/database.h"
#include "core/store/retention_store.h"

namespace fettle {

namespace {

using std::chrono::days;
using Bytes = std::array<std::int64_t, kKeptKinds>;
using ById = std::unordered_map<std::int64_t, Bytes>;

constexpr const char* kWaveforms =
    "SELECT r.machine, w.recording, sum(length(w.data)) FROM waveform w CROSS JOIN recording r ON r.id = "
    "w.recording GROUP BY w.recording";
constexpr const char* kExaminations =
    "SELECT r.machine, e.recording, length(e.json) FROM examination e CROSS JOIN recording r ON r.id = "
    "e.recording ORDER BY e.recording";
constexpr const char* kRow = "SELECT r.id, r.time, r.point, r.running, r.file FROM recording r ";

void take(Statement& row, KeptRecording& one) {
    row.into(one.id, one.time, one.point, one.running, one.file);
}

void newer(std::map<std::string, Instant>& newest, const std::string& point, Instant time) {
    const auto [at, fresh] = newest.try_emplace(point, time);
    if (!fresh) at->second = std::max(at->second, time);
}

// By recording: bytes of its spectra, waveform and examination.
Result<ById> bytesOf(Database& database, std::int64_t machine, const StillThere& there) {
    ById bytes;
    if (const auto found = there.machines.find(machine); found != there.machines.end())
        for (std::size_t kind = 0; kind < kKeptKinds; ++kind)
            for (const StillThere::One& one : found->second[kind])
                bytes[one.recording][kind] = one.bytes;
    Statement rows(database,
                   "SELECT s.recording, length(s.lines) FROM channel c CROSS JOIN spectrum s ON s.channel = "
                   "c.id WHERE c.machine = ?");
    rows.bind(machine);
    while (rows.next()) {
        std::int64_t recording = 0, size = 0;
        rows.into(recording, size);
        bytes[recording][std::size_t(KeptKind::Spectra)] += size;
    }
    if (auto good = rows.status(); !good) return fail(good.error());
    return bytes;
}

// Of the last days, whatever is left of them; what still holds something is taken out of `bytes`.
Status addLately(Database& database, std::int64_t machine, Instant from, ById& bytes, KeptOfMachine& kept) {
    Statement rows(database, std::string(kRow) + "WHERE r.machine = ? AND r.time > ? ORDER BY r.time, r.id");
    rows.bind(machine, from);
    KeptRecording one;
    while (rows.next()) {
        take(rows, one);
        ++kept.lately;
        kept.latelyPoints.insert(one.point);
        newer(kept.newest, one.point, one.time);
        const auto found = bytes.find(one.id);
        if (found == bytes.end()) continue;
        one.bytes = found->second;
        bytes.erase(found);
        kept.recordings.push_back(one);
    }
    return rows.status();
}

Status addOlder(Database& database, const ById& bytes, KeptOfMachine& kept) {
    std::vector<KeptRecording> older;
    for (const auto& [id, size] : bytes) {
        Statement rows(database, std::string(kRow) + "WHERE r.id = ?");
        KeptRecording& one = older.emplace_back();
        if (rows.bind(id).next()) take(rows, one);
        if (auto good = rows.status(); !good) return good;
        one.bytes = size;
        newer(kept.newest, one.point, one.time);
    }
    std::sort(older.begin(), older.end(), [](const KeptRecording& a, const KeptRecording& b) {
        return std::pair(a.time, a.id) < std::pair(b.time, b.id);
    });
    kept.recordings.insert(kept.recordings.begin(), std::make_move_iterator(older.begin()),
                           std::make_move_iterator(older.end()));
    return {};
}

// Of a point that has but levels by now the newest is found by its trends.
Status addNewest(Database& database, std::int64_t machine, KeptOfMachine& kept) {
    Statement rows(database,
                   "SELECT r.point, r.time FROM channel c CROSS JOIN recording r ON r.id = (SELECT "
                   "t.recording FROM trend t WHERE t.channel = c.id ORDER BY t.time DESC LIMIT 1) WHERE "
                   "c.machine = ?");
    rows.bind(machine);
    while (rows.next()) {
        std::string point;
        Instant time{};
        rows.into(point, time);
        newer(kept.newest, point, time);
    }
    return rows.status();
}

bool isAmong(std::span<const KeptRecording> inOrder, Instant time, std::int64_t id) {
    const auto at =
        std::lower_bound(inOrder.begin(), inOrder.end(), std::pair(time, id),
                         [](const KeptRecording& one, const std::pair<Instant, std::int64_t>& key) {
                             return std::pair(one.time, one.id) < key;
                         });
    return at != inOrder.end() && at->id == id;
}

}  // namespace

void StillThere::take(std::int64_t machine, const Thinning& thinning) {
    OfMachine& of = machines[machine];
    for (std::size_t kind = 0; kind < kKeptKinds; ++kind) {
        if (!thinning.takes[kind]) continue;
        const auto at = std::lower_bound(
            of[kind].begin(), of[kind].end(), thinning.recording,
            [](const One& one, std::int64_t recording) { return one.recording < recording; });
        if (at != of[kind].end() && at->recording == thinning.recording) of[kind].erase(at);
    }
}

Result<StillThere> RetentionStore::stillThere(const Progress& progress, const CancelToken& cancel) {
    constexpr std::size_t kSaidEvery = 4096;
    const auto last = database_.one<std::int64_t>("SELECT max(id) FROM recording");
    if (!last) return fail(last.error());
    StillThere there;
    for (const KeptKind kind : {KeptKind::Waveform, KeptKind::Examination}) {
        Statement rows(database_, kind == KeptKind::Waveform ? kWaveforms : kExaminations);
        for (std::size_t count = 0; rows.next(); ++count) {
            std::int64_t machine = 0;
            StillThere::One one;
            rows.into(machine, one.recording, one.bytes);
            if (one.bytes > 0) there.machines[machine][std::size_t(kind)].push_back(one);
            if (count % kSaidEvery != 0) continue;
            if (cancel.cancelled())
                return fail(ErrorKind::Cancelled, database_.path(), "", "stopped on request");
            if (progress) progress(std::size_t(one.recording), std::size_t(last->value_or(0)), keyOf(kind));
        }
        if (auto good = rows.status(); !good) return fail(good.error());
    }
    return there;
}

Result<KeptOfMachine> RetentionStore::kept(std::int64_t machine, const StillThere& there, int lately) {
    KeptOfMachine kept;
    const auto last = database_.one<Instant>(
        "SELECT time FROM recording WHERE machine = ? ORDER BY time DESC LIMIT 1", machine);
    if (!last) return fail(last.error());
    kept.last = *last;
    if (!kept.last) return kept;
    auto bytes = bytesOf(database_, machine, there);
    if (!bytes) return fail(bytes.error());
    if (auto good = addLately(database_, machine, *kept.last - days(lately), *bytes, kept); !good)
        return fail(good.error());
    if (auto good = addOlder(database_, *bytes, kept); !good) return fail(good.error());
    if (auto good = addNewest(database_, machine, kept); !good) return fail(good.error());
    return kept;
}

Status RetentionStore::rank(std::int64_t machine, KeptRecording& recording) {
    Statement rows(database_,
                   "SELECT (SELECT max(weight_dban) FROM weight WHERE machine = ?1 AND time = ?2 AND "
                   "recording = ?3), (SELECT max(t.velocity_rms_mm_s) FROM channel c CROSS JOIN trend t ON "
                   "t.channel = c.id AND t.time = ?2 AND t.recording = ?3 WHERE c.machine = ?1)");
    if (rows.bind(machine, recording.time, recording.id).next())
        rows.into(recording.evidenceDban, recording.levelMmS);
    return rows.status();
}

Result<std::vector<WeightEntry>> RetentionStore::weights(std::int64_t machine,
                                                         std::span<const KeptRecording> recordings,
                                                         double leastDban, Instant denseFrom) {
    const std::string sql =
        "SELECT w.recording, w.time, h.fault, h.at, w.weight_dban FROM weight w CROSS JOIN hypothesis h ON "
        "h.id = w.hypothesis WHERE w.machine = ? AND w.weight_dban >= ? AND ";
    std::vector<WeightEntry> all;
    const auto add = [&](Statement& rows) {
        while (rows.next()) {
            WeightEntry one;
            rows.into(one.recording, one.time, one.fault, one.at, one.weightDban);
            if (isAmong(recordings, one.time, one.recording)) all.push_back(std::move(one));
        }
        return rows.status();
    };
    for (const KeptRecording& one : recordings) {
        if (one.time > denseFrom) break;
        Statement rows(database_, sql + "w.time = ? AND w.recording = ?");
        rows.bind(machine, leastDban, one.time, one.id);
        if (auto good = add(rows); !good) return fail(good.error());
    }
    Statement rows(database_, sql + "w.time > ? ORDER BY w.time, w.recording");
    rows.bind(machine, leastDban, denseFrom);
    if (auto good = add(rows); !good) return fail(good.error());
    return all;
}

}  // namespace fettle
