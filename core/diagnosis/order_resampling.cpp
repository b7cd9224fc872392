#include "core/diagnosis/order_resampling.h"

#include <algorithm>
#include <cmath>

#include "core/diagnosis/speed_comb.h"
#include "core/dsp/local_floor.h"

namespace fettle {

namespace {

constexpr double kEven = 6e-4;  // wander that is none: a step of the track
constexpr double kWorthIt = 4;  // nepers
constexpr double kBesideMean = 2e-3, kFloorHz = 20;

// Best comb near the mean speed, by plain spectra alone.
double combNear(const std::vector<ChannelViews>& plain, double meanHz, const Mains& mains,
                const std::vector<double>& strong) {
    const double most = meanHz * (1 + kBesideMean);
    const auto views = combViews(plain, most, strong);
    if (views.empty()) return 0;
    const double least = meanHz * (1 - kBesideMean),
                 step = views[0].df /
                        (strong.empty() ? 60 : 2 * *std::max_element(strong.begin(), strong.end()) + 60);
    const auto nepers = combNepers(views, least, step, std::size_t((most - least) / step) + 1, mains);
    return *std::max_element(nepers.begin(), nepers.end());
}

ChannelViews plainOnly(std::span<const double> samples, double rateHz) {
    const Spectrum spectrum = periodogram(samples.first(quickSizeAtMost(samples.size())), rateHz);
    const std::vector<float> power(spectrum.values.begin(), spectrum.values.end());
    ChannelViews views;
    views.df = spectrum.stepHz;
    views.plainZ.resize(power.size());
    const auto width = std::size_t(std::lround(kFloorHz / spectrum.stepHz));
    overLocalFloor(power, std::max<std::size_t>(5, width), views.plainZ);
    return views;
}

}  // namespace

std::optional<ReadByAngle> readByAngle(const Recording& recording, const std::vector<ChannelViews>& views,
                                       double leastHz, double mostHz, const Mains& mains,
                                       const std::vector<double>& strong) {
    auto track = trackSpeed(recording, views, leastHz, mostHz, mains, strong);
    if (!track || track->wander() < kEven) return std::nullopt;
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
    read.sharper = read.gainNepers >= kWorthIt;
    if (!read.sharper) read.samples.clear();
    return read;
}

}  // namespace fettle
