#include "ui/pages/machine_requests.h"

#include <QCoreApplication>
#include <algorithm>
#include <map>

#include "core/fleet/grams.h"
#include "core/fleet/machine_week.h"
#include "core/fleet/site_calendar.h"
#include "core/fleet/trend_past.h"
#include "core/machine/severity_limits.h"
#include "ui/model/site_time.h"
#include "ui/model/words.h"
#include "ui/pages/evidence_requests.h"
#include "ui/sheet/trend_past_data.h"

namespace fettle {

namespace {

constexpr Instant kBeginning{};
const Instant kEnd{std::chrono::milliseconds(253402300799000)};  // the last second of the year 9999
constexpr std::size_t kMostChecked = 256;                        // rows between two looks at the token
constexpr int kShaftOrders = 5;

QString tr(const char* text) {
    return QCoreApplication::translate("MachinePage", text);
}

std::string unitOf(WaterfallKind kind) {
    if (kind == WaterfallKind::Velocity) return "mm/s r.m.s.";
    return kind == WaterfallKind::Acceleration ? "g r.m.s." : "dB over floor";
}

// The kind's word; where that says nothing, the beginning of the text.
QString eventName(const Event& event) {
    constexpr int kMost = 24;
    if (event.kind == "other" || event.kind == "note") {
        const QString text = shown(event.text);
        if (!text.isEmpty()) return text.size() > kMost ? text.left(kMost - 1) + QChar(0x2026) : text;
    }
    for (const Word& word : eventKinds())
        if (word.key == event.kind) return word.text;
    return shown(event.kind);
}

std::vector<TrendEvent> trendEvents(const std::vector<Event>& events) {
    std::vector<TrendEvent> marks;
    for (const Event& event : events)
        marks.push_back({toMs(event.time), eventName(event),
                         event.at.empty() ? shown(event.text) : shown(event.at + ": " + event.text)});
    return marks;
}

// Boundaries of the first set that applies; none where none does.
QString addLimits(const Machine& machine, const std::string& pointId, TrendData& data) {
    const Point* point = machine.pointById(pointId);
    if (!point) return {};
    const Result<ApplicableLimits> limits = limitsFor(machine, *point);
    if (!limits || limits->sets.empty()) return {};
    const ZoneLimits& set = limits->sets.front();
    const char* names[] = {"A/B", "B/C", "C/D"};
    for (std::size_t i = 0; i < 3; ++i)
        if (set.velocity[i] > 0) data.limits.push_back({QString::fromLatin1(names[i]), set.velocity[i]});
    QString basis = shown(set.basis);
    if (limits->indicative) basis += tr(", indicative");
    if (set.greyOnly) basis += tr(", a note only");
    return basis;
}

// Flux is uncalibrated: its unit is 1, and a reader must not take it for one.
QString plotUnit(const std::string& unit) {
    if (unit == "1") return tr("uncalibrated");
    if (unit.starts_with("1 ")) return tr("uncalibrated, %1").arg(shown(unit.substr(2)));
    return shown(unit);
}

std::shared_ptr<const SpectrumData> spectrumOf(const DetailSpectrum& spectrum, double shaftHz) {
    if (spectrum.values.empty() || !(spectrum.dfHz > 0)) return nullptr;
    auto data = std::make_shared<SpectrumData>();
    data->unit = plotUnit(spectrum.unit);
    data->decibels = spectrum.unit.starts_with("dB");
    data->dfHz = spectrum.dfHz;
    data->values = spectrum.values;
    data->shaftHz = shaftHz;
    return data;
}

QString noteOf(const LineRow& row) {
    if (row.state == LineState::LeftOut) return tr("left out: %1").arg(shown(row.why));
    return tr("%1, %2 dB over floor, %3 decibans")
        .arg(shown(toText(row.state)))
        .arg(row.aboveFloorDb, 0, 'f', 1)
        .arg(row.weightDban, 0, 'f', 1);
}

}  // namespace

Result<MachineFacts> machineFacts(FleetFile& fleet, const std::string& tag) {
    MachineFacts facts;
    auto entry = fleet.machines().byTag(tag);
    if (!entry) return fail(entry.error());
    facts.entry = *entry;
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    facts.zone = siteZone(site->timeZone);
    auto machine = fleet.machines().describedAt(tag);
    if (!machine) return fail(machine.error());
    facts.machine = *machine;
    auto channels = fleet.trends().channels(entry->id);
    if (!channels) return fail(channels.error());
    facts.channels = std::move(*channels);
    std::stable_partition(facts.channels.begin(), facts.channels.end(),
                          [](const ChannelEntry& c) { return c.quantity == "acceleration"; });
    auto events = fleet.log().events(tag);
    if (!events) return fail(events.error());
    facts.events = trendEvents(*events);
    auto recordings = fleet.recordings().list(entry->id, kBeginning, kEnd);
    if (!recordings) return fail(recordings.error());
    if (!recordings->empty()) {
        facts.first = recordings->front().time;
        facts.newest = recordings->back().time;
    }
    return facts;
}

Result<std::shared_ptr<const WaterfallData>> waterfallOf(FleetFile& fleet, const WaterfallRequest& request,
                                                         const CancelToken& cancel) {
    auto speeds = fleet.trends().trend(request.channel, Quantity::SpeedRpm, kBeginning, kEnd);
    if (!speeds) return fail(speeds.error());
    std::map<std::int64_t, double> shaftHz;
    for (const TrendPoint& point : *speeds)
        shaftHz[point.recording] = point.value / 60;
    auto spectra = fleet.trends().spectra(request.channel, request.kind, kBeginning, kEnd);
    if (!spectra) return fail(spectra.error());
    std::vector<WaterfallRow> rows;
    rows.reserve(spectra->size());
    for (SpectrumAt& spectrum : *spectra) {
        if (rows.size() % kMostChecked == 0 && cancel.cancelled())
            return fail(ErrorKind::Cancelled, "", "", "stopped on request");
        const auto speed = shaftHz.find(spectrum.recording);
        rows.push_back({toMs(spectrum.time), spectrum.recording, spectrum.topHz,
                        speed == shaftHz.end() ? 0 : speed->second, std::move(spectrum.lines)});
    }
    WaterfallOptions options;
    options.orders = request.orders;
    options.unit = unitOf(request.kind);
    options.decibels = request.kind == WaterfallKind::Envelope;
    return WaterfallData::make(std::move(rows), options);
}

QString quantityName(Quantity quantity) {
    switch (quantity) {
        case Quantity::VelocityRms:
            return tr("velocity r.m.s.");
        case Quantity::AccelerationRms:
            return tr("acceleration r.m.s.");
        case Quantity::Peak:
            return tr("peak");
        case Quantity::CrestFactor:
            return tr("crest factor");
        case Quantity::Kurtosis:
            return tr("kurtosis");
        case Quantity::Order1:
            return tr("1x");
        case Quantity::Order2:
            return tr("2x");
        case Quantity::Order3:
            return tr("3x");
        case Quantity::HighBand:
            return tr("above 1 kHz");
        case Quantity::Offset:
            return tr("mean value");
        case Quantity::SpeedRpm:
            return tr("speed");
        case Quantity::FrameTempC:
            return tr("frame temperature");
        case Quantity::AmbientTempC:
            return tr("ambient temperature");
        case Quantity::LoadPct:
            return tr("load");
    }
    return {};
}

namespace {

// What the quantity's own past says, in words for the tool tip.
QString pastWords(const TrendPast& past) {
    if (!past.baseline) return shown(past.why);
    const BaselineBand& band = *past.baseline;
    QString words = tr("Baseline: %1 days from %2 to %3, %4; its band is two spreads to either side.")
                        .arg(band.days)
                        .arg(dayText(band.from), dayText(band.to), shown(band.condition));
    if (past.limits)
        words += tr(" Own limits: mean + 3 s %1, log-normal %2, median + 3 MAD %3, 95 % of days %4, "
                    "tolerance 95/95 %5.")
                     .arg(past.limits->meanPlus3s, 0, 'g', 3)
                     .arg(past.limits->logNormal, 0, 'g', 3)
                     .arg(past.limits->medianMad, 0, 'g', 3)
                     .arg(past.limits->p95, 0, 'g', 3)
                     .arg(past.limits->tolerance, 0, 'g', 3);
    if (past.since) words += tr(" Apart since %1.").arg(dayText(*past.since));
    return words;
}

}  // namespace

Result<TrendAnswer> trendOf(FleetFile& fleet, const std::string& tag, std::shared_ptr<const Machine> machine,
                            const ChannelEntry& channel, Quantity quantity) {
    auto points = fleet.trends().trend(channel.id, quantity, kBeginning, kEnd);
    if (!points) return fail(points.error());
    auto data = std::make_shared<TrendData>();
    data->quantity = quantityName(quantity);
    data->unit = quantity == Quantity::Offset ? shown(channel.unit) : QString::fromUtf8(unitOf(quantity));
    if (data->unit == QStringLiteral("1")) data->unit.clear();  // a ratio
    for (const TrendPoint& point : *points)
        data->samples.push_back({toMs(point.time), point.value, point.recording, isRunning(point.running)});
    data->fromZero = quantity != Quantity::Offset && quantity != Quantity::SpeedRpm &&
                     quantity != Quantity::FrameTempC && quantity != Quantity::AmbientTempC;
    TrendAnswer answer;
    if (quantity == Quantity::VelocityRms && machine)
        answer.basis = addLimits(*machine, channel.point, *data);
    if (machine) {
        const auto past = trendPast(fleet, tag, *machine, channel, quantity);
        if (!past) return fail(past.error());
        answer.past = pastWords(*past);
        addPast(*past, *data);
    }
    answer.data = data;
    return answer;
}

// The same seven days of the site's calendar as a round takes.
Result<std::shared_ptr<const PanelContent>> weekContent(FleetFile& fleet, const std::string& tag,
                                                        Instant until) {
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    const auto day = dateIn(site->timeZone, until);
    if (!day) return fail(day.error());
    const auto period = periodTo(*site, *day);
    if (!period) return fail(period.error());
    auto span = examinationOfSpan(fleet, tag, period->from, period->last());
    if (!span) return fail(span.error());
    if (!*span) return nullptr;
    auto content = std::make_shared<PanelContent>();
    content->machine = (*span)->machine;
    content->examination = std::move((*span)->examination);
    content->times = std::move((*span)->times);
    content->recordings = std::move((*span)->recordingIds);
    content->week = true;
    content->zone = siteZone(site->timeZone);
    content->basis = tr("Week %1 to %2, running recordings: %3")
                         .arg(dateText(period->firstDay), dateText(period->lastDay))
                         .arg(content->recordings.size());
    if (auto facts = addPanelFacts(fleet, tag, period->last(), *content); !facts) return fail(facts.error());
    const auto mass = massNow(fleet, tag, period->lastDay);
    if (!mass) return fail(mass.error());
    if (*mass) content->examination.warnings.push_back((*mass)->sentence);
    return content;
}

Result<std::shared_ptr<const PanelContent>> recordingContent(FleetFile& fleet, std::int64_t recording,
                                                             Instant time) {
    auto examination = examinationOf(fleet, recording);
    if (!examination) return fail(examination.error());
    const auto site = fleet.site();
    if (!site) return fail(site.error());
    auto content = std::make_shared<PanelContent>();
    content->zone = siteZone(site->timeZone);
    content->examination = std::move(*examination);
    content->times = {time};
    content->recordings = {recording};
    content->week = false;
    content->basis = tr("One recording: %1").arg(momentText(time, content->zone));
    if (auto facts = addPanelFacts(fleet, content->examination.machine, time, *content); !facts)
        return fail(facts.error());
    return content;
}

Result<RecordingPlots> recordingPlots(FleetFile& fleet, std::int64_t recording, const std::string& channel,
                                      const std::string& view) {
    auto detail = detailOf(fleet, recording, channel, view);
    if (!detail) return fail(detail.error());
    RecordingPlots plots;
    plots.recording = recording;
    plots.channel = detail->channel;
    plots.view = detail->view;
    plots.quantity = detail->quantity;
    plots.shaftHz = detail->shaftHz;
    plots.mainsHz = detail->mainsHz;
    plots.velocity = spectrumOf(detail->velocity, detail->shaftHz);
    plots.plain = spectrumOf(detail->plain, detail->shaftHz);
    plots.envelope = spectrumOf(detail->envelope, detail->shaftHz);
    auto waveform = std::make_shared<WaveformData>();
    waveform->unit = plotUnit(detail->unit);
    waveform->sampleRateHz = detail->sampleRateHz;
    waveform->samples = std::move(detail->samples);
    waveform->shaftHz = detail->shaftHz;
    plots.waveform = waveform;
    return plots;
}

std::vector<LineMark> marksOf(const Hypothesis& hypothesis) {
    std::vector<LineMark> marks;
    for (const LineRow& row : hypothesis.best.rows) {
        LineMark mark;
        const bool found = row.state == LineState::Found;
        mark.kind = found                            ? MarkKind::Found
                    : row.state == LineState::Absent ? MarkKind::Absent
                                                     : MarkKind::LeftOut;
        mark.at = found && row.foundHz > 0 ? row.foundHz : row.expectedHz;
        mark.name = shown(row.name);
        mark.note = noteOf(row);
        mark.importance = (row.carrier ? 0 : 100) + row.harmonic;
        marks.push_back(std::move(mark));
    }
    return marks;
}

std::vector<LineMark> ordinaryMarks(double shaftHz, double mainsHz) {
    std::vector<LineMark> marks;
    for (int h = 1; shaftHz > 0 && h <= kShaftOrders; ++h)
        marks.push_back(
            {h * shaftHz, tr("%1x").arg(h), tr("order %1 of the shaft").arg(h), MarkKind::Ordinary, 200 + h});
    if (mainsHz > 0)
        marks.push_back(
            {2 * mainsHz, tr("2 x mains"), tr("twice the mains frequency"), MarkKind::Ordinary, 210});
    return marks;
}

}  // namespace fettle
