#include "core/store/recording_writer.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <tuple>

#include "core/store/day.h"
#include "core/store/hypothesis.h"
#include "core/store/sidecar_rows.h"
#include "core/store/text_list.h"

namespace fettle {

namespace {
std::optional<int> numberOf(Simultaneous simultaneous) {
    if (simultaneous == Simultaneous::Unknown) return std::nullopt;
    return simultaneous == Simultaneous::Yes ? 1 : 0;
}

const TrendRow* trendOf(const std::vector<TrendRow>& rows, const std::string& point,
                        const std::string& name) {
    for (const TrendRow& row : rows)
        if (row.point == point && row.channel == name) return &row;
    return nullptr;
}
}  // namespace

Result<bool> RecordingWriter::put(const PackedRecording& packed) {
    const auto known = isKnown(packed);
    if (!known) return fail(known.error());
    if (*known) return false;
    const auto facts = insertRecording(packed);
    if (!facts) return fail(facts.error());
    if (facts->id == 0) return false;
    Channels channels;
    for (const Channel& channel : packed.row.recording->channels)
        channels.push_back({channel.point, channel.name, channel.unit});
    if (auto good = nameChannels(facts->machine, channels, packed.row.trends); !good)
        return fail(good.error());
    if (auto good = insertChannels(*facts, channels, packed); !good) return fail(good.error());
    if (auto good = insertComputed(*facts, channels, packed); !good) return fail(good.error());
    return true;
}

// The same samples of the same channels and moment, whatever file they came in.
Result<bool> RecordingWriter::isKnown(const PackedRecording& packed) {
    if (packed.waveforms.empty()) return false;
    const Recording& raw = *packed.row.recording;
    Statement rows(database_,
                   "SELECT r.id, c.point, c.name, w.digest FROM recording r JOIN recording_channel rc ON "
                   "rc.recording = r.id JOIN channel c ON c.id = rc.channel JOIN waveform w ON w.recording = "
                   "r.id AND w.place = rc.place WHERE r.machine=? AND r.time=? AND r.sample_rate_hz=? AND "
                   "r.samples=? ORDER BY r.id, rc.place");
    rows.bind(packed.row.machine, *raw.time, raw.channels[0].sampleRateHz, packed.samples);
    std::map<std::int64_t, std::size_t> alike;  // channels in a row that are the same
    while (rows.next()) {
        std::int64_t id = 0, digest = 0;
        std::string point, name;
        rows.into(id, point, name, digest);
        const std::size_t place = alike[id];
        if (place < raw.channels.size() && raw.channels[place].point == point &&
            raw.channels[place].name == name && std::int64_t(packed.waveforms[place].digest) == digest)
            ++alike[id];
    }
    if (auto good = rows.status(); !good) return fail(good.error());
    return std::any_of(alike.begin(), alike.end(),
                       [&](const auto& one) { return one.second == raw.channels.size(); });
}

Result<RecordingWriter::Facts> RecordingWriter::insertRecording(const PackedRecording& packed) {
    const NewRecording& recording = packed.row;
    const Recording& raw = *recording.recording;
    const bool isShort = isShortSidecar(recording.sidecar);
    const std::string_view key(reinterpret_cast<const char*>(recording.key.data()), recording.key.size());
    if (auto good = database_.run(
            "INSERT INTO recording(key, machine, time, file, format, tag, point, capture, time_source, "
            "received, "
            "simultaneous, sample_rate_hz, samples, given_speed_rpm, output_hz, frame_temp_c, "
            "ambient_temp_c, "
            "load_pct, warnings, sidecar, running, speed_rpm, speed_pm_rpm, late, imported) "
            "VALUES (?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?,?) ON CONFLICT(key) DO NOTHING",
            Blob{key}, recording.machine, *raw.time, raw.file, recording.format, raw.machine, raw.point,
            raw.capture, raw.timeSource, raw.received, numberOf(raw.simultaneous),
            raw.channels[0].sampleRateHz, packed.samples, raw.speedRpm, raw.outputHz, raw.frameTempC,
            raw.ambientTempC, raw.loadPct, toJsonText(raw.warnings), isShort ? recording.sidecar : "",
            recording.running, recording.speedRpm, recording.speedPlusMinusRpm, recording.late, nowUtc());
        !good)
        return fail(good.error());
    if (database_.changes() == 0) return Facts{};
    const Facts facts{database_.lastId(), recording.machine, *raw.time};
    if (!isShort)
        if (auto good = putSidecar(database_, facts.id, facts.machine, raw.point, recording.sidecar); !good)
            return fail(good.error());
    return facts;
}

Result<std::int64_t> RecordingWriter::channelId(std::int64_t machine, const Named& named,
                                                const TrendRow* row) {
    const std::string quantity = row ? row->quantity : "", direction = row ? row->direction : "";
    const std::string unit = row && !row->unit.empty() ? row->unit : named.unit;
    const std::string where = "machine=? AND point=? AND name=? AND quantity=? AND unit=? AND direction=?";
    const auto known = database_.one<std::int64_t>("SELECT id FROM channel WHERE " + where, machine,
                                                   named.point, named.name, quantity, unit, direction);
    if (!known) return fail(known.error());
    if (*known) return **known;
    if (auto good = database_.run(
            "INSERT INTO channel(machine, point, name, quantity, unit, direction) VALUES (?,?,?,?,?,?)",
            machine, named.point, named.name, quantity, unit, direction);
        !good)
        return fail(good.error());
    return database_.lastId();
}

Status RecordingWriter::nameChannels(std::int64_t machine, Channels& channels,
                                     const std::vector<TrendRow>& trends) {
    for (Named& named : channels) {
        const auto id = channelId(machine, named, trendOf(trends, named.point, named.name));
        if (!id) return fail(id.error());
        named.id = *id;
    }
    return {};
}

Status RecordingWriter::insertChannels(const Facts& facts, const Channels& channels,
                                       const PackedRecording& packed) {
    for (std::size_t place = 0; place < channels.size(); ++place) {
        const Channel& channel = packed.row.recording->channels[place];
        if (auto good = database_.run("INSERT INTO recording_channel(recording, place, channel, unit, "
                                      "full_scale, bits, scale) VALUES "
                                      "(?,?,?,?,?,?,?)",
                                      facts.id, place, channels[place].id, channel.unit, channel.fullScale,
                                      channel.bits, channel.scale);
            !good)
            return good;
        if (packed.waveforms.empty()) continue;  // levels alone
        const PackedChannel& waveform = packed.waveforms[place];
        if (auto good = database_.run("INSERT INTO waveform(recording, place, digest, data) VALUES (?,?,?,?)",
                                      facts.id, place, std::int64_t(waveform.digest), Blob{waveform.data});
            !good)
            return good;
    }
    return {};
}

Result<std::int64_t> RecordingWriter::idOf(const Channels& channels, const std::string& point,
                                           const std::string& name) {
    for (const Named& named : channels)
        if (named.point == point && named.name == name) return named.id;
    return fail(ErrorKind::Invalid, database_.path(), fmt::format("channel {} {}", point, name),
                "is not in the recording its levels are said to come from");
}

Status RecordingWriter::insertComputed(const Facts& facts, const Channels& channels,
                                       const PackedRecording& packed) {
    const NewRecording& recording = packed.row;
    for (const TrendRow& row : recording.trends) {
        const auto channel = idOf(channels, row.point, row.channel);
        if (!channel) return fail(channel.error());
        trends_.push_back({*channel, facts, &row});
    }
    for (std::size_t i = 0; i < recording.spectra.size(); ++i) {
        const StoredSpectrum& spectrum = recording.spectra[i];
        const auto channel = idOf(channels, spectrum.point, spectrum.channel);
        if (!channel) return fail(channel.error());
        spectra_.push_back({*channel, facts, int(spectrum.kind), spectrum.topHz, packed.spectra[i]});
    }
    for (const StoredMeasure& measure : recording.measures) {
        const auto channel = idOf(channels, measure.point, measure.channel);
        if (!channel) return fail(channel.error());
        const auto id = measureId(measure);
        if (!id) return fail(id.error());
        measures_.push_back({*channel, *id, facts, measure.value});
    }
    if (recording.levelsOnly) return {};
    if (auto good = insertWeights(facts, recording.weights); !good) return good;
    return database_.run("INSERT INTO examination(recording, engine, json) VALUES (?,?,?)", facts.id,
                         recording.engine, Blob{packed.examination});
}

Result<std::int64_t> RecordingWriter::measureId(const StoredMeasure& m) {
    const auto known = database_.one<std::int64_t>(
        "SELECT id FROM measure WHERE fault=? AND at=? AND name=? AND unit=?", m.fault, m.at, m.name, m.unit);
    if (!known) return fail(known.error());
    if (*known) return **known;
    if (auto good = database_.run("INSERT INTO measure(fault, at, name, unit) VALUES (?,?,?,?)", m.fault,
                                  m.at, m.name, m.unit);
        !good)
        return fail(good.error());
    return database_.lastId();
}

Status RecordingWriter::insertWeights(const Facts& facts, const std::vector<NewRecording::Weight>& weights) {
    for (const NewRecording::Weight& weight : weights) {
        const auto hypothesis = hypothesisId(database_, weight.fault, weight.at);
        if (!hypothesis) return fail(hypothesis.error());
        // Of two of one fault and place (variants) the stronger one stays.
        if (auto good = database_.run(
                "INSERT INTO weight(machine, time, recording, hypothesis, weight_dban) VALUES (?,?,?,?,?) ON "
                "CONFLICT DO UPDATE SET weight_dban = max(weight_dban, excluded.weight_dban)",
                facts.machine, facts.time, facts.id, *hypothesis, weight.weightDban);
            !good)
            return good;
    }
    return {};
}

Result<RecordingWriter::Facts> RecordingWriter::factsOf(std::int64_t id) {
    Statement rows(database_, "SELECT id, machine, time FROM recording WHERE id=?");
    Facts facts;
    if (rows.bind(id).next()) rows.into(facts.id, facts.machine, facts.time);
    if (auto good = rows.status(); !good) return fail(good.error());
    if (facts.id == 0)
        return fail(ErrorKind::NotFound, database_.path(), fmt::format("recording {}", id),
                    "is not in the fleet file");
    return facts;
}

Result<RecordingWriter::Channels> RecordingWriter::channelsOf(std::int64_t id) {
    Statement rows(database_,
                   "SELECT c.point, c.name, rc.unit, c.id FROM recording_channel rc JOIN channel c ON c.id = "
                   "rc.channel WHERE rc.recording=? ORDER BY rc.place");
    rows.bind(id);
    return allRows<Named>(
        rows, [](Statement& row, Named& named) { row.into(named.point, named.name, named.unit, named.id); });
}

Status RecordingWriter::removeComputed(const Facts& facts, const Channels& channels) {
    for (const Named& named : channels) {
        if (auto good = database_.run("DELETE FROM trend WHERE channel=? AND time=? AND recording=?",
                                      named.id, facts.time, facts.id);
            !good)
            return good;
        if (auto good = removeSpectra(facts, named.id); !good) return good;
        if (auto good = database_.run("DELETE FROM measured WHERE channel=? AND time=? AND recording=?",
                                      named.id, facts.time, facts.id);
            !good)
            return good;
    }
    if (auto good = database_.run("DELETE FROM weight WHERE machine=? AND time=? AND recording=?",
                                  facts.machine, facts.time, facts.id);
        !good)
        return good;
    // What is put in anew is no longer thinned.
    if (auto good =
            database_.run("UPDATE thinned SET spectra=NULL, examination=NULL WHERE recording=?", facts.id);
        !good)
        return good;
    return database_.run("DELETE FROM examination WHERE recording=?", facts.id);
}

Status RecordingWriter::removeSpectra(const Facts& facts, std::int64_t channel) {
    for (const WaterfallKind kind :
         {WaterfallKind::Velocity, WaterfallKind::Acceleration, WaterfallKind::Envelope}) {
        const SpectrumSeries series{channel, int(kind)};
        const auto waiting = spans_.waits(series);
        if (!waiting) return fail(waiting.error());
        if (*waiting)
            if (auto good = spans_.build(series); !good) return good;
        if (auto good =
                database_.run("DELETE FROM spectrum WHERE channel=? AND kind=? AND time=? AND recording=?",
                              channel, int(kind), facts.time, facts.id);
            !good)
            return good;
        if (database_.changes() > 0) spans_.removed(series, facts.time);
    }
    return {};
}

Status RecordingWriter::replace(std::int64_t id, const PackedRecording& again) {
    auto facts = factsOf(id);
    if (!facts) return fail(facts.error());
    const auto thinned =
        database_.one<int>("SELECT 1 FROM thinned WHERE recording=? AND spectra IS NOT NULL", id);
    if (!thinned) return fail(thinned.error());
    facts->spectraThinned = thinned->has_value();
    auto channels = channelsOf(id);
    if (!channels) return fail(channels.error());
    if (auto good = removeComputed(*facts, *channels); !good) return good;
    if (auto good = nameChannels(facts->machine, *channels, again.row.trends); !good) return good;
    for (std::size_t place = 0; place < channels->size(); ++place)
        if (auto good = database_.run("UPDATE recording_channel SET channel=? WHERE recording=? AND place=?",
                                      (*channels)[place].id, id, place);
            !good)
            return good;
    if (auto good = database_.run("UPDATE recording SET running=?, speed_rpm=?, speed_pm_rpm=? WHERE id=?",
                                  again.row.running, again.row.speedRpm, again.row.speedPlusMinusRpm, id);
        !good)
        return good;
    return insertComputed(*facts, *channels, again);
}

Status RecordingWriter::insertTrends() {
    std::string sql = "INSERT INTO trend(channel, time, recording, running, zone, next_limit_mm_s",
                places = "?,?,?,?,?,?";
    for (std::size_t i = 0; i < kQuantities; ++i) {
        sql += std::string(", ") + columnOf(Quantity(i));
        places += ",?";
    }
    sql += ") VALUES (" + places + ")";
    for (const TrendJob& job : trends_) {
        Statement row(database_, sql);
        row.bind(job.channel, job.facts.time, job.facts.id, job.row->running, job.row->zone,
                 job.row->nextLimitMmS);
        for (const auto& value : job.row->values)
            row.bind(value);
        if (auto good = row.finish(); !good) return good;
    }
    return {};
}

Status RecordingWriter::insertSpectra() {
    for (const SpectrumJob& job : spectra_) {
        if (auto good = database_.run(
                "INSERT INTO spectrum(channel, kind, time, recording, top_hz, lines) VALUES (?,?,?,?,?,?)",
                job.channel, job.kind, job.facts.time, job.facts.id, job.topHz, Blob{job.lines});
            !good)
            return good;
        if (job.facts.spectraThinned) spans_.removed({job.channel, job.kind}, job.facts.time);
        spans_.added({job.channel, job.kind}, {job.facts.id, job.facts.time, job.topHz, job.lines});
    }
    return spans_.flush();
}

Status RecordingWriter::insertMeasures() {
    for (const MeasureJob& job : measures_)
        if (auto good = database_.run(
                "INSERT INTO measured(channel, measure, time, recording, value) VALUES (?,?,?,?,?)",
                job.channel, job.measure, job.facts.time, job.facts.id, job.value);
            !good)
            return good;
    return {};
}

Status RecordingWriter::flush() {
    const auto trendKey = [](const TrendJob& job) {
        return std::tuple(job.channel, job.facts.time, job.facts.id);
    };
    const auto spectrumKey = [](const SpectrumJob& job) {
        return std::tuple(job.channel, job.kind, job.facts.time, job.facts.id);
    };
    std::sort(trends_.begin(), trends_.end(),
              [&](const auto& a, const auto& b) { return trendKey(a) < trendKey(b); });
    std::sort(spectra_.begin(), spectra_.end(),
              [&](const auto& a, const auto& b) { return spectrumKey(a) < spectrumKey(b); });
    const auto measureKey = [](const MeasureJob& job) {
        return std::tuple(job.channel, job.measure, job.facts.time, job.facts.id);
    };
    std::sort(measures_.begin(), measures_.end(),
              [&](const auto& a, const auto& b) { return measureKey(a) < measureKey(b); });
    if (auto good = insertTrends(); !good) return good;
    if (auto good = insertSpectra(); !good) return good;
    return insertMeasures();
}

}  // namespace fettle
