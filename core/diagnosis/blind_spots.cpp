#include "core/diagnosis/blind_spots.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace fettle {

namespace {

// A whole family is blind where its first carrier stands in an ordinary line at the expected order, and where
// it would do so over most of the range that is searched.
void blindCarriers(const PreparedRecording& prepared, const AskedBearings& asked,
                   const WeighingSettings& settings, std::vector<BlindSpot>& spots) {
    for (const BearingHypothesis& h : asked.hypotheses) {
        const FamilyLine& first = h.variants[0].lines[0];
        const ChannelEvidence& channel = prepared.evidence[h.hearings[0].channel];
        const double df = channel.views->df, hz = first.order * h.shaftRatio * prepared.rates.shaftHz;
        const auto k = std::size_t(hz / df + 0.5);
        if (k >= channel.blocked.bins.size() || !channel.blocked.bins[k]) continue;
        const double reach = (settings.maskBins + 1) * df;
        spots.push_back(
            {h.fault, h.at,
             fmt::format("{} at {:.2f} Hz stands within {:.2f} Hz of {}: they cannot be parted in {:.1f} s",
                         first.name, hz, reach, channel.blocked.why(k), 1 / df),
             "a longer recording"});
    }
}

void blindViews(const PreparedRecording& prepared, std::vector<BlindSpot>& spots) {
    for (const ChannelEvidence& channel : prepared.evidence)
        for (const View& view : channel.views->envelopes)
            if (!view.unusable.empty())
                spots.push_back(
                    {"", "",
                     fmt::format("{}, {} left out: {}", channel.channelName, view.name, view.unusable),
                     "a longer recording or a higher sample rate"});
}

// Whether a part has a measure of the fault at the place, and nothing that it is blind to there.
bool seesInFull(const Examination& part, const BlindSpot& spot) {
    const auto same = [&](const auto& one) { return one.fault == spot.fault && one.at == spot.at; };
    if (std::any_of(part.blind.begin(), part.blind.end(), same)) return false;
    return std::any_of(part.recordings.begin(), part.recordings.end(), [&](const RecordingFacts& r) {
        return std::any_of(r.measures.begin(), r.measures.end(), same);
    });
}

}  // namespace

std::vector<BlindSpot> jointBlindSpots(const std::vector<Examination>& parts) {
    std::vector<BlindSpot> all;
    for (const Examination& part : parts)
        for (const BlindSpot& b : part.blind) {
            const bool known = std::any_of(all.begin(), all.end(), [&](const BlindSpot& a) {
                return a.fault == b.fault && a.at == b.at && (!b.fault.empty() || a.why == b.why);
            });
            const bool seen = std::any_of(parts.begin(), parts.end(),
                                          [&](const Examination& p) { return seesInFull(p, b); });
            if (!known && !seen) all.push_back(b);
        }
    return all;
}

std::vector<BlindSpot> blindSpots(const Machine&, const PreparedRecording& prepared,
                                  const AskedBearings& asked, const WeighingSettings& settings) {
    std::vector<BlindSpot> spots;
    for (const auto& n : asked.notAsked)
        spots.push_back({"bearing", n.at, n.why, n.cure});
    if (prepared.unfit.empty()) {
        blindCarriers(prepared, asked, settings, spots);
        blindViews(prepared, spots);
    }
    const bool axial = std::any_of(prepared.facts.channels.begin(), prepared.facts.channels.end(),
                                   [](const ChannelFacts& c) { return c.direction == "axial"; });
    if (!axial)
        spots.push_back({"misalignment", "driver", "no axial channel: angular misalignment shows there first",
                         "an axial reading at the drive end"});
    return spots;
}

}  // namespace fettle
