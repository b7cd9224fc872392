#include "core/store/trend_store.h"

#include <algorithm>
#include <array>

#include "core/store/database.h"
#include "core/store/spectrum_codec.h"
#include "core/store/spectrum_spans.h"

namespace fettle {

namespace {
struct QuantityRow {
    Quantity quantity;
    const char* column;
    const char* unit;
};

constexpr std::array<QuantityRow, kQuantities> kRows = {
    {{Quantity::VelocityRms, "velocity_rms_mm_s", "mm/s"},
     {Quantity::AccelerationRms, "acceleration_rms_g", "g"},
     {Quantity::Peak, "peak_g", "g"},
     {Quantity::CrestFactor, "crest_factor", "1"},
     {Quantity::Kurtosis, "kurtosis", "1"},
     {Quantity::Order1, "order1_mm_s", "mm/s"},
     {Quantity::Order2, "order2_mm_s", "mm/s"},
     {Quantity::Order3, "order3_mm_s", "mm/s"},
     {Quantity::HighBand, "high_band_g", "g"},
     {Quantity::Offset, "offset", ""},
     {Quantity::SpeedRpm, "speed_rpm", "r/min"},
     {Quantity::FrameTempC, "frame_temp_c", "°C"},
     {Quantity::AmbientTempC, "ambient_temp_c", "°C"},
     {Quantity::LoadPct, "load_pct", "%"}}};

constexpr bool inOrder() {
    for (std::size_t i = 0; i < kRows.size(); ++i)
        if (kRows[i].quantity != Quantity(i)) return false;
    return true;
}
static_assert(inOrder(), "rows stand in the order of the enumeration");

const QuantityRow& rowOf(Quantity quantity) {
    return kRows[std::size_t(quantity)];
}

std::string valuesSql() {
    std::string sql = "SELECT time, recording, running";
    for (const QuantityRow& row : kRows)
        sql += std::string(", ") + row.column;
    return sql + " FROM trend WHERE channel=? AND time BETWEEN ? AND ? ORDER BY time, recording";
}

std::string latestSql() {
    std::string sql =
        "SELECT c.name, c.point, c.quantity, c.unit, c.direction, t.time, t.running, t.zone, "
        "t.next_limit_mm_s";
    for (const QuantityRow& row : kRows)
        sql += std::string(", t.") + row.column;
    return sql +
           " FROM trend t JOIN channel c ON c.id = t.channel WHERE t.channel=? "
           "ORDER BY t.time DESC, t.recording DESC LIMIT 1";
}
}  // namespace

const char* columnOf(Quantity quantity) {
    return rowOf(quantity).column;
}

const char* unitOf(Quantity quantity) {
    return rowOf(quantity).unit;
}

Result<std::vector<ChannelEntry>> TrendStore::channels(std::int64_t machine) {
    Statement rows(database_,
                   "SELECT id, machine, point, name, quantity, unit, direction FROM channel WHERE machine=? "
                   "ORDER BY point, name, id");
    rows.bind(machine);
    return allRows<ChannelEntry>(rows, [](Statement& row, ChannelEntry& one) {
        row.into(one.id, one.machine, one.point, one.name, one.quantity, one.unit, one.direction);
    });
}

Result<std::vector<TrendPoint>> TrendStore::trend(std::int64_t channel, Quantity quantity, Instant from,
                                                  Instant until) {
    const std::string column = columnOf(quantity);
    Statement rows(database_, "SELECT time, recording, running, " + column +
                                  " FROM trend WHERE channel=? AND time BETWEEN ? AND ? AND " + column +
                                  " IS NOT NULL ORDER BY time, recording");
    rows.bind(channel, from, until);
    return allRows<TrendPoint>(rows, [](Statement& row, TrendPoint& point) {
        row.into(point.time, point.recording, point.running, point.value);
    });
}

Result<std::vector<TrendValues>> TrendStore::values(std::int64_t channel, Instant from, Instant until) {
    static const std::string sql = valuesSql();
    Statement rows(database_, sql);
    rows.bind(channel, from, until);
    return allRows<TrendValues>(rows, [](Statement& row, TrendValues& one) {
        row.into(one.time, one.recording, one.running);
        for (auto& value : one.values)
            row.into(value);
    });
}

Status TrendStore::walk(std::int64_t channel, Instant from,
                        const std::function<std::optional<Instant>(const TrendValues&)>& take) {
    TrendValues one;
    for (std::optional<Instant> wanted = from; wanted;) {
        Statement rows(
            database_,
            "SELECT time, recording, running, velocity_rms_mm_s, speed_rpm, load_pct FROM trend "
            "WHERE channel=? AND time >= ? AND velocity_rms_mm_s IS NOT NULL ORDER BY time, recording");
        rows.bind(channel, *wanted);
        wanted.reset();
        while (rows.next()) {
            rows.into(one.time, one.recording, one.running, one.values[std::size_t(Quantity::VelocityRms)],
                      one.values[std::size_t(Quantity::SpeedRpm)],
                      one.values[std::size_t(Quantity::LoadPct)]);
            wanted = take(one);
            if (!wanted || *wanted > one.time) break;
            wanted.reset();
        }
        if (auto good = rows.status(); !good) return good;
    }
    return {};
}

Result<std::optional<Instant>> TrendStore::first(std::int64_t channel) {
    Statement rows(database_, "SELECT time FROM trend WHERE channel=? ORDER BY time LIMIT 1");
    std::optional<Instant> found;
    if (rows.bind(channel).next()) rows.into(found.emplace());
    if (auto good = rows.status(); !good) return fail(good.error());
    return found;
}

Result<std::optional<TrendRow>> TrendStore::latest(std::int64_t channel) {
    static const std::string sql = latestSql();
    Statement rows(database_, sql);
    std::optional<TrendRow> found;
    if (rows.bind(channel).next()) {
        TrendRow& row = found.emplace();
        rows.into(row.channel, row.point, row.quantity, row.unit, row.direction, row.time, row.running,
                  row.zone, row.nextLimitMmS);
        for (auto& value : row.values)
            rows.into(value);
    }
    if (auto good = rows.status(); !good) return fail(good.error());
    return found;
}

Result<std::vector<MeasureSeries>> TrendStore::measures(std::int64_t machine) {
    Statement rows(database_,
                   "SELECT c.id, m.id, c.point, c.name, c.direction, m.fault, m.at, m.name, m.unit FROM "
                   "channel c CROSS JOIN measure m WHERE c.machine=? AND EXISTS (SELECT 1 FROM measured d "
                   "WHERE d.channel = c.id AND d.measure = m.id) "
                   "ORDER BY m.fault, m.at, m.name, c.point, c.name, c.id");
    rows.bind(machine);
    return allRows<MeasureSeries>(rows, [](Statement& row, MeasureSeries& one) {
        row.into(one.channel, one.measure, one.point, one.channelName, one.direction, one.fault, one.at,
                 one.name, one.unit);
    });
}

Result<std::vector<TrendPoint>> TrendStore::measured(const MeasureSeries& series, Instant from,
                                                     Instant until) {
    Statement rows(database_,
                   "SELECT d.time, d.recording, r.running, d.value FROM measured d JOIN recording r ON "
                   "r.id = d.recording WHERE d.channel=? AND d.measure=? AND d.time BETWEEN ? AND ? "
                   "ORDER BY d.time, d.recording");
    rows.bind(series.channel, series.measure, from, until);
    return allRows<TrendPoint>(rows, [](Statement& row, TrendPoint& point) {
        row.into(point.time, point.recording, point.running, point.value);
    });
}

Result<std::vector<SpectrumAt>> TrendStore::spectra(std::int64_t channel, WaterfallKind kind, Instant from,
                                                    Instant until) {
    Statement rows(database_,
                   "SELECT time, recording, top_hz, lines FROM spectrum WHERE channel=? AND kind=? AND time "
                   "BETWEEN ? AND ? ORDER BY time, recording");
    rows.bind(channel, int(kind), from, until);
    return allRows<SpectrumAt>(rows, [](Statement& row, SpectrumAt& one) {
        row.into(one.time, one.recording, one.topHz);
        one.lines = fromQuantised(row.blob());
    });
}

// Spans reach at least as far as the spectra, unless they are still to be built.
Result<std::optional<TrendStore::Ends>> TrendStore::endsOfSpectra(std::int64_t channel, WaterfallKind kind) {
    Statement rows(database_,
                   "SELECT (SELECT min(time) FROM spectrum WHERE channel=?1 AND kind=?2), "
                   "(SELECT max(time) FROM spectrum WHERE channel=?1 AND kind=?2), "
                   "(SELECT min(start) FROM spectrum_span WHERE channel=?1 AND kind=?2 AND level=1), "
                   "(SELECT max(start) FROM spectrum_span WHERE channel=?1 AND kind=?2 AND level=1)");
    std::optional<Instant> first, last, firstSpan, lastSpan;
    if (rows.bind(channel, int(kind)).next()) rows.into(first, last, firstSpan, lastSpan);
    if (auto good = rows.status(); !good) return fail(good.error());
    if (!first && !firstSpan) return std::nullopt;
    if (!first) first = firstSpan, last = lastSpan;
    return Ends{std::min(*first, firstSpan.value_or(*first)), std::max(*last, lastSpan.value_or(*last))};
}

Result<TrendStore::Spans> TrendStore::spans(std::int64_t channel, WaterfallKind kind, Instant from,
                                            Instant until, std::size_t columns) {
    const auto ends = endsOfSpectra(channel, kind);
    if (!ends) return fail(ends.error());
    Spans found;
    if (!*ends) return found;
    from = std::max(from, (*ends)->first), until = std::min(until, (*ends)->last);
    int level = kSpanLevels;
    while (level > 1 && std::size_t(std::max((until - from) / spanLength(level), std::int64_t(0))) < columns)
        --level;
    found.each = spanLength(level);
    auto read = SpectrumSpans(database_).read({channel, int(kind)}, level, spanStart(from, level), until);
    if (!read) return fail(read.error());
    for (QuantisedSpan& span : *read) {
        found.spectra += std::size_t(span.spectra);
        found.spans.push_back({span.start, span.start + found.each, span.topHz, std::size_t(span.spectra),
                               span.loudest, span.at, fromQuantised(span.lines)});
    }
    return found;
}

Status TrendStore::buildSpans(const Progress& progress, const CancelToken& cancel) {
    SpectrumSpans spans(database_);
    const auto waiting = spans.waiting();
    if (!waiting) return fail(waiting.error());
    for (std::size_t i = 0; i < waiting->size(); ++i) {
        if (cancel.cancelled()) return fail(ErrorKind::Cancelled, database_.path(), "", "stopped on request");
        if (progress) progress(i, waiting->size(), "spectra by spans of time");
        Transaction transaction(database_);
        if (!transaction.begun()) return transaction.begun();
        if (auto good = spans.build((*waiting)[i]); !good) return good;
        if (auto good = transaction.commit(); !good) return good;
    }
    return {};
}

}  // namespace fettle
