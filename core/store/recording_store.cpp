#include "core/store/recording_store.h"

#include <fmt/format.h>

#include "core/store/database.h"
#include "core/store/packed_recording.h"
#include "core/store/packing.h"
#include "core/store/recording_writer.h"
#include "core/store/sidecar_rows.h"
#include "core/store/text_list.h"
#include "core/store/waveform_codec.h"

namespace fettle {

namespace {
constexpr const char* kEntry =
    "SELECT r.id, r.machine, r.time, r.file, r.format, r.point, r.capture, r.running, coalesce(e.engine, "
    "''), "
    "r.sample_rate_hz, r.samples, r.speed_rpm, r.frame_temp_c, r.ambient_temp_c, r.load_pct, r.output_hz, "
    "EXISTS (SELECT 1 FROM waveform w WHERE w.recording = r.id), r.late, r.imported, "
    "(SELECT n.started FROM thinned t JOIN retention_run n ON n.id = t.waveform WHERE t.recording = r.id) "
    "FROM recording r LEFT JOIN examination e ON e.recording = r.id ";

void readEntry(Statement& row, RecordingEntry& entry) {
    double samples = 0;
    row.into(entry.id, entry.machine, entry.time, entry.file, entry.format, entry.point, entry.capture,
             entry.running, entry.engine, entry.sampleRateHz, samples, entry.speedRpm, entry.frameTempC,
             entry.ambientTempC, entry.loadPct, entry.outputHz, entry.hasWaveform, entry.late,
             entry.importedAt, entry.thinnedAt);
    entry.levelsOnly = entry.format == kLevelsFormat;
    if (entry.sampleRateHz > 0) entry.seconds = samples / entry.sampleRateHz;
}

std::string nameOf(std::int64_t recording) {
    return fmt::format("recording {}", recording);
}

tl::unexpected<Error> notThere(Database& database, std::int64_t recording) {
    return fail(ErrorKind::NotFound, database.path(), nameOf(recording), "is not in the fleet file");
}

// What is not there any more, and since when; `column` of the table thinned.
tl::unexpected<Error> notKept(Database& database, std::int64_t recording, const std::string& what,
                              const std::string& column) {
    const auto when =
        database.one<Instant>("SELECT n.started FROM thinned t JOIN retention_run n ON n.id = t." + column +
                                  " WHERE t.recording = ?",
                              recording);
    const std::string place = fmt::format("{} of recording {}", what, recording);
    if (!when) return fail(when.error());
    if (!*when)
        return fail(ErrorKind::NotFound, database.path(), place, "is not in the fleet file; its levels are");
    return fail(ErrorKind::NotFound, database.path(), place,
                fmt::format("was thinned by retention on {}; its levels, weights and trends are kept",
                            formatDate(**when)));
}

Result<std::vector<std::string>> channelNames(Database& database, std::int64_t recording) {
    Statement rows(database,
                   "SELECT c.name FROM recording_channel rc JOIN channel c ON c.id = rc.channel WHERE "
                   "rc.recording=? ORDER BY rc.place");
    rows.bind(recording);
    return allRows<std::string>(rows, [](Statement& row, std::string& name) { row.into(name); });
}

Result<std::string> unpackedText(Database& database, const std::string& packed, const std::string& place) {
    auto text = unpack(packed, kMostPackedText);
    if (!text) return fail(ErrorKind::Damaged, database.path(), place, text.error());
    return *text;
}

Status readFacts(Database& database, std::int64_t id, Recording& recording, double& rate,
                 std::int64_t& samples) {
    Statement rows(
        database,
        "SELECT file, tag, point, time, time_source, received, capture, simultaneous, given_speed_rpm, "
        "output_hz, frame_temp_c, ambient_temp_c, load_pct, warnings, sample_rate_hz, samples FROM "
        "recording WHERE id=?");
    std::optional<bool> simultaneous;
    std::string warnings;
    const bool found = rows.bind(id).next();
    if (found)
        rows.into(recording.file, recording.machine, recording.point, recording.time, recording.timeSource,
                  recording.received, recording.capture, simultaneous, recording.speedRpm, recording.outputHz,
                  recording.frameTempC, recording.ambientTempC, recording.loadPct, warnings, rate, samples);
    if (auto good = rows.status(); !good) return good;
    if (!found) return notThere(database, id);
    if (simultaneous) recording.simultaneous = *simultaneous ? Simultaneous::Yes : Simultaneous::No;
    recording.warnings = fromJsonText(warnings);
    if (rate > 0) return {};
    return fail(ErrorKind::Damaged, database.path(), nameOf(id), "states no sample rate");
}

struct PackedRow {
    Channel channel;
    std::string packed;
    std::optional<std::int64_t> digest;  // empty: no longer kept
};

Result<std::vector<PackedRow>> packedRows(Database& database, std::int64_t id) {
    Statement rows(
        database,
        "SELECT c.name, c.point, rc.unit, rc.full_scale, rc.bits, rc.scale, w.digest, w.data FROM "
        "recording_channel rc JOIN channel c ON c.id = rc.channel LEFT JOIN waveform w ON w.recording = "
        "rc.recording AND w.place = rc.place WHERE rc.recording=? ORDER BY rc.place");
    rows.bind(id);
    return allRows<PackedRow>(rows, [](Statement& row, PackedRow& one) {
        Channel& channel = one.channel;
        row.into(channel.name, channel.point, channel.unit, channel.fullScale, channel.bits, channel.scale,
                 one.digest);
        one.packed = row.blob();
    });
}
}  // namespace

RecordingKey recordingKey(const std::string& fileBytes, const Recording& recording) {
    std::string names;
    for (const Channel& channel : recording.channels)
        names += channel.point + '\0' + channel.name + '\0';
    const std::string time = recording.time ? formatUtc(*recording.time) : "";
    return digest128({fileBytes, recording.machine, recording.point, names, time});
}

Result<bool> RecordingStore::knows(const RecordingKey& key) {
    const std::string_view bytes(reinterpret_cast<const char*>(key.data()), key.size());
    const auto found = database_.one<int>("SELECT 1 FROM recording WHERE key=?", Blob{bytes});
    if (!found) return fail(found.error());
    return found->has_value();
}

Result<PutRecording> RecordingStore::put(const NewRecording& recording) {
    const auto done = putAll({recording});
    if (!done) return fail(done.error());
    return done->front();
}

Result<std::vector<PutRecording>> RecordingStore::putAll(const std::vector<NewRecording>& recordings) {
    std::vector<PackedRecording> packed;
    for (const NewRecording& recording : recordings) {
        auto one = packRecording(recording, database_.path());
        if (!one) return fail(one.error());
        packed.push_back(std::move(*one));
    }
    return putPacked(packed);
}

Result<std::vector<PutRecording>> RecordingStore::putPacked(std::span<const PackedRecording> recordings) {
    Transaction transaction(database_);
    if (!transaction.begun()) return fail(transaction.begun().error());
    RecordingWriter writer(database_);
    std::vector<PutRecording> outcomes;
    for (const PackedRecording& recording : recordings) {
        const auto stored = writer.put(recording);
        if (!stored) return fail(stored.error());
        outcomes.push_back(*stored ? PutRecording::Stored : PutRecording::AlreadyThere);
    }
    if (auto good = writer.flush(); !good) return fail(good.error());
    if (auto good = transaction.commit(); !good) return fail(good.error());
    return outcomes;
}

Status RecordingStore::replaceExamination(std::int64_t recording, const PackedRecording& again) {
    Transaction transaction(database_);
    if (!transaction.begun()) return transaction.begun();
    RecordingWriter writer(database_);
    if (auto good = writer.replace(recording, again); !good) return good;
    if (auto good = writer.flush(); !good) return good;
    return transaction.commit();
}

Result<RecordingEntry> RecordingStore::entry(std::int64_t id) {
    RecordingEntry entry;
    {
        Statement rows(database_, std::string(kEntry) + "WHERE r.id=?");
        const bool found = rows.bind(id).next();
        if (found) readEntry(rows, entry);
        if (auto good = rows.status(); !good) return fail(good.error());
        if (!found) return notThere(database_, id);
    }
    auto names = channelNames(database_, id);
    if (!names) return fail(names.error());
    entry.channels = std::move(*names);
    return entry;
}

Result<std::vector<RecordingEntry>> RecordingStore::list(std::int64_t machine, Instant from, Instant until) {
    Statement rows(database_, std::string(kEntry) +
                                  "WHERE r.machine=? AND r.time BETWEEN ? AND ? ORDER BY r.time, r.id");
    rows.bind(machine, from, until);
    auto entries = allRows<RecordingEntry>(rows, readEntry);
    if (!entries) return entries;
    for (RecordingEntry& entry : *entries) {
        auto names = channelNames(database_, entry.id);
        if (!names) return fail(names.error());
        entry.channels = std::move(*names);
    }
    return entries;
}

Result<std::vector<RecordingHead>> RecordingStore::heads(std::int64_t machine, Instant from, Instant until) {
    Statement rows(
        database_,
        "SELECT time, point, late, format = ? FROM recording WHERE machine=? AND time BETWEEN ? AND "
        "? ORDER BY time, id");
    rows.bind(kLevelsFormat, machine, from, until);
    return allRows<RecordingHead>(rows, [](Statement& row, RecordingHead& head) {
        row.into(head.time, head.point, head.late, head.levelsOnly);
    });
}

Result<std::optional<Instant>> RecordingStore::newest() {
    return database_.one<Instant>("SELECT max(time) FROM recording");
}

Result<std::optional<Instant>> RecordingStore::newest(std::int64_t machine) {
    return database_.one<Instant>("SELECT max(time) FROM recording WHERE machine=?", machine);
}

Result<std::optional<Instant>> RecordingStore::first(std::int64_t machine) {
    return database_.one<Instant>("SELECT min(time) FROM recording WHERE machine=?", machine);
}

Result<std::size_t> RecordingStore::count() {
    // Numbered without a gap, and never taken out: the largest number is how many there are.
    const auto newest = database_.one<std::int64_t>("SELECT max(id) FROM recording");
    if (!newest) return fail(newest.error());
    return std::size_t(newest->value_or(0));
}

Result<RecordingPtr> RecordingStore::recording(std::int64_t id) {
    auto recording = std::make_shared<Recording>();
    double rate = 0;
    std::int64_t samples = 0;
    if (auto good = readFacts(database_, id, *recording, rate, samples); !good) return fail(good.error());
    auto rows = packedRows(database_, id);
    if (!rows) return fail(rows.error());
    const std::string place = fmt::format("waveform of recording {}", id);
    for (PackedRow& row : *rows) {
        if (!row.digest) return notKept(database_, id, "waveform", "waveform");
        auto unpacked = unpackWaveform(row.packed, std::uint64_t(samples));
        if (!unpacked) return fail(ErrorKind::Damaged, database_.path(), place, unpacked.error());
        if (digestOf(*unpacked) != std::uint64_t(*row.digest))
            return fail(ErrorKind::Damaged, database_.path(), place, "is not what was put in");
        row.channel.samples = std::move(*unpacked);
        row.channel.sampleRateHz = rate;
        recording->channels.push_back(std::move(row.channel));
    }
    if (recording->channels.empty())
        return fail(ErrorKind::Damaged, database_.path(), nameOf(id), "has no channels");
    return RecordingPtr(std::move(recording));
}

Result<std::string> RecordingStore::sidecar(std::int64_t id) {
    auto text = sidecarOf(database_, id);
    if (!text) return fail(text.error());
    if (!*text) return notThere(database_, id);
    return std::move(**text);
}

Result<std::string> RecordingStore::examinationJson(std::int64_t recording) {
    const std::string place = fmt::format("examination of recording {}", recording);
    Statement rows(database_, "SELECT json FROM examination WHERE recording=?");
    const bool found = rows.bind(recording).next();
    const std::string packed = found ? rows.blob() : "";
    if (auto good = rows.status(); !good) return fail(good.error());
    if (!found) return notKept(database_, recording, "examination", "examination");
    return unpackedText(database_, packed, place);
}

Result<std::vector<RecordingStore::Weighed>> RecordingStore::examinations(std::int64_t machine, Instant from,
                                                                          Instant until) {
    Statement rows(
        database_,
        "SELECT r.id, r.time, r.running, e.json FROM recording r JOIN examination e ON e.recording = "
        "r.id WHERE r.machine=? AND r.time BETWEEN ? AND ? ORDER BY r.time, r.id");
    rows.bind(machine, from, until);
    std::vector<Weighed> all;
    while (rows.next()) {
        Weighed& one = all.emplace_back();
        rows.into(one.recording, one.time, one.running);
        auto text =
            unpackedText(database_, rows.blob(), fmt::format("examination of recording {}", one.recording));
        if (!text) return fail(text.error());
        one.json = std::move(*text);
    }
    if (auto good = rows.status(); !good) return fail(good.error());
    return all;
}

Result<std::vector<WeightEntry>> RecordingStore::weights(std::int64_t machine, Instant from, Instant until,
                                                         const std::string& fault) {
    Statement rows(
        database_,
        "SELECT w.recording, w.time, h.fault, h.at, w.weight_dban FROM weight w JOIN hypothesis h ON "
        "h.id = w.hypothesis WHERE w.machine=?1 AND w.time BETWEEN ?2 AND ?3 AND (?4 = '' OR h.fault = ?4) "
        "ORDER BY w.time, w.recording, w.weight_dban DESC");
    rows.bind(machine, from, until, fault);
    return allRows<WeightEntry>(rows, [](Statement& row, WeightEntry& one) {
        row.into(one.recording, one.time, one.fault, one.at, one.weightDban);
    });
}

Result<std::vector<WeightReached>> RecordingStore::weightsReached(std::int64_t machine, double leastDban,
                                                                  Instant until) {
    Statement rows(database_,
                   "SELECT h.fault, h.at, MIN(w.time), MAX(w.time), COUNT(*) FROM weight w JOIN hypothesis h "
                   "ON h.id = w.hypothesis WHERE w.machine=? AND w.weight_dban >= ? AND w.time <= ? "
                   "GROUP BY w.hypothesis ORDER BY h.fault, h.at");
    rows.bind(machine, leastDban, until);
    return allRows<WeightReached>(rows, [](Statement& row, WeightReached& one) {
        std::int64_t count = 0;
        row.into(one.fault, one.at, one.first, one.last, count);
        one.recordings = std::size_t(count);
    });
}

}  // namespace fettle
