// Why: an examination cannot be quicker than the transforms it stands on, so its time is told as a multiple
// of theirs: one real transform of the record, and for each band, raw and pre-whitened, one complex and one
// real transform of the padded band. Straight from FFTW, planned beforehand with the flags of
// core/dsp/fft.cpp, out of place, on aligned buffers. Thread: one.
#pragma once

#include <fftw3.h>

#include <cstddef>
#include <vector>

#include "core/dsp/fft.h"
#include "core/machine/machine.h"
#include "core/signal/recording.h"

namespace fettle::bench {

class BareTransforms {
  public:
    // Those of a recording's first channel.
    BareTransforms(const Machine& machine, const Recording& recording);
    ~BareTransforms();
    BareTransforms(const BareTransforms&) = delete;
    BareTransforms& operator=(const BareTransforms&) = delete;

    void run();
    std::size_t count() const { return plans_.size(); }

  private:
    void addReal(std::size_t n);
    void addComplex(std::size_t n);

    FftVector<float> real_;
    FftVector<std::complex<float>> in_, out_;
    std::vector<fftwf_plan> plans_;
};

}  // namespace fettle::bench
