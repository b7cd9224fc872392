#include "tests/bench/bare_transforms.h"

#include <algorithm>
#include <cmath>

#include "core/diagnosis/prepare.h"
#include "core/dsp/band_envelope.h"

namespace fettle::bench {

namespace {

fftwf_complex* raw(FftVector<std::complex<float>>& v) {
    return reinterpret_cast<fftwf_complex*>(v.data());
}

}  // namespace

BareTransforms::BareTransforms(const Machine& machine, const Recording& recording) {
    const Channel& channel = recording.channels.front();
    const std::size_t n = quickSizeAtMost(channel.samples.size());
    const double df = channel.sampleRateHz / double(n);
    real_.resize(2 * n);
    in_.resize(2 * n);
    out_.resize(2 * n);
    addReal(n);
    // The bands and their number are asked of the engine, the sizes follow from their widths.
    const PreparedRecording prepared = prepare(machine, std::make_shared<Recording>(recording), {});
    for (const View& view : prepared.views.front().envelopes) {
        const auto first = std::size_t(std::ceil(view.band.lowHz / df)),
                   last = std::size_t(view.band.highHz / df);
        const std::size_t size = quickSizeAtLeast(2 * (last - first));
        addComplex(size);
        addReal(size);
    }
    // Planning may have written to the buffers. Any finite numbers do: the time does not depend on them.
    for (std::size_t i = 0; i < real_.size(); ++i) {
        real_[i] = float(i % 1000) / 1000 - 0.5f;
        in_[i] = {real_[i], -real_[i]};
    }
}

BareTransforms::~BareTransforms() {
    for (const fftwf_plan plan : plans_)
        fftwf_destroy_plan(plan);
}

void BareTransforms::addReal(std::size_t n) {
    plans_.push_back(
        fftwf_plan_dft_r2c_1d(int(n), real_.data(), raw(out_), FFTW_ESTIMATE | FFTW_PRESERVE_INPUT));
}

void BareTransforms::addComplex(std::size_t n) {
    plans_.push_back(fftwf_plan_dft_1d(int(n), raw(in_), raw(out_), FFTW_BACKWARD, FFTW_ESTIMATE));
}

void BareTransforms::run() {
    for (const fftwf_plan plan : plans_)
        fftwf_execute(plan);
}

}  // namespace fettle::bench
