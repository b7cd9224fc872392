#include "core/diagnosis/order_resampling.h"

#include <algorithm>
#include <cmath>
#include <span>

#include "core/diagnosis/speed_comb.h"
#include "core/diagnosis/speed_phase.h"

namespace fettle {

namespace {

constexpr double kEvenTurns = 0.008;  // r.m.s. swing of the angle: a third of a turn at order 40
constexpr double kWorthIt = 1;        // nepers
constexpr double kOffKnown = 0.006;   // a mean farther from the known one follows something else
constexpr double kTurnsToFollow = 50;
constexpr int kOrdersTried = 30;
constexpr double kOrderStandsOut = 12;  // power over floor
constexpr double kOffMean = 2e-3;

// Best comb near the mean speed, by plain spectra alone.
double combNear(const std::vector<ChannelViews>& plain, double meanHz, const Mains& mains,
                const std::vector<double>& strong) {
    const double most = meanHz * (1 + kOffMean);
    const auto views = combViews(plain, most, strong);
    if (views.empty()) return 0;
    const double least = meanHz * (1 - kOffMean),
                 step = views[0].df /
                        (strong.empty() ? 60 : 2 * *std::max_element(strong.begin(), strong.end()) + 60);
    const auto nepers = combNepers(views, least, step, std::size_t((most - least) / step) + 1, mains);
    return *std::max_element(nepers.begin(), nepers.end());
}

// How high the orders stand that stand out: smeared lines stand lower, the higher orders first.
double heights(std::span<const ChannelViews> plain, double shaftHz) {
    double sum = 0;
    for (const ChannelViews& v : plain)
        for (int h = 2; h <= kOrdersTried; ++h) {
            const auto k = std::size_t(h * shaftHz / v.df + 0.5);
            if (k < 2 || k + 2 >= v.plainZ.size()) break;
            const float z = *std::max_element(&v.plainZ[k - 2], &v.plainZ[k + 3]);
            if (z > kOrderStandsOut) sum += std::log(z / kOrderStandsOut);
        }
    return sum / double(plain.size());
}

ChannelViews plainOnly(std::span<const double> samples, double rateHz) {
    return plainViews(samples.first(quickSizeAtMost(samples.size())), rateHz, 5);
}

// The channel with the highest orders says the angle.
const Channel& loudest(const Recording& recording, const std::vector<ChannelViews>& views, double shaftHz) {
    const ChannelViews* best = &views[0];
    double highest = -1;
    for (const ChannelViews& v : views) {
        const double sum = heights({&v, 1}, shaftHz);
        if (sum <= highest) continue;
        best = &v;
        highest = sum;
    }
    return recording.channels[best->channel];
}

// By the phase of the orders where they can be followed from an even speed on, else along the comb of short
// pieces first.
std::optional<SpeedTrack> follow(const Recording& recording, const std::vector<ChannelViews>& views,
                                 const Search& search, const Mains& mains) {
    SpeedTrack track;
    if (search.knownHz) {
        const Channel& channel = loudest(recording, views, *search.knownHz);
        FollowedPhase phase =
            followPhase(channel.samples, channel.sampleRateHz, {{0, Hertz(*search.knownHz)}}, mains.hz);
        if (phase.orders > 0) {
            if (phase.swingTurns < kEvenTurns) return std::nullopt;
            track.take(std::move(phase.samples));
            return track;
        }
    }
    const auto pieces = trackSpeed(recording, views, search.leastHz, search.mostHz, mains, search.strong);
    if (!pieces) return std::nullopt;
    track = *pieces;
    const Channel& channel = loudest(recording, views, track.meanHz);
    FollowedPhase phase = followPhase(channel.samples, channel.sampleRateHz, track.samples, mains.hz);
    if (phase.swingTurns < kEvenTurns) return std::nullopt;
    track.take(std::move(phase.samples));
    return track;
}

}  // namespace

std::optional<ReadByAngle> readByAngle(const Recording& recording, const std::vector<ChannelViews>& views,
                                       const Search& search, const Mains& mains) {
    if (views.empty() || recording.seconds() * search.leastHz < kTurnsToFollow) return std::nullopt;
    auto track = follow(recording, views, search, mains);
    if (!track) return std::nullopt;
    if (search.knownHz && std::abs(track->meanHz / *search.knownHz - 1) > kOffKnown) return std::nullopt;
    const std::vector<double>& strong = search.strong;
    const auto angle = ShaftAngle::fromSpeed(track->samples);
    if (!angle) return std::nullopt;
    ReadByAngle read;
    read.track = std::move(*track);
    const double rate = recording.channels[views[0].channel].sampleRateHz, mean = read.track.meanHz;
    const auto aTurn = unsigned(std::ceil(rate / mean));
    std::vector<ChannelViews> before, after;
    for (const ChannelViews& v : views) {
        const auto& samples = recording.channels[v.channel].samples;
        TurnSignal turned = resampledByAngle(samples, rate, *angle, aTurn);
        if (turned.samples.size() < samples.size() / 2) return std::nullopt;
        read.samples.emplace_back(turned.samples.begin(), turned.samples.end());
        read.sampleRateHz = aTurn * mean;
        before.push_back(plainOnly(samples, rate));
        after.push_back(plainOnly(read.samples.back(), read.sampleRateHz));
    }
    read.gainNepers = combNear(after, mean, mains, strong) - combNear(before, mean, mains, strong);
    read.gainHeights = heights(after, mean) - heights(before, mean);
    read.sharper = read.gainNepers >= kWorthIt && read.gainHeights >= kWorthIt;
    if (!read.sharper) read.samples.clear();
    return read;
}

}  // namespace fettle
