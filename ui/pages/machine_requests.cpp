#include "ui/pages/machine_requests.h"

#include <algorithm>

#include "core/fleet/cured_before.h"
#include "core/fleet/grams.h"
#include "core/fleet/machine_week.h"
#include "core/fleet/site_calendar.h"
#include "ui/model/numbers.h"
#include "ui/model/site_time.h"
#include "ui/model/words.h"
#include "ui/pages/evidence_requests.h"
#include "ui/theme/tr.h"

namespace fettle {

namespace {

constexpr int kShaftOrders = 5;
constexpr double kHannBandwidth = 1.5;  // lines

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
    if (!data->decibels) data->bandwidthHz = kHannBandwidth * spectrum.dfHz;
    return data;
}

// Below the velocity's corner its lines are zero already.
std::shared_ptr<const SpectrumData> displacementOf(const std::shared_ptr<const SpectrumData>& velocity) {
    if (!velocity) return nullptr;
    auto data = std::make_shared<SpectrumData>(*velocity);
    data->unit = QStringLiteral("µm r.m.s.");
    data->values = motionLines(velocity->values, velocity->dfHz, Motion::Velocity, Motion::Displacement, 0);
    return data;
}

QString noteOf(const LineRow& row) {
    if (row.state == LineState::LeftOut) return tr("left out: %1").arg(shown(row.why));
    return tr("%1, %2 dB over floor, %3 decibans")
        .arg(shown(toText(row.state)))
        .arg(fixedText(row.aboveFloorDb, 1))
        .arg(fixedText(row.weightDban, 1));
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
    const auto first = fleet.recordings().first(entry->id), newest = fleet.recordings().newest(entry->id);
    if (!first || !newest) return fail(first ? newest.error() : first.error());
    facts.first = *first;
    facts.newest = *newest;
    return facts;
}

// What a round tells by change stands among the findings here as well.
Status addChanges(FleetFile& fleet, const std::string& tag, const Period& period, PanelContent& content) {
    const auto entry = fleet.machines().byTag(tag);
    if (!entry) return fail(entry.error());
    auto changes = changesOfWeek(fleet, *entry, *content.machine, period, content.examination);
    if (!changes) return fail(changes.error());
    std::vector<Hypothesis>& findings = content.examination.findings;
    for (const RoundFinding& change : *changes) {
        const bool known = std::any_of(findings.begin(), findings.end(), [&](const Hypothesis& one) {
            return one.fault == change.finding.fault && one.at == change.finding.at;
        });
        if (!known) findings.push_back(change.finding);
    }
    content.changes = std::move(*changes);
    return {};
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
    if (auto good = addChanges(fleet, tag, *period, *content); !good) return fail(good.error());
    const auto cure = curedBefore(fleet, tag, *period);
    if (!cure) return fail(cure.error());
    if (*cure) content->examination.warnings.push_back((*cure)->sentence);
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
    plots.displacement = displacementOf(plots.velocity);
    plots.plain = spectrumOf(detail->plain, detail->shaftHz);
    plots.wholeBand = view.empty();
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
