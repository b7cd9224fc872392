#include "core/fleet/sheet_figures.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/base/text.h"
#include "core/fleet/sheet_change.h"

namespace fettle {

namespace {

constexpr int kShaftMarks = 3;
constexpr std::size_t kMostLabel = 80;

const RecordingFacts* factsOf(const SheetCase& sheet) {
    if (!sheet.week || sheet.finding.recording >= sheet.week->recordings.size()) return nullptr;
    return &sheet.week->recordings[sheet.finding.recording];
}

// A line that was found is marked where it was found.
std::vector<SheetMark> lineMarks(const Hypothesis& h) {
    std::vector<SheetMark> marks;
    for (const LineRow& row : h.best.rows) {
        if (row.state == LineState::LeftOut) continue;
        const bool found = row.state == LineState::Found;
        marks.push_back({row.name, found ? row.foundHz : row.expectedHz, found});
    }
    return marks;
}

std::vector<SheetMark> shaftMarks(const RecordingFacts& facts) {
    std::vector<SheetMark> marks;
    for (int order = 1; facts.speed.rpm && order <= kShaftMarks; ++order)
        marks.push_back({fmt::format("{} x shaft", order), order * *facts.speed.rpm / 60, true});
    return marks;
}

constexpr double kPolePasses = 4;  // shown to either side of the line

// The sidebands of rotor bars stand about the mains in flux, about 1x in vibration.
bool showBars(const SheetCase& sheet, const RecordingFacts& facts, SheetSpectrum& spectrum,
              std::string& point) {
    const FaultMeasure* measure = barMeasure(facts);
    const auto& poles = sheet.machine->driver.poles;
    if (!measure || measure->channel >= facts.channels.size() || !poles || !facts.speed.rpm || !facts.mains)
        return false;
    const double shaftHz = *facts.speed.rpm / 60, passHz = 2 * facts.mains->hz - *poles * shaftHz;
    if (passHz <= 0) return false;
    const ChannelFacts& channel = facts.channels[measure->channel];
    const bool flux = channel.quantity == "flux";
    point = channel.point;
    spectrum.channel = channel.name;
    spectrum.view = flux ? "own" : "velocity";
    spectrum.carrierHz = flux ? facts.mains->hz : shaftHz;
    spectrum.fromHz = spectrum.carrierHz - kPolePasses * passHz;
    spectrum.toHz = spectrum.carrierHz + kPolePasses * passHz;
    spectrum.marks = {{"- pole pass", spectrum.carrierHz - passHz, true},
                      {flux ? "mains" : "1x", spectrum.carrierHz, true},
                      {"+ pole pass", spectrum.carrierHz + passHz, true}};
    return true;
}

// The kind in words; what has no kind of its own in its own words.
std::string labelOf(const Event& event) {
    std::string label = event.kind;
    if ((label == "other" || label == "note") && !event.text.empty()) return oneLine(event.text, kMostLabel);
    std::replace(label.begin(), label.end(), '_', ' ');
    return label;
}

std::string viewWords(const SheetSpectrum& spectrum) {
    if (spectrum.view == "own") return spectrum.carrierHz > 0 ? "stray flux about the mains" : "acceleration";
    return spectrum.carrierHz > 0 ? "velocity about 1x" : spectrum.view;
}

void addEvents(const SheetCase& sheet, SheetTrend& trend) {
    const auto first = sheet.period.end - std::chrono::days(7 * kStripWeeks);
    for (const Event& event : sheet.events)
        if (event.time >= first && event.time < sheet.period.end)
            trend.events.push_back({event.time, labelOf(event)});
}

// The channel with its point, and what of it is shown.
std::string captionOf(const SheetCase& sheet, const SheetSpectrum& spectrum, const std::string& point) {
    const std::string named = spectrum.channel + ", ";
    const std::string view =
        spectrum.view.starts_with(named) ? spectrum.view.substr(named.size()) : viewWords(spectrum);
    std::string caption = fmt::format("{} {} {}: {}", sheet.row.tag, point, spectrum.channel, view);
    if (!sheet.recordingMoment.empty()) caption += ", " + sheet.recordingMoment;
    if (spectrum.recording) return caption;
    if (!sheet.thinnedOn.empty())
        return caption + "; its waveform was thinned by retention on " + sheet.thinnedOn;
    return caption + "; its waveform is not kept";
}

}  // namespace

const FaultMeasure* barMeasure(const RecordingFacts& facts) {
    const FaultMeasure* first = nullptr;
    for (const FaultMeasure& measure : facts.measures) {
        if (measure.fault != "rotor_bar" || measure.unit != "dB") continue;
        if (measure.name == "lower pole-pass sideband of mains") return &measure;
        if (!first) first = &measure;
    }
    return first;
}

SheetSpectrum spectrumOf(const SheetCase& sheet) {
    SheetSpectrum spectrum;
    const RecordingFacts* facts = factsOf(sheet);
    if (!facts) {
        spectrum.caption = "No running recording of this week.";
        return spectrum;
    }
    const Weighing& best = sheet.finding.best;
    spectrum.recording = sheet.recording;
    spectrum.time = sheet.recordingTime;
    std::string point = sheet.governing.point;
    if (sheet.told.finding.fault == "rotor_bar" && showBars(sheet, *facts, spectrum, point)) {
        spectrum.caption = captionOf(sheet, spectrum, point);
        return spectrum;
    }
    if (sheet.finding.weightDban && best.channel < facts->channels.size()) {
        spectrum.channel = facts->channels[best.channel].name;
        point = facts->channels[best.channel].point;
        spectrum.view = best.view;
        spectrum.marks = lineMarks(sheet.finding);
    } else if (!showAcceleration(sheet, *facts, spectrum, point)) {
        spectrum.channel = sheet.governing.channel;
        spectrum.view = "velocity";
        spectrum.marks = shaftMarks(*facts);
    }
    spectrum.caption = captionOf(sheet, spectrum, point);
    return spectrum;
}

SheetTrend trendOf(const SheetCase& sheet) {
    const Governing& g = sheet.governing;
    if (auto own = changeTrend(sheet)) {
        addEvents(sheet, *own);
        return std::move(*own);
    }
    SheetTrend trend{g.title.empty() ? "velocity r.m.s." : g.title, "mm/s", g.days, {}, {}, {}, ""};
    if (g.limits)
        for (int i = 0; i < 3; ++i)
            trend.limits.push_back({fmt::format("{}/{} {:g} mm/s", "ABC"[i], "BCD"[i], g.limits->velocity[i]),
                                    g.limits->velocity[i]});
    addEvents(sheet, trend);
    trend.past = sheet.past;
    trend.caption = fmt::format("daily medians of {}, {} weeks{}", trend.title, kStripWeeks,
                                g.limits ? "; limits " + g.limits->basis : "; no limit applies here");
    return trend;
}

}  // namespace fettle
