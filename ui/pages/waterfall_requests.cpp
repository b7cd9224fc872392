#include <algorithm>
#include <limits>
#include <unordered_map>

#include "ui/model/words.h"
#include "ui/pages/history_requests.h"
#include "ui/plot/time_axis.h"

namespace fettle {

namespace {

constexpr std::size_t kColumnsShown = 1600;  // about as many as a plot is wide
constexpr int kParts = 24;                   // between two looks at the token

std::string unitOf(WaterfallKind kind) {
    if (kind == WaterfallKind::Velocity) return "mm/s r.m.s.";
    return kind == WaterfallKind::Acceleration ? "g r.m.s." : "dB over floor";
}

WaterfallOptions optionsOf(const WaterfallRequest& request) {
    WaterfallOptions options;
    options.orders = request.orders;
    options.unit = unitOf(request.kind);
    options.decibels = request.kind == WaterfallKind::Envelope;
    return options;
}

double hoursOf(std::chrono::milliseconds length) {
    return double(length.count()) / 3.6e6;
}

using ShaftHz = std::unordered_map<std::int64_t, double>;

Result<ShaftHz> shaftsOf(FleetFile& fleet, std::int64_t channel) {
    auto speeds = fleet.trends().trend(channel, Quantity::SpeedRpm, kBeginning, kEnd);
    if (!speeds) return fail(speeds.error());
    ShaftHz shafts;
    shafts.reserve(speeds->size());
    for (const TrendPoint& point : *speeds)
        shafts[point.recording] = point.value / 60;
    return shafts;
}

double shaftOf(const ShaftHz& shafts, std::int64_t recording) {
    const auto speed = shafts.find(recording);
    return speed == shafts.end() ? 0 : speed->second;
}

void addRows(std::vector<SpectrumAt>& spectra, const ShaftHz& shafts, std::vector<WaterfallRow>& rows) {
    for (SpectrumAt& spectrum : spectra)
        rows.push_back({toMs(spectrum.time),
                        spectrum.recording,
                        spectrum.topHz,
                        shaftOf(shafts, spectrum.recording),
                        std::move(spectrum.lines),
                        {}});
}

WaterfallRow rowOf(SpectrumSpan& span, const ShaftHz& shafts) {
    return {toMs(span.at),
            span.loudest,
            span.topHz,
            shaftOf(shafts, span.loudest),
            std::move(span.lines),
            Cover{toMs(span.from), toMs(span.until)}};
}

// Where single spectra were thinned their span takes the place of those that are left.
std::vector<WaterfallRow> whole(std::vector<WaterfallRow>& kept, TrendStore::Spans& spans,
                                const ShaftHz& shafts, WaterfallOptions& options) {
    std::vector<WaterfallRow> rows;
    rows.reserve(kept.size());
    auto next = kept.begin();
    for (std::size_t first = 0, last = 0; first < spans.spans.size(); first = last) {
        const double until = toMs(spans.spans[first].until);
        std::size_t counted = 0;
        for (; last < spans.spans.size() && spans.spans[last].from == spans.spans[first].from; ++last)
            counted += spans.spans[last].spectra;
        const auto end =
            std::find_if(next, kept.end(), [&](const WaterfallRow& row) { return row.ms >= until; });
        if (std::size_t(end - next) >= counted) {
            std::move(next, end, std::back_inserter(rows));
        } else {
            for (std::size_t i = first; i < last; ++i)
                rows.push_back(rowOf(spans.spans[i], shafts));
            options.thinnedUntilMs = until;
            options.thinnedHours = hoursOf(spans.each);
        }
        next = end;
    }
    std::move(next, kept.end(), std::back_inserter(rows));  // put in since the spans were read
    return rows;
}

Result<std::vector<WaterfallRow>> keptRows(FleetFile& fleet, const WaterfallRequest& request,
                                           const ShaftHz& shafts, const CancelToken& cancel) {
    const auto first = fleet.trends().first(request.channel);
    if (!first) return fail(first.error());
    const auto last = fleet.trends().latest(request.channel);
    if (!last) return fail(last.error());
    std::vector<WaterfallRow> rows;
    const Instant from = first->value_or(kBeginning), until = *last ? (*last)->time : kBeginning;
    for (int part = 0; part < kParts; ++part) {
        if (cancel.cancelled()) return fail(ErrorKind::Cancelled, "", "", "stopped on request");
        const auto edge = [&](int i) { return from + (until - from) * i / kParts; };
        const Instant end = part + 1 == kParts ? kEnd : edge(part + 1) - std::chrono::milliseconds(1);
        auto spectra =
            fleet.trends().spectra(request.channel, request.kind, part == 0 ? kBeginning : edge(part), end);
        if (!spectra) return fail(spectra.error());
        addRows(*spectra, shafts, rows);
    }
    return rows;
}

}  // namespace

Result<WaterfallPtr> coarseWaterfall(FleetFile& fleet, const WaterfallRequest& request) {
    auto spans = fleet.trends().spans(request.channel, request.kind, kBeginning, kEnd, kColumnsShown);
    if (!spans) return fail(spans.error());
    if (spans->spectra <= kColumnsShown) return waterfallOf(fleet, request, {});
    ShaftHz shafts;  // of a whole year they take longer than the picture: only where it cannot do without
    if (request.orders) {
        auto read = shaftsOf(fleet, request.channel);
        if (!read) return fail(read.error());
        shafts = std::move(*read);
    }
    std::vector<WaterfallRow> rows;
    rows.reserve(spans->spans.size());
    for (SpectrumSpan& span : spans->spans)
        rows.push_back(rowOf(span, shafts));
    WaterfallOptions options = optionsOf(request);
    options.coarseHours = hoursOf(spans->each);
    return WaterfallData::make(std::move(rows), options);
}

Result<WaterfallPtr> waterfallOf(FleetFile& fleet, const WaterfallRequest& request,
                                 const CancelToken& cancel) {
    const auto shafts = shaftsOf(fleet, request.channel);
    if (!shafts) return fail(shafts.error());
    auto spans = fleet.trends().spans(request.channel, request.kind, kBeginning, kEnd,
                                      std::numeric_limits<std::size_t>::max());
    if (!spans) return fail(spans.error());
    auto rows = keptRows(fleet, request, *shafts, cancel);
    if (!rows) return fail(rows.error());
    WaterfallOptions options = optionsOf(request);
    if (rows->size() < spans->spectra) rows = whole(*rows, *spans, *shafts, options);
    return WaterfallData::make(std::move(*rows), options);
}

}  // namespace fettle
