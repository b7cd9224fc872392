#include "core/store/spectrum_spans.h"

#include <algorithm>
#include <set>

namespace fettle {

Instant spanStart(Instant time, int level) {
    const std::int64_t length = spanLength(level).count(), ms = time.time_since_epoch().count();
    const std::int64_t past = (ms % length + length) % length;
    return Instant(std::chrono::milliseconds(ms - past));
}

namespace {
bool less(char a, char b) {
    return static_cast<unsigned char>(a) < static_cast<unsigned char>(b);
}

char largest(std::string_view lines) {
    return lines.empty() ? '\0' : *std::max_element(lines.begin(), lines.end(), less);
}

// On a grid of `count` lines, at least as many as there are.
std::string onGrid(std::string_view lines, std::size_t count) {
    std::string wide(count, '\0');
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const std::size_t first = i * count / lines.size();
        const std::size_t last = ((i + 1) * count + lines.size() - 1) / lines.size();
        for (std::size_t at = first; at < last; ++at)
            wide[at] = std::max(wide[at], lines[i], less);
    }
    return wide;
}
}  // namespace

void raiseLines(std::string& lines, std::string_view by) {
    if (by.empty()) return;
    std::string wide;
    if (lines.size() < by.size() && !lines.empty()) lines = onGrid(lines, by.size());
    if (lines.empty()) lines.assign(by.size(), '\0');
    if (by.size() < lines.size()) by = wide = onGrid(by, lines.size());
    for (std::size_t i = 0; i < lines.size(); ++i)
        lines[i] = std::max(lines[i], by[i], less);
}

void SpectrumSpans::Raised::raise(const Raised& by) {
    if (lines.empty() || less(largest(lines), largest(by.lines))) loudest = by.loudest, at = by.at;
    raiseLines(lines, by.lines);
}

void SpectrumSpans::add(ByTop& span, const SpannedSpectrum& one) {
    Raised& row = span[one.topHz];
    row.raise({std::string(one.lines), 1, one.recording, one.time});
    ++row.spectra;
}

void SpectrumSpans::added(SpectrumSeries series, const SpannedSpectrum& spectrum) {
    for (int level = 1; level <= kSpanLevels; ++level)
        add(changes_[{series, level, spanStart(spectrum.time, level)}].added, spectrum);
}

void SpectrumSpans::removed(SpectrumSeries series, Instant time) {
    for (int level = 1; level <= kSpanLevels; ++level)
        ++changes_[{series, level, spanStart(time, level)}].removed;
}

Status SpectrumSpans::flush() {
    std::set<SpectrumSeries> asked, built;
    for (auto& [key, change] : changes_) {
        if (asked.insert(key.series).second) {
            const auto waiting = waits(key.series);
            if (!waiting) return fail(waiting.error());
            if (*waiting) built.insert(key.series);
            if (*waiting)
                if (auto good = build(key.series); !good) return good;
        }
        if (built.contains(key.series)) continue;
        if (auto good = apply(key, change); !good) return good;
    }
    changes_.clear();
    return {};
}

Result<bool> SpectrumSpans::waits(SpectrumSeries series) {
    const auto found = database_.one<int>("SELECT 1 FROM spans_to_build WHERE channel=? AND kind=?",
                                          series.channel, series.kind);
    if (!found) return fail(found.error());
    return found->has_value();
}

Result<std::vector<SpectrumSeries>> SpectrumSpans::waiting() {
    Statement rows(database_, "SELECT channel, kind FROM spans_to_build ORDER BY channel, kind");
    return allRows<SpectrumSeries>(
        rows, [](Statement& row, SpectrumSeries& series) { row.into(series.channel, series.kind); });
}

Status SpectrumSpans::apply(const Key& key, Change& change) {
    if (change.removed == 0) return raise(key, change.added);
    std::int64_t added = 0;
    for (const auto& [topHz, raised] : change.added)
        added += raised.spectra;
    const auto before = counted(key);
    if (!before) return fail(before.error());
    const auto now = kept(key);
    if (!now) return fail(now.error());
    std::int64_t there = 0;
    for (const auto& [topHz, raised] : *now)
        there += raised.spectra;
    if (there == *before - change.removed + added) return remake(key, *now);
    // Some were thinned: what they held stays, and of those replaced none is counted twice.
    for (auto& [topHz, raised] : change.added) {
        const std::int64_t twice = std::min(raised.spectra, change.removed);
        raised.spectra -= twice;
        change.removed -= twice;
    }
    return raise(key, change.added);
}

Result<std::int64_t> SpectrumSpans::counted(const Key& key) {
    const auto sum = database_.one<std::int64_t>(
        "SELECT sum(spectra) FROM spectrum_span WHERE channel=? AND kind=? AND level=? AND start=?",
        key.series.channel, key.series.kind, key.level, key.start);
    if (!sum) return fail(sum.error());
    return sum->value_or(0);
}

