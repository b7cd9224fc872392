#include "core/diagnosis/view.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "core/diagnosis/rank.h"
#include "core/dsp/local_floor.h"
#include "core/dsp/sharp_spectrum.h"
#include "core/dsp/statistics.h"

namespace fettle {

namespace {

constexpr std::size_t kFewestSamples = 256;  // below, no view at all

// Kept by each thread: a week's recordings are alike in length, and their buffers serve again.
struct Workspace {
    FftVector<float> samples;
    FftVector<std::complex<float>> half;
    std::vector<float> power;
    BandEnvelope envelope;
};

// The record without its mean.
void prepare(std::span<const double> signal, FftVector<float>& samples) {
    const double offset = mean(signal);
    samples.resize(signal.size());
    for (std::size_t i = 0; i < samples.size(); ++i)
        samples[i] = float(signal[i] - offset);
}

// The record's own spectrum from its transform, scaled as accelerationSpectrum() does.
Spectrum plainSpectrum(const std::vector<float>& power, double df, std::size_t samples) {
    Spectrum spectrum;
    spectrum.stepHz = df;
    spectrum.window = WindowKind::Hann;
    spectrum.noiseBandwidthBins = 1.5;
    spectrum.unit = "g";
    spectrum.transformSize = samples;
    spectrum.segments = 1;
    const double windowSum = 0.5 * double(samples), scale = 2 / (windowSum * windowSum);
    spectrum.values.reserve(power.size());
    for (const float p : power)
        spectrum.values.push_back(scale * double(p));
    spectrum.values.front() /= 2;
    spectrum.values.back() /= 2;
    return spectrum;
}

std::size_t floorWidth(double df, const WeighingSettings& settings) {
    return std::max<std::size_t>(5, std::size_t(std::lround(settings.floorWidthHz / df)));
}

// The floor is taken from the first ranked bin on: the skirt of the removed mean below it must not lift it.
std::vector<float> whitened(const std::vector<float>& power, double df, const WeighingSettings& settings) {
    std::vector<float> z(power.size());
    const std::size_t first = std::min(power.size(), std::size_t(std::ceil(settings.leastHz / df)));
    overLocalFloor(std::span(power).subspan(first), floorWidth(df, settings), std::span(z).subspan(first));
    return z;
}

void weighViews(std::vector<View>& views) {
    std::set<int> levels;
    for (const View& view : views)
        levels.insert(view.band.level);
    for (View& view : views)
        view.omega = 1.0 / (2.0 * double(levels.size()) * view.band.level);
}

}  // namespace

ChannelViews makeViews(std::span<const double> accelerationG, double sampleRateHz, double highestCarrierHz,
                       const WeighingSettings& settings) {
    ChannelViews views;
    views.sampleRateHz = sampleRateHz;
    if (accelerationG.size() < kFewestSamples) return views;
    const auto signal = accelerationG.first(quickSizeAtMost(accelerationG.size()));
    views.samplesUsed = signal.size();
    views.df = sampleRateHz / double(signal.size());

    thread_local Workspace work;
    prepare(signal, work.samples);
    forwardReal(work.samples, work.half);
    hannPower(work.half, work.half.size(), work.power);
    views.spectrum = plainSpectrum(work.power, views.df, signal.size());
    views.plainZ = whitened(work.power, views.df, settings);
    views.sharp = sharpSpectrum(work.half, sampleRateHz, kSharpTopHz);

    const double narrowest = std::max(settings.narrowestBandHz, settings.carriersABand * highestCarrierHz);
    const std::vector<Band> bands = bandTree(sampleRateHz, narrowest);
    for (const bool white : {false, true}) {
        if (white) prewhiten(work.half);
        for (const Band& band : bands) {
            View view;
            view.name = fmt::format("envelope {:.0f}-{:.0f} Hz{}", band.lowHz, band.highHz,
                                    white ? ", whitened" : "");
            view.band = band;
            view.whitened = white;
            view.z = whitened(work.envelope.spectrum(work.half, views.df, band, settings.envelopeTopHz),
                              views.df, settings);
            view.top = view.z.size();
            views.bins = std::max(views.bins, view.top);
            views.envelopes.push_back(std::move(view));
        }
    }
    weighViews(views.envelopes);
    return views;
}

ChannelViews plainViews(std::span<const double> samples, double sampleRateHz, std::size_t fewestBins) {
    const Spectrum spectrum = periodogram(samples, sampleRateHz);
    const std::vector<float> power(spectrum.values.begin(), spectrum.values.end());
    ChannelViews views;
    views.df = spectrum.stepHz;
    views.plainZ.resize(power.size());
    const auto width = std::size_t(std::lround(WeighingSettings().floorWidthHz / spectrum.stepHz));
    overLocalFloor(power, std::max(fewestBins, width), views.plainZ);
    return views;
}

void rankViews(ChannelViews& views, const std::vector<std::uint16_t>& masked,
               const WeighingSettings& settings) {
    const auto first = std::size_t(std::ceil(settings.leastHz / views.df));
    for (View& view : views.envelopes) {
        Ranking ranking = rankPositions(view.z, masked, first, settings.fewestReferences, settings.kappa);
        view.rankP = std::move(ranking.p);
        view.factor = std::move(ranking.factor);
        view.unusable = std::move(ranking.unusable);
    }
}

}  // namespace fettle
