#include "core/diagnosis/detail.h"

#include <algorithm>
#include <cmath>

#include "core/diagnosis/prepare.h"
#include "core/diagnosis/view_lines.h"
#include "core/dsp/spectrum.h"

namespace fettle {

namespace {

constexpr double kVelocityShownHz = 1000;

// "x, envelope 3000-3920 Hz, whitened" -> channel "x" and the view's own name.
std::pair<std::string, std::string> splitView(const std::string& view) {
    const auto at = view.find(", ");
    if (at == std::string::npos || view.starts_with("envelope")) return {"", view};
    return {view.substr(0, at), view.substr(at + 2)};
}

Result<std::size_t> channelIndex(const PreparedRecording& prepared, const std::string& name) {
    const auto& channels = prepared.facts.channels;
    const auto wanted = [&](const ChannelFacts& c) {
        return name.empty() ? c.quantity == "acceleration" : c.name == name;
    };
    const auto at = std::find_if(channels.begin(), channels.end(), wanted);
    if (at != channels.end()) return std::size_t(at - channels.begin());
    if (name.empty()) return std::size_t(0);
    return fail(ErrorKind::NotFound, prepared.facts.file, "channel " + name,
                "the recording has no such channel");
}

std::vector<float> inDb(const std::vector<float>& z) {
    std::vector<float> db(z.size());
    std::transform(z.begin(), z.end(), db.begin(),
                   [](float power) { return power > 1e-3F ? 10 * std::log10(power) : -30.0F; });
    return db;
}

void takeViews(const ChannelViews& views, double leastHz, RecordingDetail& detail) {
    detail.velocity = {views.df, "mm/s r.m.s.", velocityLines(views, leastHz, kVelocityShownHz)};
    detail.plain = {views.df, "g r.m.s.", accelerationLines(views)};
}

// A channel that is no acceleration: its own spectrum and nothing else.
void takePlain(const Channel& channel, RecordingDetail& detail) {
    if (channel.samples.size() < 2) return;
    const Spectrum spectrum =
        periodogram(channel.samples, channel.sampleRateHz, {.kind = SpectrumKind::Rms, .unit = channel.unit});
    detail.plain = {spectrum.stepHz, valueUnit(spectrum), {spectrum.values.begin(), spectrum.values.end()}};
}

Status takeEnvelope(const ChannelViews& views, const std::string& name, RecordingDetail& detail) {
    const View* view = wholeBandEnvelope(views);
    if (!name.empty()) {
        const auto at = std::find_if(views.envelopes.begin(), views.envelopes.end(),
                                     [&](const View& v) { return v.name == name; });
        view = at == views.envelopes.end() ? nullptr : &*at;
        if (!view) return fail(ErrorKind::NotFound, "", "view " + name, "the recording has no such view");
    }
    if (!view) return {};
    detail.view = view->name;
    detail.envelope = {views.df, "dB over floor", inDb(view->z)};
    return {};
}

}  // namespace

Result<RecordingDetail> detailOf(const Machine& machine, const RecordingPtr& recording,
                                 const std::string& channelName, const std::string& viewName,
                                 const WeighingSettings& settings) {
    const auto [viewChannel, view] = splitView(viewName);
    const PreparedRecording prepared = prepare(machine, recording, {false, settings});
    const auto index = channelIndex(prepared, channelName.empty() ? viewChannel : channelName);
    if (!index) return fail(index.error());
    const Channel& channel = recording->channels[*index];
    const ChannelFacts& facts = prepared.facts.channels[*index];
    RecordingDetail detail;
    detail.channel = facts.name;
    detail.quantity = facts.quantity;
    detail.unit = channel.unit;
    detail.sampleRateHz = channel.sampleRateHz;
    detail.samples.assign(channel.samples.begin(), channel.samples.end());
    detail.shaftHz = prepared.rates.shaftHz;
    detail.mainsHz = prepared.rates.mainsHz;
    const ChannelViews* views = prepared.viewsOf(*index);
    if (!views) {
        takePlain(channel, detail);
        return detail;
    }
    takeViews(*views, prepared.facts.levels[*index].velocityLeastHz, detail);
    if (auto taken = takeEnvelope(*views, view, detail); !taken) return fail(taken.error());
    return detail;
}

}  // namespace fettle
