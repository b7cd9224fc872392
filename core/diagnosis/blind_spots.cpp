#include "core/diagnosis/blind_spots.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace fettle {

namespace {

// Faults this version does not weigh at all, with what would show them.
struct NotWeighed {
    const char *fault, *cure;
};
constexpr NotWeighed kNotWeighed[] = {
    {"gear_mesh", "not weighed yet: mesh lines are only kept out of the way of other faults"},
    {"belt", "not weighed yet: belt lines are only kept out of the way of other faults"},
    {"blade_pass", "not weighed yet: blade-pass lines are only kept out of the way of other faults"},
    {"rotor_bar", "needs a long narrow recording and flux; not weighed yet"},
    {"electrical_2x_mains", "needs a resolution of 0.5 Hz and better; not weighed yet"},
};

bool concerns(const Machine& machine, const std::string& fault) {
    if (fault == "gear_mesh") return !machine.gears.empty();
    if (fault == "belt") return !machine.belts.empty();
    if (fault == "blade_pass") return machine.driven.blades.has_value();
    return machine.driver.kind == DriverKind::Induction;
}

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

}  // namespace

std::vector<BlindSpot> blindSpots(const Machine& machine, const PreparedRecording& prepared,
                                  const AskedBearings& asked, const WeighingSettings& settings) {
    std::vector<BlindSpot> spots;
    for (const auto& n : asked.notAsked)
        spots.push_back({"bearing", n.at, n.why, n.cure});
    if (prepared.unfit.empty()) {
        blindCarriers(prepared, asked, settings, spots);
        blindViews(prepared, spots);
    }
    for (const NotWeighed& n : kNotWeighed)
        if (concerns(machine, n.fault))
            spots.push_back({n.fault, "driver", "not weighed by this version", n.cure});
    const bool axial = std::any_of(prepared.facts.channels.begin(), prepared.facts.channels.end(),
                                   [](const ChannelFacts& c) { return c.direction == "axial"; });
    if (!axial)
        spots.push_back({"misalignment", "driver", "no axial channel: angular misalignment shows there first",
                         "an axial reading at the drive end"});
    return spots;
}

}  // namespace fettle
