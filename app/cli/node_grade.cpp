#include "app/cli/node_grade.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <complex>

#include "core/dsp/fft.h"
#include "core/simulate/random_stream.h"

namespace fettle {

namespace {

constexpr double kFlatTo = 0.4;  // of the rate: the node's filter falls from here to half the rate
constexpr double kRangeG = 16, kStepG = kRangeG / 32768;

using Bins = FftVector<std::complex<double>>;

// What a sensor on a springy mount moves when its base moves by 1.
std::complex<double> mountResponse(double hz, const NodeGrade& node) {
    if (node.mountHz <= 0) return 1;
    const double r = hz / node.mountHz;
    const std::complex<double> damped(0, 2 * node.mountDamping * r);
    return (1.0 + damped) / (1.0 - r * r + damped);
}

double filterGain(double hz, double rateHz) {
    const double past = (hz / rateHz - kFlatTo) / (0.5 - kFlatTo);
    if (past <= 0) return 1;
    return past >= 1 ? 0 : 0.5 * (1 + std::cos(3.14159265358979 * past));
}

// Bins of the node's record out of those of the whole one; what lies in the first fold comes back weakened.
Bins nodeBins(const Bins& whole, std::size_t samples, double df, double rateHz, const NodeGrade& node) {
    Bins kept(samples / 2 + 1, 0);
    for (std::size_t k = 0; k < whole.size(); ++k) {
        const double hz = double(k) * df;
        const std::complex<double> moved = whole[k] * mountResponse(hz, node);
        if (k < kept.size()) kept[k] += moved * filterGain(hz, rateHz);
        if (k > samples / 2 && k <= samples) kept[samples - k] += std::conj(moved) * node.aliasShare;
    }
    return kept;
}

// Sampled at `rateHz`, the node's true rate.
std::vector<double> sampledAt(const Channel& channel, double rateHz, const NodeGrade& node) {
    const std::size_t n = quickSizeAtMost(channel.samples.size());
    const FftVector<double> in(channel.samples.begin(), channel.samples.begin() + std::ptrdiff_t(n));
    Bins whole;
    forwardReal(in, whole);
    const auto samples = 2 * std::size_t(double(n) * rateHz / channel.sampleRateHz / 2);
    Bins kept = nodeBins(whole, samples, channel.sampleRateHz / double(n), rateHz, node);
    FftVector<double> out;
    inverseReal(kept, samples, out);
    std::vector<double> values(out.begin(), out.end());
    for (double& value : values)
        value /= double(n);
    return values;
}

double stored(double g) {
    return kStepG * std::clamp(std::round(g / kStepG), -32768.0, 32767.0);
}

}  // namespace

Result<RecordingPtr> throughNode(const Recording& recording, const NodeGrade& node, std::uint64_t seed) {
    const double trueRate = node.rateHz * (1 + node.clockError);
    auto heard = std::make_shared<Recording>(recording);
    for (Channel& channel : heard->channels) {
        if (channel.unit != "g")
            return fail(ErrorKind::Invalid, recording.file, channel.name,
                        fmt::format("a node takes acceleration in g, this channel is in {}", channel.unit));
        if (channel.sampleRateHz < trueRate || channel.samples.size() < 64)
            return fail(ErrorKind::Invalid, recording.file, channel.name,
                        fmt::format("{:g} Hz cannot be made of {} samples at {:g} Hz", trueRate,
                                    channel.samples.size(), channel.sampleRateHz));
        channel.samples = sampledAt(channel, trueRate, node);
        sim::RandomStream noise(seed, recording.file + channel.name);
        noise.addNormal(node.noisePerRtHz * std::sqrt(trueRate / 2), channel.samples);
        std::transform(channel.samples.begin(), channel.samples.end(), channel.samples.begin(), stored);
        channel.sampleRateHz = node.rateHz;
        channel.fullScale = kRangeG;
    }
    return RecordingPtr(std::move(heard));
}

}  // namespace fettle