Result<SpectrumSpans::ByTop> SpectrumSpans::kept(const Key& key) {
    ByTop span;
    const Instant last = key.start + spanLength(key.level) - std::chrono::milliseconds(1);
    auto done = gather(key.series, key.level, key.start, last, [&](Instant, const ByTop& found) -> Status {
        span = found;
        return {};
    });
    if (!done) return fail(done.error());
    return span;
}

Status SpectrumSpans::raise(const Key& key, const ByTop& by) {
    ByTop span = by;
    for (auto& [topHz, raised] : span) {
        Statement rows(database_,
                       "SELECT spectra, loudest, at, lines FROM spectrum_span WHERE channel=? AND kind=? AND "
                       "level=? AND start=? AND top_hz=?");
        if (rows.bind(key.series.channel, key.series.kind, key.level, key.start, topHz).next()) {
            Raised before;
            rows.into(before.spectra, before.loudest, before.at);
            before.lines = rows.blob();
            before.raise(raised);
            before.spectra += raised.spectra;
            raised = std::move(before);
        }
        if (auto good = rows.status(); !good) return good;
    }
    return write(key, span);
}

Status SpectrumSpans::write(const Key& key, const ByTop& span) {
    for (const auto& [topHz, raised] : span)
        if (auto good = database_.run(
                "INSERT OR REPLACE INTO spectrum_span(channel, kind, level, start, top_hz, spectra, "
                "loudest, at, lines) VALUES (?,?,?,?,?,?,?,?,?)",
                key.series.channel, key.series.kind, key.level, key.start, topHz, raised.spectra,
                raised.loudest, raised.at, Blob{raised.lines});
            !good)
            return good;
    return {};
}

Status SpectrumSpans::remake(const Key& key, const ByTop& span) {
    if (auto good =
            database_.run("DELETE FROM spectrum_span WHERE channel=? AND kind=? AND level=? AND start=?",
                          key.series.channel, key.series.kind, key.level, key.start);
        !good)
        return good;
    return write(key, span);
}

Status SpectrumSpans::gather(SpectrumSeries series, int level, Instant from, Instant until,
                             const Take& take) {
    Statement rows(database_,
                   "SELECT time, recording, top_hz, lines FROM spectrum WHERE channel=? AND kind=? AND time "
                   "BETWEEN ? AND ? ORDER BY time, recording");
    rows.bind(series.channel, series.kind, from, until);
    ByTop span;
    Instant start{};
    while (rows.next()) {
        SpannedSpectrum one;
        rows.into(one.time, one.recording, one.topHz);
        const std::string lines = rows.blob();
        one.lines = lines;
        if (!span.empty() && spanStart(one.time, level) != start) {
            if (auto good = take(start, span); !good) return good;
            span.clear();
        }
        start = spanStart(one.time, level);
        add(span, one);
    }
    if (auto good = rows.status(); !good || span.empty()) return good;
    return take(start, span);
}

Status SpectrumSpans::build(SpectrumSeries series) {
    if (auto good = database_.run("DELETE FROM spectrum_span WHERE channel=? AND kind=?", series.channel,
                                  series.kind);
        !good)
        return good;
    for (int level = 1; level <= kSpanLevels; ++level)
        if (auto good = gather(series, level, Instant::min(), Instant::max(),
                               [&](Instant start, const ByTop& span) {
                                   return write({series, level, start}, span);
                               });
            !good)
            return good;
    return database_.run("DELETE FROM spans_to_build WHERE channel=? AND kind=?", series.channel,
                         series.kind);
}

Result<std::vector<QuantisedSpan>> SpectrumSpans::read(SpectrumSeries series, int level, Instant from,
                                                       Instant until) {
    const auto waiting = waits(series);
    if (!waiting) return fail(waiting.error());
    std::vector<QuantisedSpan> spans;
    if (*waiting) {
        auto done = gather(series, level, from, until, [&](Instant start, const ByTop& span) -> Status {
            for (const auto& [topHz, raised] : span)
                spans.push_back({start, topHz, raised.spectra, raised.loudest, raised.at, raised.lines});
            return {};
        });
        if (!done) return fail(done.error());
        return spans;
    }
    Statement rows(
        database_,
        "SELECT start, top_hz, spectra, loudest, at, lines FROM spectrum_span WHERE channel=? AND kind=? AND "
        "level=? AND start BETWEEN ? AND ? ORDER BY start, top_hz");
    rows.bind(series.channel, series.kind, level, from, until);
    return allRows<QuantisedSpan>(rows, [](Statement& row, QuantisedSpan& span) {
        row.into(span.start, span.topHz, span.spectra, span.loudest, span.at);
        span.lines = row.blob();
    });
}

}  // namespace fettle
