#include "core/store/span_check.h"

#include <fmt/format.h>

#include "core/store/spectrum_spans.h"

namespace fettle {

namespace {

using Starts = std::map<std::pair<Instant, double>, QuantisedSpan>;  // by start and top

class SeriesCheck {
  public:
    SeriesCheck(Database& database, SpectrumSeries series, const SpanFault& found)
        : database_(database), spans_(database), series_(series), found_(found) {}

    // False: enough was found.
    Result<bool> run() {
        for (int level = 1; level <= kSpanLevels; ++level) {
            auto read = spans_.read(series_, level, Instant::min(), Instant::max());
            if (!read) return fail(read.error());
            for (QuantisedSpan& span : *read)
                levels_[level - 1].emplace(std::pair(span.start, span.topHz), std::move(span));
        }
        for (int level = 1; level < kSpanLevels; ++level)
            for (const auto& [key, span] : levels_[level - 1])
                hold(level + 1, span.start, span.topHz, span.lines, "are below the hours within");
        if (auto good = spectra(); !good) return fail(good.error());
        count();
        return goOn_;
    }

  private:
    void say(int level, Instant start, const char* rule) {
        goOn_ = goOn_ && found_(fmt::format("spans of spectra of channel {}, kind {}, level {}, from {}",
                                            series_.channel, series_.kind, level, formatUtc(start)),
                                rule);
    }

    void hold(int level, Instant time, double topHz, std::string_view lines, const char* rule) {
        const Instant start = spanStart(time, level);
        const auto at = levels_[level - 1].find({start, topHz});
        if (at == levels_[level - 1].end()) return say(level, start, "are missing");
        std::string raised = at->second.lines;
        raiseLines(raised, lines);
        if (raised != at->second.lines) say(level, start, rule);
    }

    Status spectra() {
        Statement rows(database_,
                       "SELECT time, top_hz, lines FROM spectrum WHERE channel=? AND kind=? ORDER BY time");
        rows.bind(series_.channel, series_.kind);
        while (goOn_ && rows.next()) {
            Instant time{};
            double topHz = 0;
            rows.into(time, topHz);
            hold(1, time, topHz, rows.blob(), "are below a spectrum that is kept");
            ++kept_[spanStart(time, 1)];
        }
        return rows.status();
    }

    void count() {
        for (const auto& [key, span] : levels_[0])
            kept_[span.start] -= span.spectra;
        for (const auto& [start, more] : kept_)
            if (more > 0) say(1, start, "count fewer spectra than are kept");
    }

    Database& database_;
    SpectrumSpans spans_;
    SpectrumSeries series_;
    const SpanFault& found_;
    Starts levels_[kSpanLevels];
    std::map<Instant, std::int64_t> kept_;
    bool goOn_ = true;
};

Result<std::vector<SpectrumSeries>> seriesToCheck(Database& database) {
    Statement rows(database,
                   "SELECT c.id, k.kind FROM channel c CROSS JOIN (SELECT 1 AS kind UNION ALL SELECT 2 UNION "
                   "ALL SELECT 3) k WHERE NOT EXISTS (SELECT 1 FROM spans_to_build b WHERE b.channel = c.id "
                   "AND b.kind = k.kind) ORDER BY c.id, k.kind");
    return allRows<SpectrumSeries>(
        rows, [](Statement& row, SpectrumSeries& series) { row.into(series.channel, series.kind); });
}

}  // namespace

Status checkSpans(Database& database, const SpanFault& found, const CancelToken& cancel) {
    const auto all = seriesToCheck(database);
    if (!all) return fail(all.error());
    for (const SpectrumSeries& series : *all) {
        if (cancel.cancelled()) return fail(ErrorKind::Cancelled, database.path(), "", "stopped on request");
        const auto goOn = SeriesCheck(database, series, found).run();
        if (!goOn) return fail(goOn.error());
        if (!*goOn) return {};
    }
    return {};
}

}  // namespace fettle
